import { CostingError, type CostingErrorCode, Quotient, type Value } from "../src/index";

/** What a function may return for one cell. */
export type Cell = number | string | boolean | CustomFunctions.Error;

/** Only these two show a sentence in Excel. */
type CellErrorCode = "invalidValue" | "notAvailable";

const CELL_ERROR: Record<CostingErrorCode, CellErrorCode> = {
  blank: "invalidValue",
  notANumber: "invalidValue",
  outOfRange: "invalidValue",
  unknownWord: "invalidValue",
  unknownMark: "invalidValue",
  ambiguousMark: "invalidValue",
  wrongShape: "invalidValue",
  tooLarge: "invalidValue",
  currencyMismatch: "invalidValue",
  belowLowestMark: "notAvailable",
  neverReached: "notAvailable",
};

/** A value as the cell shows it: the double nearest to it. Errors: tooLarge. */
export function toCell(value: Value): number | string | boolean {
  if (!(value instanceof Quotient)) return value;
  const double = value.toNumber();
  if (!Number.isFinite(double))
    throw new CostingError("tooLarge", "result", "found a result larger than a cell can hold; give smaller numbers");
  // Minus zero becomes zero.
  return double + 0;
}

/** What a formula gives for a row, as the cells it shows. Errors: tooLarge. */
export function cellsOf(result: Value | readonly Value[]): Cell[] {
  return isSeveral(result) ? result.map(toCell) : [toCell(result)];
}

function isSeveral(result: Value | readonly Value[]): result is readonly Value[] {
  return Array.isArray(result);
}

/** A fault as the cell's #VALUE! or #N/A with its sentence. */
export function toCellError(error: CostingError): CustomFunctions.Error {
  return new CustomFunctions.Error(CustomFunctions.ErrorCode[CELL_ERROR[error.code]], error.message);
}

/** A value as its cell, or its fault as a cell error. */
export function toCellOrError(value: Value | CostingError): Cell {
  if (value instanceof CostingError) return toCellError(value);
  try {
    return toCell(value);
  } catch (error) {
    if (error instanceof CostingError) return toCellError(error);
    throw error;
  }
}

/** The only place where a thrown CostingError becomes the answer of a call; any other error is our mistake and is thrown again. */
export function answer(compute: () => unknown): unknown[][] {
  try {
    return compute() as unknown[][];
  } catch (error) {
    throw error instanceof CostingError ? toCellError(error) : error;
  }
}
