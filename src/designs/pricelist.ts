import { CostingError, found } from "../exact/errors";
import type { Quotient } from "../exact/quotient";
import { LINE_KEYS, type LineKey } from "../order/fields";
import { parseLine } from "../order/linereading";
import type { OrderLine } from "../order/orderline";
import { refuseUncosted } from "../order/uncosted";
import { type CostSheet, costLine } from "../quote/costsheet";
import { COST_LINES, type CostLine } from "../quote/piececosts";
import type { RateKey } from "../rates/raterows";
import { RATE_ROWS } from "../rates/raterows";
import { parseRates, type Rates, rateKeyOf } from "../rates/rates";
import { doubledWords, type Placed, refuseDoubles } from "../reading/doubles";
import { isBlank } from "../reading/number";
import { orThrow } from "../reading/parse";
import { wordsOf } from "../reading/words";
import { doubledHeaders, type FieldColumn, readHeaders, recordOf } from "./headers";

/** The columns of a price list, for one piece of each design, in the order they stand in unless others are asked for. */
export const PRICE_COLUMNS = {
  design: "Design",
  links: "Links",
  finished: "Finished weight",
  cast: "Cast weight",
  fineGold: "Fine gold",
  ...COST_LINES,
  landed: "Landed cost",
  landedPerGram: "Landed cost per gram",
  price: "Price",
  margin: "Margin",
} as const satisfies Record<CostLine, string> & Record<string, string>;
export type PriceColumn = keyof typeof PRICE_COLUMNS;
export const PRICE_COLUMN_KEYS = Object.keys(PRICE_COLUMNS) as readonly PriceColumn[];

type Unpriced =
  | { readonly kind: "refused"; readonly design: string; readonly error: CostingError }
  | { readonly kind: "empty" };

/** A design as its row says it; one that cannot be read, with what is wrong; or an empty row. */
export type ReadDesign = { readonly kind: "read"; readonly design: string; readonly line: OrderLine } | Unpriced;

/** A design costed and priced; one that cannot be, with what is wrong; or an empty row. */
export type PricedLine = { readonly kind: "priced"; readonly design: string; readonly sheet: CostSheet } | Unpriced;

/**
 * Reads a table of designs: a row of headers in the words of an order's line, then a row a design; a quantity left out is 1. What
 * is read can be priced at any spot. A row with a fault is refused alone.
 * Errors: wrongShape where the first row names no Design, Mark and Length.
 */
export function readDesigns(cells: readonly (readonly unknown[])[], rates: Rates): readonly ReadDesign[] {
  const [header = [], ...rows] = cells;
  const columns = designColumns(header);
  return rows.map((row) => (row.every(isBlank) ? { kind: "empty" } : readDesign(columns, row, rates)));
}

/** The columns of a table of designs. Errors: wrongShape where its first row names no Design, Mark and Length, or a field twice. */
export function designColumns(header: readonly unknown[]): readonly FieldColumn[] {
  const columns = readHeaders(header);
  const [doubled] = doubledHeaders(header);
  if (doubled) throw new CostingError("wrongShape", "lines", `found ${doubledWords(doubled)}`);
  const missing = (["design", "mark", "length"] as const).filter(
    (key) => !columns.some((column) => column.key === key),
  );
  if (missing.length > 0) {
    throw new CostingError(
      "wrongShape",
      "lines",
      "found no first row with the headers Design, Mark and Length; give the designs with their headers, in the words of the order form",
    );
  }
  return columns;
}

/** Costs and prices one design at the rates' spot, which need not be the one it was read at. */
export function priceDesign(design: ReadDesign, rates: Rates): PricedLine {
  if (design.kind !== "read") return design;
  return { kind: "priced", design: design.design, sheet: costLine(design.line, rates, rates) };
}

/** Columns of a costed and priced line; "" for the margin of a piece given away. */
export function sheetFigures(
  sheet: CostSheet,
  asked: readonly Exclude<PriceColumn, "design">[],
): readonly (Quotient | "")[] {
  return asked.map((column) => sheetFigure(sheet, column) ?? "");
}

