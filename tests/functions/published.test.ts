import { describe, expect, test } from "vitest";
import { published } from "../src/published";
import { call, cell } from "./built";

interface Table<Row> {
  readonly source: string;
  readonly rows: readonly Row[];
}

describe("published values through the built functions.js", () => {
  const units = published<Table<{ amount: string; unit: string; expected: string; to: string }>>("units.json");
  const CODES: Record<string, string> = { grain: "gr", pennyweight: "dwt", "troy ounce": "ozt", "metric carat": "ct" };
  test.each(units.rows.filter(({ unit }) => unit in CODES))(
    "1 $unit is $expected g (UCUM 1.9)",
    ({ amount, unit, expected }) => {
      expect(cell("WEIGHTIN", amount, CODES[unit], "g")).toBe(Number(expected));
    },
  );
  test("an inch is 25.4 mm (UCUM 1.9)", () => {
    expect(cell("LENGTHIN", 1, "in", "mm")).toBe(25.4);
  });

  const assay = published<Table<{ mark: string; solderFree: string; withSolder: string }>>("assay-tolerance.json");
  test.each(assay.rows)(
    "$mark passes at $solderFree with 3 and at $withSolder with 7 (15 U.S.C. 295)",
    ({ mark, solderFree, withSolder }) => {
      // The table is rounded to 3 decimals: a thousandth above passes, a thousandth below fails.
      expect(cell("ASSAYPASSES", Number(solderFree) + 0.001, mark, 3)).toBe(true);
      expect(cell("ASSAYPASSES", Number(solderFree) - 0.001, mark, 3)).toBe(false);
      expect(cell("ASSAYPASSES", Number(withSolder) + 0.001, mark, 7)).toBe(true);
      expect(cell("ASSAYPASSES", Number(withSolder) - 0.001, mark, 7)).toBe(false);
    },
  );

  const floors = published<Table<{ fineness: string; mark: string }>>("mark-floor.json");
  test.each(floors.rows)("$fineness ‰ may be marked $mark (Tukes, national standards)", ({ fineness, mark }) => {
    expect(cell("STANDARDMARK", Number(fineness), [[375], [585], [750]])).toBe(Number(mark));
  });

  const coins = published<Table<{ grossGrams: string; mark: string; fineOunces: string }>>("coin-content.json");
  test.each(coins.rows)(
    "a coin of $grossGrams g at $mark holds $fineOunces fine ounces (31 U.S.C. 5112)",
    ({ grossGrams, mark, fineOunces }) => {
      const fine = cell("WEIGHTIN", cell("FINEGOLD", Number(grossGrams), mark), "g", "ozt");
      expect((fine as number).toFixed(4)).toBe(fineOunces);
    },
  );

  const alloys = published<{
    rows: { source: string; composition: Record<string, string>; density: string; tolerance: string }[];
    reject: { composition: Record<string, string> }[];
  }>("alloy-density.json");
  const columns = (composition: Record<string, string>) => [
    Object.keys(composition).map((metal) => [metal]),
    Object.values(composition).map((part) => [Number(part)]),
  ];
  test.each(alloys.rows)(
    "$composition has $density g/cm³ within $tolerance ($source)",
    ({ composition, density, tolerance }) => {
      const computed = cell("ALLOYDENSITY", ...columns(composition)) as number;
      expect(Math.abs(computed / Number(density) - 1)).toBeLessThanOrEqual(Number(tolerance));
    },
  );
  test("a misprinted alloy whose parts make 110 is refused (Fahlman, Table 3.4)", () => {
    const answer = cell("ALLOYDENSITY", ...columns(alloys.reject[0]?.composition ?? {}));
    expect(answer).toMatchObject({ code: "#VALUE!", message: expect.stringContaining("parts") });
  });

  const wastage = published<{ worked: Record<"content" | "share" | "onFinished" | "onCast", string> }>(
    "wastage-norms.json",
  ).worked;
  test("10 g at 2.5 % is 10.25 g on the finished and 10.2564 g on the cast weight (wastage norms, worked)", () => {
    expect(cell("CASTWEIGHT", Number(wastage.content), Number(wastage.share), "finished")).toBe(
      Number(wastage.onFinished),
    );
    expect((cell("CASTWEIGHT", Number(wastage.content), Number(wastage.share)) as number).toFixed(4)).toBe(
      wastage.onCast,
    );
  });

  test("wax of 5.5 g at ratio 13.5 takes 74.25 g of metal (caster's data, second hand)", () => {
    expect(cell("METALFROMWAX", 5.5, 1, 13.5)).toBe(74.25);
  });

  test("cost 100 at a markup of 25 % is 125, a margin of 20 % (cost accounting course notes)", () => {
    expect(cell("PRICEATMARKUP", 100, 0.25)).toBe(125);
    expect(cell("MARGIN", 100, 125)).toBe(0.2);
    expect(cell("PRICEATMARGIN", 100, 0.2)).toBe(125);
    expect((cell("MARKUP", 12, 20) as number).toFixed(4)).toBe("0.6667");
  });

  test("making at 0.87 + 0.45 + 0.36 against 1.75 bought, 120,000 units: make, 8,400 saved (OpenStax 10.3, as adapted)", () => {
    // Units as grams: 0.87 of material, 0.45 and 0.36 of work, all per unit; bought at 0.87 + 0.88.
    const [row] = cell("MAKEORBUY", 120000, 0.87, 0, 120000 * 0.81, 0, 0.88) as unknown[][];
    expect(row).toEqual([1.68, 1.75, 8400, "make"]);
  });

  test("METALRATE(2000, 18K) is 2000 x 0.75 / 31.1034768 = 48.22611985… (functions.md, by hand)", () => {
    expect((cell("METALRATE", 2000, "18K") as number).toFixed(8)).toBe("48.22611985");
  });
});

