import { type PricedLine, priceDesign, type Rates } from "../../src/index";
import { type Chosen, readInSlices } from "../designtable/chosendesigns";
import { inSlices, type Slicing } from "../running/slices";

export type Priced = Extract<PricedLine, { kind: "priced" }>;

/** Reads and prices the designs at the rates' spot, a slice at a time. Errors: Cancelled. */
export async function priceInSlices(
  chosen: Chosen,
  rates: Rates,
  { progress, signal }: Slicing,
): Promise<readonly PricedLine[]> {
  const designs = await readInSlices(chosen, rates, { progress: (share) => progress(share / 2), signal });
  const parts = await inSlices(designs, (slice) => slice.map((design) => priceDesign(design, rates)), {
    progress: (share) => progress((1 + share) / 2),
    signal,
  });
  return parts.flat();
}

export function isPriced(line: PricedLine): line is Priced {
  return line.kind === "priced";
}
