import {
  type Counts,
  doubledHeaders,
  doubledWords,
  doublesOf,
  FIELD_WORDS,
  keyOfHeader,
  LINE_FIELDS,
  LINE_KEYS,
  LINKS_PER_UNITS,
  type LineKey,
  nthColumn,
  ORDER_LENGTH_UNITS,
  ROW_LABELS,
  readHeaders,
  unitNamedFor,
  unitOfHeader,
  wordsOf,
} from "../../src/index";
import { MOST_OTHER_LETTERS, wordsApart } from "../wording/headerdistance";
import { TEXTS } from "../wording/texts";

/** What a column of somebody's table is taken for. */
export interface ColumnMatch {
  /** Counted from the first column of the designs. */
  readonly place: number;
  readonly header: string;
  /** Undefined for a column that is not used. */
  readonly key: LineKey | undefined;
  /** Undefined for the field's own unit, or where it has none. */
  readonly unit: string | undefined;
  /** Known: the header is one of our words. Likely: it is near to one, for the person to look at. */
  readonly certainty: "known" | "likely" | "none";
}

/** The fields without which nothing can be priced. */
export const NEEDED: readonly LineKey[] = ["design", "mark", "colour", "length", "linksPer", "linkWeight"];

/** What each kind of amount may be counted in; the first is the field's own, where it has one. */
const UNITS: Readonly<Record<Counts, readonly string[]>> = {
  length: ORDER_LENGTH_UNITS,
  size: ["mm", "cm", "in"],
  micrometres: [],
  weight: ["g", "dwt", "ozt", "gr", "mg", "kg", "ct"],
  "links per length": LINKS_PER_UNITS,
  carats: [],
  money: [],
  "money a gram": [],
  "money an ounce": [],
  price: [],
};

const LINE_WORDS = FIELD_WORDS.flatMap(({ words, key }) => (isLineKey(key) ? [{ words, key }] : []));

/** What each header of a row is, or is likely to be. No field is guessed twice. */
export function matchHeaders(cells: readonly unknown[]): readonly ColumnMatch[] {
  const headers = cells.map((cell, place) => ({ place, header: wordsOf(cell) }));
  const keys = new Map<number, { key: LineKey; certainty: ColumnMatch["certainty"] }>();
  const isTaken = (key: LineKey) => [...keys.values()].some((each) => each.key === key);
  // Two headers that name one field both stand for it, so that the person is asked which of them counts.
  for (const { place, header } of headers) {
    const key = keyOfHeader(header);
    if (key && isLineKey(key)) keys.set(place, { key, certainty: "known" });
  }
  const guesses = headers
    .filter(({ place, header }) => header !== "" && keyOfHeader(header) === undefined && !keys.has(place))
    .flatMap(({ place, header }) => LINE_WORDS.map(({ words, key }) => ({ place, key, far: farFrom(header, words) })))
    .filter(({ far }) => far <= MOST_OTHER_LETTERS)
    .sort((a, b) => a.far - b.far);
  for (const { place, key } of guesses) {
    if (!keys.has(place) && !isTaken(key)) keys.set(place, { key, certainty: "likely" });
  }
  return headers.map(({ place, header }) => {
    const found = keys.get(place);
    if (!found) return { place, header, key: undefined, unit: undefined, certainty: "none" };
    return { place, header, ...found, unit: saidUnit(header, found.key) };
  });
}

/** The units a field may be given in; none for words and money. */
export function unitsOf(key: LineKey): readonly string[] {
  const { counts } = LINE_FIELDS[key];
  return counts ? UNITS[counts] : [];
}

/**
 * Whether a unit must be said: length and links per length have none of their own. A weight is in grams under our own words, as the
 * form asks for it; a person's other words say nothing of it.
 */
export function needsUnit(key: LineKey, header: string): boolean {
  if (key === "length" || key === "linksPer") return true;
  return LINE_FIELDS[key].counts === "weight" && keyOfHeader(header) !== key;
}