describe("a mark goes out into a cell and comes in again", () => {
  const karats = Array.from({ length: 48 }, (_, at) => (at + 1) / 2);
  const marks = [
    ...karats.flatMap((karat) => [`${karat}K`, `${karat} kt`, `${karat}/24`]),
    ...Array.from({ length: 976 }, (_, at) => at + 25),
    ...Array.from({ length: 976 }, (_, at) => `${at + 25}/1000`),
    "58.5%",
    0.585,
  ].map((mark) => [mark]);
  const out = call("FINENESS", marks) as number[][];

  test("every mark passes its own assay, in a column and one by one (an assay of n x 1000/24 is n/24)", () => {
    expect(call("ASSAYPASSES", out, marks)).toEqual(marks.map(() => [true]));
    for (const [at, [mark]] of marks.entries()) {
      if (at % 37 === 0 || at < 144) expect([mark, cell("ASSAYPASSES", out[at]?.[0], mark)]).toEqual([mark, true]);
    }
    // As text, and a hair below.
    expect(cell("ASSAYPASSES", "583.333333333333", "14kt")).toBe(true);
    expect(cell("ASSAYPASSES", 583.33333333333, "14kt")).toBe(false);
    expect(cell("STANDARDMARK", 583.333333333333, [[583.333333333333], [585]])).toBe(1000 * (14 / 24));
  });

  test("its fineness is as good as the mark in every other function", () => {
    // Below 1 karat a bare figure is read as karats.
    const from1 = marks.map((row, at) => [row, out[at] ?? []] as const).filter(([, [fineness = 0]]) => fineness > 24);
    const given = from1.map(([mark]) => mark);
    const again = from1.map(([, fineness]) => fineness);
    expect(call("KARAT", again)).toEqual(call("KARAT", given));
    expect(call("FINENESS", again)).toEqual(call("FINENESS", given));
    expect(call("METALRATE", [[4200]], again)).toEqual(call("METALRATE", [[4200]], given));
    expect(call("FINEGOLD", [[24]], again)).toEqual(call("FINEGOLD", [[24]], given));
  });
});

