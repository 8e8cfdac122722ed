import type { CostSheet, Order, Quote, QuoteNumber, Rates, TypedOrder } from "../../src/index";
import { readBook } from "./book";
import { lineFields, quoteFields } from "./fields";
import { type FillPlan, planFill } from "./fill";
import { locale } from "./host";
import { jobSheet } from "./job";
import { paperSizeFor, putPaper } from "./paper";
import { QUOTES_TABLE } from "./quotebook";
import { numberOf, numbersTaken, sheetsOf } from "./quotenumbers";
import { addQuote, beginQuotes, quoteRow } from "./quoterow";
import { nameOf } from "./rates";
import { run } from "./run";
import { putTemplate, TEMPLATE_SHEET, templateContents } from "./template";

/** An order, costed and quoted, ready to be put into the workbook. */
export interface Job {
  readonly order: Order;
  readonly sheets: readonly CostSheet[];
  readonly quote: Quote;
  readonly rates: Rates;
  /** The order as typed, for the quotes table to keep. */
  readonly typed: TypedOrder;
  /** The quote this one revises; undefined for a new one. */
  readonly revised: QuoteNumber | undefined;
}

/** What was made. */
export interface Filled {
  readonly number: QuoteNumber;
  readonly quoteSheet: string;
  readonly jobSheet: string;
  /** Fields of the template that nobody knows, such as "{{color}} in B7". */
  readonly unknownFields: readonly string[];
  /** Whether the quote says whose it is. */
  readonly isSigned: boolean;
}

/**
 * Puts the quote, filled into a copy of the template, its job sheet and its row of the quotes table into the workbook,
 * in two syncs, three where the template computes, whatever the quote. A revision gets sheets and a row of its own.
 * On a fault nothing of it stays behind.
 */
export async function fillQuote(job: Job): Promise<Filled> {
  let begun: readonly string[] = [];
  try {
    return await run(async (context) => {
      const { template, table, sheetNames, nextNumber } = await readBook(context);
      const least = Math.max(job.quote.number.number, nextNumber);
      const number = numberOf(job.revised, least, numbersTaken(table, sheetNames));
      const names = sheetsOf(number);
      const quotesSheet = table ? undefined : freeSheetName(QUOTES_TABLE, sheetNames);
      const quote = { ...job.quote, number };
      const { cells, formats } = template ?? { cells: templateContents(), formats: [] };
      const fields = quoteFields(quote, locale());
      const lines = quote.lines.map((line) => lineFields(line, locale()));
      const plan = planFill(cells, formats, fields, lines);
      begun = [...(template ? [] : [TEMPLATE_SHEET]), ...(quotesSheet ? [quotesSheet] : []), names.quote, names.job];
      const row = quoteRow(quote, job.order, job.typed);
      const { worksheets } = context.workbook;
      if (!template) putTemplate(worksheets.add(TEMPLATE_SHEET), paperSizeFor(locale()));
      if (quotesSheet) beginQuotes(worksheets.add(quotesSheet), row, paperSizeFor(locale()));
      const sheet = copyTemplate(context, names.quote);
      fillCopy(sheet, plan, cells[0]?.length ?? 1);
      if (plan.hasFormulas) await keepValuesOnly(context, sheet);
      putJob(context, job, quote, names.job);
      if (!job.revised) {
        context.workbook.names.getItem(nameOf("nextNumber")).getRange().values = [[number.number + 1]];
      }
      // Last, since unlike a sheet a row is not taken back.
      if (table) addQuote(context, table, row);
      sheet.activate();
      await context.sync();
      return {
        number,
        quoteSheet: names.quote,
        jobSheet: names.job,
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

/** The name, or where a sheet has it already, the name with ours behind it, counted up until it is free. */
function freeSheetName(wanted: string, sheetNames: ReadonlySet<string>): string {
  for (let count = 0; ; count += 1) {
    const name = [wanted, `${wanted} (Curbwright)`][count] ?? `${wanted} (Curbwright ${count})`;
    if (!sheetNames.has(name.toLowerCase())) return name;
  }
}

function copyTemplate(context: Excel.RequestContext, name: string): Excel.Worksheet {
  const sheet = context.workbook.worksheets.getItem(TEMPLATE_SHEET).copy(Excel.WorksheetPositionType.end);
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
  putPaper(context.workbook.worksheets.add(name), {
    ...jobSheet(job.order, job.sheets, quote, job.rates).paper,
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
