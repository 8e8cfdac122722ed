import { parseReference, printReference, type Rect } from "./address";
import { cellBox, scrollTo } from "./box";
import { readCells, textOf } from "./cells";
import { localTime } from "./clock";
import { toRange } from "./extent";
import type { PageSetup } from "./extras";
import type { LogEntry } from "./host";
import { keepBook } from "./keeping";
import type { KeptBook } from "./kept";
import { readFailure } from "./mood";
import { painted } from "./painting";
import { printHtml } from "./print";
import { type State, settled } from "./state";

/** One cell as tests read it. */
export interface ReadCell {
  value: string | number | boolean;
  formula: string;
  text: string;
  error?: { code: string; sentence: string };
}

/** What end-to-end tests ask of the page, as window.workbookPage. Addresses are in A1 form; sheets are given by name. */
export interface WorkbookPage {
  /** Resolves when the grid is drawn, the pane has loaded and its functions answer. */
  readonly ready: Promise<void>;
  settled(): Promise<void>;
  read(sheet: string, address: string): ReadCell[][];
  sheets(): { name: string; visibility: string }[];
  names(): { name: string; formula: string; comment: string; visible: boolean; sheet?: string }[];
  tables(): { name: string; sheet: string; address: string }[];
  select(sheet: string, address: string): void;
  /** Where a cell is drawn, in pixels of the page, scrolled into sight. */
  cellBox(sheet: string, address: string): Promise<{ x: number; y: number; width: number; height: number }>;
  /** The active sheet and its active cell, as "Designs!B2". */
  active(): string;
  /** How a sheet would be printed, with the HTML that is printed. */
  print(sheet: string): { setup: PageSetup; html: string };
  /** The requests of the add-in so far, without those that office.js makes for itself, such as releasing ranges. */
  readonly syncCount: number;
  readonly log: readonly LogEntry[];
  /** Whether a cell is being edited. */
  readonly isEditing: boolean;
  /** Refuses every request of the add-in with one of Excel's codes, until it is called without a code. */
  refuse(code?: string): void;
  /** Refuses one of the requests that follow, as mood.ts reads it: "AccessDenied@2.5". */
  fail(planned: string): void;
  /** Lets so many requests of the add-in pass, and holds those that follow until `letGo`. */
  hold(after: number): void;
  letGo(): void;
  reset(): Promise<void>;
  /** Workbook and pane as they were when the page opened, without loading the page again. */
  renew(): Promise<void>;
  /** The workbook as an .xlsx file, in base64. */
  saveXlsx(): Promise<string>;
  /** The workbook as plain data, without the version that wrote it; `?book=kept/…` opens it again. */
  keep(): Promise<Omit<KeptBook, "version">>;
}

declare global {
  interface Window {
    workbookPage: WorkbookPage;
  }
}

export function offerApi(state: State, ready: Promise<void>, locale: string): void {
  const { book, host, faults } = state;
  const place = (sheet: string, address: string): { id: string; rect: Rect } => {
    const reference = parseReference(address);
    if (!reference) throw new Error(`"${address}" is no address`);
    return { id: book.sheet(sheet).getSheetId(), rect: reference.rect };
  };
  window.workbookPage = {
    ready,
    settled: () => settled(state),
    read: (sheet, address) => {
      const { id, rect } = place(sheet, address);
      return readCells(book, id, rect).map((line, i) =>
        line.map((cell, j) => {
          const { value, formula } = cell;
          const sentence = faults.sentence(id, rect.row + i, rect.column + j, String(value)) ?? "";
          const error = cell.isError ? { error: { code: String(value), sentence } } : {};
          return { value, formula, text: textOf(cell), ...error };
        }),
      );
    },
    sheets: () =>
      book.sheets().map((sheet) => {
        const hidden = book.extrasOf(sheet.getSheetId()).veryHidden ? "VeryHidden" : "Hidden";
        return { name: sheet.getSheetName(), visibility: sheet.isSheetHidden() ? hidden : "Visible" };
      }),
    names: () =>
      book.names.all().map(({ name, formula, comment, visible, sheetId }) => {
        const sheet = sheetId === undefined ? {} : { sheet: book.sheet(sheetId).getSheetName() };
        return { name, formula, comment, visible, ...sheet };
      }),
    tables: () =>
      book.tables.all().map(({ name, sheetId, rect }) => {
        const sheet = book.sheet(sheetId).getSheetName();
        return { name, sheet, address: printReference(sheet, rect) };
      }),
    select: (sheet, address) => {
      const { id, rect } = place(sheet, address);
      book.activate(id);
      book.sheet(id).getRange(toRange(rect)).activate();
    },
    cellBox: async (sheet, address) => {
      const { id, rect } = place(sheet, address);
      book.activate(id);
      await painted();
      scrollTo(book, id, rect.row, rect.column);
      await painted();
      return cellBox(book, id, rect.row, rect.column);
    },
    active: () => {
      const sheet = book.active();
      const cell = sheet.getActiveCell();
      const [row, column] = [cell?.getRow() ?? 0, cell?.getColumn() ?? 0];
      return printReference(sheet.getSheetName(), { row, column, rows: 1, columns: 1 });
    },
    print: (sheet) => {
      const { id } = place(sheet, "A1");
      return { setup: structuredClone(book.extrasOf(id).page), html: printHtml(book, id) };
    },
    get syncCount() {
      return host.syncCount;
    },
    get log() {
      return host.log;
    },
    get isEditing() {
      return host.mood.isEditing;
    },
    refuse: (code) => host.mood.refuse(code),
    fail: (planned) => host.mood.fail(readFailure(planned)),
    hold: (after) => host.mood.hold(after),
    letGo: () => host.mood.letGo(),
    reset: () => state.reset(),
    renew: () => state.renew(),
    saveXlsx: async () => {
      await settled(state);
      const { saveXlsx } = await import("./xlsx");
      return saveXlsx(book);
    },
    keep: async () => {
      await settled(state);
      return { locale, clock: localTime(new Date()), ...keepBook(book) };
    },
  };
}
