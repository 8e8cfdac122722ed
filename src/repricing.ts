import { type Money, money, subtractMoney } from "./money";
import { margin } from "./price";
import { type PricedLine, priceDesign, type ReadDesign, readDesigns } from "./pricelist";
import { Quotient } from "./quotient";
import type { Rates } from "./rates";

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

/** What another spot does to a whole catalogue. */
export interface Repricing {
  readonly lines: readonly RepricedLine[];
  /** Rows that cannot be priced, with what is wrong. */
  readonly refused: readonly { readonly row: number; readonly design: string; readonly sentence: string }[];
  /** Whose price changes: by a whole price step or more. */
  readonly moved: readonly RepricedLine[];
  readonly largestUp: RepricedLine | undefined;
  readonly largestDown: RepricedLine | undefined;
  readonly belowFloor: readonly RepricedLine[];
}

/** Prices a table of designs (see priceLines) at the rates' spot and at another. Exact; prices are rounded as on a quote. */
export function reprice(cells: readonly (readonly unknown[])[], rates: Rates, spot: Money): Repricing {
  return repriceDesigns(readDesigns(cells, rates), rates, spot);
}

/** The same of designs that are read already. */
export function repriceDesigns(designs: readonly ReadDesign[], rates: Rates, spot: Money): Repricing {
  const later = { ...rates, spot };
  const lines: RepricedLine[] = [];
  const refused: Repricing["refused"][number][] = [];
  designs.forEach((design, row) => {
    const before = priceDesign(design, rates);
    const after = priceDesign(design, later);
    if (before.kind === "priced" && after.kind === "priced") lines.push(repriced(row, before, after));
    else if (before.kind === "refused")
      refused.push(Object.freeze({ row, design: before.design, sentence: before.error.message }));
  });
  return repricingOf(lines, refused);
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

function repricingOf(lines: readonly RepricedLine[], refused: Repricing["refused"]): Repricing {
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

type Priced = Extract<PricedLine, { kind: "priced" }>;

function repriced(row: number, { design, sheet }: Priced, { sheet: now }: Priced): RepricedLine {
  const kept = sheet.netPrice.amount;
  return Object.freeze({
    row,
    design,
    before: sheet.price,
    after: now.price,
    change: subtractMoney(now.price, sheet.price),
    marginKept: kept.isPositive() ? margin(now.landed.amount, kept) : undefined,
    belowFloor: kept.isLessThan(now.floor.amount),
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