/** Whether a length counts in the unit of the piece's length where it says none. */
export function followsLength(key: LineKey): boolean {
  return LINE_FIELDS[key].counts === "length" && key !== "length";
}

/** What is missing for a price, in the words of the form. */
export function missingOf(matches: readonly ColumnMatch[]): readonly string[] {
  const has = (key: LineKey) => matches.some((match) => match.key === key);
  const unitless = (key: LineKey, unitKey: LineKey) =>
    has(key) && !has(unitKey) && matches.some((match) => match.key === key && match.unit === undefined);
  return [
    ...NEEDED.filter((key) => !has(key)).map((key) => ROW_LABELS[key]),
    ...(unitless("length", "lengthUnit") ? [ROW_LABELS.lengthUnit] : []),
    ...(unitless("linksPer", "linksPerUnit") ? [ROW_LABELS.linksPerUnit] : []),
    ...matches.flatMap(({ key, header, unit }) =>
      key && LINE_FIELDS[key].counts === "weight" && unit === undefined && needsUnit(key, header)
        ? [TEXTS.catalogue.columns.unitOf(header)]
        : [],
    ),
  ];
}

/** Fields that more than one column is taken for, in the words of the form, each with its columns. */
export function doubledOf(matches: readonly ColumnMatch[], placeOf = nthColumn): readonly string[] {
  const placed = matches.flatMap(({ key, place }) =>
    key ? [{ key, what: ROW_LABELS[key], place: placeOf(place) }] : [],
  );
  return doublesOf(placed).map(doubledWords);
}

/** The row of headers as the costing library reads it: the person's where it says the same, our words elsewhere. */
export function headersOf(matches: readonly ColumnMatch[]): readonly string[] {
  return matches.map((match) => (match.key === undefined ? "" : saysTheSame(match) ? match.header : ourHeader(match)));
}

/** Whether the library reads the same from the person's own headers, so that nothing has to be renamed for it. */
export function areOurWords(matches: readonly ColumnMatch[]): boolean {
  const own = readHeaders(matches.map(({ header }) => header)).filter(({ key }) => isLineKey(key));
  return (
    doubledHeaders(matches.map(({ header }) => header)).length === 0 &&
    matches.every((match) => match.key === undefined || saysTheSame(match)) &&
    own.every(({ place, key }) => matches[place]?.key === key)
  );
}

function saysTheSame({ header, key, unit }: ColumnMatch): boolean {
  return key !== undefined && keyOfHeader(header) === key && plainlySaid(header, key) === unit;
}

function ourHeader({ key, unit }: ColumnMatch): string {
  if (key === undefined) return "";
  if (key === "linksPer" && unit !== undefined) return `Links per ${unit}`;
  return unit === undefined ? ROW_LABELS[key] : `${ROW_LABELS[key]} (${unit})`;
}

/** The unit that the library takes from a header. */
function plainlySaid(header: string, key: LineKey): string | undefined {
  const unit = unitNamedFor(header, key);
  return unit !== undefined && unitsOf(key).includes(unit) ? unit : undefined;
}

/** The unit that a header names for a field, also where it is only its last word: "Length cm". */
export function saidUnit(header: string, key: LineKey): string | undefined {
  const said = plainlySaid(header, key);
  if (said !== undefined) return said;
  const last = unitOfHeader(`(${header.split(/[\s/]+/).at(-1) ?? ""})`);
  return last !== undefined && unitsOf(key).includes(last) ? last : undefined;
}

/** How far a header is from a field's words. */
function farFrom(header: string, words: string): number {
  return wordsApart(plain(header), words);
}

function plain(header: string): string {
  const words = header
    .replace(/[([].*?[)\]]/g, " ")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()
    .toLowerCase()
    .split(" ");
  const unit =
    words.length > 1 &&
    Object.values(UNITS)
      .flat()
      .includes(words.at(-1) ?? "");
  return (unit ? words.slice(0, -1) : words).join(" ");
}

function isLineKey(key: string): key is LineKey {
  return LINE_KEYS.some((each) => each === key);
}
