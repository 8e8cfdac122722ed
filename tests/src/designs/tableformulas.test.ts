import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Output, Value } from "../../../src/columns/answers";
import type { Rows } from "../../../src/columns/lines";
import { figureOf, PRICE_COLUMN_KEYS } from "../../../src/designs/pricelist";
import { rateFiguresOf } from "../../../src/designs/rateinputs";
import { priceInColumns } from "../../../src/designs/tableformulas";
import type { LineTaker } from "../../../src/designs/tablerunner";
import { CostingError } from "../../../src/exact/errors";
import { Quotient } from "../../../src/exact/quotient";
import { LINE_LABELS, type LineKey } from "../../../src/order/fields";
import { isNearest } from "../../functions/rows";
import { priceLines } from "../designlists";
import { type Record_, ratesOf } from "../orders";
import { workCatalogue } from "../workorders";

const ASKED = PRICE_COLUMN_KEYS.filter((column) => column !== "design");

/** What columns give, row by row, and which rows were computed exactly. */
class Taken implements LineTaker {
  readonly rows: (readonly (number | string | boolean)[] | CostingError)[] = [];
  readonly exactly: number[] = [];

  take(first: number, { at, count }: Rows, open: Uint8Array, outputs: readonly Output[]): void {
    for (let k = 0; k < count; k += 1) {
      if (open[k] !== 0) continue;
      this.rows[first + (at?.[k] ?? k)] = outputs.map((each) => (typeof each === "object" ? (each[k] ?? 0) : each));
    }
  }

  exact(row: number, answer: readonly Value[] | CostingError): void {
    this.exactly.push(row);
    this.rows[row] =
      answer instanceof CostingError
        ? answer
        : answer.map((value) => (value instanceof Quotient ? value.toNumber() : value));
  }
}

function inColumns(header: readonly unknown[], rows: readonly (readonly unknown[])[], rates: Record_ = {}): Taken {
  const taken = new Taken();
  priceInColumns(
    header,
    rows,
    rateFiguresOf(() => ratesOf(rates)),
    ASKED,
    taken,
  );
  return taken;
}

/** The same row by row, in quotients of 60 digits: the nearest doubles, or the fault's sentence. */
function oneByOne(header: readonly unknown[], rows: readonly (readonly unknown[])[], rates: Record_ = {}) {
  return priceLines([header, ...rows], ratesOf(rates)).map((line) => {
    if (line.kind === "empty") return [];
    if (line.kind === "refused") return line.error.message;
    return ASKED.map((column) => (figureOf(line, column) as Quotient | undefined)?.toNumber() ?? "");
  });
}

const said = (row: Taken["rows"][number] | undefined) => (row instanceof CostingError ? row.message : row);

/** Lines as a table, its figures as numbers in every second row. */
function tableOf(lines: readonly Record_[]): readonly (readonly unknown[])[] {
  const keys = Object.keys(lines[0] ?? {}) as LineKey[];
  const cellOf = (value: unknown, row: number) =>
    row % 2 === 0 && typeof value === "string" && /^[\d.]+$/.test(value) ? Number(value) : value;
  return [
    keys.map((key) => LINE_LABELS[key]),
    ...lines.map((line, row) => keys.map((key) => (key === "mark" ? line[key] : cellOf(line[key], row)))),
  ];
}

describe("random catalogues of every kind of line", () => {
  test("landed cost and price are the nearest doubles of exact rationals (fraction.js), and all columns those of quotients", () => {
    let rows = 0;
    let exactly = 0;
    fc.assert(
      fc.property(workCatalogue, ({ rates, lines, expected }) => {
        const [header = [], ...cells] = tableOf(lines);
        const taken = inColumns(header, cells, rates);
        rows += cells.length;
        exactly += taken.exactly.length;
        const exact = oneByOne(header, cells, rates);
        expected.forEach(({ landed, price }, row) => {
          const answer = said(taken.rows[row]);
          expect(answer).toEqual(exact[row]);
          const [landedCell, priceCell] = [answer?.[ASKED.indexOf("landed")], answer?.[ASKED.indexOf("price")]];
          expect(isNearest(Number(landedCell), landed.n, landed.d)).toBe(true);
          expect(isNearest(Number(priceCell), price.n, price.d)).toBe(true);
        });
      }),
      { numRuns: 40, endOnFailure: true },
    );
    expect(exactly / rows).toBeLessThan(0.5);
  });
});

const HEADER = ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link"];
const curb = (length: unknown, weight: unknown = 2, mark: unknown = "14K") => [
  "Curb",
  mark,
  "yellow",
  length,
  4,
  weight,
];

