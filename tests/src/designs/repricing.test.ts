import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { rateFiguresOf } from "../../../src/designs/rateinputs";
import { joinRepricings, reprice, spotMove, spotsAround } from "../../../src/designs/repricing";
import { Quotient } from "../../../src/exact/quotient";
import { LINE_LABELS, type LineKey } from "../../../src/order/fields";
import { money } from "../../../src/units/money";
import { priceLines } from "../designlists";
import { monthlyMoves } from "../goldmonths";
import { type Record_, ratesOf } from "../orders";
import { workCatalogue } from "../workorders";

const HEADER = ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link"];
/** 100 links of 1 g: at 25.00 a gram, casting fee 1.50, labour 50 and 2 g lost (quick basis) 2,750 landed. */
const CURB = ["Curb", 250, "yellow", 25, 4, 1];
/** The same of fine gold, at 100.00 a gram. */
const FINE = ["Fine", 1000, "yellow", 25, 4, 1];
const text = (value: Quotient | undefined) => value?.value().toString();
const usd = (amount: string) => money(Quotient.of(amount), "USD");
/** Fine gold at 100 a gram. */
const figures = (changes: Record_ = {}) => rateFiguresOf(() => ratesOf(changes));
const RATES = figures({ spot: "3110.34768" });

describe("spot from 100 to 110 a gram of fine gold (hand arithmetic)", () => {
  // Curb: metal rate 27.50: 2750 + 150 + 55 + 50 = 3,005 landed, x 1.3 = 3,906.50, up to 3,910; before 3,575.
  // Fine: before 10000 + 150 + 200 + 50 = 10,400 x 1.3 = 13,520; after 11000 + 150 + 220 + 50 = 11,420 x 1.3 = 14,846, up to 14,850.
  const repricing = reprice([HEADER, CURB, FINE], RATES, usd("3421.382448"));

  test("every line before and after", () => {
    expect(
      repricing.lines.map(({ design, before, after, change }) => [
        design,
        text(before.amount),
        text(after.amount),
        text(change.amount),
      ]),
    ).toEqual([
      ["Curb", "3575", "3910", "335"],
      ["Fine", "13520", "14850", "1330"],
    ]);
  });

  test("the largest moves, and what a price kept would leave", () => {
    expect([repricing.largestUp?.design, repricing.largestDown]).toEqual(["Fine", undefined]);
    // (3575 - 3005) / 3575, and 3005 / 0.9 = 3,338.89 is still below 3,575.
    expect(repricing.lines[0]?.marginKept?.toNumber()).toBeCloseTo(570 / 3575, 12);
    expect(repricing.belowFloor).toEqual([]);
  });

  test("a jump to 120 puts the fine chain below its floor: 12,440 / 0.9 = 13,822 against 13,520", () => {
    const jump = reprice([HEADER, CURB, FINE], RATES, usd("3732.417216"));
    // Curb: 3000 + 150 + 60 + 50 = 3,260 / 0.9 = 3,622 against 3,575. Fine: 12000 + 150 + 240 + 50 = 12,440.
    expect(jump.belowFloor.map(({ design }) => design)).toEqual(["Curb", "Fine"]);
  });
});

test("a move smaller than the price step moves nothing: at 100.1 a gram 2,752.55 x 1.3 = 3,578.3 goes up, at 99.99 not below 3,575", () => {
  // Curb at 100.1: 2502.5 + 150 + 50.05 + 50 = 2,752.55; at 99.99: 2499.75 + 150 + 49.995 + 50 = 2,749.745 x 1.3 = 3,574.67.
  expect(text(reprice([HEADER, CURB], RATES, usd("3113.45802768")).lines[0]?.after.amount)).toBe("3580");
  expect(reprice([HEADER, CURB], RATES, usd("3110.036645232")).moved).toEqual([]);
});

test("rows that cannot be priced are told, empty rows are passed over", () => {
  const repricing = reprice([HEADER, ["Odd", "25K", "yellow", 25, 4, 1], [], CURB], RATES, usd("3000"));
  expect(repricing.refused).toMatchObject([
    { row: 0, design: "Odd", sentence: expect.stringContaining('found "25K"') },
  ]);
  expect(repricing.lines.map(({ row }) => row)).toEqual([2]);
});

