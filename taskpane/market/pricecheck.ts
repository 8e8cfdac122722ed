import {
  type AskedPiece,
  type Asking,
  checkAsking,
  compareAsking,
  type Fault,
  type LinkMatch,
  matchOf,
  nearestLink,
  ORDER_LENGTH_UNITS,
  type OwnComparison,
  type OwnLink,
  type OwnLinkCells,
  ownLine,
  type PriceCheck,
  parseAskedPiece,
  parseAsking,
  type Rates,
  readOwnLinks,
  usualPiece,
} from "../../src/index";
import type { Choice } from "../controls/field";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { linkName } from "../wording/shownweight";

const { check: texts } = ASKING_TEXTS;

/** What an asking price amounts to, as far as it is typed. */
export type Checked =
  | { readonly kind: "faulty"; readonly faults: readonly Fault[] }
  | {
      readonly kind: "checked";
      readonly asking: Asking;
      readonly check: PriceCheck;
      readonly piece: AskedPiece;
      /** Faults of what is not needed for it. */
      readonly faults: readonly Fault[];
      readonly ours: Ours;
    };

/** A piece of ours that it is held against, or why there is none. */
export type Ours =
  | { readonly found: true; readonly comparison: OwnComparison; readonly match: LinkMatch }
  | { readonly found: false; readonly sentence: string };

/** The kept links, as last read; undefined while they are not. */
export interface KeptLinks {
  readonly links: readonly OwnLink[];
  /** How many there are at all, with a weight or without. */
  readonly kept: number;
}

export function keptLinks(rows: readonly OwnLinkCells[]): KeptLinks {
  return { links: readOwnLinks(rows), kept: rows.filter(({ model }) => String(model ?? "").trim() !== "").length };
}

/** The names of links to choose from, after the one that fits best. */
export function linkChoices({ links }: KeptLinks): readonly Choice[] {
  const names = [...new Set(links.map(({ name }) => linkName(name)))];
  return [{ value: "", shown: texts.nearest }, ...names.map((name) => ({ value: name, shown: name }))];
}

/**
 * Checks a price as typed. The answer against the metal stands as soon as price, weight and mark do.
 * @param misread faults of figures that may be two here
 */
export function checkTyped(
  typed: Readonly<Record<string, string>>,
  misread: readonly Fault[],
  rates: Rates,
  kept: KeptLinks | undefined,
): Checked {
  const asking = parseAsking(typed, rates.currency);
  const piece = parseAskedPiece(typed);
  const faults = [...misread, ...[asking, piece].flatMap((part) => (part.ok ? [] : part.faults))];
  if (!asking.ok || misread.length > 0) return { kind: "faulty", faults: onceEach(faults) };
  const known = piece.ok ? piece.value : undefined;
  return {
    kind: "checked",
    asking: asking.value,
    check: checkAsking(asking.value, rates.spot),
    // What is wrong with the piece's own fields keeps nothing from the answer against the metal.
    piece: known ?? usualPiece("chain", ORDER_LENGTH_UNITS.find((unit) => unit === typed.lengthUnit) ?? "in"),
    faults,
    ours: known && kept ? oursOf(asking.value, known, typed.link ?? "", rates, kept) : { found: false, sentence: "" },
  };
}

function oursOf(asking: Asking, piece: AskedPiece, chosen: string, rates: Rates, { links, kept }: KeptLinks): Ours {
  const { weight, mark } = asking;
  if (!weight) return { found: false, sentence: texts.weightFirst };
  const hollow = asking.hollow === true;
  const sought = { weight, mark, hollow, colour: piece.colour, length: piece.length };
  const own = links.find(({ name }) => linkName(name) === chosen);
  const nearest = own ? ({ found: true, match: matchOf(own, sought) } as const) : nearestLink(links, kept, sought);
  if (!nearest.found) return { found: false, sentence: texts.lacks[nearest.lacks] };
  const { match } = nearest;
  const line = ownLine(match.link, { mark, hollow, colour: piece.colour, kind: piece.kind }, rates);
  if (!line.ok) return { found: false, sentence: line.faults.map(({ sentence }) => sentence).join(" ") };
  return { found: true, comparison: compareAsking(asking, weight, line.value, rates), match };
}

function onceEach(faults: readonly Fault[]): readonly Fault[] {
  return faults.filter(({ field }, at) => faults.findIndex((other) => other.field === field) === at);
}
