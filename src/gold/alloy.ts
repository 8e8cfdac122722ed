import { Decimal } from "../exact/decimal";
import { CostingError } from "../exact/errors";
import { Quotient, sum } from "../exact/quotient";
import { fineness, type Mark } from "./mark";

/** The colours to choose an alloy by; "own" is the workshop's own composition. */
export const COLOURS = ["yellow", "rose", "white", "green", "own"] as const;
export type Colour = (typeof COLOURS)[number];

/**
 * Densities of the metals in jewellery gold, g/cm³ at room temperature.
 * Source: Au 19.32, Ag 10.49, Cu 8.96, Zn 7.14, Ni 8.90, Pd 12.02: the element densities of the published alloy checks.
 * Pt 21.45: from memory (usual handbook value).
 */
export const METAL_DENSITY = {
  Au: new Decimal("19.32"),
  Ag: new Decimal("10.49"),
  Cu: new Decimal("8.96"),
  Zn: new Decimal("7.14"),
  Ni: new Decimal("8.90"),
  Pd: new Decimal("12.02"),
  Pt: new Decimal("21.45"),
} as const;
export const METALS = [
  "Au",
  "Ag",
  "Cu",
  "Zn",
  "Ni",
  "Pd",
  "Pt",
] as const satisfies readonly (keyof typeof METAL_DENSITY)[];
export type Metal = (typeof METALS)[number];

export interface Part {
  readonly metal: Metal;
  /** Parts by weight. */
  readonly parts: Quotient;
}

const WHOLES = ["1", "100", "1000"].map((whole) => Quotient.of(whole));
const LEAST_OF_WHOLE = Quotient.of("0.995");
const MOST_OF_WHOLE = Quotient.of("1.005");

/**
 * Density of an alloy from its composition, in g/cm³: 1 / sum(share/density), for parts that make up 1, 100 or 1000 within 0.5 %.
 * Errors: outOfRange where the parts make up none of these.
 * Source: mixture by volumes; alloys contract a little, so a measured density may differ by about a per cent.
 */
export function alloyDensity(parts: readonly Part[]): Quotient {
  const whole = sum(parts.map((part) => part.parts));
  if (!WHOLES.some((target) => closeTo(whole, target))) {
    throw new CostingError(
      "outOfRange",
      "parts",
      `found parts that sum to ${whole.value().toSignificantDigits(8)}; give parts by weight that sum to 1, 100 or 1000`,
    );
  }
  return whole.dividedBy(sum(parts.map((part) => part.parts.dividedBy(Quotient.of(METAL_DENSITY[part.metal])))));
}

function closeTo(value: Quotient, target: Quotient): boolean {
  return !value.isLessThan(target.times(LEAST_OF_WHOLE)) && !value.isGreaterThan(target.times(MOST_OF_WHOLE));
}

/** The usual millesimal marks, ‰. Source: encyclopedias; the table of ISO 9202 itself was not seen. */
export const STANDARD_MARKS = ["333", "375", "417", "585", "750", "833", "916", "958", "990", "999"].map((mark) =>
  Quotient.of(mark),
);

/**
 * The highest standard not above a fineness, ‰: a mark may understate, never overstate.
 * Errors: belowLowestMark.
 */
export function standardMark(perThousand: Quotient, standards: readonly Quotient[] = STANDARD_MARKS): Quotient {
  const notAbove = standards.filter((standard) => !standard.isGreaterThan(perThousand));
  const first = notAbove[0];
  if (first === undefined) {
    const lowest = standards.reduce((least, standard) => (standard.isLessThan(least) ? standard : least));
    throw new CostingError(
      "belowLowestMark",
      "fineness",
      `found ${perThousand.value().toSignificantDigits(8)}, below the lowest standard ${lowest.value()}; no standard mark may be struck on it`,
    );
  }
  return notAbove.reduce((highest, standard) => (standard.isGreaterThan(highest) ? standard : highest), first);
}

/**
 * Whether an assay passes for a mark: assay + tolerance >= fineness of the mark, all ‰.
 * Source: 15 U.S.C. 295 allows 3 ‰ on metal free of solder and 7 ‰ on a whole article with its solder; UK and Convention
 * countries allow none.
 */
export function assayPasses(assay: Quotient, mark: Mark, tolerance: Quotient): boolean {
  return !assay.plus(tolerance).isLessThan(fineness(mark));
}
