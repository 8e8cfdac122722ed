import { CostingError, found } from "../exact/errors";
import { Quotient, sum } from "../exact/quotient";
import { COLOURS, type Colour } from "../gold/alloy";
import { isBlank } from "../reading/number";
import type { LINK_CASTINGS } from "../reading/orderwords";

export type LinkCasting = (typeof LINK_CASTINGS)[number];

/** So many links of one colour, and how the caster casts them. */
export interface LinkGroup {
  readonly colour: Colour;
  readonly links: Quotient;
  readonly closed: Quotient;
  readonly open: Quotient;
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
 * @param links whole, from 0
 */
export function countLinks(links: Quotient, pattern: readonly Colour[], casting: LinkCasting): readonly LinkGroup[] {
  const inTurn = casting === "closed and open in turn";
  // Closed and open come back at the same colour after the pattern, or after twice as many links where it is of an odd number.
  const period = inTurn && pattern.length % 2 === 1 ? 2 * pattern.length : pattern.length;
  const positions = Array.from({ length: period }, (_, position) => position);
  return Object.freeze(
    COLOURS.flatMap((colour) => {
      const own = positions.filter((position) => pattern[position % pattern.length] === colour);
      const count = (wanted: readonly number[]) => sum(wanted.map((position) => timesAt(links, position, period)));
      const isOneColour = own.length === period;
      const all = isOneColour ? links : count(own);
      if (own.length === 0 || all.isZero()) return [];
      const closed = inTurn ? count(own.filter((position) => position % 2 === 0)) : casting === "all open" ? none : all;
      const open = inTurn ? count(own.filter((position) => position % 2 === 1)) : casting === "all open" ? all : none;
      return [Object.freeze({ colour, links: all, closed, open })];
    }),
  );
}

const none = Quotient.zero;

/** How often a position of a repeat, counted from 0, comes in so many links. */
function timesAt(links: Quotient, position: number, period: number): Quotient {
  return links
    .plus(Quotient.of(period - 1 - position))
    .dividedBy(Quotient.of(period))
    .floor();
}
