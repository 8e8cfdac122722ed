import { parseDecimal } from "../exact/decimal";
import { CostingError, found } from "../exact/errors";
import { Quotient, sum } from "../exact/quotient";
import { alloyDensity, METALS, type Metal, type Part } from "./alloy";
import { fineness, type Mark, nameMark, shareOfDigits } from "./mark";

/** An alloy given by its parts. */
export interface Composition {
  /** As typed. */
  readonly text: string;
  readonly parts: readonly Part[];
  /** Gold in it, parts per thousand. */
  readonly fineness: Quotient;
  /** g/cm³, see alloyDensity. */
  readonly density: Quotient;
}

const RIGHT = "give metals with their parts by weight, such as Au 585 Ag 265 Cu 150";

/**
 * Reads a composition such as "Au 58.5, Ag 20, Cu 21.5", parts making up 1, 100 or 1000.
 * Errors: unknownWord where it is no such list; outOfRange where the parts make up none of these.
 */
export function parseComposition(value: unknown, field: string): Composition {
  const text = String(value).trim();
  const pieces = text.split(/[\s,;:=%]+/).filter((piece) => piece !== "");
  const pairs = pieces.flatMap((piece, index) => (index % 2 === 0 ? [[piece, pieces[index + 1] ?? ""] as const] : []));
  const parts = pairs.map(([symbol, amount]) => partOf(symbol, amount));
  if (parts.length === 0 || parts.some((part) => part === undefined)) {
    throw new CostingError("unknownWord", field, `${found(text)}; ${RIGHT}; known are ${METALS.join(", ")}`);
  }
  const known = parts.filter((part) => part !== undefined);
  const whole = sum(known.map((part) => part.parts));
  const gold = sum(known.filter((part) => part.metal === "Au").map((part) => part.parts));
  return Object.freeze({
    text,
    parts: Object.freeze(known),
    fineness: shareOfDigits(gold.dividedBy(whole.isZero() ? Quotient.one : whole)).times(Quotient.of(1000)),
    density: densityOf(known, field),
  });
}

/** A mark may understate, never overstate. Errors: outOfRange where the composition holds less gold than the mark says. */
export function bearsMark(composition: Composition, mark: Mark, field: string): void {
  if (!composition.fineness.isLessThan(fineness(mark))) return;
  const held = composition.fineness.value().toSignificantDigits(6);
  throw new CostingError(
    "outOfRange",
    field,
    `found ${held} parts of gold in a thousand, less than the mark ${nameMark(mark)}; a mark must not overstate: choose a lower mark, or correct the parts`,
  );
}

function densityOf(parts: readonly Part[], field: string): Quotient {
  try {
    return alloyDensity(parts);
  } catch (error) {
    if (!(error instanceof CostingError)) throw error;
    throw new CostingError(error.code, field, error.message.replace(/^parts: /, ""));
  }
}

function partOf(symbol: string, amount: string): Part | undefined {
  const metal = METALS.find((known): known is Metal => known.toLowerCase() === symbol.toLowerCase());
  const decimal = parseDecimal(amount);
  return metal && decimal?.isPositive() && !decimal.isZero() ? { metal, parts: Quotient.of(decimal) } : undefined;
}
