import { MAKER_TABLE } from "../makeorbuy/makertable";
import { ASKING_TABLE } from "../market/askingtable";
import { QUOTES_TABLE } from "../quote/quotebook";
import { readAfterEdit, run, WorkbookFault } from "../run";
import { FINISHER_TABLE } from "../weights/finishertable";
import { LINK_TABLE } from "../weights/linktable";
import { WEIGH_IN_TABLE } from "../weights/weighingtable";

/** Where designs are read from. */
export type DesignsChoice =
  | { readonly kind: "table"; readonly name: string }
  | { readonly kind: "selection" }
  /** Cells that were read before, as they stand now. */
  | { readonly kind: "range"; readonly of: Designs };

/** A table of designs as it stands in the workbook. */
export interface Designs {
  readonly sheet: string;
  readonly sheetId: string;
  /** Of the first header, counted from 0. */
  readonly row: number;
  readonly column: number;
  /** The name of an Excel table; undefined for a plain range. */
  readonly table: string | undefined;
  /** The row of headers, then the rows of designs. */
  readonly cells: readonly (readonly unknown[])[];
}

/** Our own tables that hold no designs. */
const OTHERS: readonly string[] = [QUOTES_TABLE, WEIGH_IN_TABLE, LINK_TABLE, FINISHER_TABLE, MAKER_TABLE, ASKING_TABLE];

/** The workbook's tables that may hold designs, by name. */
export async function listTables(): Promise<readonly string[]> {
  return readAfterEdit(async (context) => {
    const { tables } = context.workbook;
    tables.load("items/name");
    await context.sync();
    return tables.items.map(({ name }) => name).filter((name) => !OTHERS.includes(name));
  });
}

const NONE = {
  table: "That table is no longer in the workbook. Choose another, or select the designs.",
  cells:
    "The selection holds no designs. Select them with their row of headers, such as Design, Mark, Length, and try again.",
};

/** Reads a table, or the part of the selection that holds something, in one sync. @param none what is said where there is nothing to read */
export async function readChosen(choice: DesignsChoice, none: typeof NONE = NONE): Promise<Designs> {
  return run(async (context) => {
    const table = choice.kind === "table" ? context.workbook.tables.getItemOrNullObject(choice.name) : undefined;
    table?.load("name");
    const range = table?.getRange() ?? rangeOf(context, choice);
    range.load("values,rowIndex,columnIndex,worksheet/name,worksheet/id");
    await context.sync();
    if (table?.isNullObject) {
      throw new WorkbookFault(none.table);
    }
    if (range.isNullObject || range.values.length < 2 || (range.values[0] ?? []).length < 2) {
      throw new WorkbookFault(none.cells);
    }
    return {
      sheet: range.worksheet.name,
      sheetId: range.worksheet.id,
      row: range.rowIndex,
      column: range.columnIndex,
      table: table?.name,
      cells: range.values,
    };
  });
}

function rangeOf(context: Excel.RequestContext, choice: DesignsChoice): Excel.Range {
  if (choice.kind !== "range") return context.workbook.getSelectedRange().getUsedRangeOrNullObject(true);
  const { sheetId, row, column, cells } = choice.of;
  const sheet = context.workbook.worksheets.getItemOrNullObject(sheetId);
  return sheet.getRangeByIndexes(row, column, cells.length, cells[0]?.length ?? 1);
}
