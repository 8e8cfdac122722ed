import { Quotient, sum } from "../exact/quotient";
import type { Colour } from "../gold/alloy";
import { addRates } from "../gold/goldrate";
import { showMark } from "../gold/mark";
import type { Order } from "../order/order";
import type { OrderLine } from "../order/orderline";
import type { StoneSet } from "../order/stones";
import type { Rates } from "../rates/rates";
import { type Plating, platingOf } from "../trade/plating";
import { STATED_DECIMALS } from "../trade/settling";
import { inLengthUnit } from "../units/length";
import { type Money, money, roundToCurrency } from "../units/money";
import { type CostSheet, forAll, taxFactor } from "./costsheet";

/** What a customer reads of one line. Holds no cost. */
export interface QuoteLine {
  readonly design: string;
  readonly kind: OrderLine["kind"];
  /** As struck: "14K", "585". */
  readonly mark: string;
  /** The colours of its links; an alloy of the workshop's own by its name. */
  readonly colours: readonly string[];
  readonly hollow: boolean;
  /** Undefined where it is not plated, and where nobody has named the metal: it is not said without. */
  readonly plating: Plating | undefined;
  /** The finished length, in its unit, to two decimals. */
  readonly length: string;
  readonly unit: string;
  /** The length that whole links really make, about, in that unit; undefined where that reads as the length asked for. */
  readonly reached: Quotient | undefined;
  readonly links: Quotient;
  /** Finished, of the gold alone, in grams: about, to one decimal; to a hundredth where the final weight settles the price. */
  readonly weight: Quotient;
  readonly clasp: OrderLine["clasp"]["kind"];
  readonly stones: Quotient;
  /** Carats of all of them where each is known, to two decimals; not where a stone's is only known as if it were a diamond. */
  readonly carats: Quotient | undefined;
  /** Whether a size says the carats of any of them: then they are about. */
  readonly caratsAbout: boolean;
  readonly stoneSizes: string;
  /** How many of what, such as "20 sapphire (2 mm round), 1 diamond"; a count alone where nothing more is said. */
  readonly stoneSets: string;
  readonly findings: string;
  readonly engraving: string;
  readonly quantity: Quotient;
  readonly price: Money;
  readonly amount: Money;
  /** What a gram more or less changes the price by, which stands before the discount; undefined where the price is fixed. */
  readonly perGram: Money | undefined;
}

/** A line as the customer reads it. Its amount is rounded once. */
export function quoteLine(sheet: CostSheet, order: Order, rates: Rates): QuoteLine {
  const { line } = sheet;
  return Object.freeze({
    design: line.design,
    kind: line.kind,
    mark: showMark(line.mark),
    colours: Object.freeze(line.linkGroups.map(({ colour }) => colourName(colour, line))),
    hollow: line.hollow,
    plating: platingOf(line),
    length: inLengthUnit(line.length, line.lengthUnit).rounded(2).toString(),
    unit: line.lengthUnit,
    reached: reachedOf(sheet),
    links: line.links,
    weight: Quotient.of(sheet.finishedWeight.grams.rounded(order.settledByWeight ? STATED_DECIMALS : 1)),
    clasp: line.clasp.kind,
    stones: sum(line.stones.map((set) => set.count)),
    carats: caratsOf(line.stones),
    caratsAbout: line.stones.some(({ caratFrom }) => caratFrom !== "scale"),
    stoneSizes: [...new Set(line.stones.map((set) => set.size).filter((size) => size !== ""))].join(", "),
    stoneSets: line.stones.map(stoneSetOf).join(", "),
    findings: line.findings.what,
    engraving: line.engraving,
    quantity: line.quantity,
    price: sheet.price,
    amount: roundToCurrency(forAll(sheet.price, line)),
    perGram: order.settledByWeight ? settlingRate(sheet, rates) : undefined,
  });
}

/** To a tenth of an inch or a centimetre, a whole millimetre; as finely as the length asked for where that is finer. */
function reachedOf({ line, reached }: CostSheet): Quotient | undefined {
  const asked = inLengthUnit(line.length, line.lengthUnit).rounded(2);
  const decimals = Math.max(asked.decimalPlaces(), line.lengthUnit === "mm" ? 0 : 1);
  const about = inLengthUnit(reached, line.lengthUnit).rounded(decimals);
  return about.equals(asked) ? undefined : Quotient.of(about);
}

export function colourName(colour: Colour, line: OrderLine): string {
  return colour === "own" ? line.colourName : colour;
}

/**
 * What a gram more or less changes the price of a piece by, before the discount: the metal rate at the quote's spot, and the
 * premium where the price goes by one; with the tax where prices hold it. Rounded to the currency. Whoever knows spot and mark
 * can work it out, so it tells no cost.
 */
export function settlingRate({ metalRate, pricing }: CostSheet, rates: Rates): Money {
  const rate = pricing.by === "premium" ? addRates(metalRate, pricing.rate) : metalRate;
  return roundToCurrency(money(rate.perGram.times(taxFactor(rates)), rate.currency));
}

function caratsOf(stones: readonly StoneSet[]): Quotient | undefined {
  const all = stones.map(({ carat, caratFrom, count }) =>
    caratFrom === "a diamond's size" ? undefined : carat?.times(count),
  );
  const known = all.filter((carat) => carat !== undefined);
  if (known.length === 0 || known.length < all.length) return undefined;
  return Quotient.of(sum(known).rounded(2));
}

function stoneSetOf({ count, kind, size }: StoneSet): string {
  return [count.value().toString(), kind, size === "" ? "" : `(${size})`].filter((part) => part !== "").join(" ");
}
