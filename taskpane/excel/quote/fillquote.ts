import {
  type CostSheet,
  NOT_KNOWN,
  type Order,
  type Quote,
  type QuotedTerms,
  type QuoteNumber,
  type RateKey,
  type Rates,
  type TypedOrder,
  termsOf,
} from "../../../src/index";
import { locale } from "../host";
import { jobSheet } from "../job/jobsheet";
import { type Looked, lookAt } from "../looked";
import { type PaperSize, paperSizeFor, putPaper } from "../paper";
import { nameOf, type RateValues, sameRates } from "../rates/rates";
import { run, WorkbookFault } from "../run";
import { freeSheetName } from "../sheetname";
import { extraFields, lineFields, quoteFields } from "../template/fields";
import { type Block, planFill } from "../template/fill";
import { isBuiltIn, putTemplate, TEMPLATE_SHEET, templateContents } from "../template/template";
import { mendTemplate, type TemplateSheet } from "../template/templatesheet";
import { ticketsPaper } from "../tickets/ticketspaper";
import { QUOTES_TABLE } from "./quotebook";
import { numberOf, numbersTaken, type QuoteSheets, sheetsOf } from "./quotenumbers";
import { addQuote, beginQuotes, quoteRow } from "./quoterow";
import { copyTemplate, fillCopy, isTemplateCopy, keepValuesOnly } from "./quotesheet";
import { readBook } from "./workbookbefore";

/** An order, costed and quoted, ready to be put into the workbook. */
export interface Job {
  readonly order: Order;
  readonly sheets: readonly CostSheet[];
  readonly quote: Quote;
  readonly rates: Rates;
  /** The values of Rates that these were read from. */
  readonly rateValues: RateValues;
  /** The order as typed, for the quotes table to keep. */
  readonly typed: TypedOrder;
  /** The sheet that the quote is copied from; the usual template where none is chosen. */
  readonly template?: string;
  /** The quote this one revises; undefined for a new one. */
  readonly revised: QuoteNumber | undefined;
}

/** What was made. */
export interface Filled {
  readonly number: QuoteNumber;
  readonly quoteSheet: string;
  readonly jobSheet: string;
  readonly ticketsSheet: string;
  /** Fields of the template that do not exist, such as "{{color}} in B7". */
  readonly unknownFields: readonly string[];
  /** Fields that change the total and are missing on the template, such as "discount". */
  readonly unplacedFields: readonly string[];
  /** Fields inside a formula, which are not filled, such as "{{customer}} in B7". */
  readonly formulaFields: readonly string[];
  /** Errors that the template's formulas gave, such as "#N/A in B7". */
  readonly errors: readonly string[];
  /** Whether the quote names the workshop. */
  readonly isSigned: boolean;
  /** What the job sheet and the tickets show, whose formulas were just written. */
  readonly looked: Readonly<Record<"job" | "tickets", Looked>>;
}

/** The rates differ from those that the job was costed at; nothing was made. */
export class RatesChanged extends WorkbookFault {
  constructor() {
    super("The rates have changed since this price was worked out. No quote was made; press again.");
  }
}

/**
 * Puts the quote, filled into a copy of the template, its job sheet, its tickets and its row of the quotes table into the
 * workbook, in three syncs, or four where the template has formulas, however long the quote. A revision gets its own sheets and row.
 * On a fault everything is taken back; RatesChanged is thrown before anything is made.
 */
