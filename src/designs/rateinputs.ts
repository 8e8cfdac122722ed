import { type ColumnRule, columnRule, isInside } from "../columns/cells";
import { decimalOfCell } from "../exact/decimal";
import type { NumberRule } from "../exact/numberrule";
import { Quotient, type Witness, witnessed } from "../exact/quotient";
import type { Rates } from "../rates/rates";

/** One of the rates as a column computes with it: its exact value, and the double that stands for it. */
export interface RateFigure {
  /** What its row is called. */
  readonly field: string;
  readonly value: Quotient;
  readonly double: number;
  readonly rule: ColumnRule;
}

/** Rates, their figures that columns compute with, and all else in them that costs and prices rest on, in one text. */
export interface RateFigures {
  readonly rates: Rates;
  readonly figures: readonly RateFigure[];
  readonly words: string;
}

/** Reads rates and keeps their figures apart: what is learned with them holds for other figures, but not for other words. */
export function rateFiguresOf(read: () => Rates): RateFigures {
  const figures: RateFigure[] = [];
  const listener: Witness = {
    ...DEAF,
    given(field, rule, value) {
      const figure = figureFor(field, rule, value);
      if (figure) figures.push(figure);
    },
  };
  const rates = witnessed(listener, read);
  return { rates, figures, words: wordsOf(rates, figures) };
}

/** With one more figure beside the rates, such as another spot. */
export function withFigure(made: RateFigures, field: string, rule: NumberRule, value: Quotient): RateFigures {
  const figure = figureFor(field, rule, value);
  if (!figure) return { ...made, words: `${made.words} ${field} ${value.over}/${value.under}` };
  return { ...made, figures: [...made.figures, figure] };
}

/** Undefined for one that no cell's double stands for. */
function figureFor(field: string, rule: NumberRule, value: Quotient): RateFigure | undefined {
  const double = value.toNumber();
  const asColumn = columnRule(rule);
  const stands = isInside(double, asColumn) && value.equals(Quotient.of(decimalOfCell(double)));
  return stands ? { field, value, double, rule: asColumn } : undefined;
}

const DEAF: Witness = { computed() {}, rounded() {}, compared() {}, read() {}, given() {}, givenWithin() {} };

/** Rates that neither a cost nor a price rests on are left out; a new one is not, until it is named here. */
function wordsOf(rates: Rates, figures: readonly RateFigure[]): string {
  const { workshop, workshopContact, spotAge, validity, nextNumber, taxName, shippingTaxed, deposit, ...rest } = rates;
  const { tolerance, ownGoldShare, ...costing } = rest;
  return JSON.stringify(costing, (_, value: unknown) => {
    if (!(value instanceof Quotient)) return value;
    const figure = figures.find((each) => each.value === value);
    return figure ? `#${figure.field}` : `${value.over}/${value.under}`;
  });
}
