import { isBlank, type OwnLinkCells } from "../../../src/index";
import { readAfterEdit, WorkbookFault } from "../run";
import { askTable, type TableReading } from "../tables/plannedtable";
import { LINK_PLAN } from "../weights/linktable";
import { type RowsReading, rowsOf } from "../weights/scalebook";
import { ASKING_PLAN, type AskingTableColumn } from "./askingtable";

/** A row of the table of asking prices, as its cells read. */
export type AskingCells = Readonly<Record<AskingTableColumn, unknown>>;

/** The workbook's asking prices, and the workshop's own links that they are compared with. */
export interface AskingBook {
  readonly askings: RowsReading<AskingCells>;
  /** The sheet of the asking prices; undefined where there is none yet, or none that can be read. */
  readonly sheet: string | undefined;
  readonly links: RowsReading<OwnLinkCells>;
}

/** Reads both tables in one sync. Each is read even where the other cannot be. */
export async function readAskingBook(): Promise<AskingBook> {
  return readAfterEdit(async (context) => {
    const askings = askTable(context, ASKING_PLAN);
    const links = askTable(context, LINK_PLAN);
    await context.sync();
    return { ...askingsOf(askings), links: rowsOf(links) };
  });
}

/** Whether a row holds anything of an asking price. */
export function isFilled({ price, mark, weight }: AskingCells): boolean {
  return ![price, mark, weight].every(isBlank);
}

function askingsOf(asked: () => TableReading<AskingTableColumn> | undefined): Pick<AskingBook, "askings" | "sheet"> {
  try {
    const reading = asked();
    return { askings: { ok: true, rows: reading?.rows.filter(isFilled) ?? [] }, sheet: reading?.sheet };
  } catch (error) {
    if (error instanceof WorkbookFault) return { askings: { ok: false, sentence: error.message }, sheet: undefined };
    throw error;
  }
}
