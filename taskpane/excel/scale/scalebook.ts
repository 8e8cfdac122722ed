import { askQuoteTable } from "../quotebook";
import { askRates, type RatesReading } from "../rates";
import { run, WorkbookFault } from "../run";
import { FINISHER_PLAN, type FinisherColumn } from "./finishertable";
import { LINK_PLAN, type LinkColumn } from "./linktable";
import { askTable, type TableReading } from "./plannedtable";
import type { TablePlan } from "./tableplan";
import { WEIGH_IN_PLAN, type WeighInColumn } from "./weighintable";

/** The rows of our tables as their cells read. */
export type LinkRow = Readonly<Record<LinkColumn, unknown>>;
export type WeighInRow = Readonly<Record<WeighInColumn, unknown>>;

/** What the workbook holds of the scale; a table that is not there yet has no rows. */
export interface ScaleReading {
  readonly links: readonly LinkRow[];
  readonly weighIns: readonly WeighInRow[];
  /** Numbers of quotes, as their cells read, in the order of their rows. */
  readonly quotes: readonly unknown[];
  readonly rates: RatesReading;
}

/** The three tables of the scale; undefined for one that is not there yet. */
export interface ScaleTables {
  readonly weighIns: TableReading<WeighInColumn> | undefined;
  readonly links: TableReading<LinkColumn> | undefined;
  readonly finishers: TableReading<FinisherColumn> | undefined;
}

/** Reads the scale's tables, the quotes' numbers and the rates in one sync. */
export async function readScale(): Promise<ScaleReading> {
  return run(async (context) => {
    const weighIns = askTable(context, WEIGH_IN_PLAN);
    const links = askTable(context, LINK_PLAN);
    const quotes = askQuoteTable(context);
    const rates = askRates(context);
    await context.sync();
    return {
      links: links()?.rows ?? [],
      weighIns: weighIns()?.rows ?? [],
      quotes: quoteNumbers(quotes),
      rates: rates(),
    };
  });
}

/** A table of quotes that cannot be read keeps nobody from weighing. */
function quoteNumbers(quotes: ReturnType<typeof askQuoteTable>): readonly unknown[] {
  try {
    return quotes()?.rows.flatMap((row) => (row ? [row.cells.number] : [])) ?? [];
  } catch (error) {
    if (error instanceof WorkbookFault) return [];
    throw error;
  }
}

/** All that a row to be written depends on. */
export interface ScaleBook {
  readonly tables: ScaleTables;
  readonly rates: RatesReading;
  /** In small letters: Excel does not tell sheets apart by their case. */
  readonly sheetNames: ReadonlySet<string>;
}

/**
 * Asks for all that writing depends on; the answer is ready after the batch's sync. What would stop it half way is told
 * before anything is written.
 */
export function askScaleBook(context: Excel.RequestContext): () => ScaleBook {
  const { worksheets, protection: structure } = context.workbook;
  worksheets.load("items/name");
  structure.load("protected");
  const weighIns = askTable(context, WEIGH_IN_PLAN);
  const links = askTable(context, LINK_PLAN);
  const finishers = askTable(context, FINISHER_PLAN);
  const stands = [WEIGH_IN_PLAN, LINK_PLAN, FINISHER_PLAN].map((plan) => askPlace(context, plan));
  const rates = askRates(context);
  return () => {
    const tables = { weighIns: weighIns(), links: links(), finishers: finishers() };
    for (const stand of stands) stand();
    if (structure.protected && Object.values(tables).some((table) => !table)) {
      throw new WorkbookFault(
        "The workbook is protected against new sheets. Take that protection off (Review, Protect Workbook) and try again.",
      );
    }
    return { tables, rates: rates(), sheetNames: new Set(worksheets.items.map(({ name }) => name.toLowerCase())) };
  };
}

/** Refuses where a table's sheet is protected, or where something else has the name of a table to be begun. */
function askPlace(context: Excel.RequestContext, { name }: Pick<TablePlan<never>, "name">): () => void {
  const table = context.workbook.tables.getItemOrNullObject(name);
  table.load("name");
  const { protection } = table.worksheet;
  protection.load("protected");
  const sameName = context.workbook.names.getItemOrNullObject(name);
  sameName.load("name");
  return () => {
    if (!table.isNullObject && protection.protected) {
      throw new WorkbookFault(
        `The sheet with the table ${name} is protected. Take its protection off (Review, Unprotect Sheet) and try again.`,
      );
    }
    if (table.isNullObject && !sameName.isNullObject) {
      throw new WorkbookFault(
        `A table of ours is to be called ${name}, but a defined name is called so already. Give that another name (Formulas, Name Manager) and try again.`,
      );
    }
  };
}
