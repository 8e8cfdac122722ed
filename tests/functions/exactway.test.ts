import { describe, expect, test } from "vitest";
import { type CellError, call, cell } from "./built";
import { chance, decimal, isNearest, longText, scaled } from "./rows";

/*
 * A number cell and the same decimal as a long text are one value to a function, but only the number is computed in columns:
 * the text goes the exact way, over decimals of 60 digits. Both must give the same bits.
 */

type Make = (random: () => number) => unknown;

const pick =
  (...cells: readonly unknown[]): Make =>
  (random) =>
    cells[Math.floor(random() * cells.length)];

/** Figures as sheets have them: round ones, doubles with all digits, a sum a hair off, and now and then an extreme. */
const figure =
  (least: number, most: number): Make =>
  (random) => {
    const kind = random();
    if (kind < 0.45) return decimal(random, least, most, 2);
    if (kind < 0.6) return decimal(random, least, most, 0);
    if (kind < 0.9) return least + random() * (most - least);
    if (kind < 0.97) return decimal(random, least, most, 1) + 0.1 + 0.2;
    return pick(0, 1e-9, 1e-7, 5e-324, 1e14, 3e15, 1e22, -1, 2 ** 53, 0.1 + 0.2)(random);
  };
const whole =
  (most: number): Make =>
  (random) =>
    random() < 0.95 ? 1 + Math.floor(random() * most) : pick(0, 1.5, 2.0000000000000004, 1e16)(random);
const share: Make = (random) =>
  random() < 0.9
    ? decimal(random, 0, 0.6, 3)
    : pick(0, 0.5, 1, 0.9999, 1 - 2 ** -53, 0.999999999999999, random(), -0.2)(random);
const markOf = pick(
  "14K",
  "18K",
  "585",
  "58.5%",
  "9/24",
  585,
  750,
  916.6,
  999.9,
  14,
  22.5,
  0.75,
  0.5833333333333333,
  1,
  25,
  24,
  1000,
  1001,
);

