import type { Density, MaterialChange, Quotient, Resizing } from "../../src/index";

/** The worksheet formulas that give what the small forms show, with the figures typed into them. */
export function waxFormula({ known, from, to }: MaterialChange): string {
  return call("METALFROMWAX", figure(known.grams), density(from), density(to));
}

export function recastFormula({ known, from, to }: MaterialChange): string {
  return call("RECASTWEIGHT", figure(known.grams), density(from), density(to));
}

export function resizeFormula({ known, fromWidth, toWidth }: Resizing): string {
  return call("RESIZEDLINK", figure(known.grams), figure(fromWidth), figure(toWidth));
}

function call(name: string, ...given: readonly string[]): string {
  return `=CURB.${name}(${given.join(",")})`;
}

/** A composition stays one: its density is worked out in the sheet too. */
function density({ value, composition }: Density): string {
  if (!composition) return figure(value);
  const metals = composition.parts.map(({ metal }) => `"${metal}"`).join(";");
  const parts = composition.parts.map((part) => figure(part.parts)).join(";");
  return `CURB.ALLOYDENSITY({${metals}},{${parts}})`;
}

/** As many digits as Excel keeps. */
function figure(value: Quotient): string {
  return value.value().toSignificantDigits(15).toFixed();
}
