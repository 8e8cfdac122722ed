import { COLOURS, type Colour } from "./alloy";
import { CostingError, found } from "./errors";
import { isBlank } from "./number";
import type { LINK_CASTINGS } from "./orderwords";

export type LinkCasting = (typeof LINK_CASTINGS)[number];

/** So many links of one colour, and how the caster casts them. */
export interface LinkGroup {
  readonly colour: Colour;
  readonly links: number;
  readonly closed: number;
  readonly open: number;
}

/** The letters of a pattern of links. */
export const PATTERN_LETTERS: Readonly<Record<string, Colour>> = {
  Y: "yellow",
  R: "rose",
  W: "white",
  G: "green",
  O: "own",
};

const LONGEST = 60;
const RIGHT = "give the repeating links as letters, Y yellow, R rose, W white, G green, such as YYW";

/** Reads a repeating pattern such as "YYW"; empty where links are all of one colour. Errors: unknownWord, tooLarge. */
export function parsePattern(value: unknown, field: string): readonly Colour[] {
  if (isBlank(value)) return Object.freeze([]);
  const letters = String(value)
    .toUpperCase()
    .replaceAll(/[\s,-]/g, "");
  if (letters.length > LONGEST)
    throw new CostingError("tooLarge", field, `${found(value)}; ${RIGHT}, at most ${LONGEST} letters`);
  return Object.freeze(
    [...letters].map((letter) => {
      const colour = PATTERN_LETTERS[letter];
      if (!colour) throw new CostingError("unknownWord", field, `${found(value)}; ${RIGHT}`);
      return colour;
    }),
  );
}

/**
 * How many links of each colour, closed and open, a chain of so many links has when the pattern repeats from its first link;
 * the last repeat may be cut short. Colours stand in the order of COLOURS.
 */
export function countLinks(links: number, pattern: readonly Colour[], casting: LinkCasting): readonly LinkGroup[] {
  const counts = new Map<Colour, { closed: number; open: number }>();
  for (let link = 0; link < links; link += 1) {
    const colour = pattern[link % pattern.length];
    if (colour === undefined) break;
    const count = counts.get(colour) ?? { closed: 0, open: 0 };
    counts.set(colour, count);
    count[isOpen(link, casting) ? "open" : "closed"] += 1;
  }
  return Object.freeze(
    COLOURS.flatMap((colour) => {
      const count = counts.get(colour);
      return count ? [Object.freeze({ colour, links: count.closed + count.open, ...count })] : [];
    }),
  );
}

function isOpen(link: number, casting: LinkCasting): boolean {
  return casting === "closed and open in turn" ? link % 2 === 1 : casting === "all open";
}
