import { describe, expect, test } from "vitest";
import { call, cell } from "./built";
import { chance, decimal, longText } from "./rows";

/** Invented price lists, as Makers[#All] gives them. */
const HEADER = ["Maker", "Mark", "From g", "Surcharge per g", "Currency", "Minimum order", "Minimum in"];
const MAKERS = [
  HEADER,
  ["Fennick", "14K", 5, 5.25, "USD", 100, "g"],
  ["Fennick", "14K", 40, 3.1, "", 100, "g"],
  ["Orrin", "all", "", 4.4, "", 500, "usd"],
  ["", null, "", "", "", "", ""],
  ["Orrin", 750, 2, 3.9, "", "", ""],
];
const best = (weights: unknown, mark: unknown, makers: unknown = MAKERS) =>
  call("BESTMAKER", weights, mark, makers) as unknown[][];
const refused = (code: string, words: string) => ({ code, message: expect.stringContaining(words) });

describe("the maker who asks least", () => {
  test("by class of weight and mark, a row a weight (read off the lists)", () => {
    expect(best([[3], [5], [39.99], [40], [""], [1000]], [["14K"]])).toEqual([
      ["Orrin", 4.4],
      ["Orrin", 4.4],
      ["Orrin", 4.4],
      // Fennick sells 100 g or more.
      ["Orrin", 4.4],
      ["", ""],
      ["Fennick", 3.1],
    ]);
    // A list that gives 14K by its fineness is asked by 14K, and a mark is named as it was given.
    const inFigures = [HEADER.slice(0, 4), ["Fennick", 583.333333333333, 5, 3.1]];
    expect(best([[5]], [["14kt"]], inFigures)).toEqual([["Fennick", 3.1]]);
    expect(cell("BESTMAKER", 4, "14kt", inFigures)).toEqual(
      refused("#N/A", "weight: found 4; nobody on the price lists sells 14kt of that weight"),
    );
    // 585 is not 14K; Orrin's rows for 750 go before its row for all, and begin at 2 g.
    expect(best([[40], [40], [1.5]], [["585"], ["18K"], [750]])).toEqual([
      ["Orrin", 4.4],
      ["Orrin", 3.9],
      Array(2).fill(refused("#N/A", "weight: found 1.5; nobody on the price lists sells 750 of that weight")),
    ]);
  });

  test("its surcharge goes on to MAKEORBUY: 27.50 made, 25 + 3.10 bought (common practice, hand arithmetic)", () => {
    const [[, surcharge] = []] = cell("BESTMAKER", 100, "14K", MAKERS) as unknown[][];
    expect(cell("MAKEORBUY", 100, 25, 1.5, 50, 2, surcharge, "grams", null, "quick")).toEqual([
      [27.5, 28.1, 60, "make"],
    ]);
  });

  test("headers in another order, among others of the person's own; rows without a minimum", () => {
    const own = [
      ["Shelf", "Surcharge per g", "mark", "MAKER"],
      ["B2", 2.5, "14 kt", "Thackley"],
    ];
    expect(best([[7]], [["14K"]], own)).toEqual([["Thackley", 2.5]]);
  });

  test("over 600 weights it is what reading the lists row by row says, from number cells and from long texts", () => {
    const random = chance(7);
    const rows = Array.from({ length: 12 }, (_, at) => [
      `Maker ${at % 4}`,
      "14K",
      decimal(random, 0, 150, 1),
      decimal(random, 0, 9, 2),
    ]);
    const starts = new Set<string>();
    const lists = rows.filter(([maker, , from]) => !starts.has(`${maker} ${from}`) && starts.add(`${maker} ${from}`));
    const weights = Array.from({ length: 600 }, () => decimal(random, 0.5, 200, 1));
    const expected = weights.map((weight) => {
      let least: unknown[] | undefined;
      for (const maker of [...new Set(lists.map(([name]) => name))]) {
        const [own] = lists
          .filter(([name, , from]) => name === maker && Number(from) <= weight)
          .sort((a, b) => Number(b[2]) - Number(a[2]));
        if (own && (!least || Number(own[3]) < Number(least[1]))) least = [own[0], own[3]];
      }
      return least ?? "#N/A";
    });
    const told = (answer: readonly unknown[][]) =>
      answer.map((row) => (typeof row[0] === "object" ? (row[0] as { code: string }).code : row));
    const cells = [HEADER.slice(0, 4), ...lists];
    expect(
      told(
        best(
          weights.map((weight) => [weight]),
          [["14K"]],
          cells,
        ),
      ),
    ).toEqual(expected);
    expect(
      told(
        best(
          weights.map((weight) => [longText(weight)]),
          [["14K"]],
          cells,
        ),
      ),
    ).toEqual(expected);
  });
});

describe("bad input", () => {
  const withRow = (...row: unknown[]) => [...MAKERS, row];
  test("weight 0, no mark, no headers", () => {
    expect(cell("BESTMAKER", 0, "14K", MAKERS)).toEqual(refused("#VALUE!", "weight: found 0"));
    expect(cell("BESTMAKER", 5, null, MAKERS)).toEqual(refused("#VALUE!", "mark: found nothing"));
    expect(cell("BESTMAKER", 5, "14K", MAKERS.slice(1))).toEqual(
      refused("#VALUE!", "makers: found no first row with the headers Maker, Mark, Surcharge per g"),
    );
    expect(cell("BESTMAKER", 5, "14K", null)).toEqual(refused("#VALUE!", "makers: found no first row"));
  });

  test.each([
    [["Thackley", "14K", 0, ""], "makers: Row 6, Thackley: Surcharge per g: found nothing"],
    [["Thackley", "", 0, 3], "makers: Row 6, Thackley: Mark: found nothing"],
    [
      ["Fennick", "14K", 40, 3],
      "makers: Row 2, Fennick: From g: found the class from 40 g for 14K in row 2 and in row 6; keep one of them",
    ],
    [["Thackley", "14K", 0, 3, "", 5, "boxes"], 'makers: Row 6, Thackley: Minimum in: found "boxes"'],
  ] as const)("%j names its row, for the mark it is about", (row, words) => {
    const fault = refused("#VALUE!", words);
    expect(cell("BESTMAKER", 50, "14K", withRow(...row))).toEqual(fault);
    expect(best([[50], [60]], [["14K"], ["18K"]], withRow(...row))[0]?.[0]).toEqual(fault);
  });

  test("prices in two currencies are refused, unless the one to compare in is given", () => {
    const two = withRow("Thackley", "18K", 0, 3, "EUR");
    expect(cell("BESTMAKER", 50, "14K", two)).toEqual(
      refused("#VALUE!", "makers: found prices in USD (row 1), EUR (row 6)"),
    );
    expect(cell("BESTMAKER", 100, "14K", two, "USD")).toEqual([["Fennick", 3.1]]);
    expect(cell("BESTMAKER", 100, "14K", two, "EUR")).toEqual(
      refused("#VALUE!", "makers: Row 1, Fennick: Currency: found USD"),
    );
    expect(call("BESTMAKER", [[100], [150]], [["14K"], ["18K"]], two, [["usd"]])).toEqual([
      ["Fennick", 3.1],
      Array(2).fill(refused("#VALUE!", "makers: Row 6, Thackley: Currency: found EUR")),
    ]);
    expect(cell("BESTMAKER", 100, "14K", MAKERS, "dollars")).toEqual(refused("#VALUE!", 'currency: found "dollars"'));
  });

  test("a row at fault about another mark is no fault of this one", () => {
    expect(best([[50]], [["14K"]], withRow("Thackley", "18K", 0, ""))).toEqual([["Orrin", 4.4]]);
  });
});
