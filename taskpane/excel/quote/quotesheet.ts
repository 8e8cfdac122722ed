import { addressOf } from "../address";
import type { FillPlan } from "../template/fill";
import type { Area } from "../template/templatesheet";

/** A copy of the template at the end of the workbook, with its own name. */
export function copyTemplate(context: Excel.RequestContext, template: string, name: string): Excel.Worksheet {
  const sheet = context.workbook.worksheets.getItem(template).copy(Excel.WorksheetPositionType.end);
  sheet.name = name;
  sheet.visibility = Excel.SheetVisibility.visible;
  return sheet;
}

/** Whether a sheet's name is one that Excel gives a copy of the template. Excel cuts a long name to make room for the count. */
export function isTemplateCopy(name: string, template: string): boolean {
  const count = / \(\d+\)$/.exec(name);
  const before = name.slice(0, count?.index);
  return count !== null && (before === template || (name.length === LONGEST_NAME && template.startsWith(before)));
}

/** Characters that Excel allows in a sheet's name. */
const LONGEST_NAME = 31;

/** Adds rows for further lines, then writes the planned cells and nothing else. */
export function fillCopy(sheet: Excel.Worksheet, plan: FillPlan, columns: number, printArea: Area | undefined): void {
  const blocks = [plan.repeated, plan.repeatedExtras].filter((block) => block !== undefined);
  // From the lowest up, so that added rows do not move the rows above them.
  blocks.sort((a, b) => b.row - a.row);
  for (const { row, height, times } of blocks) {
    const original = sheet.getRangeByIndexes(row, 0, height, columns).getEntireRow();
    for (let line = 1; line < times; line += 1) {
      const inserted = sheet
        .getRangeByIndexes(row + height, 0, height, columns)
        .getEntireRow()
        .insert(Excel.InsertShiftDirection.down);
      inserted.copyFrom(original);
    }
  }
  for (const { row, column, content, format } of plan.writes) {
    const cell = sheet.getRangeByIndexes(row, column, 1, 1);
    // The format goes first: in a cell with the text format a number or a date would become a text.
    if (format) cell.numberFormat = [[format]];
    cell.values = [[content]];
  }
  let above = 0;
  for (const { row, height, times } of blocks.reverse()) {
    sheet.getRangeByIndexes(row + above, 0, height * times, columns).format.autofitRows();
    above += height * Math.max(0, times - 1);
  }
  for (const row of plan.hidden) sheet.getRangeByIndexes(row, 0, 1, 1).getEntireRow().rowHidden = true;
  const printed = printedArea(printArea, plan);
  if (printed) {
    const area = sheet.getRangeByIndexes(printed.row, printed.column, printed.rows, printed.columns);
    sheet.pageLayout.setPrintArea(area);
  }
}

/**
 * What a copy prints: the template's area and the rows that were added. Where the area ends with the repeated rows, Excel
 * leaves out what is added under them. Undefined where nothing is to be set: without an area Excel prints the whole sheet.
 */
export function printedArea(
  area: Area | undefined,
  { repeated, repeatedExtras }: Pick<FillPlan, "repeated" | "repeatedExtras">,
): Area | undefined {
  if (!area) return undefined;
  let [moved, grown] = [0, 0];
  for (const block of [repeated, repeatedExtras]) {
    if (!block) continue;
    const last = block.row + block.height - 1;
    const added = block.height * Math.max(0, block.times - 1);
    // The added rows move an area that begins below them, and do not change one that ends above them.
    if (area.row > last) moved += added;
    else if (area.row + area.rows > last) grown += added;
  }
  return grown === 0 ? undefined : { ...area, row: area.row + moved, rows: area.rows + grown };
}

/**
 * Replaces the template's formulas by their values, once Excel has calculated them: a quote holds no formula. Gives the errors
 * among them, as "#N/A in B7".
 */
export async function keepValuesOnly(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
): Promise<readonly string[]> {
  const used = sheet.getUsedRange();
  used.load("values,valueTypes,rowIndex,columnIndex");
  await context.sync();
  used.copyFrom(used, Excel.RangeCopyType.values);
  return used.valueTypes.flatMap((types, row) =>
    types.flatMap((type, column) =>
      type === Excel.RangeValueType.error
        ? [`${used.values[row]?.[column]} in ${addressOf(used.rowIndex + row, used.columnIndex + column)}`]
        : [],
    ),
  );
}
