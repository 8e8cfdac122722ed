import { CostingError, type CostingErrorCode, type Fault } from "../exact/errors";
import type { Quotient } from "../exact/quotient";
import type { Mark } from "../gold/mark";
import { isBlank } from "../reading/number";
import { wordsOf } from "../reading/words";
import type { Currency } from "../units/currency";
import type { Weight } from "../units/weight";
import { sameText } from "../weights/linkname";
import { MAKER_LABELS, type MakerKey, type MakerOffer, parseMakerOffer, readMakerMark } from "./makeroffer";

/** A row of a makers' price list, as its cells read. */
export interface MakerRow {
  /** The row number that the person sees on the sheet. */
  readonly row: number;
  readonly cells: Readonly<Partial<Record<MakerKey, unknown>>>;
}

/** A class of a price list, with its row. */
export interface PlacedOffer extends MakerOffer {
  readonly row: number;
}

/** A row that cannot be used, and why: a sentence that names the row. */
export interface MakerFault {
  readonly row: number;
  readonly maker: string;
  readonly code: CostingErrorCode;
  readonly sentence: string;
  /** The mark it is about; "every" where it is about all, or does not say. */
  readonly about: Mark | "every";
}

/** Makers' price lists as they were read. */
export interface PriceLists {
  readonly offers: readonly PlacedOffer[];
  readonly faults: readonly MakerFault[];
}

/** One maker's price list for one mark: classes by weight, the lightest first. */
export interface Seller {
  readonly maker: string;
  readonly classes: readonly MakerOffer[];
}

/**
 * Reads makers' price lists. Each row is a class of weight; blank rows are skipped. Two rows of one maker and mark that begin
 * at the same weight both get a fault: we cannot know which of them counts.
 */
export function readPriceLists(rows: readonly MakerRow[], currency: Currency): PriceLists {
  const offers: PlacedOffer[] = [];
  const faults: MakerFault[] = [];
  for (const { row, cells } of rows) {
    if (Object.values(cells).every(isBlank)) continue;
    const parsed = parseMakerOffer(cells, currency);
    if (parsed.ok) offers.push(Object.freeze({ ...parsed.value, row }));
    else faults.push(...parsed.faults.map((fault) => faultOfRow(row, cells, fault)));
  }
  const twice = offers.filter((offer) => offers.some((other) => other !== offer && isSameClass(offer, other)));
  return Object.freeze({
    offers: Object.freeze(offers.filter((offer) => !twice.includes(offer))),
    faults: Object.freeze([...faults, ...twice.map((offer) => overlap(offer, twice))].sort((a, b) => a.row - b.row)),
  });
}

/**
 * Who sells a mark, and at which surcharges. A maker's rows for the mark itself go before its rows for every mark. A maker with
 * a faulty row about the mark is left out: its other classes would also cover the weights of the class that cannot be read.
 */
export function sellersOf({ offers, faults }: PriceLists, mark: Mark): readonly Seller[] {
  const unsure = faultsAbout(faults, mark);
  const able = offers.filter(
    (offer) => isAbout(offer.mark, mark) && !unsure.some(({ maker }) => sameText(maker, offer.maker)),
  );
  const first = able.filter((offer, at) => able.findIndex(({ maker }) => sameText(maker, offer.maker)) === at);
  return first.map(({ maker }) => {
    const own = able.filter((offer) => sameText(offer.maker, maker));
    const exact = own.filter((offer) => offer.mark !== undefined);
    const classes = [...(exact.length > 0 ? exact : own)].sort((a, b) => a.from.grams.compare(b.from.grams));
    return Object.freeze({ maker, classes: Object.freeze(classes) });
  });
}

/** The faults that keep a maker from being compared for a mark. */
export function faultsAbout(faults: readonly MakerFault[], mark: Mark): readonly MakerFault[] {
  return faults.filter(({ about }) => about === "every" || about.share.equals(mark.share));
}

/** The class that a weight falls into: the last that begins at or below it; undefined below the first. */
export function classAt({ classes }: Seller, weight: Weight): MakerOffer | undefined {
  return classes.findLast(({ from }) => !from.grams.isGreaterThan(weight.grams));
}

/** The weights at which a class of any maker begins, lightest first, each once. */
export function classStarts(sellers: readonly Seller[]): readonly Quotient[] {
  const starts = sellers.flatMap(({ classes }) => classes.map(({ from }) => from.grams));
  return starts.sort((a, b) => a.compare(b)).filter((start, at, all) => !all[at - 1]?.equals(start));
}

function isAbout(own: Mark | undefined, mark: Mark): boolean {
  return own === undefined || own.share.equals(mark.share);
}

function isSameClass(a: MakerOffer, b: MakerOffer): boolean {
  const sameMark = a.mark && b.mark ? a.mark.share.equals(b.mark.share) : a.mark === b.mark;
  return sameMark && sameText(a.maker, b.maker) && a.from.grams.equals(b.from.grams);
}

function overlap(offer: PlacedOffer, all: readonly PlacedOffer[]): MakerFault {
  const others = all.filter((other) => other !== offer && isSameClass(offer, other)).map(({ row }) => row);
  const rows = others.length === 1 ? `row ${others[0]} does` : `rows ${others.join(", ")} do`;
  const said = `found ${offer.from.grams.value()}, where a class of this maker and mark begins that ${rows} too; give each class a weight of its own to begin at`;
  const { message } = new CostingError("outOfRange", MAKER_LABELS.from, said);
  return faultIn(offer.row, offer.maker, "outOfRange", message, offer.mark ?? "every");
}

function faultOfRow(row: number, cells: MakerRow["cells"], { code, sentence }: Fault): MakerFault {
  const maker = wordsOf(cells.maker);
  return faultIn(row, maker, code, sentence, aboutOf(cells.mark));
}

function aboutOf(cell: unknown): MakerFault["about"] {
  try {
    return readMakerMark(cell) ?? "every";
  } catch (error) {
    if (error instanceof CostingError) return "every";
    throw error;
  }
}

function faultIn(
  row: number,
  maker: string,
  code: CostingErrorCode,
  said: string,
  about: MakerFault["about"],
): MakerFault {
  const sentence = `Row ${row}${maker === "" ? "" : `, ${maker}`}: ${said}`;
  return Object.freeze({ row, maker, code, sentence, about });
}