/** For each function its arguments: makers of cells, an optional one blank in some calls. */
const FUNCTIONS: Readonly<Record<string, readonly Make[]>> = {
  STANDARDMARK: [figure(300, 1000)],
  ASSAYPASSES: [
    pick(583, 583.3333333333334, 585, 750, 582, 578.333333333333, 916, 747),
    markOf,
    pick(null, 0, 3, 7, 5),
  ],
  FINEGOLD: [figure(0.1, 300), markOf],
  METALRATE: [figure(1500, 4500), markOf, pick(null, 2, 4)],
  MELTVALUE: [figure(0.1, 300), markOf, figure(1500, 4500), pick(null, 0, 2)],
  WEIGHTIN: [figure(-5, 300), pick("g", "dwt", "ozt", "gr", "ct"), pick("g", "oz", "ozt", "tola", "kg")],
  LENGTHIN: [figure(-5, 300), pick("mm", "cm", "in", "ft"), pick("mm", "in", "m", "ft")],
  LINKCOUNT: [
    figure(6, 30),
    pick(4, 4.5, 2, 3.3),
    pick(null, 0.5, 1, 0.25),
    pick(null, "up", "down"),
    pick(null, 1, 2),
  ],
  CHAINLENGTH: [whole(300), figure(2, 6), pick(null, 0.5, 1.37)],
  CHAINWEIGHT: [whole(300), figure(0.1, 4), pick(null, 2.5, 1.37)],
  RESIZEDLINK: [figure(0.1, 4), figure(3, 12), figure(3, 12)],
  RECASTWEIGHT: [figure(0.1, 300), figure(10, 20), figure(10, 20)],
  METALFROMWAX: [figure(0.1, 30), figure(0.9, 1.2), figure(10, 20)],
  CASTWEIGHT: [figure(0.1, 300), share, pick(null, "cast", "finished", "grams")],
  FINISHEDWEIGHT: [figure(0.1, 300), share, pick(null, "cast", "finished", "grams")],
  LANDEDCOST: [
    figure(1, 300),
    figure(20, 90),
    figure(0, 5),
    figure(0, 200),
    share,
    pick(null, "finished", "grams"),
    pick(null, 12.5, -3),
    pick(null, "quick"),
    pick(null, 2),
  ],
  LANDEDPERGRAM: [
    figure(1, 300),
    figure(20, 90),
    figure(0, 5),
    figure(0, 200),
    share,
    pick(null, "grams"),
    pick(null, -30, 5),
    pick(null, "quick"),
    pick(null, 2, 3),
  ],
  STONECOST: [whole(40), figure(0, 90), figure(0, 5), pick(null, 0.05, 0.1), pick(null, 2)],
  CROSSOVERWEIGHT: [figure(0, 300), figure(0, 5), figure(0, 5)],
  MAKEORBUY: [
    figure(1, 300),
    figure(20, 90),
    figure(0, 5),
    figure(0, 200),
    share,
    figure(0, 9),
    pick(null, "grams"),
    pick(null, 5),
    pick(null, "quick"),
  ],
  PATTERNLINKS: [
    whole(300),
    pick(null, "YYW", "YR", "ywg", "Y"),
    pick("yellow", "W", "own"),
    pick(null, "closed and open in turn", "all open"),
    pick(null, "closed", "open"),
  ],
  LABOURCOST: [whole(300), figure(1, 300), pick(null, 50), pick(null, 0.35), pick(null, 0.5), pick(null, 60, 120)],
  CASTINGCOST: [figure(1, 300), figure(0, 5), pick(null, 25, 300), pick(null, 1, 3, 7)],
  CHARGEDWEIGHT: [figure(1, 300), share, pick(null, "finished", "grams"), pick(null, "quick")],
  LOSTWEIGHT: [figure(1, 300), share, pick(null, "finished", "grams"), pick(null, "quick")],
  POLISHEDLINKS: [figure(1, 300), figure(1, 300), pick(null, 95, 60), pick(null, 91, 60), pick(null, 92, 95, 60)],
  STONESTOBUY: [whole(40), pick(null, 3, 25), pick(null, 0.05, 0.1)],
  SELLINGPRICE: [
    figure(1, 900),
    pick(null, 12.5, 30),
    pick("markup", "margin", "premium", "own price"),
    share,
    figure(1, 300),
    figure(20, 90),
    pick(null, 0.08, 0.21),
    pick(null, "in the price"),
    pick(null, 5, 0.05, 10),
    pick(null, 2),
  ],
  PARTATPREMIUM: [pick(null, 0, 2.5, 0.37), figure(20, 90), figure(0, 30), pick(null, 30, 500)],
  NETPRICE: [figure(1, 900), pick(null, 0.08), pick(null, "in the price"), pick(null, 0.1), pick(null, 2)],
  SALESTAX: [figure(1, 900), pick(null, 0.08), pick(null, "in the price"), pick(null, 2)],
  LINEAMOUNT: [figure(1, 900), pick(null, 3), pick(null, 2)],
  DISCOUNT: [figure(1, 900), pick(null, 0.125), pick(null, 2)],
  OVERHEAD: [figure(1, 900), pick(null, 0.06)],
  LINKSWITHSTONES: [pick(10, 49, 91), pick(null, 7, 3)],
  GOLDUSED: [figure(0, 90), figure(0, 90)],
  GOLDCREDIT: [figure(0, 90), figure(900, 5000), pick(null, 0.95), pick(null, 2)],
  GOLDONSCALE: [figure(20, 90), pick(null, 1.25, "0.3"), pick(null, 2)],
  SETTLEDPRICE: [figure(500, 900), figure(20, 90), pick(20), figure(18.5, 21.5), pick(null, 0.05), pick(null, 2)],
  PIECESCOST: [figure(100, 900), pick(null, 20), pick(null, 0, 150), pick(null, 1, 4)],
  CASHNEEDED: [figure(0, 900), figure(0, 900), pick(null, 300)],
  MOSTPIECES: [figure(0, 9000), figure(0, 900), figure(100, 900), pick(null, 20), pick(null, 150), pick(null, 300)],
  FEWESTPIECES: [figure(0, 900), figure(0, 90), figure(100, 900), pick(null, 20), pick(null, 150), pick(null, 300)],
  DEPOSITNEEDED: [figure(0, 900), figure(100, 900), pick(null, 20), pick(null, 150), figure(500, 2000), pick(null, 3)],
  DEPOSITCOVERS: [figure(100, 900), pick(null, 20), pick(null, "with the deposit")],
  PAIDBACKWITH: [figure(0, 900), figure(-50, 300)],
  MARKUP: [figure(1, 900), figure(1, 900)],
  MARGIN: [figure(1, 900), figure(1, 900)],
  PRICEATMARKUP: [figure(1, 900), share, pick(null, 5, 0.05, 10), pick(null, 2)],
  PRICEATMARGIN: [figure(1, 900), share, pick(null, 5, 0.05, 10), pick(null, 2)],
  PRICEATPREMIUM: [figure(1, 300), figure(20, 90), figure(-5, 30), pick(null, 5, 10), pick(null, 2)],
  ASKINGPERGRAM: [figure(1, 9000), figure(1, 300), pick(null, "g", "dwt", "ozt")],
  PREMIUM: [figure(1, 90), figure(1, 90)],
  ASKINGCHECK: [figure(1, 9000), figure(1, 300), markOf, figure(1500, 4500), pick(null, 30.5, 41.37)],
  SPOTLIMIT: [figure(1000, 9000), figure(1, 100), markOf, figure(0, 900), pick(null, 0.1, 0.25)],
};

