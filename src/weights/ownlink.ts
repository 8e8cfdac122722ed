import { CostingError } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import { COLOURS, type Colour } from "../gold/alloy";
import { type Mark, parseMark } from "../gold/mark";
import { isBlank, readNumber } from "../reading/number";
import { LINKS_PER_UNITS } from "../reading/orderwords";
import { pitchOf } from "../trade/link";
import { atStage, type StagedWeight } from "../trade/stagedweight";
import { type Length, lengthIn } from "../units/length";
import { grams, timesWeight, type Weight } from "../units/weight";
import { type LinkName, sameText } from "./linkname";

/** A link of the workshop's own that can be costed. */
export interface OwnLink {
  readonly name: LinkName;
  readonly mark: Mark;
  readonly colour: Colour | undefined;
  readonly hollow: boolean;
  /** Of one link: a piece on sale is finished, and only a finished link can be compared with it. */
  readonly weight: StagedWeight<"finished">;
  readonly isWeighed: boolean;
  /** What one link adds to a chain; undefined where links per length are not written down. */
  readonly pitch: Length | undefined;
}

/** A row of the table of kept links, as its cells read. */
export interface OwnLinkCells extends LinkName {
  readonly linksPer: unknown;
  readonly linksPerUnit: unknown;
  readonly weight: unknown;
  readonly basis: unknown;
}

/** A piece to compare with the workshop's own links. */
export interface SoughtPiece {
  readonly weight: Weight;
  readonly mark: Mark;
  readonly hollow: boolean;
  /** Undefined where it is not said. */
  readonly colour: Colour | undefined;
  readonly length: Length;
}

/** The link that is nearest to a piece, or why there is none. */
export type NearestLink =
  | { readonly found: true; readonly match: LinkMatch }
  | {
      readonly found: false;
      readonly lacks: "any link" | "a weight" | "a hollow link" | "a solid link" | "a lighter link";
    };

/** A link compared with a piece, and how well it fits. */
export interface LinkMatch {
  readonly link: OwnLink;
  /** Weight of the piece divided by that of one link; not always a whole number. */
  readonly links: Quotient;
  readonly sameMark: boolean;
  /** Also where the piece's colour is not said. */
  readonly sameColour: boolean;
  /** What a chain of the piece's length weighs when made of this link; undefined without its links per length. */
  readonly wouldWeigh: Weight | undefined;
}

/** Significant figures that an order takes of a link's mean weight. A scale measures no more. */
export const LINK_FIGURES = 6;

/** With fewer links than this a piece is no chain: the link is too heavy for it. */
const FEWEST_LINKS = Quotient.of(2);

/** The links of the table that have a mark and a weight; a link is hollow where its model says so. */
export function readOwnLinks(rows: readonly OwnLinkCells[]): readonly OwnLink[] {
  return rows.flatMap((row) => {
    if (isBlank(row.model)) return [];
    const mark = unlessFaulty(() => parseMark(row.mark));
    const weight = unlessFaulty(() => readNumber(row.weight, "weight", { above: "0", most: "1000", right: "" }));
    if (!mark || !weight) return [];
    const { model, width, colour } = row;
    return [
      Object.freeze({
        name: Object.freeze({ model, width, mark: row.mark, colour }),
        mark,
        colour: COLOURS.find((known) => sameText(known, colour)),
        hollow: /\bhollow\b/i.test(String(model)),
        weight: atStage("finished", grams(Quotient.of(weight.value().toSignificantDigits(LINK_FIGURES)))),
        isWeighed: sameText(row.basis, "weighed"),
        pitch: pitchIn(row),
      }),
    ];
  });
}

/**
 * The link to compare a piece with. A hollow piece needs a hollow link, a solid piece a solid one. Links of its mark go first, then
 * links of its colour, then the one whose chain of the piece's length weighs nearest to it, as a ratio.
 * @param kept how many links are kept at all, with a weight or without
 */
export function nearestLink(links: readonly OwnLink[], kept: number, sought: SoughtPiece): NearestLink {
  const alike = links.filter(({ hollow }) => hollow === sought.hollow);
  const matches = alike
    .map((link) => matchOf(link, sought))
    .filter(({ links: count }) => !count.isLessThan(FEWEST_LINKS));
  const [best] = [...matches].sort(
    (a, b) =>
      Number(b.sameMark) - Number(a.sameMark) ||
      Number(b.sameColour) - Number(a.sameColour) ||
      weightRatio(a, sought).compare(weightRatio(b, sought)),
  );
  if (best) return { found: true, match: best };
  if (kept === 0) return { found: false, lacks: "any link" };
  if (links.length === 0) return { found: false, lacks: "a weight" };
  if (alike.length > 0) return { found: false, lacks: "a lighter link" };
  return { found: false, lacks: sought.hollow ? "a hollow link" : "a solid link" };
}

/** How a link that was chosen fits a piece. */
export function matchOf(link: OwnLink, { weight, mark, colour, length }: SoughtPiece): LinkMatch {
  const { pitch } = link;
  return Object.freeze({
    link,
    links: weight.grams.dividedBy(link.weight.weight.grams),
    sameMark: link.mark.share.equals(mark.share),
    sameColour: colour === undefined || link.colour === colour,
    wouldWeigh: pitch && timesWeight(link.weight.weight, length.millimetres.dividedBy(pitch.millimetres)),
  });
}

/** How many times heavier or lighter a chain of the link is, at least 1; a link of unknown pitch comes after all others. */
function weightRatio({ wouldWeigh }: LinkMatch, { weight }: SoughtPiece): Quotient {
  if (!wouldWeigh) return FARTHEST;
  const ratio = wouldWeigh.grams.dividedBy(weight.grams);
  return ratio.isLessThan(Quotient.one) ? Quotient.one.dividedBy(ratio) : ratio;
}
const FARTHEST = Quotient.of("1000000000000");

function pitchIn({ linksPer, linksPerUnit }: OwnLinkCells): Length | undefined {
  const unit = LINKS_PER_UNITS.find((known) => sameText(known, linksPerUnit));
  const links = unlessFaulty(() => readNumber(linksPer, "linksPer", { above: "0", most: "1000", right: "" }));
  return unit && links && pitchOf(links, lengthIn(Quotient.one, unit));
}

/** A cell of the person's table that cannot be read is left out, not refused. */
function unlessFaulty<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof CostingError) return undefined;
    throw error;
  }
}