describe("common practice through the built functions.js (no published source)", () => {
  test("24 inches at 4 links an inch are 96 links, 192 g at 2 g a link", () => {
    expect(cell("LINKCOUNT", 24, 4)).toBe(96);
    expect(cell("CHAINWEIGHT", 96, 2)).toBe(192);
  });
  test("100 g at 25.00 and 1.50, labour 50, 2 g lost: 2,750.00 quick and 2,753.00 finished", () => {
    expect(cell("LANDEDCOST", 100, 25, 1.5, 50, 2, "grams", null, "quick")).toBe(2750);
    expect(cell("LANDEDPERGRAM", 100, 25, 1.5, 50, 2, "grams", null, "quick")).toBe(27.5);
    expect(cell("PREMIUM", 27.5, 25)).toBe(2.5);
    expect(cell("LANDEDCOST", 100, 25, 1.5, 50, 2, "grams")).toBe(2753);
    expect(cell("LANDEDPERGRAM", 100, 25, 1.5, 50, 2, "grams")).toBe(27.53);
  });
  test("20 g with 1 g lost: 605.00 and 30.25 a gram, quick", () => {
    expect(cell("LANDEDCOST", 20, 25, 1.5, 50, 1, "grams", null, "quick")).toBe(605);
    expect(cell("LANDEDPERGRAM", 20, 25, 1.5, 50, 1, "grams", null, "quick")).toBe(30.25);
  });
  test("against ready chain at 3.25 over metal, the first piece is made and the second bought", () => {
    const rows = cell("MAKEORBUY", [[100], [20]], 25, 1.5, 50, [[2], [1]], 3.25, "grams", null, "quick");
    expect(rows).toEqual([
      [27.5, 28.25, 75, "make"],
      [30.25, 28.25, -40, "buy"],
    ]);
  });
  test("an alloy of 600 stamped 585, fine gold at 100: 63.20 made, 61.75 bought, level at 680 g (hand arithmetic)", () => {
    const making = [100, 60, 1.5, 50, 2, 3.25, "grams", null, "quick"];
    expect(cell("MAKEORBUY", ...making, 58.5)).toEqual([[63.2, 61.75, -145, "buy"]]);
    expect(cell("MAKEORBUY", [[680], [null]], 60, 1.5, 50, [[2], [null]], 3.25, "grams", null, "quick", 58.5)).toEqual([
      [61.75, 61.75, 0, "buy"],
      ["", "", "", ""],
    ]);
    // One rate for both where none is given for what is bought.
    expect(cell("MAKEORBUY", ...making)).toEqual([[63.2, 63.25, 5, "make"]]);
    expect(cell("MAKEORBUY", ...making, 0)).toMatchObject({ message: expect.stringContaining("boughtRate: found 0") });
    expect(cell("CROSSOVERWEIGHT", 170, 1.5, 3.25, 1.5)).toBe(680);
    // The gold bought may be the dearer one.
    expect(cell("CROSSOVERWEIGHT", 170, 1.5, 3.25, -1.65)).toBe(50);
    expect(cell("CROSSOVERWEIGHT", 170, 1.5, 3.25)).toBe(170 / 1.75);
  });
  test("ten stones at 9 set for 1 each cost 100", () => {
    expect(cell("STONECOST", 10, 9, 1)).toBe(100);
  });
  test("a link at half scale weighs an eighth; a chain of the same length a quarter", () => {
    expect(cell("RESIZEDLINK", 2, 10, 5)).toBe(0.25);
    const half = cell("RESIZEDLINK", 2, 10, 5);
    expect(cell("CHAINWEIGHT", cell("LINKCOUNT", 24, 8), half)).toBe(192 / 4);
  });
});
