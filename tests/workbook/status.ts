import { SetSelectionsOperation, SetWorksheetActiveOperation } from "@univerjs/preset-sheets-core";
import { printRect } from "./address";
import { readCell } from "./cells";
import type { State } from "./state";

/** Keeps the status line saying what the selected cell has to say: the sentence behind its error. */
export function showStatus(state: State, line: HTMLElement): void {
  const show = () => {
    const { text, isFault } = statusOf(state);
    line.textContent = text;
    line.classList.toggle("fault", isFault);
  };
  state.book.engine.commands.onCommandExecuted((command) => {
    if (command.id === SetSelectionsOperation.id || command.id === SetWorksheetActiveOperation.id) setTimeout(show);
  });
  state.book.calculation.onCalculated(() => setTimeout(show));
  show();
}

function statusOf({ book, faults }: State): { text: string; isFault: boolean } {
  const sheet = book.active();
  const range = sheet.getActiveRange()?.getRange();
  if (!range) return { text: "", isFault: false };
  const [row, column] = [range.startRow, range.startColumn];
  const cell = readCell(book, sheet.getSheetId(), row, column);
  if (!cell.isError) return { text: "", isFault: false };
  const address = printRect({ row, column, rows: 1, columns: 1 });
  const sentence = faults.sentence(sheet.getSheetId(), row, column, String(cell.value));
  return { text: `${address}: ${cell.value}${sentence ? ` ${sentence}` : ""}`, isFault: true };
}
