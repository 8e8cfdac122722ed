import { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import type { STONE_ORIGINS, STONE_PRICED } from "../reading/orderwords";
import { accepted, faultOf, type Parsed, parseForm, refused } from "../reading/parse";
import { caratsBySize, type StoneCut } from "../trade/stonecarats";
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
  readonly origin: (typeof STONE_ORIGINS)[number];
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
  readonly origin: (typeof STONE_ORIGINS)[number];
  readonly cut: StoneCut;
  /** Its diameter, or length and width, in millimetres; none where no size is given. */
  readonly sides: readonly Quotient[];
  /** As the setter reads it: "2 mm round", "3 x 1.5 mm"; empty where no size is given. */
  readonly size: string;
  /** Of one stone; undefined where neither size nor weight is given. */
  readonly carat: Quotient | undefined;
  /** What its size says, also where it was weighed; undefined where the size says nothing. */
  readonly caratBySize: Quotient | undefined;
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

/** Specific gravity of diamond. Source: published stone carats. */
export const DIAMOND_GRAVITY = "3.52";

/** Depth where none is given, as a share of the diameter or the width. Common practice; of other cuts there is none. */
const USUAL_DEPTH: Readonly<Partial<Record<StoneCut, Quotient>>> = {
  round: Quotient.of("0.6"),
  rectangular: Quotient.of("0.65"),
  baguette: Quotient.of("0.65"),
};

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
  if (shape !== "round" && (length === undefined) !== (width === undefined)) {
    const lacking = length === undefined ? "length" : "width";
    return blank(lacking, "beside the other side of the stone; give millimetres, such as 2");
  }
  const bySize = caratsOf(parts);
  const carat = parts.carat ?? bySize;
  const asked = parts.price ?? money(Quotient.zero, rates.currency);
  if (priced === "a carat" && !asked.amount.isZero() && carat === undefined) {
    return blank("carat", "for stones priced by the carat; give the carat of one, or its size in millimetres");
  }
  return accepted({
    ...place,
    kind: parts.kind,
    origin: parts.origin,
    cut: shape,
    sides: Object.freeze(sidesOf(parts)),
    size: sizeOf(parts),
    carat,
    caratBySize: bySize,
    caratFrom: caratFrom(parts),
    price: priced === "a carat" ? timesMoney(asked, carat ?? Quotient.zero) : asked,
    settingFee: parts.settingFee ?? rates.settingFee,
    breakage,
  });
}

/** How large a stone is, in millimetres, of which cut, and what a person knows of its carat; undefined for what is not known. */
interface Size {
  readonly gravity: Quotient | undefined;
  readonly factor: Quotient | undefined;
  readonly adjustment: Quotient | undefined;
  readonly shape: StoneCut;
  readonly diameter: Quotient | undefined;
  readonly length: Quotient | undefined;
  readonly width: Quotient | undefined;
  readonly depth: Quotient | undefined;
}

/** Without its specific gravity a stone is taken for a diamond; caratFrom says so. */
function caratsOf(stone: Size & Pick<StoneParts, "kind">): Quotient | undefined {
  const { shape: cut, kind, gravity, factor, adjustment } = stone;
  const [length, width = length] = sidesOf(stone);
  const depth = stone.depth ?? (width && USUAL_DEPTH[cut]?.times(width));
  if (!length || !width || !depth) return undefined;
  const isColoured = gravity !== undefined && (kind === "" || !DIAMONDS.test(kind));
  return caratsBySize(
    { cut, length, width, depth },
    isColoured ? { family: "coloured stone", gravity } : { family: "diamond" },
    { factor, adjustment },
  );
}

/** The diameter, or both sides; none where they are not known. */
function sidesOf({ shape, diameter, length, width }: Size): readonly Quotient[] {
  if (shape === "round") return diameter ? [diameter] : [];
  return length && width ? [length, width] : [];
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

function sizeOf(stone: Size): string {
  const sides = sidesOf(stone).map((side) => side.inWords());
  if (sides.length === 0) return "";
  // What is only called rectangular says so by its two sides.
  return `${sides.join(" x ")} mm${stone.shape === "rectangular" ? "" : ` ${stone.shape}`}`;
}

/** The fields of the stones in one place, by what they say. */
function fieldsOf(where: StonePlace["where"]) {
  const keys = STONE_KEYS[where];
  const stones = {
    kind: LINE_FIELDS[keys.kind],
    origin: LINE_FIELDS[keys.origin],
    shape: LINE_FIELDS[keys.shape],
    diameter: LINE_FIELDS[keys.diameter],
    length: LINE_FIELDS[keys.length],
    width: LINE_FIELDS[keys.width],
    depth: LINE_FIELDS[keys.depth],
    gravity: LINE_FIELDS[keys.gravity],
    factor: LINE_FIELDS[keys.factor],
    adjustment: LINE_FIELDS[keys.adjustment],
    carat: LINE_FIELDS[keys.carat],
    price: LINE_FIELDS[keys.price],
    priced: LINE_FIELDS[keys.priced],
    fee: LINE_FIELDS[keys.fee],
  };
  return formOf(stones, ...keysOf(stones));
}

const FIELDS = { links: fieldsOf("links"), clasp: fieldsOf("clasp") };
