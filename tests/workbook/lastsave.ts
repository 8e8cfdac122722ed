import { CellValueType, type ICellData, type Nullable, type Worksheet } from "@univerjs/core";
import type { Book } from "./book";
import { hasContent } from "./cells";

/** Why nothing would be lost at that time: the workbook held nothing of the person's, or all of it was in a file. */
export type Safe = "opened" | "saved" | "reset";

/** What would be lost with the workbook now: sheets by their present names, deleted ones by their last. */
export interface Unsaved {
  readonly since: Safe;
  readonly added: readonly string[];
  readonly changed: readonly string[];
  readonly deleted: readonly string[];
  /** Whether defined names, what add-ins save, or the order of the sheets changed. */
  readonly besides: boolean;
}

/** A workbook's content as texts to be compared, without results of formulas and without the selection. */
interface Contents {
  readonly sheets: ReadonlyMap<string, { readonly name: string; readonly text: string }>;
  readonly besides: string;
}

/**
 * What stood in the workbook when it was opened, saved or reset, and what differs from it now. It compares instead of listening:
 * whoever made a change and in whichever way, it counts, and one that was undone does not.
 */
export class LastSave {
  private safe: { readonly how: Safe; readonly contents: Contents } | undefined;

  constructor(private readonly book: Book) {}

  /** The workbook as it is now, to be noted once it is safe. */
  now(): Contents {
    const sheets = this.book.sheets().map((sheet) => {
      const id = sheet.getSheetId();
      return [id, { name: sheet.getSheetName(), text: this.sheetText(id) }] as const;
    });
    const besides = [
      sheets.map(([id]) => id),
      this.book.names.all().map(({ id: _, ...name }) => name),
      [...this.book.settings],
      this.book.structure,
    ];
    return { sheets: new Map(sheets), besides: JSON.stringify(besides) };
  }

  note(how: Safe, contents = this.now()): void {
    this.safe = { how, contents };
  }

  /** Undefined where nothing would be lost. */
  unsaved(): Unsaved | undefined {
    if (!this.safe) return undefined;
    const { how, contents: then } = this.safe;
    const now = this.now();
    const differs = [...now.sheets].filter(([id, { text }]) => then.sheets.get(id)?.text !== text);
    const unsaved = {
      since: how,
      added: differs.filter(([id]) => !then.sheets.has(id)).map(([, { name }]) => name),
      changed: differs.filter(([id]) => then.sheets.has(id)).map(([, { name }]) => name),
      deleted: [...then.sheets].filter(([id]) => !now.sheets.has(id)).map(([, { name }]) => name),
      besides: now.besides !== then.besides,
    };
    return differs.length > 0 || unsaved.deleted.length > 0 || unsaved.besides ? unsaved : undefined;
  }

  private sheetText(id: string): string {
    const sheet = this.book.worksheet(id);
    const { name, hidden, tabColor, freeze, mergeData, showGridlines, rowData, columnData } = sheet.getSnapshot();
    const merges = mergeData.map(({ startRow, startColumn, endRow, endColumn }) => [
      startRow,
      startColumn,
      endRow,
      endColumn,
    ]);
    const sizes = [
      // A row's automatic height is not content.
      Object.entries(rowData).map(([row, each]) => [row, each?.h, each?.hd]),
      Object.entries(columnData).map(([column, each]) => [column, each?.w, each?.hd]),
    ];
    return JSON.stringify([
      { name, hidden, tabColor, freeze, showGridlines },
      merges,
      sizes,
      this.cells(sheet),
      this.book.tables.all(id),
      this.book.extrasOf(id),
    ]);
  }

  private cells(sheet: Worksheet): unknown[] {
    const cells: unknown[] = [];
    sheet.getCellMatrix().forValue((row, column, cell) => {
      const content = contentOf(cell);
      const look = this.look(cell);
      if (content !== undefined || look !== "") cells.push([row, column, content, look]);
    });
    return cells;
  }

  private look(cell: Nullable<ICellData>): string {
    const style = cell?.s;
    if (!style) return "";
    const full = this.book.model.getStyles().getStyleByCell(cell);
    const text = JSON.stringify(full ?? {});
    return text === "{}" ? "" : text;
  }
}

/** What was typed or written into a cell, not what a formula gave. */
function contentOf(cell: Nullable<ICellData>): unknown {
  if (cell?.f || cell?.si) return [cell.f, cell.si];
  if (!cell || !hasContent(cell)) return undefined;
  if (cell.p) return cell.p.body?.dataStream;
  return [cell.v, cell.t === CellValueType.FORCE_STRING];
}
