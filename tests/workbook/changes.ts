import {
  InsertColMutation,
  InsertRowMutation,
  RemoveColMutation,
  RemoveRowMutation,
  SetRangeValuesMutation,
} from "@univerjs/preset-sheets-core";
import { around, printRect, type Rect } from "./address";
import type { Book } from "./book";
import { fromRange } from "./extent";
import { type Shift, shiftExtras } from "./extras";

/** What Excel reports through worksheets.onChanged. */
export interface Change {
  readonly sheetId: string;
  readonly address: string;
  readonly changeType: "RangeEdited" | "RowInserted" | "RowDeleted" | "ColumnInserted" | "ColumnDeleted";
  /** Whether the add-in made the change, or a person at the grid. */
  readonly byAddin: boolean;
}

const STRUCTURAL: Record<string, { axis: Shift["axis"]; sign: 1 | -1; changeType: Change["changeType"] }> = {
  [InsertRowMutation.id]: { axis: "row", sign: 1, changeType: "RowInserted" },
  [RemoveRowMutation.id]: { axis: "row", sign: -1, changeType: "RowDeleted" },
  [InsertColMutation.id]: { axis: "column", sign: 1, changeType: "ColumnInserted" },
  [RemoveColMutation.id]: { axis: "column", sign: -1, changeType: "ColumnDeleted" },
};

/** Watches the grid for changes of content, whoever makes them, so that data outside the grid can follow. */
export class Changes {
  private addinActs = false;
  private readonly listeners: ((change: Change) => void)[] = [];
  private readonly shiftListeners: ((sheetId: string, shift: Shift) => void)[] = [];

  constructor(private readonly book: Book) {
    book.engine.commands.onCommandExecuted((command, options) => {
      const params = readParams(command.params);
      if (!params || params.unitId !== book.id) return;
      const structural = STRUCTURAL[command.id];
      if (structural && params.range) this.structure(params.subUnitId, fromRange(params.range), structural);
      else if (command.id === SetRangeValuesMutation.id && !options?.onlyLocal) this.edit(params);
    });
  }

  /** Whether the add-in is making the present change. */
  get isAddin(): boolean {
    return this.addinActs;
  }

  onChanged(listener: (change: Change) => void): void {
    this.listeners.push(listener);
  }

  onShifted(listener: (sheetId: string, shift: Shift) => void): void {
    this.shiftListeners.push(listener);
  }

  /** Runs something as a change of the add-in. All that the grid does in it must happen synchronously. */
  asAddin<T>(act: () => T): T {
    this.addinActs = true;
    try {
      return act();
    } finally {
      this.addinActs = false;
    }
  }

  private structure(sheetId: string, rect: Rect, kind: (typeof STRUCTURAL)[string]): void {
    const { axis, sign, changeType } = kind;
    const at = axis === "row" ? rect.row : rect.column;
    const count = sign * (axis === "row" ? rect.rows : rect.columns);
    const shift: Shift = { axis, at, count };
    shiftExtras(this.book.extrasOf(sheetId), shift);
    for (const listener of this.shiftListeners) listener(sheetId, shift);
    const whole = axis === "row" ? { ...rect, column: 0, columns: 16_384 } : { ...rect, row: 0, rows: 1_048_576 };
    this.notify({ sheetId, address: printRect(whole), changeType, byAddin: this.addinActs });
  }

  private edit(params: Params): void {
    let edited: Rect | undefined;
    for (const [row, line] of Object.entries(params.cellValue ?? {}))
      for (const [column, cell] of Object.entries(line ?? {}))
        if (isContent(cell)) edited = around(edited, { row: Number(row), column: Number(column), rows: 1, columns: 1 });
    if (!edited) return;
    const address = printRect(edited);
    this.notify({ sheetId: params.subUnitId, address, changeType: "RangeEdited", byAddin: this.addinActs });
  }

  private notify(change: Change): void {
    for (const listener of this.listeners) listener(change);
  }
}

interface Params {
  unitId: string;
  subUnitId: string;
  range?: { startRow: number; endRow: number; startColumn: number; endColumn: number };
  cellValue?: Record<string, Record<string, unknown> | null>;
}

function readParams(params: unknown): Params | undefined {
  if (typeof params !== "object" || params === null || !("unitId" in params) || !("subUnitId" in params))
    return undefined;
  // Only mutations of the grid with these fields come here.
  return params as Params;
}

/** Whether a cell given to the grid has only looks and no content. */
export function isLook(cell: object): boolean {
  return !("v" in cell || "f" in cell || "p" in cell);
}

function isContent(cell: unknown): boolean {
  return cell === null || (typeof cell === "object" && !isLook(cell));
}