/** One column of a priced line. Text for the design, else a figure; undefined for the margin of a piece given away. */
export function figureOf({ design, sheet }: Extract<PricedLine, { kind: "priced" }>, column: PriceColumn) {
  return column === "design" ? design : sheetFigure(sheet, column);
}

function sheetFigure(sheet: CostSheet, column: Exclude<PriceColumn, "design">): Quotient | undefined {
  switch (column) {
    case "links":
      return sheet.line.links;
    case "finished":
      return sheet.finishedWeight.grams;
    case "cast":
      return sheet.castWeight.grams;
    case "fineGold":
      return sheet.fineGold.grams;
    case "landed":
      return sheet.landed.amount;
    case "landedPerGram":
      return sheet.landedPerGram.perGram;
    case "price":
      return sheet.price.amount;
    case "margin":
      return sheet.margin;
    default:
      return sheet.costs[column].amount;
  }
}

/** The columns that words ask for, all where none do. Errors: unknownWord. */
export function readPriceColumns(words: readonly unknown[], field = "columns"): readonly PriceColumn[] {
  const asked = words.filter((word) => !isBlank(word));
  if (asked.length === 0) return PRICE_COLUMN_KEYS;
  return asked.map((word) => {
    const said = String(word).trim().toLowerCase();
    const column = PRICE_COLUMN_KEYS.find((key) => PRICE_COLUMNS[key].toLowerCase() === said);
    if (column) return column;
    const right = PRICE_COLUMN_KEYS.map((key) => `"${PRICE_COLUMNS[key]}"`).join(", ");
    throw new CostingError("unknownWord", field, `${found(word)}; give of ${right}`);
  });
}

/**
 * Rates from a range whose first column holds the words of the Rates sheet and its second the values; other rows are passed over.
 * Errors: wrongShape for a rate that stands twice.
 */
export function ratesOfCells(cells: readonly (readonly unknown[])[]): Rates {
  const placed = cells.flatMap(([label, value], at): Placed[] => {
    const key = rateKeyOf(label);
    // A heading of the sheet may be called like a rate: it has no value.
    return key && !isBlank(value) ? [{ key, what: RATE_ROWS[key].label, place: `row ${at + 1}` }] : [];
  });
  refuseDoubles(placed, "rates");
  const record = Object.fromEntries(
    cells.flatMap(([label, value]) => {
      const key = rateKeyOf(label);
      return key ? [[key, value]] : [];
    }),
  );
  return ratesOfValues(record);
}

/** Rates from their values by key. Throws their first fault. */
export function ratesOfValues(values: Readonly<Partial<Record<RateKey, unknown>>>): Rates {
  return orThrow(parseRates(values));
}

const KEYS: ReadonlySet<string> = new Set<LineKey>(LINE_KEYS);

function readDesign(columns: readonly FieldColumn[], row: readonly unknown[], rates: Rates): ReadDesign {
  const place = columns.find(({ key }) => key === "design")?.place ?? 0;
  const design = wordsOf(row[place]);
  try {
    return { kind: "read", design, line: lineOfRow(columns, row, rates) };
  } catch (error) {
    if (error instanceof CostingError) return { kind: "refused", design, error };
    throw error;
  }
}

/**
 * A row of designs as a line of an order; a quantity left out is 1. Throws its fault, also for what would count as free because
 * nobody has said its cost.
 */
export function lineOfRow(columns: readonly FieldColumn[], row: readonly unknown[], rates: Rates): OrderLine {
  const record = recordOf(columns, row, rates.currency);
  const typed = Object.fromEntries(Object.entries(record).filter(([key]) => KEYS.has(key)));
  const quantity = isBlank(typed.quantity) ? 1 : typed.quantity;
  const line = orThrow(parseLine({ ...typed, quantity }, rates));
  refuseUncosted({ line, typed, spot: rates.spot });
  return line;
}
