import type { CostSheet, Order, Quote, Rates } from "../../src/index";
import { lineFields, quoteFields } from "./fields";
import { type Block, type FillPlan, planFill } from "./fill";
import { locale } from "./host";
import { jobPaper } from "./job";
import { paperSizeFor, putPaper } from "./paper";
import { nameOf } from "./rates";
import { run, WorkbookFault } from "./run";
import { putTemplate, TEMPLATE_SHEET, templateContents } from "./template";

/** An order, costed and quoted, ready to be put into the workbook. */
export interface Job {
  readonly order: Order;
  readonly sheets: readonly CostSheet[];
  readonly quote: Quote;
  readonly rates: Rates;
}

/** What was made. */
export interface Filled {
  readonly quoteSheet: string;
  readonly jobSheet: string;
  /** Fields of the template that nobody knows, such as "{{color}} in B7". */
  readonly unknownFields: readonly string[];
  /** Whether the quote says whose it is. */
  readonly isSigned: boolean;
}

interface Template {
  readonly cells: Block;
  readonly formats: Block;
}

const quoteName = (number: number) => `Quote ${number}`;
const jobName = (number: number) => `Job ${number}`;

/**
 * Puts the quote, filled into a copy of the template, and its job sheet into the workbook, in two syncs, three where the template computes,
 * whatever the quote.
 * On a fault nothing of it stays behind. The quote number is the next whose two sheet names are free.
 */
export async function fillQuote(job: Job): Promise<Filled> {
  let begun: readonly string[] = [];
  try {
    return await run(async (context) => {
      const { template, sheetNames } = await readTemplate(context);
      const number = freeNumber(job.quote.number, sheetNames);
      const quote = { ...job.quote, number };
      const { cells, formats } = template ?? { cells: templateContents(), formats: [] };
      const fields = quoteFields(quote, locale());
      const lines = quote.lines.map((line) => lineFields(line, locale()));
      const plan = planFill(cells, formats, fields, lines);
      begun = [...(template ? [] : [TEMPLATE_SHEET]), quoteName(number), jobName(number)];
      const sheet = copyTemplate(context, template !== undefined, quoteName(number));
      fillCopy(sheet, plan, cells[0]?.length ?? 1);
      if (plan.hasFormulas) await keepValuesOnly(context, sheet);
      putJob(context, job, quote, jobName(number));
      context.workbook.names.getItem(nameOf("nextNumber")).getRange().values = [[number + 1]];
      sheet.activate();
      await context.sync();
      return {
        quoteSheet: quoteName(number),
        jobSheet: jobName(number),
        unknownFields: plan.unknown,
        isSigned: quote.workshop !== "",
      };
    });
  } catch (error) {
    // What went wrong first is what the person must hear, also where taking back fails.
    await takeBack(begun).catch(() => undefined);
    throw error;
  }
}

/** The template's cells from A1, undefined where there is no template yet, and the names that sheets have. */
async function readTemplate(
  context: Excel.RequestContext,
): Promise<{ template: Template | undefined; sheetNames: ReadonlySet<string> }> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  const sheet = worksheets.getItemOrNullObject(TEMPLATE_SHEET);
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load("formulas,numberFormat,rowIndex,columnIndex");
  await context.sync();
  const sheetNames = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
  if (!sheetNames.has(TEMPLATE_SHEET.toLowerCase())) return { template: undefined, sheetNames };
  if (used.isNullObject)
    throw new WorkbookFault(
      `The sheet "${TEMPLATE_SHEET}" is empty. Delete it to get the built-in one back, or put fields such as {{customer}} into it.`,
    );
  const fromA1 = (block: Block) => [
    ...Array.from({ length: used.rowIndex }, () => [] as unknown[]),
    ...block.map((row) => [...Array<unknown>(used.columnIndex).fill(""), ...row]),
  ];
  return { template: { cells: fromA1(used.formulas), formats: fromA1(used.numberFormat) }, sheetNames };
}

function freeNumber(first: number, sheetNames: ReadonlySet<string>): number {
  let number = first;
  while (sheetNames.has(quoteName(number).toLowerCase()) || sheetNames.has(jobName(number).toLowerCase())) number += 1;
  return number;
}

function copyTemplate(context: Excel.RequestContext, hasTemplate: boolean, name: string): Excel.Worksheet {
  const { worksheets } = context.workbook;
  if (!hasTemplate) putTemplate(worksheets.add(TEMPLATE_SHEET), paperSizeFor(locale()));
  const sheet = worksheets.getItem(TEMPLATE_SHEET).copy(Excel.WorksheetPositionType.end);
  sheet.name = name;
  sheet.visibility = Excel.SheetVisibility.visible;
  return sheet;
}

/** Adds rows for further lines, then writes the planned cells and nothing else. */
function fillCopy(sheet: Excel.Worksheet, plan: FillPlan, columns: number): void {
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
    if (format) cell.numberFormat = [[format]];
    cell.values = [[content]];
  }
  if (plan.repeated) {
    const { row, height, times } = plan.repeated;
    sheet.getRangeByIndexes(row, 0, height * times, columns).format.autofitRows();
  }
  for (const row of plan.hidden) sheet.getRangeByIndexes(row, 0, 1, 1).getEntireRow().rowHidden = true;
}

/** What a template computes stays as its value, once Excel has computed it: a quote holds no formula. */
async function keepValuesOnly(context: Excel.RequestContext, sheet: Excel.Worksheet): Promise<void> {
  await context.sync();
  const used = sheet.getUsedRange();
  used.copyFrom(used, Excel.RangeCopyType.values);
}

function putJob(context: Excel.RequestContext, job: Job, quote: Quote, name: string): void {
  const [costed] = job.sheets;
  if (!costed) return;
  putPaper(context.workbook.worksheets.add(name), {
    ...jobPaper(job.order, costed, quote, job.rates),
    size: paperSizeFor(locale()),
  });
}

/** Takes out what a failed fill had begun: sheets that were not there before it. */
async function takeBack(begun: readonly string[]): Promise<void> {
  if (begun.length === 0) return;
  await run(async (context) => {
    const sheets = begun.map((name) => context.workbook.worksheets.getItemOrNullObject(name));
    for (const sheet of sheets) sheet.load("name");
    await context.sync();
    for (const sheet of sheets) if (!sheet.isNullObject) sheet.delete();
    await context.sync();
  });
}
