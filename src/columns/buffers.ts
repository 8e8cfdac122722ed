import type { Quotient } from "../exact/quotient";
import { type Line, lineOf } from "./block";
import { type Grains, grainOf } from "./denominators";
import { lowOf, type Pairs } from "./pairmath";

/** A step's rows as pairs and, where ties are to be proved, their grains. */
export interface PairRows extends Pairs {
  readonly grains: Grains | undefined;
}

const doubles: Line[] = [];
const pairs: { readonly bare: PairRows; readonly proving: PairRows }[] = [];
const constants = new Map<string, PairRows>();

/** The rows that a plan's step is written to, anew by each run. */
export function doubleRows(step: number): Line {
  const line = doubles[step] ?? lineOf();
  doubles[step] = line;
  return line;
}

export function pairRows(step: number, proves: boolean): PairRows {
  const rows = pairs[step] ?? newPairRows();
  pairs[step] = rows;
  return proves ? rows.proving : rows.bare;
}

function newPairRows(): { readonly bare: PairRows; readonly proving: PairRows } {
  const pair = { high: lineOf(), low: lineOf() };
  return { bare: { ...pair, grains: undefined }, proving: { ...pair, grains: { power: lineOf(), count: lineOf() } } };
}

/** The rows of a constant, kept: formulas have few. */
export function constantRows(value: Quotient): PairRows {
  const { over, under } = value;
  const name = `${over}/${under}`;
  const known = constants.get(name);
  if (known) return known;
  const high = value.toNumber();
  const { power, count } = grainOf(value);
  const rows = {
    high: lineOf(high),
    low: lineOf(lowOf(value, high)),
    grains: { power: lineOf(power), count: lineOf(count) },
  };
  constants.set(name, rows);
  return rows;
}
