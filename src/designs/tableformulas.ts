import type { Value } from "../columns/answers";
import type { Cells } from "../columns/cells";
import { CostingError } from "../exact/errors";
import { LINE_FIELDS, type LineKey } from "../order/fields";
import type { OrderLine } from "../order/orderline";
import { costLine } from "../quote/costsheet";
import type { Rates } from "../rates/rates";
import { isBlank } from "../reading/number";
import type { Currency } from "../units/currency";
import { type FieldColumn, recordOf, standAsTheyAre } from "./headers";
import { designColumns, lineOfRow, type PriceColumn, sheetFigures } from "./pricelist";
import type { RateFigures } from "./rateinputs";
import { type LineColumn, LineColumns, type LineTaker } from "./tablerunner";

const MOST_LAYOUTS = 8;

const byLayout = new Map<string, LineColumns>();

/** Figures, texts and booleans that rest on one line of an order and the rates alone. Throws a fault. */
export interface LineFormula {
  /** Another for each formula. */
  readonly name: string;
  readonly of: (line: OrderLine, rates: Rates) => readonly Value[];
}

/**
 * The figures of a price list, computed in columns: the nearest doubles of the exact figures that priceDesign gives. A design's name
 * is no figure. Errors: wrongShape as of readDesigns.
 */
export function priceInColumns(
  header: readonly unknown[],
  rows: Cells,
  rates: RateFigures,
  asked: readonly Exclude<PriceColumn, "design">[],
  to: LineTaker,
): void {
  const formula = {
    name: asked.join(),
    of: (line: OrderLine, workshop: Rates) => sheetFigures(costLine(line, workshop, workshop), asked),
  };
  computeLines(header, rows, rates, formula, to);
}

/** Computes a formula for a table of designs, in columns, to the same bits as row by row. An empty row has no values. Errors: wrongShape. */
export function computeLines(
  header: readonly unknown[],
  rows: Cells,
  { rates, figures, words }: RateFigures,
  formula: LineFormula,
  to: LineTaker,
): void {
  const columns = designColumns(header);
  const lines = columns.flatMap(({ key }) => (isLineKey(key) ? [key] : []));
  const fields = figures.map(({ field }) => field);
  // The figures are told apart by their places, so those of which no word tells must be the same too.
  const layout = JSON.stringify([columns.map(({ key, unit }) => [key, unit]), formula.name, words, fields]);
  const known = byLayout.get(layout) ?? new LineColumns(lines.map(lineColumn), figures);
  if (!byLayout.has(layout) && byLayout.size >= MOST_LAYOUTS) byLayout.clear();
  byLayout.set(layout, known);
  const compute = (row: number) => {
    const cells = rows[row] ?? [];
    return cells.every(isBlank) ? [] : formula.of(lineOfRow(columns, cells, rates), rates);
  };
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

/** A row's cells in the order of the fields, changed to the fields' own units. */
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
    // No field takes a boolean, so the row goes the exact way, which tells what is wrong.
    if (error instanceof CostingError) return keys.map(() => true);
    throw error;
  }
}

/** Figures are read by readNumber, and by it alone; on a person's own words no cost rests. */
function lineColumn(key: LineKey): LineColumn {
  const { label, is } = LINE_FIELDS[key];
  return { field: label, kind: is === "figure" || is === "text" ? is : "word" };
}

function isLineKey(key: string): key is LineKey {
  return Object.hasOwn(LINE_FIELDS, key);
}
