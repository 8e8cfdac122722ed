import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CellError, call, cell } from "./built";
import { ERROR_CELLS } from "./errorcells";

const VALUE_ERROR = (words: string | RegExp) => ({
  code: "#VALUE!",
  message: typeof words === "string" ? expect.stringContaining(words) : expect.stringMatching(words),
});

describe("single cells and ranges", () => {
  test("ranges of equal shape go row by row; a single cell goes with each", () => {
    expect(call("CHAINWEIGHT", [[96], [48]], [[2], [2.5]], [[4]])).toEqual([[196], [124]]);
    expect(
      call("FINENESS", [
        ["18K", 585],
        [750, "50%"],
      ]),
    ).toEqual([
      [750, 585],
      [750, 500],
    ]);
  });

  test("a row whose cells are all blank gives a blank, a fault stays in its own cell", () => {
    const answer = call("FINEGOLD", [[10], [""], ["ten"], [10]], [["18K"], [null], ["18K"], ["25K"]]) as unknown[][];
    expect(answer[0]).toEqual([7.5]);
    expect(answer[1]).toEqual([""]);
    expect(answer[2]).toEqual([VALUE_ERROR('weight: found "ten"')]);
    expect(answer[3]).toEqual([VALUE_ERROR('mark: found "25K"')]);
  });

  test("a half-blank row names the blank argument", () => {
    const answer = call("FINEGOLD", [[10], [20]], [["18K"], [""]]) as unknown[][];
    expect(answer[1]).toEqual([VALUE_ERROR("mark: found nothing")]);
  });

  test("ranges of unequal shape are refused with both shapes named", () => {
    expect(call("FINEGOLD", [[1], [2]], [["18K"], ["18K"], ["18K"]])).toEqual(
      VALUE_ERROR(/mark: found a range of 3 x 1 cells beside weight of 2 x 1/),
    );
  });

  test("a function of several columns takes ranges of one column only", () => {
    expect(call("ASKINGCHECK", [[100, 200]], [[1]], [["14K"]], [[2000]])).toEqual(VALUE_ERROR("one column"));
  });

  test("omitted and blank optional arguments are one and the same", () => {
    expect(cell("LINKCOUNT", 24, 4, null, null, null)).toBe(96);
    expect(cell("LINKCOUNT", 24, 4, "", "", "")).toBe(96);
  });

  test("a range gives what single cells give", () => {
    const weight = fc.integer({ min: 1, max: 1_000_000 }).map((cents) => cents / 100);
    const mark = fc.constantFrom("14K", "18K", 585, "750/1000", "58.5%");
    fc.assert(
      fc.property(
        fc.array(fc.tuple(weight, mark), { minLength: 2, maxLength: 20 }),
        fc.integer({ min: 100, max: 9000 }),
        (rows, spot) => {
          const together = call(
            "MELTVALUE",
            rows.map(([grams]) => [grams]),
            rows.map(([, stamped]) => [stamped]),
            [[spot]],
            [[2]],
          );
          expect(together).toEqual(rows.map(([grams, stamped]) => [cell("MELTVALUE", grams, stamped, spot, 2)]));
        },
      ),
    );
  });
});

