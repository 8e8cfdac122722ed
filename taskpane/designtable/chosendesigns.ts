import { type Rates, type ReadDesign, readDesigns } from "../../src/index";
import type { Designs } from "../excel/designs/designs";
import { inSlices, type Slicing } from "../running/slices";
import { areOurWords, type ColumnMatch, headersOf } from "./columnmatching";

/** The designs a person works with: their cells, and what each column is. */
export interface Chosen {
  readonly designs: Designs;
  readonly matches: readonly ColumnMatch[];
  /** The headers as the costing library reads them. */
  readonly headers: readonly string[];
  /** Whether the person's own headers say the same. */
  readonly direct: boolean;
}

export function chosenOf(designs: Designs, matches: readonly ColumnMatch[]): Chosen {
  return { designs, matches, headers: headersOf(matches), direct: areOurWords(matches) };
}

/** The rows under the headers. */
export function rowsOf({ designs }: Chosen): readonly (readonly unknown[])[] {
  return designs.cells.slice(1);
}

/** Reads the designs a slice at a time. Errors: Cancelled. */
export async function readInSlices(chosen: Chosen, rates: Rates, slicing: Slicing): Promise<readonly ReadDesign[]> {
  const parts = await inSlices(rowsOf(chosen), (rows) => readDesigns([chosen.headers, ...rows], rates), slicing);
  return parts.flat();
}