export async function fillQuote(job: Job): Promise<Filled> {
  let begun: readonly string[] = [];
  let before: ReadonlySet<string> = new Set();
  const templateName = job.template ?? TEMPLATE_SHEET;
  try {
    return await run(async (context) => {
      const { template, table, sheetNames, rates } = await readBook(context, templateName);
      if (!rates.found || !sameRates(rates.values, job.rateValues)) throw new RatesChanged();
      const least = Math.max(job.quote.number.number, Number(rates.values.nextNumber) || 0);
      const number = numberOf(job.revised, least, numbersTaken(table, sheetNames));
      const names = sheetsOf(number);
      const quotesSheet = table ? undefined : freeSheetName(QUOTES_TABLE, sheetNames);
      const quote = { ...job.quote, number };
      const size = paperSizeFor(locale());
      const { cells, formats, printArea } = template ?? builtInSheet(templateName, size);
      const fields = quoteFields(quote, locale());
      const lines = quote.lines.map((line) => lineFields(line, locale()));
      const extras = quote.extras.map((extra) => extraFields(extra, locale()));
      const plan = planFill(cells, formats, fields, lines, extras);
      if (!plan.hasFields) {
        throw new WorkbookFault(`The sheet "${templateName}" has no field to fill. ${mendTemplate(templateName)}`);
      }
      before = sheetNames;
      begun = [...(template ? [] : [templateName]), ...(quotesSheet ? [quotesSheet] : []), ...Object.values(names)];
      const isSpotOfRates = job.order.spot.amount.equals(job.rates.spot.amount);
      const terms = termsOf(job.rates, isSpotOfRates ? rates.spotRead : NOT_KNOWN);
      const row = quoteRow(quote, job.order, job.typed, terms);
      const { worksheets } = context.workbook;
      if (!template && isBuiltIn(templateName)) putTemplate(worksheets.add(templateName), templateName, size);
      if (quotesSheet) beginQuotes(worksheets.add(quotesSheet), row, size);
      const sheet = copyTemplate(context, templateName, names.quote);
      fillCopy(sheet, plan, widthOf(cells), printArea);
      const errors = plan.hasFormulas ? await keepValuesOnly(context, sheet) : [];
      putJob(worksheets, job, quote, terms, rates.missing, names, size);
      if (!job.revised) {
        context.workbook.names.getItem(nameOf("nextNumber")).getRange().values = [[number.number + 1]];
      }
      // Last, since a row is not taken back as a sheet is.
      if (table) addQuote(context, table, row);
      sheet.activate();
      await context.sync();
      const made = () => [names.job, names.tickets].map((name) => worksheets.getItem(name).getUsedRange(true));
      const [onJob, onTickets = onJob] = await lookAt(context, made, { looks: LOOKS });
      return {
        number,
        quoteSheet: names.quote,
        jobSheet: names.job,
        ticketsSheet: names.tickets,
        unknownFields: plan.unknown,
        unplacedFields: plan.unplaced,
        formulaFields: plan.inFormulas,
        errors,
        isSigned: quote.workshop !== "",
        looked: { job: onJob, tickets: onTickets },
      };
    });
  } catch (error) {
    // The person must hear of the first error, even where taking back fails too.
    await takeBack(begun, before, templateName).catch(() => undefined);
    throw error;
  }
}

/** A person waits for the quote: three seconds for values that are still to come. */
const LOOKS = 12;

/** A built-in template that the workbook does not have yet, as it will be. */
function builtInSheet(name: string, size: PaperSize): TemplateSheet {
  if (!isBuiltIn(name)) {
    throw new WorkbookFault(`The template "${name}" is gone. Choose another, or bring that sheet back.`);
  }
  return { cells: templateContents(name, size), formats: [], printArea: undefined };
}

/** The job sheet, and the tickets whose figures follow it. */
function putJob(
  worksheets: Excel.WorksheetCollection,
  { order, sheets, rates }: Job,
  quote: Quote,
  terms: QuotedTerms,
  missing: readonly RateKey[],
  names: QuoteSheets,
  size: PaperSize,
): void {
  const made = jobSheet(order, sheets, quote, rates, terms, missing);
  putPaper(worksheets.add(names.job), { ...made.paper, size });
  putPaper(worksheets.add(names.tickets), { ...ticketsPaper(sheets, quote, made, names.job), size });
}

function widthOf(cells: Block): number {
  return Math.max(1, ...cells.map((line) => line.length));
}

/** Removes the sheets that a failed fill had added, also a copy that was not renamed yet. */
async function takeBack(begun: readonly string[], before: ReadonlySet<string>, template: string): Promise<void> {
  if (begun.length === 0) return;
  await run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name");
    await context.sync();
    for (const sheet of worksheets.items) {
      const isNew = !before.has(sheet.name.toLowerCase());
      if (isNew && (begun.includes(sheet.name) || isTemplateCopy(sheet.name, template))) sheet.delete();
    }
    await context.sync();
  });
}
