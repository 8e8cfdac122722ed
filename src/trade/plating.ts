import { CostingError, found } from "../exact/errors";
import type { Colour } from "../gold/alloy";
import { isBlank } from "../reading/number";
import type { PLATING_CHOICES } from "../reading/orderwords";
import { readOptionalText } from "../reading/words";

/** What a piece is plated with, and which part of it. It has no way to say "plated" alone. */
export interface Plating {
  readonly metal: string;
  readonly part: "piece" | "white links";
}

/** What of an order's line decides on its plating. */
interface Plated {
  readonly plated: boolean;
  /** "" while nobody has named it. */
  readonly platingMetal: string;
  readonly linkGroups: readonly { readonly colour: Colour }[];
}

/** Whether a piece is plated: by choice, or as usual where any of its links is white. */
export function isPlated(choice: (typeof PLATING_CHOICES)[number], colours: readonly string[]): boolean {
  return choice === "as usual" ? colours.includes("white") : choice === "plated";
}

/** Of links of several colours only the white ones are plated. */
export function platesWhiteLinks({ plated, linkGroups }: Plated): boolean {
  return plated && linkGroups.length > 1 && linkGroups.some(({ colour }) => colour === "white");
}

/**
 * The plating as a customer may read it; undefined where nothing is plated, and where nobody has named the metal, since
 * "plated" alone beside gold reads as plated with gold.
 * Source: 16 CFR 23.7, which wants a plating of rhodium disclosed.
 */
export function platingOf(line: Plated): Plating | undefined {
  if (!line.plated || line.platingMetal === "") return undefined;
  return Object.freeze({ metal: line.platingMetal, part: platesWhiteLinks(line) ? "white links" : "piece" });
}

/** Whether a piece is plated with a metal that nobody has named yet. */
export function isPlatingUnnamed({ plated, platingMetal }: Plated): boolean {
  return plated && platingMetal === "";
}

/** Reads the name of a plating metal, "" for nothing. It stands behind "plated with", so it must be a name, and the metal's alone. */
export function readPlatingMetal(value: unknown, field: string): string {
  if (isBlank(value)) return "";
  const metal = readOptionalText(value, field);
  if (!/\p{L}/u.test(metal) || /\bplat(?:ed?|ing)\b/i.test(metal))
    throw new CostingError("unknownWord", field, `${found(value)}; give the metal alone, such as rhodium`);
  return metal;
}
