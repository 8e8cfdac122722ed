import type { Colour } from "../gold/alloy";
import { showMark } from "../gold/mark";
import type { OrderLine } from "../order/orderline";
import { isPlatingUnnamed, type Plating, platingOf } from "../trade/plating";

/** What a piece is made of, as a customer reads it. */
export interface QuotedPiece {
  readonly kind: OrderLine["kind"];
  /** As struck: "14K", "585". */
  readonly mark: string;
  /** The colours of its links, in the order of its pattern; an alloy of the workshop's own by its name. */
  readonly colours: readonly string[];
  /** So many links of one colour after another, which repeat; none where all are of one colour. */
  readonly runs: readonly ColourRun[];
  readonly hollow: boolean;
  /** Undefined where it is not plated, and where nobody has named the metal: it is not said without. */
  readonly plating: Plating | undefined;
  /** White gold is mostly plated, so that it is said where it is not. */
  readonly isUnplatedWhite: boolean;
}

/** Links of one colour that follow each other in a pattern. */
export interface ColourRun {
  readonly colour: string;
  readonly links: number;
}

/** What a customer reads of the piece of a line. */
export function quotedPiece(line: OrderLine): QuotedPiece {
  const hasSeveral = line.linkGroups.length > 1;
  const reached = line.linkGroups.map(({ colour }) => colour);
  const inTurn = hasSeveral ? [...new Set(line.pattern)].filter((colour) => reached.includes(colour)) : reached;
  return {
    kind: line.kind,
    mark: showMark(line.mark),
    colours: Object.freeze(inTurn.map((colour) => colourName(colour, line))),
    runs: Object.freeze(hasSeveral ? runsOf(line) : []),
    hollow: line.hollow,
    plating: platingOf(line),
    isUnplatedWhite: !line.plated && !isPlatingUnnamed(line) && reached.includes("white"),
  };
}

/** The name of a colour: that of the workshop's own alloy as it was given. */
export function colourName(colour: Colour, line: OrderLine): string {
  return colour === "own" ? line.colourName : colour;
}

function runsOf(line: OrderLine): readonly ColourRun[] {
  const runs: { colour: string; links: number }[] = [];
  for (const colour of line.pattern.map((each) => colourName(each, line))) {
    const last = runs.at(-1);
    if (last?.colour === colour) last.links += 1;
    else runs.push({ colour, links: 1 });
  }
  return runs;
}
