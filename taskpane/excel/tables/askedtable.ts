import { run, WorkbookFault } from "../run";
import { askTable, type TableReading } from "./plannedtable";
import type { TablePlan } from "./tableplan";

/** A table to be written into, once it was asked for. */
export interface AskedTable<K extends string> {
  /** Whether there is none yet. */
  readonly isMissing: boolean;
  /** Errors: WorkbookFault where a column is gone, or where its sheet is protected. */
  read(): TableReading<K>;
}

/**
 * Asks for a table that is to be written into. Errors: WorkbookFault where the table is missing and something else has its name.
 */
export function askToWrite<K extends string>(context: Excel.RequestContext, plan: TablePlan<K>): () => AskedTable<K> {
  const { name } = plan;
  const asked = askTable(context, plan, true);
  const { protection } = context.workbook.tables.getItemOrNullObject(name).worksheet;
  protection.load("protected");
  const table = context.workbook.tables.getItemOrNullObject(name);
  table.load("name");
  const sameName = context.workbook.names.getItemOrNullObject(name);
  sameName.load("name");
  return () => {
    if (table.isNullObject && !sameName.isNullObject) {
      throw new WorkbookFault(
        `A table of ours is to be called ${name}, but a defined name is called so already. Give that another name (Formulas, Name Manager) and try again.`,
      );
    }
    return {
      isMissing: table.isNullObject,
      read() {
        const reading = asked();
        if (!reading) throw new Error(`${name} is not there to be read`);
        if (protection.protected) {
          throw new WorkbookFault(
            `The sheet with the table ${name} is protected. Take its protection off (Review, Unprotect Sheet) and try again.`,
          );
        }
        return reading;
      },
    };
  };
}

/** Deletes sheets that were added for something that failed. */
export async function takeBack(sheets: readonly string[]): Promise<void> {
  await run(async (context) => {
    const found = sheets.map((name) => context.workbook.worksheets.getItemOrNullObject(name));
    for (const sheet of found) sheet.load("name");
    await context.sync();
    for (const sheet of found) if (!sheet.isNullObject) sheet.delete();
    await context.sync();
  });
}
