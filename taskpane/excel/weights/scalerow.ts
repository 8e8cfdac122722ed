import { type KeptLink, sameLink, sameText, type WeighIn } from "../../../src/index";
import { locale } from "../host";
import { paperSizeFor } from "../paper";
import type { RatesReading } from "../rates/rates";
import { run, WorkbookFault } from "../run";
import { freeSheetName } from "../sheetname";
import { type AskedTable, askToWrite, takeBack } from "../tables/askedtable";
import {
  beginTable,
  begunReading,
  putCell,
  putFormulas,
  putRow,
  rowOf,
  type TableReading,
  takeRowOut,
  type Written,
  writtenOver,
} from "../tables/plannedtable";
import { keysOf, type TablePlan, type TypedCells } from "../tables/tableplan";
import { dateSerial } from "../template/fields";
import { FINISHER_PLAN, type FinisherColumn } from "./finishertable";
import { LINK_PLAN, type LinkColumn } from "./linktable";
import { askScaleBook, type WeighInRow } from "./scalebook";
import { WEIGH_IN_PLAN, type WeighInColumn } from "./weighingtable";

/** A weigh-in that was written into the table. */
export interface WrittenWeighIn {
  readonly typed: TypedCells<WeighInColumn>;
  /** The rows that were there before it. */
  readonly others: readonly WeighInRow[];
  /** It itself, as its cells will read. */
  readonly row: WeighInRow;
  readonly rates: RatesReading;
  /** Whether its averages leave out weighings that cannot be: a table that an earlier version began counts them. */
  readonly leavesOut: boolean;
  /** The finisher that it added to the table of finishers; undefined where it added none. */
  readonly finisher: string | undefined;
}

/** Adds a weigh-in to its table, and a new finisher to the table of finishers; adds the tables first where they are missing. */
export async function addWeighIn(weighIn: WeighIn, isoDate: string): Promise<WrittenWeighIn> {
  const typed = typedWeighIn(weighIn, isoDate);
  return write((context, tables, rates) => {
    const weighIns = tables.weighIns();
    putRow(context, WEIGH_IN_PLAN, weighIns, typed, writtenOver(WEIGH_IN_PLAN, weighIns));
    let finisher: string | undefined;
    if ((weighIn.stage === "polished" || weighIn.stage === "finished") && weighIn.who !== "") {
      const finishers = tables.finishers();
      if (!finishers.rows.some(({ who }) => sameText(who, weighIn.who))) {
        finisher = weighIn.who;
        putRow(context, FINISHER_PLAN, finishers, { who: finisher }, writtenOver(WEIGH_IN_PLAN, weighIns));
      }
    }
    const row = { ...blankRow(), ...typed };
    return { typed, others: weighIns.rows, row, rates, leavesOut: weighIns.places.counted >= 0, finisher };
  });
}

/**
 * Takes a weigh-in out of its table, and the finisher that it added, if they have no other weighings. Errors: WorkbookFault where
 * no row says what was typed any more.
 */
export async function takeWeighInOut({ typed, finisher }: WrittenWeighIn): Promise<void> {
  await run(async (context) => {
    const asked = askScaleBook(context);
    await context.sync();
    const { weighIns, finishers } = asked();
    const before = weighIns.isMissing ? undefined : weighIns.read();
    if (!before || !takeRowOut(context, WEIGH_IN_PLAN, before, typed)) {
      throw new WorkbookFault(
        "That weigh-in no longer stands in the table WeighIns as it was written, so nothing was taken out. Change or delete its row there.",
      );
    }
    if (finisher !== undefined && before.rows.filter(({ who }) => sameText(who, finisher)).length === 1) {
      takeFinisherOut(context, finishers, finisher);
    }
    await context.sync();
  });
}

/**
 * Writes beside a weigh-in that it is right as it stands, so that it counts. Errors: WorkbookFault where no row says any more what
 * was typed, or where the table has no column for it.
 */
export async function confirmWeighIn(written: WrittenWeighIn): Promise<WrittenWeighIn> {
  const confirmed = { ...written.typed, confirmed: "yes" };
  await run(async (context) => {
    const asked = askToWrite(context, WEIGH_IN_PLAN);
    await context.sync();
    const table = asked();
    const index = table.isMissing ? -1 : rowOf(WEIGH_IN_PLAN, table.read(), written.typed);
    if (index < 0) {
      throw new WorkbookFault(
        "That weigh-in no longer stands in the table WeighIns as it was written, so nothing was changed. Write yes into its column Confirmed there.",
      );
    }
    putCell(context, WEIGH_IN_PLAN, table.read(), index, "confirmed", "yes");
    await context.sync();
  });
  return { ...written, typed: confirmed };
}

