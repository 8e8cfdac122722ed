import { describe, expect, test } from "vitest";
import { keyOfHeader, LINE_FIELDS, LINE_KEYS, LINE_LABELS, readHeaders, recordOf } from "../../../src/index";
import {
  areOurWords,
  type ColumnMatch,
  doubledOf,
  headersOf,
  matchHeaders,
  missingOf,
  saidUnit,
  unitsOf,
} from "../../../taskpane/designtable/columnmatching";

const keysOf = (...headers: unknown[]) =>
  matchHeaders(headers).map(({ key, unit, certainty }) => [key, unit, certainty]);

describe("headers", () => {
  test("in the words of the form are known, with the unit in them", () => {
    expect(keysOf("Design", "LENGTH (in)", "Links per cm", "Clasp weight, dwt")).toEqual([
      ["design", undefined, "known"],
      ["length", "in", "known"],
      ["linksPer", "cm", "known"],
      ["claspWeight", "dwt", "known"],
    ]);
  });

  test("misspelt, or with words beside, are likely, for the person to look at", () => {
    expect(keysOf("Lenght cm", "Colur")).toEqual([
      ["length", "cm", "likely"],
      ["colour", undefined, "likely"],
    ]);
    // Near by its letters, but another word.
    expect(keysOf("Length (in)", "Chain length (in)")[1]).toEqual([undefined, undefined, "none"]);
    expect(keysOf("Chain length (in)", "Gold colour")).toEqual([
      ["length", "in", "likely"],
      ["colour", undefined, "likely"],
    ]);
  });

  test("that are near to nothing are not used, nor are those of the customer, figures and blanks", () => {
    expect(keysOf("Shelf", "Customer", 12, "", null).map(([key]) => key)).toEqual(Array(5).fill(undefined));
  });

  test("that both name one field are both kept, so that the person is asked; a near one gives way", () => {
    expect(keysOf("Mark", "Karat", "Marks").map(([key]) => key)).toEqual(["mark", "mark", undefined]);
  });
});

describe("what is missing", () => {
  test("is said in the words of the form; a length wants its unit, in its header or in a column", () => {
    const matches = matchHeaders(["Design", "Mark", "Colour", "Length", "Links per length", "Weight of one link"]);
    expect(missingOf(matches)).toEqual(["Length unit", "Links counted per"]);
    expect(missingOf(matchHeaders(["Design", "Length (mm)"]))).toEqual([
      "Mark",
      "Colour",
      "Links per length",
      "Weight of one link",
    ]);
    const units = [...matches, ...matchHeaders(["Length unit", "Links counted per"])];
    expect(missingOf(units)).toEqual([]);
  });

  test("and what is there twice", () => {
    const twice = [...matchHeaders(["Mark"]), ...matchHeaders(["Karat"])];
    expect(doubledOf(matchHeaders(["Mark", "Length", "Karat"]))).toEqual([
      "Mark in column 1 and in column 3; keep one of them",
    ]);
    expect(doubledOf(twice)).toHaveLength(1);
  });
});

describe("the headers that the library reads", () => {
  test("say every field in every unit it may have", () => {
    for (const key of LINE_KEYS) {
      for (const unit of [undefined, ...unitsOf(key)]) {
        const match: ColumnMatch = { place: 0, header: "theirs", key, unit, certainty: "known" };
        const [header = ""] = headersOf([match]);
        expect(keyOfHeader(header), header).toBe(key);
        if (unit === undefined) continue;
        // A unit that the library cannot count in would throw here; one it does not see would leave the amount as it is.
        const columns = readHeaders([header, "Length unit"]);
        expect(() => recordOf(columns, [1, "in"], "USD"), header).not.toThrow();
      }
    }
  });

  test("are the person's own where those say the same, so that a list can read their cells", () => {
    const own = matchHeaders(["Design", "Karat", "Length (in)", "Links per inch", "Remark"]);
    expect(areOurWords(own)).toBe(true);
    expect(headersOf(own)).toEqual(["Design", "Karat", "Length (in)", "Links per inch", ""]);
  });

  test("are not where a column is set to not used, another field or another unit", () => {
    const own = matchHeaders(["Design", "Length (in)"]);
    const changed = (change: Partial<ColumnMatch>) =>
      own.map((match) => (match.place === 1 ? { ...match, ...change } : match));
    expect(areOurWords(changed({ key: undefined }))).toBe(false);
    expect(areOurWords(changed({ key: "claspLength" }))).toBe(false);
    expect(areOurWords(changed({ unit: "cm" }))).toBe(false);
    expect(headersOf(changed({ unit: "cm" }))).toEqual(["Design", `${LINE_LABELS.length} (cm)`]);
  });
});

describe("the unit of a header", () => {
  const WEIGHTS = ["g", "dwt", "ozt", "gr", "mg", "kg", "ct"] as const;
  const LENGTHS = ["in", "cm", "mm"] as const;
  const written = (unit: string) => [
    `Anything (${unit})`,
    `Anything [${unit}]`,
    `Anything, ${unit}`,
    `Anything ${unit}`,
  ];

  test("holds for whatever field of its kind a person takes the column for", () => {
    for (const key of LINE_KEYS) {
      const { counts } = LINE_FIELDS[key];
      const units = counts === "weight" ? WEIGHTS : counts === "length" ? LENGTHS : [];
      for (const unit of units) {
        for (const header of written(unit)) expect(saidUnit(header, key), `${header} as ${key}`).toBe(unit);
      }
    }
    expect(saidUnit("Gliedgew. [dwt]", "linkWeight")).toBe("dwt");
  });

  test("is asked of a weight in a person's own words that name none, and grams under our own", () => {
    const taken = (header: string, unit: string | undefined) => [
      ...matchHeaders(["Design", "Mark", "Colour", "Length (in)", "Links per in"]),
      { place: 5, header, key: "linkWeight", unit, certainty: "known" } as const,
    ];
    expect(missingOf(taken("Gliedgew.", undefined))).toEqual(["Unit of Gliedgew."]);
    expect(missingOf(taken("Gliedgew.", "g"))).toEqual([]);
    expect(missingOf(taken("Weight of one link", undefined))).toEqual([]);
    expect(headersOf(taken("Gliedgew. [dwt]", "dwt")).at(-1)).toBe("Weight of one link (dwt)");
  });
});
