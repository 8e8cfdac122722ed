import { type OrderForm, parseOrder } from "../../../src/order/order";
import type { QuoteNumber } from "../../../src/order/quotenumber";
import { costOrder } from "../../../src/quote/costsheet";
import { makeQuote } from "../../../src/quote/quote";
import { NOT_KNOWN, termsOf } from "../../../src/rates/quotedterms";
import type { RateKey } from "../../../src/rates/raterows";
import { parseRates } from "../../../src/rates/rates";
import { jobSheet } from "../../../taskpane/excel/job/jobsheet";
import { contentsOf, type Paper } from "../../../taskpane/excel/paper";
import { copyTemplate, fillCopy, printedArea } from "../../../taskpane/excel/quote/quotesheet";
import { extraFields, lineFields, quoteFields } from "../../../taskpane/excel/template/fields";
import { type Block, planFill } from "../../../taskpane/excel/template/fill";
import { ticketsPaper } from "../../../taskpane/excel/tickets/ticketspaper";
import { type Record_, read } from "../../src/orders";
import type { Desk } from "../../workbook/desk";
import { settled } from "../../workbook/person.mjs";

const NUMBER: QuoteNumber = { number: 2001, revision: "" };

/** The job sheet and the tickets of an order, as the add-in would lay them out for quote 2001. */
export function papersOf(form: OrderForm, record: Record_, missing: readonly RateKey[] = []) {
  const rates = read(parseRates(record));
  const order = read(parseOrder(form, rates));
  const sheets = costOrder(order, rates);
  const made = makeQuote(order, sheets, rates, "2026-11-25");
  const quote = { ...made.quote, number: NUMBER };
  const job = jobSheet(order, sheets, quote, rates, termsOf(rates, NOT_KNOWN), missing);
  return { order, sheets, quote, watch: made.watch, job, tickets: ticketsPaper(sheets, quote, job, "Job 2001") };
}

/** Puts a paper's contents on a sheet of its own, through the pane's office.js; an older sheet of that name goes. */
export async function putContents(desk: Desk, name: string, paper: Paper): Promise<void> {
  await desk.pane.evaluate(
    async ([sheetName, contents, width]) => {
      await Excel.run(async (context) => {
        const old = context.workbook.worksheets.getItemOrNullObject(sheetName);
        await context.sync();
        if (!old.isNullObject) old.delete();
        const sheet = context.workbook.worksheets.add(sheetName);
        sheet.getRangeByIndexes(0, 0, contents.length, width).formulas = contents;
        await context.sync();
      });
    },
    [name, contentsOf(paper), paper.widths.length] as const,
  );
  await settled(desk.page);
}

/** Writes rates into their cells, by their keys. */
export async function writeRates(desk: Desk, record: Record_): Promise<void> {
  await desk.pane.evaluate(async (entries) => {
    await Excel.run(async (context) => {
      for (const [key, value] of entries) {
        const name = `Rate_${key.charAt(0).toUpperCase()}${key.slice(1)}`;
        context.workbook.names.getItem(name).getRange().values = [[value]];
      }
      await context.sync();
    });
  }, Object.entries(record));
  await settled(desk.page);
}

/** Writes into cells of a sheet, by their addresses. */
export async function writeCells(desk: Desk, sheet: string, cells: Readonly<Record<string, unknown>>): Promise<void> {
  await desk.pane.evaluate(
    async ([name, entries]) => {
      await Excel.run(async (context) => {
        const target = context.workbook.worksheets.getItem(name);
        for (const [address, value] of entries) target.getRange(address).values = [[value]];
        await context.sync();
      });
    },
    [sheet, Object.entries(cells)] as const,
  );
  await settled(desk.page);
}

/** All values of a sheet, row by row; a fault as its code. */
export function valuesOf(desk: Desk, sheet: string, rows: number): Promise<(string | number | boolean)[][]> {
  return desk.page.evaluate(
    ([name, count]) => window.workbookPage.read(name, `A1:H${count}`).map((row) => row.map(({ value }) => value)),
    [sheet, rows] as const,
  );
}

/** Fills a copy of a template with an order, by the add-in's own plan and its own code, which runs in the pane. */
export async function fillTemplate(
  desk: Desk,
  template: string,
  to: string,
  order: { readonly form: OrderForm; readonly rates: Record_; readonly locale: string },
): Promise<readonly string[]> {
  const { quote } = papersOf(order.form, order.rates);
  const read = await desk.pane.evaluate(async (name) => {
    return Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem(name);
      const all = sheet.getUsedRange(true).getBoundingRect("A1").load("formulas,numberFormat,columnCount");
      const printed = sheet.pageLayout.getPrintArea();
      printed.areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount");
      await context.sync();
      const [area] = printed.areas.items;
      return {
        cells: all.formulas,
        formats: all.numberFormat,
        columns: all.columnCount,
        area: area && {
          row: area.rowIndex,
          column: area.columnIndex,
          rows: area.rowCount,
          columns: area.columnCount,
        },
      };
    });
  }, template);
  const { columns, area } = read;
  const cells: Block = read.cells;
  const formats: Block = read.formats;
  const plan = planFill(
    cells,
    formats,
    quoteFields(quote, order.locale),
    quote.lines.map((line) => lineFields(line, order.locale)),
    quote.extras.map((extra) => extraFields(extra, order.locale)),
  );
  await desk.pane.evaluate(`(async () => {
    const printedArea = ${printedArea};
    const copyTemplate = ${copyTemplate};
    const fillCopy = ${fillCopy};
    const { plan, template, to, columns, area } = ${JSON.stringify({
      plan,
      template,
      to,
      columns,
      area,
    })};
    await Excel.run(async (context) => {
      fillCopy(copyTemplate(context, template, to), plan, columns, area);
      await context.sync();
    });
  })()`);
  await settled(desk.page);
  return plan.unknown;
}

/** How many pages of paper a sheet prints on. */
export async function pagesOf(desk: Desk, sheet: string): Promise<number> {
  const { html } = await desk.page.evaluate((name) => window.workbookPage.print(name), sheet);
  const print = await desk.page.context().browser()?.newPage();
  if (!print) throw new Error("The browser is gone");
  await print.setContent(html);
  const pdf = await print.pdf({ preferCSSPageSize: true });
  await print.close();
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}
