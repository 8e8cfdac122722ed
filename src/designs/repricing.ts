import type { Value } from "../columns/answers";
import type { Cells } from "../columns/cells";
import { decimalOfCell } from "../exact/decimal";
import { CostingError } from "../exact/errors";
import { SPOT_RULE } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import type { OrderLine } from "../order/orderline";
import { type CostSheet, costLine } from "../quote/costsheet";
import { wordsOf } from "../reading/words";
import { margin } from "../trade/price";
import type { Currency } from "../units/currency";
import { type Money, money, subtractMoney } from "../units/money";
import { designColumns, lineOfRow } from "./pricelist";
import { type RateFigures, withFigure } from "./rateinputs";
import { computeLines } from "./tableformulas";

/** What another spot does to one design of a catalogue. */
export interface RepricedLine {
  /** Its row under the headers, counted from 0. */
  readonly row: number;
  readonly design: string;
  readonly before: Money;
  readonly after: Money;
  readonly change: Money;
  /** Kept at the price before, the share of it that is still profit, before tax; undefined where that price is nothing. */
  readonly marginKept: Quotient | undefined;
  /** Kept at the price before, it brings less than landed cost at the least margin. */
  readonly belowFloor: boolean;
}

interface Refused {
  readonly row: number;
  readonly design: string;
  readonly sentence: string;
}

/** What another spot does to a whole catalogue. */
export interface Repricing {
  readonly lines: readonly RepricedLine[];
  /** Rows that cannot be priced, with what is wrong. */
  readonly refused: readonly Refused[];
  /** Whose price changes: by a whole price step or more. */
  readonly moved: readonly RepricedLine[];
  readonly largestUp: RepricedLine | undefined;
  readonly largestDown: RepricedLine | undefined;
  readonly belowFloor: readonly RepricedLine[];
}

/**
 * Prices a table of designs (see readDesigns) at the rates' spot and at another, in columns. Exact: prices are rounded as on a
 * quote, and of a price's fifteen digits a double loses none; a kept margin is right to fifteen digits.
 */
export function reprice(cells: Cells, rates: RateFigures, spot: Money): Repricing {
  const [header = [], ...rows] = cells;
  const columns = designColumns(header);
  const nameAt = columns.find(({ key }) => key === "design")?.place ?? 0;
  const later = { ...rates.rates, spot };
  const formula = {
    name: "repricing",
    of: (line: OrderLine) => twice(costLine(line, rates.rates, rates.rates), costLine(line, later, later)),
  };
  const lines: (RepricedLine | undefined)[] = [];
  const beyond: number[] = [];
  const refused: (Refused | undefined)[] = [];
  const design = (row: number) => wordsOf(rows[row]?.[nameAt]);
  const put = (row: number, [before, after, kept, below]: readonly Value[]) => {
    if (!(before instanceof Quotient) || !(after instanceof Quotient)) return;
    lines[row] = repriced(row, design(row), before, after, kept, below === true, spot.currency);
  };
  computeLines(header, rows, withFigure(rates, "Spot after", SPOT_RULE, spot.amount), formula, {
    take(first, { at, count }, open, outputs) {
      for (let k = 0; k < count; k += 1) {
        if (open[k] !== 0) continue;
        const row = first + (at?.[k] ?? k);
        const cells = outputs.map((output) => (typeof output === "object" ? (output[k] ?? 0) : output));
        if (cells.some((cell) => typeof cell === "number" && cell >= LARGEST_PRICE)) beyond.push(row);
        else
          put(
            row,
            cells.map((cell) => (typeof cell === "number" ? Quotient.of(decimalOfCell(cell)) : cell)),
          );
      }
    },
    exact(row, answer) {
      if (answer instanceof CostingError)
        refused[row] = Object.freeze({ row, design: design(row), sentence: answer.message });
      else put(row, answer);
    },
  });
  for (const row of beyond) put(row, formula.of(lineOfRow(columns, rows[row] ?? [], rates.rates)));
  const given = <T>(list: readonly (T | undefined)[]) => list.filter((each) => each !== undefined);
  return repricingOf(given(lines), given(refused));
}

/** From here on a price of three decimals has more digits than a cell. */
const LARGEST_PRICE = 1e12;

/** Price before and after, and what is left of the first at the costs after: its margin, and whether it is below the floor. */
function twice(before: CostSheet, after: CostSheet): readonly Value[] {
  const kept = before.netPrice.amount;
  return [
    before.price.amount,
    after.price.amount,
    kept.isPositive() ? margin(after.landed.amount, kept) : "",
    kept.isLessThan(after.floor.amount),
  ];
}

/** Repricings of one catalogue's parts, each part so many rows, as if they had been one. */
export function joinRepricings(parts: readonly { readonly rows: number; readonly repricing: Repricing }[]): Repricing {
  let first = 0;
  const placed = parts.map(({ rows, repricing }) => {
    const at = first;
    first += rows;
    const moved = <T extends { readonly row: number }>(line: T): T => Object.freeze({ ...line, row: line.row + at });
    return { lines: repricing.lines.map(moved), refused: repricing.refused.map(moved) };
  });
  return repricingOf(
    placed.flatMap(({ lines }) => lines),
    placed.flatMap(({ refused }) => refused),
  );
}

function repricingOf(lines: readonly RepricedLine[], refused: readonly Refused[]): Repricing {
  const moved = lines.filter(({ change }) => !change.amount.isZero());
  return Object.freeze({
    lines: Object.freeze(lines),
    refused: Object.freeze(refused),
    moved: Object.freeze(moved),
    largestUp: largest(moved, (change) => change),
    largestDown: largest(moved, (change) => Quotient.zero.minus(change)),
    belowFloor: Object.freeze(lines.filter((line) => line.belowFloor)),
  });
}

function repriced(
  row: number,
  design: string,
  before: Quotient,
  after: Quotient,
  kept: Value | undefined,
  belowFloor: boolean,
  currency: Currency,
): RepricedLine {
  return Object.freeze({
    row,
    design,
    before: money(before, currency),
    after: money(after, currency),
    change: money(after.minus(before), currency),
    marginKept: kept instanceof Quotient ? kept : undefined,
    belowFloor,
  });
}

function largest(lines: readonly RepricedLine[], size: (change: Quotient) => Quotient): RepricedLine | undefined {
  return lines.reduce<RepricedLine | undefined>((most, line) => {
    const least = most ? size(most.change.amount) : Quotient.zero;
    return size(line.change.amount).isGreaterThan(least) ? line : most;
  }, undefined);
}

/** The share by which a spot differs from the one before. @param before above zero */
export function spotMove(before: Money, after: Money): Quotient {
  return subtractMoney(after, before).amount.dividedBy(before.amount);
}

/** The spots of a sensitivity table: so many steps of a share to either side, lowest first. @param step share below 1 / steps */
export function spotsAround(spot: Money, step: Quotient, steps: number): readonly Money[] {
  return Array.from({ length: 2 * steps + 1 }, (_, index) =>
    money(spot.amount.times(Quotient.one.plus(step.times(Quotient.of(index - steps)))), spot.currency),
  );
}
