import { intersect, parseReference } from "./address";
import type { Book } from "./book";
import { readCells, textOf, writeCells } from "./cells";
import type { Validation } from "./extras";

export interface Choice {
  readonly options: readonly string[];
  readonly validation: Validation;
}

/** What a cell may hold where it has a list; undefined elsewhere. */
export function choiceAt(book: Book, sheetId: string, row: number, column: number): Choice | undefined {
  const cell = { row, column, rows: 1, columns: 1 };
  const validation = book.extrasOf(sheetId).validations.find(({ rect }) => intersect(rect, cell));
  const list = validation?.rule.list;
  if (!validation || typeof list !== "object" || list === null || !("source" in list)) return undefined;
  const { source } = list;
  if (typeof source !== "string") return undefined;
  if (!source.startsWith("=")) return { validation, options: source.split(",").map((option) => option.trim()) };
  const place = sourceRange(book, sheetId, source.slice(1));
  if (!place) return undefined;
  const options = readCells(book, place.sheetId, place.rect).flat().map(textOf);
  return { validation, options: options.filter((option) => option !== "") };
}

function sourceRange(book: Book, sheetId: string, source: string) {
  const reference = parseReference(source);
  if (reference) {
    const sheet = reference.sheet === undefined ? sheetId : book.find(reference.sheet)?.getSheetId();
    return sheet === undefined ? undefined : { sheetId: sheet, rect: reference.rect };
  }
  const name = book.names.find(source, sheetId) ?? book.names.find(source);
  return name && book.names.targetOf(name);
}

/** Without a background colour the grid would write an option white on white. */
const TAG = "#F4ECD8";

/** Alt + down arrow opens the list of the selected cell, as in Excel. */
export function watchLists(book: Book): void {
  document.addEventListener(
    "keydown",
    (event) => {
      if (!event.altKey || event.key !== "ArrowDown") return;
      const sheet = book.active();
      const range = sheet.getActiveRange()?.getRange();
      const choice = range && choiceAt(book, sheet.getSheetId(), range.startRow, range.startColumn);
      if (!range || !choice) return;
      event.preventDefault();
      event.stopPropagation();
      const { startRow: row, startColumn: column } = range;
      const sheetId = sheet.getSheetId();
      sheet.getRange(row, column).showDropdown({
        location: {
          workbook: book.model,
          worksheet: sheet.getSheet(),
          unitId: book.id,
          subUnitId: sheetId,
          row,
          col: column,
        },
        type: "list",
        props: {
          options: choice.options.map((option) => ({ label: option, value: option, color: TAG })),
          onChange: ([chosen]) => {
            if (chosen !== undefined)
              writeCells(book, sheetId, { row, column, rows: 1, columns: 1 }, [[chosen]], "Values");
            return true;
          },
        },
      });
    },
    true,
  );
}
