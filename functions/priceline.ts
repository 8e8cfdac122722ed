import {
  CostingError,
  designColumns,
  isBlank,
  type LineTaker,
  PRICE_COLUMN_KEYS,
  type PriceColumn,
  priceInColumns,
  type RateFigures,
  rateFiguresOf,
  ratesOfCells,
  UnreadableCell,
  wordsOf,
} from "../src/index";
import { type Cell, toCellError, toCellOrError } from "./cell";
import type { Grid } from "./grid";
import { cellIn } from "./spill";

/** Every figure of a design that is priced: the columns of a price list without its name. */
const FIGURES = PRICE_COLUMN_KEYS.filter((column) => column !== "design");
/** Designs whose figures are kept, a few hundred bytes each: more than a catalogue that is filled with single cells. */
const MOST_LINES = 20_000;

/** Figures by their column, in the order of FIGURES; of a row that is refused its fault alone; of an empty row nothing. */
type Figures = readonly Cell[] | CustomFunctions.Error | undefined;

/**
 * Prices designs cell by cell. A sheet asks for one column of one design a call, each time with the same headers and rates, and for
 * the next column of a design already costed: what was read and computed is kept by what the cells say, never by where they stand.
 * So nothing can be out of date, and what is forgotten is only computed anew.
 */
export class PriceLines {
  private headers: { readonly cells: readonly unknown[]; readonly nameAt: number } | undefined;
  private rates: { readonly cells: Grid; readonly figures: RateFigures } | undefined;
  private readonly lines = new Map<string, Figures>();

  /** One column of one design; "" for an empty row. Throws what headers or rates are refused for. */
  cell(headers: readonly unknown[], line: readonly unknown[], rates: Grid, column: PriceColumn): Cell {
    const nameAt = this.readHeaders(headers);
    const workshop = this.readRates(rates);
    if (line.every(isBlank)) return "";
    if (column === "design") return wordsOf(line[nameAt]);
    const figures = this.figuresOf(headers, line, workshop);
    if (figures === undefined) return "";
    return isFigures(figures) ? (figures[FIGURES.indexOf(column)] ?? "") : figures;
  }

  private readHeaders(cells: readonly unknown[]): number {
    if (!this.headers || !isSameRow(this.headers.cells, cells)) {
      const nameAt = designColumns(cells).find(({ key }) => key === "design")?.place ?? 0;
      this.lines.clear();
      this.headers = { cells: [...cells], nameAt };
    }
    return this.headers.nameAt;
  }

  private readRates(cells: Grid): RateFigures {
    if (!this.rates || !isSame(this.rates.cells, cells)) {
      const figures = rateFiguresOf(() => ratesOfCells(cells));
      this.lines.clear();
      this.rates = { cells: cells.map((row) => [...row]), figures };
    }
    return this.rates.figures;
  }

  private figuresOf(headers: readonly unknown[], line: readonly unknown[], rates: RateFigures): Figures {
    const key = keyOf(line);
    if (key === undefined) return priced(headers, line, rates);
    if (!this.lines.has(key)) {
      if (this.lines.size >= MOST_LINES) this.lines.clear();
      this.lines.set(key, priced(headers, line, rates));
    }
    return this.lines.get(key);
  }
}

function priced(headers: readonly unknown[], line: readonly unknown[], rates: RateFigures): Figures {
  let figures: Figures;
  const taker: LineTaker = {
    take(_first, _rows, open, outputs) {
      if (open[0] === 0) figures = outputs.map((output) => cellIn(output, 0));
    },
    exact(_row, answer) {
      if (answer instanceof CostingError) figures = toCellError(answer);
      else if (answer.length > 0) figures = answer.map(toCellOrError);
    },
  };
  priceInColumns(headers, [line], rates, FIGURES, taker);
  return figures;
}

function isFigures(figures: readonly Cell[] | CustomFunctions.Error): figures is readonly Cell[] {
  return Array.isArray(figures);
}

/** What a line's cells say, told apart from what any other cells say; undefined where one is no number, text or blank. */
function keyOf(line: readonly unknown[]): string | undefined {
  for (const cell of line) {
    if (typeof cell === "number" ? !Number.isFinite(cell) : typeof cell !== "string" && !isBlank(cell))
      return undefined;
  }
  return JSON.stringify(line);
}

function isSame(one: Grid, other: Grid): boolean {
  if (one.length !== other.length) return false;
  for (let row = 0; row < one.length; row += 1) if (!isSameRow(one[row] ?? [], other[row] ?? [])) return false;
  return true;
}

function isSameRow(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at += 1) if (!isSameCell(one[at], other[at])) return false;
  return true;
}

/** An error is a new object in every call, and the same where it says the same. */
function isSameCell(one: unknown, other: unknown): boolean {
  if (one instanceof UnreadableCell && other instanceof UnreadableCell)
    return one.holds === other.holds && String(one) === String(other);
  return Object.is(one, other);
}