/** Zero has no 15 digits, and a text of the smallest doubles would be too long to be a number: those stay as they are. */
const textOf = (value: number) => (Math.abs(value) > 1e-200 ? longText(value) : value);

const ROWS = 600;
/** A fault, by what Excel shows and the argument it names: its sentence quotes the cell. */
const told = (answer: unknown) =>
  typeof answer === "object" && answer !== null
    ? `${(answer as CellError).code} ${(answer as CellError).message.split(":")[0]}`
    : answer;

describe("in columns and by the exact way, bit for bit", () => {
  test.each(Object.entries(FUNCTIONS))("%s over a range", (id, makers) => {
    const random = chance(id.length * 7919 + id.charCodeAt(2));
    const ranges = makers.map((make) => Array.from({ length: ROWS }, () => [make(random)]));
    const texts = ranges.map((range) => range.map(([each]) => [typeof each === "number" ? textOf(each) : each]));
    const columns = call(id, ...ranges) as unknown[][];
    const exact = call(id, ...texts) as unknown[][];
    expect(columns.length).toBe(ROWS);
    const wrong = columns.flatMap((row, at) =>
      row.some((each, column) => !Object.is(told(each), told(exact[at]?.[column])))
        ? [{ row: ranges.map((range) => range[at]?.[0]), columns: row.map(told), exact: exact[at]?.map(told) }]
        : [],
    );
    expect(wrong.slice(0, 2)).toEqual([]);
    expect(columns.flat().some((each) => typeof each !== "object")).toBe(true);
  });

  test.each(Object.entries(FUNCTIONS))("%s of single cells", (id, makers) => {
    const random = chance(id.length * 31 + id.charCodeAt(1));
    for (let turn = 0; turn < 60; turn += 1) {
      const cells = makers.map((make) => make(random));
      const texts = cells.map((each) => (typeof each === "number" ? textOf(each) : each));
      const [ours, exact] = [cells, texts].map((args) => [cell(id, ...args)].flat(2).map(told));
      expect(ours, JSON.stringify(cells)).toEqual(exact);
    }
  });
});

test("FINENESS and KARAT of a karat are the doubles nearest to n x 1000 / 24 and n", () => {
  const karats = Array.from({ length: 92 }, (_, quarter) => 1.25 + quarter / 4).filter((karat) => karat <= 24);
  const fineness = call(
    "FINENESS",
    karats.map((karat) => [karat]),
  ) as number[][];
  const back = call(
    "KARAT",
    karats.map((karat) => [`${karat}K`]),
  ) as number[][];
  karats.forEach((karat, at) => {
    const { digits, places } = scaled(karat);
    expect(isNearest(fineness[at]?.[0] ?? 0, digits * 1000n, 24n * 10n ** BigInt(places))).toBe(true);
    expect(back[at]?.[0]).toBe(karat);
  });
});

test("ranges of several columns are computed cell by cell, in their places", () => {
  const weights = [
    [1.5, 2.5, "ten"],
    [4, null, 6.25],
  ];
  const marks = [
    ["18K", 750, "18K"],
    ["18K", null, "14/24"],
  ];
  // 1.5 x 0.75, 2.5 x 0.75, 4 x 0.75; 6.25 x 14 / 24 = 3.6458333…
  const answer = call("FINEGOLD", weights, marks) as unknown[][];
  expect(answer[0]?.slice(0, 2)).toEqual([1.125, 1.875]);
  expect(told(answer[0]?.[2])).toBe("#VALUE! weight");
  expect(answer[1]).toEqual([3, "", 87.5 / 24]);
});
