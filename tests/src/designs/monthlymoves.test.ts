import Fraction from "fraction.js";
import { expect, test } from "vitest";
import { LARGEST_MONTHLY_MOVES, spotMovedAs } from "../../../src/designs/monthlymoves";
import { Quotient } from "../../../src/exact/quotient";
import { money } from "../../../src/units/money";
import { monthlyMoves } from "../goldmonths";

const price = (text: string) => new Fraction(text).toFraction();

test("no month since 1968 moved further up or down (gold-monthly.csv, every month compared in exact fractions)", () => {
  const moves = monthlyMoves();
  // January 1968 to June 2026 are 58 years and six months: 702 months, 701 moves.
  expect(moves).toHaveLength(701);
  const sorted = [...moves].sort((a, b) => a.ratio.compare(b.ratio));
  for (const [found, ours] of [
    [sorted.at(-1), LARGEST_MONTHLY_MOVES.up],
    [sorted[0], LARGEST_MONTHLY_MOVES.down],
  ] as const) {
    expect([found?.from, found?.to]).toEqual([ours.from, ours.to]);
    expect([found?.before.toFraction(), found?.after.toFraction()]).toEqual([price(ours.before), price(ours.after)]);
  }
});

test("a spot of 4,550.00 goes to 6,753.10 or, of 3,990.00, to 3,324.00 (hand arithmetic: ten times 455, six times 665)", () => {
  const amount = (spot: string, move: "up" | "down") =>
    spotMovedAs(money(Quotient.of(spot), "USD"), LARGEST_MONTHLY_MOVES[move])
      .amount.value()
      .toString();
  expect([amount("4550", "up"), amount("3990", "down")]).toEqual(["6753.1", "3324"]);
});