describe("rows of a table", () => {
  test("that go one way are computed exactly once, at another spot not even that", () => {
    const rows = Array.from({ length: 500 }, (_, n) => curb(16 + (n % 60) / 4, 1 + n / 100, "22K"));
    expect(inColumns(HEADER, rows).exactly.length).toBeLessThan(5);
    const later = inColumns(HEADER, rows, { spot: "3200.15" });
    expect(later.exactly).toEqual([]);
    expect(later.rows.map(said)).toEqual(oneByOne(HEADER, rows, { spot: "3200.15" }));
  });

  test("with a fault are told by its sentence, empty ones stay empty, others are priced", () => {
    const rows = [
      curb(24),
      curb("two feet"),
      [],
      curb(24, 0),
      curb(24, -2),
      curb(24, 2, "25K"),
      ["", "", "", "", "", "", "a remark"],
      curb(200_000),
      curb(24, "2.5"),
      curb("24.0", " 2 "),
      curb(24, 1e-9),
      curb(24, true),
      curb(24, 1000.5),
      curb(24),
    ];
    expect(inColumns(HEADER, rows).rows.map(said)).toEqual(oneByOne(HEADER, rows));
    // And again, when ways are known.
    expect(inColumns(HEADER, rows).rows.map(said)).toEqual(oneByOne(HEADER, rows));
  });

  test("a figure outside its rule is refused beside others inside it, whole or not", () => {
    const header = [...HEADER, "Quantity", "This line's price by", "This line's figure", "Stone breakage"];
    const rows = [
      [...curb(24), 1, "margin", 0.4, 0.02],
      [...curb(24), 2.5, "margin", 0.4, 0.02],
      [...curb(24), 1001, "margin", 0.4, 0.02],
      [...curb(24), 1, "margin", 1, 0.02],
      [...curb(24), 1, "margin", 0.999, 0],
      [...curb(24), 0, "margin", 0.4, 0.02],
      [...curb(24), 1, "markup", 1, 0.02],
      [...curb(24), 1, "own price", 1234.565, 0.02],
      [...curb(24), 1, "own price", 0, 0.02],
      [...curb(24), "", "", "", ""],
      [...curb(24), 1, "margin", "40 %", 0.02],
    ];
    for (const _ of ["learning", "known"])
      expect(inColumns(header, rows).rows.map(said)).toEqual(oneByOne(header, rows));
  });

  test("in other units are changed first, each row in its own length unit", () => {
    const header = ["Weight of one link (dwt)", "Design", "Karat", "Color", "Length", "Length unit", "Links per cm"];
    const rows = Array.from({ length: 40 }, (_, n) => [
      1 + n / 8,
      `Design ${n}`,
      n % 3 === 0 ? "585" : 18,
      "rose",
      n % 2 === 0 ? 18 + n / 10 : 45 + n,
      n % 2 === 0 ? "in" : "cm",
      1.5,
    ]);
    expect(inColumns(header, rows).rows.map(said)).toEqual(oneByOne(header, rows));
  });
});

test("designs called by a number are in columns too", () => {
  const rows = Array.from({ length: 200 }, (_, n) => [1000 + n, ...curb(16 + n / 10, 2, "21K").slice(1)]);
  const { rows: taken, exactly } = inColumns(HEADER, rows);
  expect(taken.map(said)).toEqual(oneByOne(HEADER, rows));
  expect(exactly.length).toBeLessThan(5);
});

test("rates in words of another kind are another table: grams lost, quick costs, no plating, tax in the price", () => {
  const rows = Array.from({ length: 30 }, (_, n) => curb(20 + n / 2, 1.5 + n / 7));
  for (const changes of [
    {},
    { lossBasis: "finished", loss: "0.03" },
    { costBasis: "finished" },
    { taxIs: "in the price", tax: "0.19", currency: "EUR" },
    { priceBy: "premium", markup: "", premium: "12.5" },
    { currency: "JPY", priceStep: "0" },
    { plating: "12" },
    { spot: "3110.347680000000001" },
    { spot: "3110.347680000000002" },
  ])
    expect(inColumns(HEADER, rows, changes).rows.map(said)).toEqual(oneByOne(HEADER, rows, changes));
});

test("a rate that no price rests on, given or left out, leaves every price as it is", () => {
  const rows = Array.from({ length: 30 }, (_, n) => curb(20 + n / 2, 1.5 + n / 7));
  for (const changes of [{ spotAge: "24" }, { spotAge: "" }, { spotAge: "24", deposit: "" }, { nextNumber: "7" }])
    expect(inColumns(HEADER, rows, changes).rows.map(said)).toEqual(oneByOne(HEADER, rows, changes));
});
