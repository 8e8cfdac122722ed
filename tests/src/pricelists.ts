import fc from "fast-check";
import { perGram } from "../../src/gold/goldrate";
import type { MakerRow, Seller } from "../../src/makeorbuy/makers";
import { grams } from "../../src/units/weight";
import { type Figure, figures } from "./reference";

/** Makers are invented. */
export type Cells = readonly [maker: unknown, mark: unknown, from: unknown, surcharge: unknown, ...others: unknown[]];

/** Rows as a sheet holds them, from row 5 on. */
export function rowsOf(...rows: readonly Cells[]): readonly MakerRow[] {
  return rows.map(([maker, mark, from, surcharge, minimum = "", minimumIn = ""], at) => ({
    row: 5 + at,
    cells: { maker, mark, from, surcharge, currency: "", minimum, minimumIn, lead: "", date: "", note: "" },
  }));
}

/** A price list twice: as the library takes it, and as exact rationals. */
export interface RandomSeller {
  readonly maker: string;
  readonly classes: readonly { readonly from: Figure; readonly surcharge: Figure }[];
}

/** One to three makers, each with up to three classes of weight in their order. */
export const randomSellers: fc.Arbitrary<readonly RandomSeller[]> = fc
  .array(
    fc.uniqueArray(fc.record({ from: figures(0, 200, 1), surcharge: figures(0, 9, 2) }), {
      minLength: 1,
      maxLength: 3,
      selector: ({ from }) => from.text,
    }),
    { minLength: 1, maxLength: 3 },
  )
  .map((makers) =>
    makers.map((classes, at) => ({
      maker: `Maker ${at + 1}`,
      classes: [...classes].sort((a, b) => a.from.fraction.compare(b.from.fraction)),
    })),
  );

export function sellersOfRandom(
  random: readonly RandomSeller[],
  currency: "USD" | "JPY" | "KWD" = "USD",
): readonly Seller[] {
  return random.map(({ maker, classes }) => ({
    maker,
    classes: classes.map(({ from, surcharge }) => ({
      maker,
      mark: undefined,
      from: grams(from.quotient),
      surcharge: perGram(surcharge.quotient, currency),
      minimum: undefined,
      lead: "",
      note: "",
    })),
  }));
}
