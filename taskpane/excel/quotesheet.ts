import { addressOf } from "./address";
import type { FillPlan } from "./fill";
import { TEMPLATE_SHEET } from "./template";
import type { Area } from "./templatesheet";

/** A copy of the template at the workbook's end, under a name of its own. */
export function copyTemplate(context: Excel.RequestContext, name: string): Excel.Worksheet {
  const sheet = context.workbook.worksheets.getItem(TEMPLATE_SHEET).copy(Excel.WorksheetPositionType.end);
  sheet.name = name;
  sheet.visibility = Excel.SheetVisibility.visible;
  return sheet;
}

/** Whether a sheet's name is what Excel calls a copy of the template. */
export function isTemplateCopy(name: string): boolean {
  return name.startsWith(`${TEMPLATE_SHEET} (`) && /^\d+\)$/.test(name.slice(TEMPLATE_SHEET.length + 2));
}

/** Adds rows for further lines, then writes the planned cells and nothing else. */
export function fillCopy(sheet: Excel.Worksheet, plan: FillPlan, columns: number, printArea: Area | undefined): void {
  if (plan.repeated) {
    const { row, height, times } = plan.repeated;
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
    // First: what is written into a cell of the text format becomes text, also a number or a date.
    if (format) cell.numberFormat = [[format]];
    cell.values = [[content]];
  }
  if (plan.repeated) {
    const { row, height, times } = plan.repeated;
    sheet.getRangeByIndexes(row, 0, height * times, columns).format.autofitRows();
  }
  for (const row of plan.hidden) sheet.getRangeByIndexes(row, 0, 1, 1).getEntireRow().rowHidden = true;
  const printed = printedArea(printArea, plan);
  if (printed) {
    const area = sheet.getRangeByIndexes(printed.row, printed.column, printed.rows, printed.columns);
    sheet.pageLayout.setPrintArea(area);
  }
}

/**
 * What a copy prints: the template's area with the rows that were added. Where the area ends with the repeated rows, Excel
 * leaves out what is added under them. Undefined where nothing is to be set: without an area Excel prints all there is.
 */
export function printedArea(area: Area | undefined, { repeated }: FillPlan): Area | undefined {
  if (!area || !repeated) return undefined;
  const added = repeated.height * Math.max(0, repeated.times - 1);
  const last = repeated.row + repeated.height - 1;
  if (added === 0 || area.row + area.rows <= last) return undefined;
  // The added rows move an area down that begins below them.
  return area.row > last ? undefined : { ...area, rows: area.rows + added };
}

/**
 * What a template computes stays as its value, once Excel has computed it: a quote holds no formula. Gives the errors
 * that stay so, as "#N/A in B7".
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
