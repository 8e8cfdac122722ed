import { CanceledError, CellValueType, type ICellData, isICellData } from "@univerjs/core";
import {
  SetCellEditVisibleOperation,
  SetRangeValuesCommand,
  SetRangeValuesMutation,
} from "@univerjs/preset-sheets-core";
import type { Book } from "./book";
import { isLocked } from "./cells";
import { isLook } from "./changes";
import { choiceAt } from "./lists";

/**
 * Stops a person from doing what Excel would refuse: changing locked cells of protected sheets, or typing what is not in a cell's
 * list.
 */
export function guard(book: Book, say: (text: string) => void): void {
  book.engine.commands.beforeCommandExecuted((command, options) => {
    if (command.id === SetCellEditVisibleOperation.id) return guardStart(book, command.params, say);
    if (command.id === SetRangeValuesCommand.id) return guardChoice(book, command.params, say);
    if (command.id !== SetRangeValuesMutation.id || options?.onlyLocal || book.changes.isAddin) return;
    const edit = readEdit(command.params);
    if (!edit || edit.unitId !== book.id || !book.find(edit.subUnitId)) return;
    const cells = cellsOf(edit.cellValue);
    if (book.extrasOf(edit.subUnitId).protection.on) {
      const sheet = book.worksheet(edit.subUnitId);
      if (cells.some(({ row, column }) => isLocked(sheet, row, column))) stop(say, PROTECTED);
    }
  });
}

const PROTECTED = "This sheet is protected: locked cells cannot be changed.";

function guardStart(book: Book, params: unknown, say: (text: string) => void): void {
  const isOpening = typeof params === "object" && params !== null && "visible" in params && params.visible === true;
  const sheet = book.active();
  const range = sheet.getActiveRange()?.getRange();
  if (!isOpening || !range || !book.extrasOf(sheet.getSheetId()).protection.on) return;
  if (isLocked(sheet.getSheet(), range.startRow, range.startColumn)) stop(say, PROTECTED);
}

/** Where a choice is refused, the cell's old content is written instead: stopping the command would leave the editor broken. */
function guardChoice(book: Book, params: unknown, say: (text: string) => void): void {
  if (typeof params !== "object" || params === null || !("value" in params) || !("range" in params)) return;
  const { value, range } = params;
  if (!isICellData(value) || isLook(value) || value.f || value.v === undefined || value.v === null || value.v === "")
    return;
  if (typeof range !== "object" || range === null || !("startRow" in range) || !("startColumn" in range)) return;
  const sheet = book.active();
  const [row, column] = [Number(range.startRow), Number(range.startColumn)];
  const choice = choiceAt(book, sheet.getSheetId(), row, column);
  if (!choice) return;
  const { errorAlert } = choice.validation;
  if (errorAlert.showAlert === false || errorAlert.style !== "Stop") return;
  const typed = value.t === CellValueType.BOOLEAN ? (value.v ? "TRUE" : "FALSE") : String(value.v);
  if (choice.options.some((option) => option.toLowerCase() === typed.toLowerCase())) return;
  params.value = { ...(sheet.getSheet().getCellRaw(row, column) ?? { v: null }) };
  say(String(errorAlert.message || `"${typed}" is not in the list: ${choice.options.join(", ")}`));
}

function stop(say: (text: string) => void, sentence: string): never {
  say(sentence);
  throw new CanceledError();
}

interface Edited {
  readonly row: number;
  readonly column: number;
}

function cellsOf(values: Record<string, Record<string, ICellData | null> | null>): Edited[] {
  return Object.entries(values).flatMap(([row, line]) =>
    Object.keys(line ?? {}).map((column) => ({ row: Number(row), column: Number(column) })),
  );
}

interface Edit {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly cellValue: Record<string, Record<string, ICellData | null> | null>;
}

function readEdit(params: unknown): Edit | undefined {
  if (typeof params !== "object" || params === null || !("cellValue" in params) || !params.cellValue) return undefined;
  // A mutation of the grid; its types give this shape.
  return params as Edit;
}
