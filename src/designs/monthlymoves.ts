import { Quotient } from "../exact/quotient";
import { type Money, money } from "../units/money";

/** The gold price of one month and of the next, as averages of each, in USD per troy ounce. */
export interface MonthlyMove {
  /** ISO 8601, such as "1979-12". */
  readonly from: string;
  readonly to: string;
  readonly before: string;
  readonly after: string;
}

/**
 * The largest moves of the gold price from one month to the next since January 1968, up to June 2026. They are of monthly averages: single days went further. Source: datasets/gold-prices, monthly.csv (ODC-PDDL-1.0).
 */
export const LARGEST_MONTHLY_MOVES = {
  up: { from: "1979-12", to: "1980-01", before: "455.00", after: "675.31" },
  down: { from: "1980-02", to: "1980-03", before: "665.00", after: "554.00" },
} as const satisfies Record<string, MonthlyMove>;

/** What a spot comes to if it moves as gold did then; exact. */
export function spotMovedAs(spot: Money, { before, after }: MonthlyMove): Money {
  return money(spot.amount.times(Quotient.of(after)).dividedBy(Quotient.of(before)), spot.currency);
}