describe.each(Object.entries(ERROR_CELLS))("an error cell that comes %s", (_how, errorCell) => {
  test("is a fault in its own row of a range, and names the error", () => {
    const answer = call("FINEGOLD", [[10], [errorCell("#DIV/0!")], [20]], [["18K"], ["18K"], [errorCell("#N/A")]]);
    expect(answer).toEqual([
      [7.5],
      [VALUE_ERROR("weight: found the error #DIV/0!, which is not a plain number; give grams above 0")],
      [VALUE_ERROR("mark: found the error #N/A")],
    ]);
  });

  test("is the fault of a single call", () => {
    expect(cell("CASTWEIGHT", errorCell("#REF!"), 0.02)).toEqual(VALUE_ERROR("finishedWeight: found the error #REF!"));
    expect(cell("CASTWEIGHT", 10, 0.02, errorCell("#N/A"))).toEqual(VALUE_ERROR("lossBasis: found the error #N/A"));
  });

  test("in an optional argument is not taken for nothing", () => {
    expect(cell("LINKCOUNT", 24, 4, errorCell("#N/A"))).toEqual(VALUE_ERROR("claspLength: found the error #N/A"));
    expect(cell("METALRATE", 2000, "14K", errorCell("#N/A"))).toEqual(VALUE_ERROR("decimals: found the error #N/A"));
    expect(cell("ASKINGCHECK", 100, 1, "14K", 2000, errorCell("#N/A"))).toEqual(
      VALUE_ERROR("landedPerGram: found the error #N/A"),
    );
  });

  test("in a list of metals, standards or makers is that list's fault", () => {
    expect(call("ALLOYDENSITY", [["Au"], [errorCell("#N/A")]], [[750], [250]])).toEqual(
      VALUE_ERROR("metals: found the error #N/A"),
    );
    expect(call("ALLOYDENSITY", [["Au"], ["Ag"]], [[750], [errorCell("#N/A")]])).toEqual(
      VALUE_ERROR("parts: found the error #N/A"),
    );
    expect(call("STANDARDMARK", [[600]], [[585], [errorCell("#N/A")]])).toEqual(
      VALUE_ERROR("standards: found the error #N/A"),
    );
    const makers = [
      ["Maker", "Mark", "From g", "Surcharge per g"],
      [errorCell("#N/A"), "14K", "", 3],
    ];
    expect(call("BESTMAKER", [[10]], [["14K"]], makers)).toEqual(VALUE_ERROR("Maker: found the error #N/A"));
  });
});

describe("a cell that comes with its type, as under older metadata that Excel still keeps", () => {
  const typed = (type: string, basicValue: unknown) => ({ type, basicType: typeof basicValue, basicValue });

  test("counts as the value in it: numbers with a format, numbers, texts", () => {
    expect(
      call("FINEGOLD", [[typed("FormattedNumber", 10)], [typed("Double", 20)]], [[typed("String", "18K")], [750]]),
    ).toEqual([[7.5], [15]]);
    expect(cell("FINEGOLD", typed("FormattedNumber", 10), typed("Double", 750))).toBe(7.5);
    expect(cell("CASTWEIGHT", typed("Double", 98), 0.02, typed("String", "cast"))).toBe(100);
    expect(cell("FINEGOLD", typed("Boolean", true), "18K")).toEqual(VALUE_ERROR("weight: found TRUE"));
    expect(call("FINEGOLD", [[10], [typed("Empty", "")]], [["18K"], [typed("Empty", "")]])).toEqual([[7.5], [""]]);
  });

  test("is told what to give where it is a card of many values", () => {
    const card = { type: "Entity", basicType: "Error", basicValue: "#VALUE!", text: "Gold", properties: {} };
    const words = "spot: found a data type, which is not a plain number; give its number, such as A1.Price";
    expect(cell("METALRATE", card, "14K")).toEqual(VALUE_ERROR(words));
    // 31.1034768 grams an ounce: 25 a gram.
    expect(call("METALRATE", [[777.58692], [card]], [["1000"]])).toEqual([[25], [VALUE_ERROR(words)]]);
  });
});

