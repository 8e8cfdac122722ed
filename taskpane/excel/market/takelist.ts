import type { SeenAsking } from "../../../src/index";
import { locale } from "../host";
import { type Looked, lookAt } from "../looked";
import { paperSizeFor } from "../paper";
import { run, WorkbookFault } from "../run";
import { freeSheetName } from "../sheetname";
import { askToWrite, takeBack } from "../tables/askedtable";
import { beginTable, begunReading, type TableReading, type Written } from "../tables/plannedtable";
import { keysOf, type TypedCells } from "../tables/tableplan";
import { growTable, putRowFormulas, putTyped } from "../tables/tablerows";
import { dateSerial } from "../template/fields";
import { deletePlaces, placesOf, rowFingerprint, TYPED_KEYS } from "./askingrows";
import { ASKING_PLAN, ASKING_TABLE, type AskingTableColumn as Column } from "./askingtable";

/** An asking price to be written into the table. */
export interface TakenAsking {
  readonly seen: SeenAsking;
  /** As the table writes it. */
  readonly mark: string;
}

/** A list that was taken in: the number in its rows, and how many rows it has. */
export interface TakenList {
  readonly list: number;
  readonly rows: number;
  readonly sheet: string;
  readonly looked: Looked;
}

/** Rows that are written at once: Excel on the web accepts 5 MB in a request, and Cancel works between two requests. */
const TYPED_BLOCK = 1000;
const FORMULA_BLOCK = 200;
const unchanged: Written = (formula) => formula;

/**
 * Writes a list at the end of the table of asking prices; adds the table where there is none. On a fault or a cancel all of it
 * is taken back. Syncs: three, one for every 1,000 rows and one for every 200.
 * @param askings at least one
 * @param wrote called after each block of rows; throws to cancel the work
 */
export async function takeListIn(
  askings: readonly TakenAsking[],
  wrote: (share: number) => Promise<void>,
): Promise<TakenList> {
  const rows = await Promise.all(askings.map(withFingerprint));
  let begun: readonly string[] = [];
  let half: HalfTaken | undefined;
  try {
    return await run(async (context) => {
      const { worksheets, protection } = context.workbook;
      worksheets.load("items/name");
      protection.load("protected");
      const asked = askToWrite(context, ASKING_PLAN);
      await context.sync();
      const names = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
      const table = asked();
      if (table.isMissing && protection.protected) {
        throw new WorkbookFault(
          "The workbook is protected against new sheets. Take that protection off (Review, Protect Workbook) and try again.",
        );
      }
      const reading = table.isMissing ? begin(context, freeSheetName(ASKING_PLAN.sheet, names)) : table.read();
      if (table.isMissing) begun = [reading.sheet];
      const last = context.workbook.tables.getItem(ASKING_TABLE).getDataBodyRange().getLastRow();
      last.load("formulas");
      // Excel refuses a formula over a table that does not exist yet.
      await context.sync();
      const list = 1 + Math.max(0, ...reading.rows.map((row) => Number(row.list) || 0));
      const marked = rows.map((row) => ({ ...row, list }));
      const grown = growTable(context, ASKING_PLAN, reading, marked.length);
      putTyped(context, ASKING_PLAN, reading, grown.first, marked, ["list", "taken"]);
      half = { list, free: grown.isFree ? last.formulas[0] : undefined };
      await context.sync();
      const inBlocks = async (size: number, put: (at: number, count: number) => void, from: number, to: number) => {
        for (let at = 0; at < marked.length; at += size) {
          const count = Math.min(size, marked.length - at);
          context.application.suspendApiCalculationUntilNextSync();
          put(at, count);
          await context.sync();
          await wrote(from + ((to - from) * (at + count)) / marked.length);
        }
      };
      const typed = (at: number, count: number) =>
        putTyped(context, ASKING_PLAN, reading, grown.first + at, marked.slice(at, at + count), TYPED_KEYS);
      const formulas = (at: number, count: number) =>
        putRowFormulas(context, ASKING_PLAN, reading, grown.first + at, count, unchanged);
      // Formulas last: once the cells they read are written, each is calculated only once.
      await inBlocks(TYPED_BLOCK, typed, 0, TYPED_SHARE);
      await inBlocks(FORMULA_BLOCK, formulas, TYPED_SHARE, 1);
      const body = () => {
        // The used range is asked for too: its values come once everything is calculated.
        const table = context.workbook.tables.getItem(ASKING_TABLE);
        table.worksheet.getUsedRange(true);
        const all = table.getDataBodyRange();
        return [all.getRow(grown.first).getResizedRange(marked.length - 1, 0)];
      };
      const [looked] = await lookAt(context, body);
      return { list, rows: rows.length, sheet: reading.sheet, looked };
    });
  } catch (error) {
    // The person must hear of the first error, even where taking back fails too.
    if (begun.length > 0) await takeBack(begun).catch(() => undefined);
    else if (half) await takeHalfBack(half).catch(() => undefined);
    throw error;
  }
}

/** A list that is being written. */
interface HalfTaken {
  readonly list: number;
  /** What the blank row held that its first row was written into; undefined where there was none. */
  readonly free: readonly unknown[] | undefined;
}

/** The share of the work that is done once the typed values are written: formulas take Excel longer. */
const TYPED_SHARE = 0.2;

/** Takes back a list that was not written to its end. Nobody but the pane has written into its rows. */
async function takeHalfBack({ list, free }: HalfTaken): Promise<void> {
  await run(async (context) => {
    const asked = askToWrite(context, ASKING_PLAN);
    await context.sync();
    const reading = asked().read();
    const [first, ...others] = placesOf(reading.rows, list);
    if (first === undefined) return;
    await deletePlaces(context, free ? others : [first, ...others]);
    if (free) {
      const row = context.workbook.tables.getItem(ASKING_TABLE).getDataBodyRange().getRow(first);
      for (const key of keysOf(ASKING_PLAN)) {
        const place = reading.places[key];
        row.getCell(0, place).formulas = [[free[place] ?? ""]];
      }
    }
    await context.sync();
  });
}

function begin(context: Excel.RequestContext, name: string): TableReading<Column> {
  beginTable(context.workbook.worksheets.add(name), ASKING_PLAN, paperSizeFor(locale()));
  return begunReading(ASKING_PLAN, name);
}

async function withFingerprint({ seen, mark }: TakenAsking): Promise<TypedCells<Column>> {
  const { date, source, kind, hollow, weight, price, per, currency, exchange, own, spot } = seen;
  const typed: TypedCells<Column> = {
    date: date === "" ? "" : dateSerial(date),
    source,
    kind,
    mark,
    solidity: hollow === undefined ? "" : hollow ? "hollow" : "solid",
    weight: weight ? weight.grams.toNumber() : "",
    price: price.toNumber(),
    per,
    currency,
    exchange: currency === own ? "" : exchange.toNumber(),
    spot: spot ? spot.amount.toNumber() : "",
  };
  return { ...typed, taken: await rowFingerprint(typed) };
}
