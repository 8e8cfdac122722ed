import { refusalOf, sentenceOf } from "./run";

/** What is seen on looking at cells that were just written. */
export type Looked =
  | {
      readonly kind: "seen";
      /** Rows that hold something. */
      readonly rows: number;
      /** Rows of the sheet that show an error, counted from 1. */
      readonly faulty: readonly number[];
      /** Rows whose values had not come when the look ended. */
      readonly waiting: number;
    }
  /** They could not be read: nothing is known of them. */
  | { readonly kind: "unseen"; readonly sentence: string };

/** Milliseconds between two looks for values that are still to come, and how often. */
const PAUSE = 250;
const LOOKS = 40;

const STILL_TO_COME: readonly unknown[] = ["#BUSY!", "#GETTING_DATA"];

/**
 * Looks at the cells of areas that were written, at each by itself, once their values have come. It never throws: the work is done, and
 * that it cannot be read afterwards makes it no failure. One sync, and one for each look at values that are still to come.
 * @param areas asked anew at each look; at least one
 * @param headRow the row of headers, counted from 0, which counts only where it shows an error; rows above it are passed over
 */
export async function lookAt(
  context: Excel.RequestContext,
  areas: () => readonly Excel.Range[],
  { headRow = -1, looks = LOOKS }: { readonly headRow?: number | undefined; readonly looks?: number } = {},
): Promise<readonly [Looked, ...Looked[]]> {
  let ranges: readonly Excel.Range[] = [];
  try {
    for (let look = 1; ; look += 1) {
      ranges = areas();
      for (const range of ranges) range.load("values,valueTypes,rowIndex");
      await context.sync();
      const [first, ...others] = ranges.map((range) => seenIn(rowsOf(range, headRow)));
      if (!first) throw new Error("There is nothing to look at");
      if (look >= looks || [first, ...others].every(({ waiting }) => waiting === 0)) return [first, ...others];
      await new Promise((resolve) => setTimeout(resolve, PAUSE));
    }
  } catch (error) {
    // Nothing may be asked of Excel here: what is asked and not answered would end the conversation, and with it the work, in a fault.
    const unseen = { kind: "unseen", sentence: sentenceOf(refusalOf(error)) } as const;
    return [unseen, ...ranges.slice(1).map(() => unseen)];
  }
}

function seenIn(rows: ReturnType<typeof rowsOf>): Extract<Looked, { kind: "seen" }> {
  return {
    kind: "seen",
    rows: rows.filter(({ isCounted }) => isCounted).length,
    faulty: rows.filter(({ isFaulty }) => isFaulty).map(({ row }) => row),
    waiting: rows.filter(({ isWaiting }) => isWaiting).length,
  };
}

function rowsOf({ values, valueTypes, rowIndex }: Excel.Range, headRow: number) {
  return values.map((cells: readonly unknown[], at) => {
    const row = rowIndex + at;
    if (row < headRow) return { row: row + 1, isWaiting: false, isFaulty: false, isCounted: false };
    const isWaiting = cells.some((cell) => STILL_TO_COME.includes(cell));
    const isFaulty = cells.some(
      (cell, column) => valueTypes[at]?.[column] === Excel.RangeValueType.error && !STILL_TO_COME.includes(cell),
    );
    const isCounted = isFaulty || (row !== headRow && cells.some((cell) => cell !== ""));
    return { row: row + 1, isWaiting, isFaulty, isCounted };
  });
}