test("the largest monthly moves since 1968, up and down, move every line their way (gold-monthly.csv)", () => {
  const moves = monthlyMoves().sort((a, b) => a.ratio.compare(b.ratio));
  for (const [move, sign] of [
    [moves.at(-1), 1],
    [moves[0], -1],
  ] as const) {
    if (!move) throw new Error("The table holds no months");
    const [before, after] = [move.before.toString(), move.after.toString()];
    const { lines, moved } = reprice([HEADER, CURB, FINE], figures({ spot: before }), usd(after));
    expect(moved).toHaveLength(lines.length);
    for (const line of lines) expect(Math.sign(line.change.amount.toNumber())).toBe(sign);
    expect(spotMove(usd(before), usd(after)).toNumber()).toBeCloseTo(move.ratio.sub(1).valueOf(), 9);
  }
});

test("spots around 2,000 in steps of 5 % (hand arithmetic)", () => {
  expect(spotsAround(usd("2000"), Quotient.of("0.05"), 2).map(({ amount }) => text(amount))).toEqual([
    "1800",
    "1900",
    "2000",
    "2100",
    "2200",
  ]);
});

test("a catalogue in parts, one after the other, is the whole catalogue", () => {
  const rows = [CURB, ["Odd", "25K", "yellow", 25, 4, 1], [], FINE, CURB];
  const spot = usd("3421.382448");
  const part = (some: typeof rows) => ({ rows: some.length, repricing: reprice([HEADER, ...some], RATES, spot) });
  const joined = joinRepricings([part(rows.slice(0, 2)), part(rows.slice(2, 4)), part(rows.slice(4))]);
  // Rows 0, 3 and 4 are priced; row 1 bears no mark.
  expect(joined.lines.map(({ row, design }) => [row, design])).toEqual([
    [0, "Curb"],
    [3, "Fine"],
    [4, "Curb"],
  ]);
  expect(joined.refused.map(({ row }) => row)).toEqual([1]);
  expect(joined.moved).toHaveLength(3);
  expect([joined.largestUp?.row, joined.largestDown]).toEqual([3, undefined]);
});

test("before and after are what quotients give row by row, in random catalogues at random spots, also spots of endless digits", () => {
  fc.assert(
    fc.property(
      workCatalogue,
      fc.integer({ min: 800, max: 9000 }),
      fc.boolean(),
      ({ rates, lines }, dollars, perGram) => {
        const keys = Object.keys(lines[0] ?? {}) as LineKey[];
        const cells = [keys.map((key) => LINE_LABELS[key]), ...lines.map((line) => keys.map((key) => line[key]))];
        const { currency, ...workshop } = ratesOf(rates);
        // A gram of 14K so dear: 24/14 of it an ounce, of no decimal.
        const amount = Quotient.of(dollars).dividedBy(Quotient.of(perGram ? "0.7" : "1"));
        const spot = money(perGram ? amount.times(Quotient.of("1.2")) : amount, currency);
        const [now, later] = [
          { currency, ...workshop },
          { currency, ...workshop, spot },
        ];
        const before = priceLines(cells, now);
        const after = priceLines(cells, later);
        const repricing = reprice(cells, figures(rates), spot);
        expect(repricing.lines.map(({ row }) => row)).toEqual(before.map((_, row) => row));
        for (const line of repricing.lines) {
          const [old, fresh] = [before[line.row], after[line.row]];
          if (old?.kind !== "priced" || fresh?.kind !== "priced") throw new Error("not priced");
          expect(line.before.amount.equals(old.sheet.price.amount)).toBe(true);
          expect(line.after.amount.equals(fresh.sheet.price.amount)).toBe(true);
          const kept = old.sheet.netPrice.amount;
          expect(line.belowFloor).toBe(kept.isLessThan(fresh.sheet.floor.amount));
          const left = kept.minus(fresh.sheet.landed.amount).dividedBy(kept).toNumber();
          expect(Math.abs((line.marginKept?.toNumber() ?? Number.NaN) / left - 1)).toBeLessThan(1e-14);
        }
      },
    ),
    { numRuns: 25, endOnFailure: true },
  );
});

test("a price of more digits than a cell has is the exact one", () => {
  const dear = ["Dear", 1000, "yellow", 200, 20, 999];
  const rates = figures({ spot: "900000000.07", currency: "KWD", priceStep: "0" });
  for (const _ of ["learning", "known"]) {
    const { lines } = reprice(
      [HEADER, dear, [...dear.slice(0, 5), 998]],
      rates,
      money(Quotient.of("910000000.03"), "KWD"),
    );
    const priced = priceLines([HEADER, dear, [...dear.slice(0, 5), 998]], rates.rates);
    priced.forEach((line, row) => {
      if (line.kind !== "priced") throw new Error("not priced");
      expect(line.sheet.price.amount.toNumber()).toBeGreaterThan(1e12);
      expect(text(lines[row]?.before.amount)).toBe(text(line.sheet.price.amount));
    });
  }
});
