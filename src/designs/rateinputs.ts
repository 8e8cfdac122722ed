import { type ColumnRule, columnRule, isInside } from "../columns/cells";
import { decimalOfCell } from "../exact/decimal";
import type { NumberRule } from "../exact/numberrule";
import { Quotient, type Witness, witnessed } from "../exact/quotient";
import type { Rates } from "../rates/rates";

/** One of the rates that columns compute with: its exact value, and the double that stands for it. */
export interface RateFigure {
  /** The name of its row. */
  readonly field: string;
  readonly value: Quotient;
  readonly double: number;
  readonly rule: ColumnRule;
}

/** Rates, those of them that columns compute with, and in one text all else that costs and prices rest on. */
export interface RateFigures {
  readonly rates: Rates;
  readonly figures: readonly RateFigure[];
  readonly words: string;
}

/** Reads rates and tells their figures apart. What columns learn with them holds for other figures of the same fields, not for other words. */
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

/** The same with one more figure beside the rates, such as another spot. */
export function withFigure(made: RateFigures, field: string, rule: NumberRule, value: Quotient): RateFigures {
  const figure = figureFor(field, rule, value);
  if (!figure) return { ...made, words: `${made.words} ${field} ${value.over}/${value.under}` };
  return { ...made, figures: [...made.figures, figure] };
}

/** Undefined for a value that no double stands for, such as one of too many digits. */
function figureFor(field: string, rule: NumberRule, value: Quotient): RateFigure | undefined {
  const double = value.toNumber();
  const asColumn = columnRule(rule);
  const stands = isInside(double, asColumn) && value.equals(Quotient.of(decimalOfCell(double)));
  return stands ? { field, value, double, rule: asColumn } : undefined;
}

const DEAF: Witness = { computed() {}, rounded() {}, compared() {}, read() {}, given() {}, givenWithin() {} };

/** Leaves out rates that no cost and no price rests on. A new rate is kept until it is named here. */
function wordsOf(rates: Rates, figures: readonly RateFigure[]): string {
  const {
    workshop,
    workshopContact,
    spotReadOn,
    spotAge,
    validity,
    nextNumber,
    taxName,
    shippingTaxed,
    deposit,
    ...rest
  } = rates;
  const { tolerance, ownGoldShare, platingMetal, ...costing } = rest;
  return JSON.stringify(costing, (_, value: unknown) => {
    if (!(value instanceof Quotient)) return value;
    const figure = figures.find((each) => each.value === value);
    return figure ? `#${figure.field}` : `${value.over}/${value.under}`;
  });
}