/** A finisher stays where the table cannot be written into, or where the person wrote something of their own beside them. */
function takeFinisherOut(context: Excel.RequestContext, table: AskedTable<FinisherColumn>, finisher: string): void {
  if (table.isMissing) return;
  try {
    const finishers = table.read();
    const row = finishers.rows.findLastIndex(({ who }) => sameText(who, finisher));
    if (finishers.hasMore[row] === false) takeRowOut(context, FINISHER_PLAN, finishers, { who: finisher });
  } catch (error) {
    if (!(error instanceof WorkbookFault)) throw error;
  }
}

/** Adds a link to its table. Errors: WorkbookFault where that link is there already. */
export async function keepLink(link: KeptLink, isoDate: string): Promise<void> {
  const typed = typedLink(link, isoDate);
  await write((context, tables) => {
    const links = tables.links();
    const name = { model: typed.model, width: typed.width ?? "", mark: typed.mark, colour: typed.colour };
    if (links.rows.some((row) => sameLink(row, name))) {
      throw new WorkbookFault(
        "The table Links has this model, width, mark and colour already. Change that row, or give the model another name.",
      );
    }
    putRow(context, LINK_PLAN, links, typed, writtenOver(WEIGH_IN_PLAN, tables.weighIns()));
  });
}

function blankRow(): WeighInRow {
  return Object.fromEntries(keysOf(WEIGH_IN_PLAN).map((key) => [key, ""])) as WeighInRow;
}

/** The tables to write into. Each is read when it is needed, so that one with a fault stops only what writes into it. */
interface TablesToWrite {
  readonly weighIns: () => TableReading<WeighInColumn>;
  readonly links: () => TableReading<LinkColumn>;
  readonly finishers: () => TableReading<FinisherColumn>;
}

/** Reads what a row depends on, adds the tables that are missing, and writes. If that fails, the added tables are removed. */
async function write<T>(
  put: (context: Excel.RequestContext, tables: TablesToWrite, rates: RatesReading) => T,
): Promise<T> {
  let begun: readonly string[] = [];
  try {
    return await run(async (context) => {
      const asked = askScaleBook(context);
      await context.sync();
      const { weighIns, links, finishers, rates, sheetNames } = asked();
      const taken = new Set(sheetNames);
      const formulas: ((over: () => Written) => void)[] = [];
      const readOrBegin = <K extends string>(plan: TablePlan<K>, table: AskedTable<K>): (() => TableReading<K>) => {
        if (!table.isMissing) return table.read;
        const name = freeSheetName(plan.sheet, taken);
        taken.add(name.toLowerCase());
        begun = [...begun, name];
        const sheet = context.workbook.worksheets.add(name);
        beginTable(sheet, plan, paperSizeFor(locale()));
        formulas.push((over) => putFormulas(sheet, plan, over()));
        return () => begunReading(plan, name);
      };
      const tables: TablesToWrite = {
        weighIns: readOrBegin(WEIGH_IN_PLAN, weighIns),
        links: readOrBegin(LINK_PLAN, links),
        finishers: readOrBegin(FINISHER_PLAN, finishers),
      };
      if (formulas.length > 0) {
        await context.sync();
        for (const write of formulas) write(() => writtenOver(WEIGH_IN_PLAN, tables.weighIns()));
      }
      const result = put(context, tables, rates);
      await context.sync();
      return result;
    });
  } catch (error) {
    // The person must hear of the first error, even where taking back fails too.
    if (begun.length > 0) await takeBack(begun).catch(() => undefined);
    throw error;
  }
}

function typedWeighIn(weighIn: WeighIn, isoDate: string): TypedCells<WeighInColumn> {
  const { job, model, width, mark, colour, stage, pieces, weight, sent, who, note } = weighIn;
  return {
    date: dateSerial(isoDate),
    job,
    model,
    ...(width ? { width: width.toNumber() } : {}),
    mark,
    colour,
    stage,
    pieces: pieces.toNumber(),
    weight: weight.grams.toNumber(),
    ...(sent ? { sent: sent.toNumber() } : {}),
    who,
    note,
  };
}

function typedLink(link: KeptLink, isoDate: string): TypedCells<LinkColumn> {
  const { model, width, mark, colour, linksPer, linksPerUnit, linkWeight } = link;
  return {
    model,
    ...(width ? { width: width.toNumber() } : {}),
    linksPer: linksPer.toNumber(),
    linksPerUnit,
    mark,
    colour,
    estimate: linkWeight.grams.toNumber(),
    date: dateSerial(isoDate),
  };
}
