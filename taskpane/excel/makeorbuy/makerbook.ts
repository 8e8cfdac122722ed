import type { MakerKey, MakerRow } from "../../../src/index";
import { locale } from "../host";
import { paperSizeFor } from "../paper";
import { readAfterEdit, run, WorkbookFault } from "../run";
import { freeSheetName } from "../sheetname";
import { type AskedTable, askToWrite, takeBack } from "../tables/askedtable";
import { askTable, beginTable, begunReading, putRow, type TableReading, type Written } from "../tables/plannedtable";
import type { TypedCells } from "../tables/tableplan";
import { MAKER_PLAN } from "./makertable";

/** What the workbook holds of makers' price lists; a table that cannot be read has a sentence in place of rows. */
export type MakersReading =
  | { readonly kind: "none" }
  | { readonly kind: "read"; readonly sheet: string; readonly rows: readonly MakerRow[] }
  | { readonly kind: "refused"; readonly sentence: string };

/** Reads the price lists in one sync. Rows are counted as the sheet counts them. */
export async function readMakers(): Promise<MakersReading> {
  return readAfterEdit(async (context) => {
    const asked = askTable(context, MAKER_PLAN);
    const range = context.workbook.tables.getItemOrNullObject(MAKER_PLAN.name).getRange();
    range.load("rowIndex");
    await context.sync();
    try {
      const reading = asked();
      if (!reading) return { kind: "none" };
      const rows = reading.rows.map((cells, at) => ({ row: range.rowIndex + 2 + at, cells }));
      return { kind: "read", sheet: reading.sheet, rows };
    } catch (error) {
      if (error instanceof WorkbookFault) return { kind: "refused", sentence: error.message };
      throw error;
    }
  });
}

/** Adds the table on its own sheet, where there is none yet, and shows it. */
export async function beginMakers(): Promise<void> {
  await write((context, { sheet }) => {
    const shown = context.workbook.worksheets.getItem(sheet);
    shown.activate();
  });
}

/** Adds a class of a maker's price list; adds the table first where there is none yet. */
export async function addMaker(typed: TypedCells<MakerKey>): Promise<void> {
  await write((context, table) => putRow(context, MAKER_PLAN, table, typed, unchanged));
}

/** The table has no formulas to change. */
const unchanged: Written = (formula) => formula;

async function write(put: (context: Excel.RequestContext, table: TableReading<MakerKey>) => void): Promise<void> {
  const begun: string[] = [];
  try {
    await run(async (context) => {
      const { worksheets, protection } = context.workbook;
      worksheets.load("items/name");
      protection.load("protected");
      const asked = askToWrite(context, MAKER_PLAN);
      await context.sync();
      const table = asked();
      if (table.isMissing && protection.protected) {
        throw new WorkbookFault(
          "The workbook is protected against new sheets. Take that protection off (Review, Protect Workbook) and try again.",
        );
      }
      put(context, readOrBegin(context, table, new Set(worksheets.items.map(({ name }) => name.toLowerCase())), begun));
      await context.sync();
    });
  } catch (error) {
    // The person must hear of the first error, even where taking back fails too.
    if (begun.length > 0) await takeBack(begun).catch(() => undefined);
    throw error;
  }
}

function readOrBegin(
  context: Excel.RequestContext,
  table: AskedTable<MakerKey>,
  taken: ReadonlySet<string>,
  begun: string[],
): TableReading<MakerKey> {
  if (!table.isMissing) return table.read();
  const name = freeSheetName(MAKER_PLAN.sheet, taken);
  begun.push(name);
  beginTable(context.workbook.worksheets.add(name), MAKER_PLAN, paperSizeFor(locale()));
  return begunReading(MAKER_PLAN, name);
}
