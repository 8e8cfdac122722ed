import { type Money, priceDesign, Quotient, type Rates, type ReadDesign } from "../../src/index";
import { type Chosen, readInSlices } from "../designtable/chosendesigns";
import { inSlices, type Slicing } from "../running/slices";

/** A catalogue at one spot: one piece of each design that can be priced. */
export interface AtSpot {
  readonly spot: Money;
  /** Sum of the prices it would have at that spot. */
  readonly prices: Quotient;
  /** Sum of the landed costs at that spot. */
  readonly landed: Quotient;
  /** Lines that would fall below their floor at that spot, kept at the present price. */
  readonly belowFloor: number;
}

export interface SpotRange {
  /** Lowest spot first. */
  readonly at: readonly AtSpot[];
  readonly as: readonly string[];
  readonly present: AtSpot;
  readonly lines: readonly { readonly design: string; readonly prices: readonly Quotient[] }[];
  /** Designs that cannot be priced. */
  readonly refused: number;
}

/** Spots to reckon at, lowest first, with the place of the present one among them. */
export interface SpotsAsked {
  readonly spots: readonly Money[];
  readonly present: number;
  /** What each of them stands for beside its share of change; "" for nothing. */
  readonly as: readonly string[];
}

/** A catalogue at several spots. Exact. Errors: Cancelled. */
export async function rangeInSlices(
  chosen: Chosen,
  rates: Rates,
  asked: SpotsAsked,
  { progress, signal }: Slicing,
): Promise<SpotRange> {
  const { spots } = asked;
  const designs = await readInSlices(chosen, rates, { progress: (share) => progress(share / 4), signal });
  const parts = await inSlices(designs, (slice) => slice.flatMap((design) => lineAt(design, rates, asked)), {
    progress: (share) => progress(0.25 + (share * 3) / 4),
    signal,
  });
  const lines = parts.flat();
  const at = spots.map((spot, index): AtSpot => {
    const each = lines.flatMap(({ figures }) => figures[index] ?? []);
    return {
      spot,
      prices: each.reduce((sum, { price }) => sum.plus(price), Quotient.zero),
      landed: Quotient.of(each.reduce((sum, { landed }) => sum.plus(landed.value()), Quotient.zero.value())),
      belowFloor: each.filter(({ below }) => below).length,
    };
  });
  const present = at[asked.present];
  if (!present) throw new Error("The present spot is not among those asked for");
  return {
    as: asked.as,
    at,
    present,
    refused: designs.filter(({ kind }) => kind !== "empty").length - lines.length,
    lines: lines.map(({ design, figures }) => ({ design, prices: figures.map(({ price }) => price) })),
  };
}

function lineAt(design: ReadDesign, rates: Rates, { spots, present }: SpotsAsked) {
  const priced = spots.map((spot) => priceDesign(design, { ...rates, spot }));
  const now = priced[present];
  if (now?.kind !== "priced") return [];
  const kept = now.sheet.netPrice.amount;
  const figures = priced.flatMap((line) =>
    line.kind === "priced"
      ? [
          {
            price: line.sheet.price.amount,
            landed: line.sheet.landed.amount,
            below: kept.isLessThan(line.sheet.floor.amount),
          },
        ]
      : [],
  );
  return [{ design: now.design, figures }];
}
