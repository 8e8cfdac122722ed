import { addressOf } from "../address";
import { WorkbookFault } from "../run";
import type { Block } from "./fill";
import { isBuiltIn } from "./template";

/** A rectangle of cells, counted from 0. */
export interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** The person's template as it is now. */
export interface TemplateSheet {
  /** From A1, formulas included. */
  readonly cells: Block;
  readonly formats: Block;
  /** The print area where it is one rectangle; undefined where there is none or it is several. */
  readonly printArea: Area | undefined;
}

/**
 * Asks for the template along with whatever else a batch reads; ready after its sync.
 * The answer is undefined where there is none, and throws a WorkbookFault where it could not be filled.
 */
export function askTemplate(worksheets: Excel.WorksheetCollection, name: string): () => TemplateSheet | undefined {
  const sheet = worksheets.getItemOrNullObject(name);
  sheet.load("name");
  sheet.protection.load("protected");
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load("formulas,numberFormat,rowIndex,columnIndex");
  const printed = sheet.pageLayout.getPrintAreaOrNullObject();
  printed.load("areaCount");
  printed.areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount");
  return () => {
    if (sheet.isNullObject) return undefined;
    if (sheet.protection.protected)
      throw new WorkbookFault(
        `The sheet "${name}" is protected, and so would be each quote copied from it. Take its protection off (Review, Unprotect Sheet) and try again.`,
      );
    if (used.isNullObject) throw new WorkbookFault(`The sheet "${name}" is empty. ${mendTemplate(name)}`);
    const cells = fromA1(used.formulas, used);
    const [slow] = addInFormulas(cells);
    if (slow)
      throw new WorkbookFault(
        `The sheet "${name}" computes with =CURB. in ${slow}, whose result may not be there yet when the quote keeps it. Put that formula on another sheet and write its cell here, such as =Sheet1!A1.`,
      );
    return {
      cells,
      formats: fromA1(used.numberFormat, used),
      printArea: printed.isNullObject ? undefined : areaOf(printed),
    };
  };
}

/** The sentence that says how to put a template without fields right. */
export function mendTemplate(name: string): string {
  const back = isBuiltIn(name) ? ", or delete the sheet to get the built-in one back" : ", or choose another template";
  return `Put fields such as {{customer}} or {{total}} where the quote is to say them${back}.`;
}

function fromA1(block: Block, { rowIndex, columnIndex }: Excel.Range): unknown[][] {
  return [
    ...Array.from({ length: rowIndex }, () => [] as unknown[]),
    ...block.map((row) => [...Array<unknown>(columnIndex).fill(""), ...row]),
  ];
}

function areaOf(printed: Excel.RangeAreas): Area | undefined {
  const [only, ...more] = printed.areas.items;
  if (!only || more.length > 0) return undefined;
  return { row: only.rowIndex, column: only.columnIndex, rows: only.rowCount, columns: only.columnCount };
}

/**
 * Cells whose formulas call this add-in. Excel asks for those results outside of a batch: until they come the cell shows
 * #BUSY!, which would be kept. A saved workbook may call them _xldudf_CURB_….
 */
function addInFormulas(cells: Block): string[] {
  return cells.flatMap((line, row) =>
    line.flatMap((cell, column) => {
      if (typeof cell !== "string" || !cell.startsWith("=")) return [];
      const withoutTexts = cell.replace(/"[^"]*"/g, "");
      return /(^|[^\p{L}\p{N}_.])(_xldudf_CURB_|CURB\.)/iu.test(withoutTexts) ? [addressOf(row, column)] : [];
    }),
  );
}
