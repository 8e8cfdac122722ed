import type { Cells } from "./columnread";
import type { Currency } from "./currency";
import { CostingError } from "./errors";
import { type FieldColumn, recordOf, standAsTheyAre } from "./headers";
import { COUNTED } from "./headerwords";
import { type LineColumn, LineColumns, type LineTaker } from "./linecolumns";
import { LINE_LABELS, type LineKey } from "./orderwords";
import { designColumns, type PriceColumn, priceFigures } from "./pricelist";
import type { RateFigures } from "./ratefigures";

/** A person's own words, which no cost rests on. */
const TEXTS: readonly LineKey[] = ["design", "colourName", "findings", "engraving", "stoneKind", "claspStoneKind"];
/** Figures that count no unit. All fields named here and in COUNTED are read by readNumber, and by it alone. */
const FIGURES: readonly LineKey[] = [
  "quantity",
  "stoneEvery",
  "stoneCount",
  "stonesPerLink",
  "stoneGravity",
  "stoneCarat",
  "claspStoneCount",
  "claspStoneGravity",
  "claspStoneCarat",
  "breakage",
  "linePriceFigure",
];
const MOST_LAYOUTS = 8;

const byLayout = new Map<string, LineColumns>();

/**
 * Costs and prices a table of designs as priceLines does, in columns: the nearest doubles of the same exact figures.
 * Columns asked for are figures: the design's name is not among them.
 * Errors: wrongShape as of priceLines.
 */
export function priceInColumns(
  header: readonly unknown[],
  rows: Cells,
  { rates, figures, words }: RateFigures,
  asked: readonly Exclude<PriceColumn, "design">[],
  to: LineTaker,
): void {
  const columns = designColumns(header);
  const lines = columns.flatMap(({ key }) => (isLineKey(key) ? [key] : []));
  const layout = JSON.stringify([columns.map(({ key, unit }) => [key, unit]), asked, words]);
  const known =
    byLayout.get(layout) ??
    new LineColumns(
      lines.map(lineColumn),
      figures.map(({ field }) => field),
    );
  if (!byLayout.has(layout) && byLayout.size >= MOST_LAYOUTS) byLayout.clear();
  byLayout.set(layout, known);
  const compute = (row: number) => priceFigures(columns, rows[row] ?? [], rates, asked);
  if (standAsTheyAre(columns, rates.currency)) {
    const places = lines.map((wanted) => columns.find(({ key }) => key === wanted)?.place ?? -1);
    known.run(rows, places, figures, compute, to);
  } else {
    const changed = rows.map((row) => inOwnUnits(columns, lines, row, rates.currency));
    known.run(
      changed,
      lines.map((_, place) => place),
      figures,
      compute,
      to,
    );
  }
}

/** A row's cells in the order of the lines' fields, changed to the fields' own units. */
function inOwnUnits(
  columns: readonly FieldColumn[],
  keys: readonly LineKey[],
  row: readonly unknown[],
  currency: Currency,
): readonly unknown[] {
  try {
    const record = recordOf(columns, row, currency);
    return keys.map((key) => record[key]);
  } catch (error) {
    // No cell of a design is a truth: the exact reading looks at the row.
    if (error instanceof CostingError) return keys.map(() => true);
    throw error;
  }
}

function lineColumn(key: LineKey): LineColumn {
  const isFigure = COUNTED[key] !== undefined || FIGURES.includes(key);
  return { field: LINE_LABELS[key], kind: isFigure ? "figure" : TEXTS.includes(key) ? "text" : "word" };
}

function isLineKey(key: string): key is LineKey {
  return Object.hasOwn(LINE_LABELS, key);
}
