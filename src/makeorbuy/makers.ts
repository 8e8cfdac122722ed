import { CostingError, type CostingErrorCode, type Fault } from "../exact/errors";
import type { Quotient } from "../exact/quotient";
import { type Mark, nameMark } from "../gold/mark";
import { type Doubled, doubledWords, doublesOf } from "../reading/doubles";
import { isBlank } from "../reading/number";
import { wordsOf } from "../reading/words";
import type { Currency } from "../units/currency";
import type { Weight } from "../units/weight";
import { sameText, textKey } from "../weights/linkname";
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
  const doubles = doublesOf(
    offers.map((offer) => ({ key: classKey(offer), what: className(offer), place: `row ${offer.row}` })),
  );
  const doubledOf = (offer: PlacedOffer) => doubles.find(({ key }) => key === classKey(offer));
  const overlaps = offers.flatMap((offer) => {
    const doubled = doubledOf(offer);
    return doubled ? [overlap(offer, doubled)] : [];
  });
  return Object.freeze({
    offers: Object.freeze(offers.filter((offer) => doubledOf(offer) === undefined)),
    faults: Object.freeze([...faults, ...overlaps].sort((a, b) => a.row - b.row)),
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

/** Equal for two classes of one maker and mark that begin at the same weight. Marks are equal where their gold is. */
function classKey({ maker, mark, from }: MakerOffer): string {
  const gold = mark ? mark.share.value().toSignificantDigits(30).toString() : "";
  return JSON.stringify([textKey(maker), gold, from.grams.value().toString()]);
}

function className({ mark, from }: MakerOffer): string {
  return `the class from ${from.grams.value()} g for ${mark ? nameMark(mark) : "every mark"}`;
}

function overlap(offer: PlacedOffer, doubled: Doubled): MakerFault {
  const { message } = new CostingError("outOfRange", MAKER_LABELS.from, `found ${doubledWords(doubled)}`);
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
