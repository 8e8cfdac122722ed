import type { Plating } from "../../src/index";

/** The words for plating, on every paper and in the pane: never without its metal. */
export const PLATING_TEXTS = {
  plated: "plated",
  with: "plated with",
  whiteLinks: "white links",
  /** For the bench, which must know that a piece is plated even while its metal is not named. */
  unnamed: "plated (metal not named)",

  /** What a field that Rates give nothing for shows in place of their value. */
  noneOnRates: "none on Rates",
  /** After a price sheet or a CSV was made. */
  designs: (count: number) =>
    count === 1
      ? "1 design is plated with a metal that nobody has named, so nothing is said of its plating. Fill in Plating metal on the Rates sheet."
      : `${count} designs are plated with a metal that nobody has named, so nothing is said of their plating. Fill in Plating metal on the Rates sheet.`,
} as const;

/** "plated with rhodium", of several colours "white links plated with rhodium". */
export function platingWords({ metal, part }: Plating): string {
  const words = `${PLATING_TEXTS.with} ${metal}`;
  return part === "white links" ? `${PLATING_TEXTS.whiteLinks} ${words}` : words;
}
