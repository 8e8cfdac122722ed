import { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import type { STONE_PRICED, STONE_SHAPES } from "../reading/orderwords";
import { accepted, faultOf, type Parsed, parseForm, refused } from "../reading/parse";
import type { Currency } from "../units/currency";
import { type Money, money, timesMoney } from "../units/money";
import { formOf, keysOf } from "./fieldkinds";
import { LINE_FIELDS, LINE_LABELS, type LineKey, STONE_KEYS } from "./fields";

/** Where stones go on one piece, and how many. */
export interface StonePlace {
  readonly where: "links" | "clasp";
  /** Which links have them, as the setter reads it: "all links", "every 3rd link", "12 links, 2 each"; empty on the clasp. */
  readonly which: string;
  /** How many links have them; none on the clasp. */
  readonly links: Quotient;
  /** On one piece. */
  readonly count: Quotient;
  /** Every how many links have how many stones each; undefined where the count stands whatever the links. */
  readonly follows: { readonly every: Quotient; readonly each: Quotient } | undefined;
}

/** One kind of stones as an order gives them. */
export interface StoneParts extends Size {
  /** What stone, in the person's own words; empty where nothing is said. */
  readonly kind: string;
  /** Of one stone, as weighed. */
  readonly carat: Quotient | undefined;
  /** Of one stone or one carat; undefined for nothing. */
  readonly price: Money | undefined;
  readonly priced: (typeof STONE_PRICED)[number];
  /** Of one stone; undefined for that of Rates. */
  readonly settingFee: Money | undefined;
}

/** Stones alike on one piece, set in links or in the clasp. */
export interface StoneSet extends StonePlace {
  /** What stone, in the person's own words; empty where nothing is said. */
  readonly kind: string;
  /** As the setter reads it: "2 mm round", "3 x 1.5 mm"; empty where no size is given. */
  readonly size: string;
  /** Of one stone; undefined where neither size nor weight is given. */
  readonly carat: Quotient | undefined;
  /** Where the carat comes from; what a size says is about. */
  readonly caratFrom: CaratFrom;
  /** Of one stone. */
  readonly price: Money;
  readonly settingFee: Money;
  /** Share of the stones broken in setting. */
  readonly breakage: Quotient;
}

/**
 * The scale; the size, with the stone's specific gravity; or the size as if it were a diamond, though the stone is named as
 * another one and its specific gravity is not given.
 */
export type CaratFrom = "scale" | "size" | "a diamond's size";

/** Specific gravity of diamond, which the formulas below hold. Source: from memory, of gemmological tables. */
export const DIAMOND_GRAVITY = "3.52";

/**
 * Carat of a round brilliant diamond: diameter² x depth x 0.0061, in millimetres.
 * Source: gemmology teaching formulas (published stone weights: 6.08 mm, 3.63 mm deep, 0.82 ct).
 */
export function roundCarats(diameter: Quotient, depth: Quotient): Quotient {
  return diameter.times(diameter).times(depth).times(Quotient.of("0.0061"));
}

/** Carat of a rectangular step-cut diamond: length x width x depth x 0.00915, in millimetres. Source: as for round ones. */
export function rectangularCarats(length: Quotient, width: Quotient, depth: Quotient): Quotient {
  return length.times(width).times(depth).times(Quotient.of("0.00915"));
}

/** Depth where none is given, as a share of the diameter or the width. Common practice. */
const USUAL_DEPTH = { round: Quotient.of("0.6"), rectangular: Quotient.of("0.65") } as const;

type StoneKey = keyof (typeof STONE_KEYS)["links"];

/** Reads kind, size, weight, price and setting of one set of stones. */
export function readStones(
  where: StonePlace["where"],
  record: Readonly<Record<string, unknown>>,
  currency: Currency,
): Parsed<StoneParts> {
  const keys: Readonly<Record<StoneKey, LineKey>> = STONE_KEYS[where];
  const own = Object.fromEntries(Object.entries(keys).map(([key, lineKey]) => [key, record[lineKey]]));
  const read = parseForm(FIELDS[where], own);
  if (!read.ok) {
    return refused(read.faults.map((fault) => ({ ...fault, field: keys[fault.field as StoneKey] ?? fault.field })));
  }
  const { price, fee, ...stones } = read.value;
  const cash = (amount: Quotient | undefined) => amount && money(amount, currency);
  return accepted({ ...stones, price: cash(price), settingFee: cash(fee) });
}

/** A set of stones from its parts, or what it lacks. @param breakage share of the stones broken in setting */
export function makeStones(place: StonePlace, parts: StoneParts, breakage: Quotient, rates: Rates): Parsed<StoneSet> {
  const keys: Readonly<Record<StoneKey, LineKey>> = STONE_KEYS[place.where];
  const blank = (key: StoneKey, said: string) =>
    refused([faultOf(keys[key], LINE_LABELS[keys[key]], "blank", `found nothing ${said}`)]);
  const { shape, length, width, priced } = parts;
  if (shape === "rectangular" && (length === undefined) !== (width === undefined)) {
    const lacking = length === undefined ? "length" : "width";
    return blank(lacking, "beside the other side of the stone; give millimetres, such as 2");
  }
  const computed = caratsBySize(parts);
  const carat = parts.carat ?? computed;
  const asked = parts.price ?? money(Quotient.zero, rates.currency);
  if (priced === "a carat" && !asked.amount.isZero() && carat === undefined) {
    return blank("carat", "for stones priced by the carat; give the carat of one, or its size in millimetres");
  }
  return accepted({
    ...place,
    kind: parts.kind,
    size: sizeOf(parts),
    carat,
    caratFrom: caratFrom(parts),
    price: priced === "a carat" ? timesMoney(asked, carat ?? Quotient.zero) : asked,
    settingFee: parts.settingFee ?? rates.settingFee,
    breakage,
  });
}

/** How large a stone is, in millimetres, and its specific gravity; undefined for what is not known. */
interface Size {
  readonly gravity: Quotient | undefined;
  readonly shape: (typeof STONE_SHAPES)[number];
  readonly diameter: Quotient | undefined;
  readonly length: Quotient | undefined;
  readonly width: Quotient | undefined;
  readonly depth: Quotient | undefined;
}

/** A stone of another specific gravity weighs so much more or less than a diamond of its size. */
function caratsBySize(size: Size): Quotient | undefined {
  const diamond = diamondCarats(size);
  return size.gravity ? diamond?.times(size.gravity).dividedBy(Quotient.of(DIAMOND_GRAVITY)) : diamond;
}

function diamondCarats({ shape, diameter, length, width, depth }: Size): Quotient | undefined {
  if (shape === "round") return diameter && roundCarats(diameter, depth ?? diameter.times(USUAL_DEPTH.round));
  return length && width && rectangularCarats(length, width, depth ?? width.times(USUAL_DEPTH.rectangular));
}

/** What a diamond is called, also in other languages. Common practice. */
const DIAMONDS = /^$|diam|^brill?iants?$/i;

function caratFrom({
  carat,
  gravity,
  kind,
}: {
  readonly carat: Quotient | undefined;
  readonly gravity: Quotient | undefined;
  readonly kind: string;
}): CaratFrom {
  if (carat) return "scale";
  return gravity || DIAMONDS.test(kind) ? "size" : "a diamond's size";
}

function sizeOf({ shape, diameter, length, width }: Size): string {
  if (shape === "round") return diameter ? `${diameter.inWords()} mm round` : "";
  return length && width ? `${length.inWords()} x ${width.inWords()} mm` : "";
}

/** The fields of the stones in one place, by what they say. */
function fieldsOf(where: StonePlace["where"]) {
  const keys = STONE_KEYS[where];
  const stones = {
    kind: LINE_FIELDS[keys.kind],
    shape: LINE_FIELDS[keys.shape],
    diameter: LINE_FIELDS[keys.diameter],
    length: LINE_FIELDS[keys.length],
    width: LINE_FIELDS[keys.width],
    depth: LINE_FIELDS[keys.depth],
    gravity: LINE_FIELDS[keys.gravity],
    carat: LINE_FIELDS[keys.carat],
    price: LINE_FIELDS[keys.price],
    priced: LINE_FIELDS[keys.priced],
    fee: LINE_FIELDS[keys.fee],
  };
  return formOf(stones, ...keysOf(stones));
}

const FIELDS = { links: fieldsOf("links"), clasp: fieldsOf("clasp") };
