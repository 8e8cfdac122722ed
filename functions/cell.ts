import { CostingError, type CostingErrorCode, Quotient, type Value } from "../src/index";

/** What Excel takes back for one cell. */
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
  // Minus zero is zero.
  return double + 0;
}

/** A fault as the cell's #VALUE! or #N/A with its sentence. */
export function toCellError(error: CostingError): CustomFunctions.Error {
  return new CustomFunctions.Error(CustomFunctions.ErrorCode[CELL_ERROR[error.code]], error.message);
}
