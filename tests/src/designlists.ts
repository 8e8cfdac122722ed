import { type PricedLine, priceDesign, readDesigns } from "../../src/designs/pricelist";
import type { Rates } from "../../src/rates/rates";

/** Prices a table of designs row by row, the exact way. */
export function priceLines(cells: readonly (readonly unknown[])[], rates: Rates): readonly PricedLine[] {
  return readDesigns(cells, rates).map((design) => priceDesign(design, rates));
}
