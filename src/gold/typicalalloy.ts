import { Quotient } from "../exact/quotient";
import type { Colour, Metal, Part } from "./alloy";

/** An alloy as many casters mix it: a figure to start from. A mark alone does not decide a density. */
export interface TypicalAlloy {
  readonly mark: string;
  readonly colour: Colour;
  readonly parts: readonly Part[];
}

/**
 * Typical alloys (common practice): alloys of one mark and colour differ by several per cent in density, so a caster's own
 * figure comes first.
 * Source: 10K yellow and 18K rose, Fahlman, Materials Chemistry, 2nd ed., Table 3.4; 14K yellow, a published worked example
 * of specific gravity (583, 104, 313); 18K yellow, half silver and half copper beside the gold: from memory; 24K is fine gold.
 */
export const TYPICAL_ALLOYS: readonly TypicalAlloy[] = [
  { mark: "10K", colour: "yellow", parts: partsOf({ Au: "41.7", Ag: "11.7", Cu: "40.8", Zn: "5.8" }) },
  { mark: "14K", colour: "yellow", parts: partsOf({ Au: "583", Ag: "104", Cu: "313" }) },
  { mark: "18K", colour: "yellow", parts: partsOf({ Au: "750", Ag: "125", Cu: "125" }) },
  { mark: "18K", colour: "rose", parts: partsOf({ Au: "75", Ag: "5", Cu: "20" }) },
  { mark: "24K", colour: "yellow", parts: partsOf({ Au: "1000" }) },
];

function partsOf(shares: Partial<Record<Metal, string>>): readonly Part[] {
  // Object.entries gives its keys as plain texts, but they are the keys of the record.
  return (Object.entries(shares) as [Metal, string][]).map(([metal, parts]) => ({ metal, parts: Quotient.of(parts) }));
}
