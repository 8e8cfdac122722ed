import { SetSelectionsOperation, SetWorksheetActiveOperation } from "@univerjs/preset-sheets-core";
import { printRect } from "./address";
import { readCell } from "./cells";
import { choiceAt } from "./lists";
import type { State } from "./state";

/** Milliseconds. */
const HOLD = 4000;

/** The line below the grid: the sentence behind the selected cell's error, the choices of its list, or a refusal. */
export class StatusLine {
  private heldUntil = 0;

  constructor(private readonly line: HTMLElement) {}

  /** Shows why something was refused, and keeps showing it while the selection moves on after Enter. */
  refuse(sentence: string): void {
    this.heldUntil = performance.now() + HOLD;
    this.show(sentence, true);
  }

  private show(text: string, isFault: boolean): void {
    this.line.textContent = text;
    this.line.classList.toggle("fault", isFault);
  }

  /** Follows the selection. */
  watch(state: State): void {
    const show = () => {
      if (performance.now() < this.heldUntil) return;
      const { text, isFault } = statusOf(state);
      this.show(text, isFault);
    };
    state.book.engine.commands.onCommandExecuted((command) => {
      if (command.id === SetSelectionsOperation.id || command.id === SetWorksheetActiveOperation.id) setTimeout(show);
    });
    state.book.calculation.onCalculated(() => setTimeout(show));
    show();
  }
}

function statusOf({ book, faults }: State): { text: string; isFault: boolean } {
  const sheet = book.active();
  const sheetId = sheet.getSheetId();
  const range = sheet.getActiveRange()?.getRange();
  if (!range) return { text: "", isFault: false };
  const [row, column] = [range.startRow, range.startColumn];
  const cell = readCell(book, sheetId, row, column);
  if (cell.isError) {
    const address = printRect({ row, column, rows: 1, columns: 1 });
    const sentence = faults.sentence(sheetId, row, column, String(cell.value));
    return { text: `${address}: ${cell.value}${sentence ? ` ${sentence}` : ""}`, isFault: true };
  }
  const choice = choiceAt(book, sheetId, row, column);
  if (!choice) return { text: "", isFault: false };
  return { text: `One of: ${choice.options.join(", ")}. Alt + ↓ shows the list.`, isFault: false };
}