describe("what a bad cell is told", () => {
  test.each<[string, unknown[], string]>([
    ["FINEGOLD", [null, "14K"], "weight: found nothing; give grams above 0"],
    ["FINEGOLD", ["abc", "14K"], 'weight: found "abc", which is not a plain number'],
    ["FINEGOLD", [true, "14K"], "weight: found TRUE"],
    ["FINEGOLD", [0, "14K"], "weight: found 0; give grams above 0"],
    ["FINEGOLD", [-3, "14K"], "weight: found -3"],
    ["FINEGOLD", ["1,250", "14K"], "which has separators in it"],
    ["FINEGOLD", ["12,5", "14K"], "a comma where a point would be right"],
    ["FINEGOLD", [1e308, "14K"], "too large to compute with"],
    ["FINENESS", ["25K"], 'mark: found "25K"'],
    ["FINENESS", ["14.5.2"], 'mark: found "14.5.2"'],
    ["FINENESS", [1], "mark: found 1, which may be 1 karat or pure gold"],
    ["FINENESS", [1001], "mark: found 1001"],
    ["CASTWEIGHT", [10, 1], "loss: found 1; give a share from 0 to below 1"],
    ["CASTWEIGHT", [10, 1, "finished"], "loss: found 1"],
    ["FINISHEDWEIGHT", [10, 10, "grams"], "loss: found a loss of the whole cast weight"],
    ["CASTWEIGHT", [10, 0.1, "melted"], 'lossBasis: found "melted"; give one of "cast", "finished", "grams"'],
    ["LINKCOUNT", [1, 4, 2], "claspLength: found a clasp as long as the whole chain"],
    ["LINKCOUNT", ["10,000", 4], 'length: found "10,000"'],
    ["LINKCOUNT", [24, 4, 0, "nearest", 1.5], "multiple: found 1.5"],
    ["WEIGHTIN", [1, "stone", "g"], 'from: found "stone"'],
    ["METALRATE", [2000, "14K", 2.5], "decimals: found 2.5"],
    ["PRICEATMARGIN", [100, 1], "margin: found 1"],
    ["MARKUP", [0, 10], "cost: found 0"],
    ["CASTWEIGHT", [9e299, 0.9999999999], "result: found a result larger than a cell can hold"],
  ])("%s%j", (id, args, words) => {
    expect(cell(id, ...args)).toEqual(VALUE_ERROR(words));
  });

  test.each<[string, unknown[], string]>([
    ["STANDARDMARK", [300], "fineness: found 300, below the lowest standard 333"],
    ["CROSSOVERWEIGHT", [50, 3.25, 3.25], "surcharge: found 3.25"],
    ["SPOTLIMIT", [100, 10, "14K", 200], "otherCosts"],
  ])("%s%j has no answer: #N/A", (id, args, words) => {
    expect(cell(id, ...args)).toEqual({ code: "#N/A", message: expect.stringContaining(words) });
  });

  test("no function ever answers NaN, Infinity or a plain throw, whatever the cells hold", () => {
    const anything = fc.oneof(
      fc.double(),
      fc.string(),
      fc.boolean(),
      fc.constant(null),
      fc.constant(""),
      fc.constantFrom("14K", "grams", "g", "in", 0, 1, 585, 1e300, -1e300, 5e-324),
    );
    const ids = fc.constantFrom(
      "FINENESS",
      "FINEGOLD",
      "METALRATE",
      "MELTVALUE",
      "WEIGHTIN",
      "LINKCOUNT",
      "CASTWEIGHT",
      "LANDEDCOST",
      "MAKEORBUY",
      "STONECOST",
      "PRICEATMARKUP",
      "PRICEATMARGIN",
      "ASKINGCHECK",
      "SPOTLIMIT",
      "STANDARDMARK",
      "CROSSOVERWEIGHT",
    );
    fc.assert(
      fc.property(ids, fc.array(anything, { minLength: 9, maxLength: 9 }), (id, args) => {
        for (const answer of [cell(id, ...args)].flat(2)) {
          if (typeof answer === "number") expect(Number.isFinite(answer)).toBe(true);
          else if (typeof answer === "object") expect((answer as CellError).message).toMatch(/^[a-zA-Z]+: found /);
          else expect(["string", "boolean"]).toContain(typeof answer);
        }
      }),
      { numRuns: 3000 },
    );
  });
});
