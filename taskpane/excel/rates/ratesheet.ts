import { parseRates, RATE_KEYS, RATE_ROWS, type RateKey, type RateRow } from "../../../src/index";
import { columnLetters } from "../address";
import { locale } from "../host";
import { contentsOf, dressAs, type PaperCell, paperSizeFor, putPaper } from "../paper";
import { run, WorkbookFault } from "../run";
import { freeSheetName } from "../sheetname";
import { putTemplate, TEMPLATE_SHEET } from "../template/template";
import { askRates, nameOf, type RateValues } from "./rates";
import { ageRemark, HEAD_ROWS, headingRow, rateRow, ratesPaper, serialNow, startOf } from "./ratespaper";
import { keepSpotNote, noteOf } from "./spotnote";

const SHEET = "Rates";

/**
 * Lays out the Rates sheet with its start values, each with a defined name, and the quote template where there is none.
 * Names that point to no cell any more are pointed to the new cells, so that formulas over them work again. On a fault all of it
 * is taken back.
 * Errors: WorkbookFault, with nothing written, where a rate's name points to a cell already.
 * @param spot money per troy ounce of fine gold, as typed; "" leaves it open
 */
export async function layOutRates(spot: string): Promise<void> {
  const before = new Map<RateKey, string>();
  let begun: readonly string[] = [];
  try {
    await run(async (context) => {
      const { worksheets, names } = context.workbook;
      worksheets.load("items/name");
      const askedRates = askRates(context);
      const known = askNames(context);
      await context.sync();
      // Read again, whatever the pane knew: figures that a person has typed are never replaced by examples.
      const rates = askedRates();
      if (rates.found) {
        throw new WorkbookFault(
          `This workbook has its rates already, on the sheet "${rates.sheet}". They were left as they are.`,
        );
      }
      for (const [key, name] of known()) before.set(key, name.formula);
      const taken = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
      const hasTemplate = taken.has(TEMPLATE_SHEET.toLowerCase());
      const sheetName = freeSheetName(SHEET, taken);
      begun = [sheetName, ...(hasTemplate ? [] : [TEMPLATE_SHEET])];
      const size = paperSizeFor(locale());
      const readAt = serialNow();
      const sheet = worksheets.add(sheetName);
      const { paper, rowOf } = ratesPaper(spot, readAt);
      putPaper(sheet, { ...paper, size });
      for (const key of RATE_KEYS) {
        const cell = sheet.getRangeByIndexes(rowOf[key], 1, 1, 1);
        ruleValue(cell, key);
        pointName(names, key, known().get(key), sheetName, cell, rowOf[key], 1);
      }
      sheet.getRangeByIndexes(rowOf.spotAge, 3, 1, 1).formulas = [[ageRemark()]];
      sheet.freezePanes.freezeRows(HEAD_ROWS);
      if (!hasTemplate) putTemplate(worksheets.add(TEMPLATE_SHEET), TEMPLATE_SHEET, size);
      if (spot !== "") {
        keepSpotNote(context, noteOf({ spot: Number(spot), spotTime: readAt, spotSource: "" }));
      }
      sheet.activate();
      await context.sync();
    });
  } catch (error) {
    // The person must hear of the first error, even where taking back fails too.
    await takeBack(before, RATE_KEYS, begun).catch(() => undefined);
    throw error;
  }
}

/**
 * Adds the rates whose rows are missing below the last row of the sheet of the other rates, under their own heading, and changes
 * nothing else. A rate that may be blank stays blank, as a missing one was read so far, so no price changes. One that may not be
 * blank gets its start value. On a fault all of it is taken back.
 */
export async function addMissingRates(): Promise<void> {
  const before = new Map<RateKey, string>();
  let missing: readonly RateKey[] = [];
  let begun: { readonly sheet: string; readonly row: number; readonly column: number } | undefined;
  try {
    await run(async (context) => {
      const { worksheets, names } = context.workbook;
      const asked = askRates(context);
      const known = askNames(context);
      await context.sync();
      const rates = asked();
      if (!rates.found) throw new WorkbookFault("The rates of this workbook are gone. Lay the Rates sheet out anew.");
      for (const [key, name] of known()) before.set(key, name.formula);
      missing = rates.missing;
      if (missing.length === 0) return;
      const sheet = worksheets.getItem(rates.sheet);
      const used = sheet.getUsedRange();
      used.load("rowIndex,rowCount");
      const anchorKey = RATE_KEYS.find((key) => !missing.includes(key)) ?? "spot";
      const anchor = names.getItem(nameOf(missing.includes("spot") ? anchorKey : "spot")).getRange();
      anchor.load("columnIndex");
      await context.sync();
      const column = Math.max(0, anchor.columnIndex - 1);
      const row = used.rowIndex + used.rowCount;
      const needed = keysInNeed(rates.values, missing);
      const added = missing.map((key) => rateRow(key, needed.has(key) ? startOf(key, RATE_ROWS[key], "", 0) : ""));
      const rows = [headingRow("Added"), ...added];
      begun = { sheet: rates.sheet, row, column };
      putRows(sheet, rows, row, column);
      missing.forEach((key, index) => {
        const cell = sheet.getRangeByIndexes(row + 1 + index, column + 1, 1, 1);
        ruleValue(cell, key);
        pointName(names, key, known().get(key), rates.sheet, cell, row + 1 + index, column + 1);
      });
      if (missing.includes("spotAge")) {
        sheet.getRangeByIndexes(row + 1 + missing.indexOf("spotAge"), column + 3, 1, 1).formulas = [[ageRemark()]];
      }
      sheet.activate();
      sheet.getRangeByIndexes(row + 1, column + 1, 1, 1).select();
      await context.sync();
    });
  } catch (error) {
    await takeBack(before, missing, []).catch(() => undefined);
    if (begun) await clearRows(begun, missing.length + 1).catch(() => undefined);
    throw error;
  }
}

/** The missing rates without which there is no price, also those that are needed only by the start value of another. */
function keysInNeed(values: RateValues, missing: readonly RateKey[]): ReadonlySet<RateKey> {
  const needed = new Set<RateKey>();
  for (;;) {
    const starts = Object.fromEntries([...needed].map((key) => [key, RATE_ROWS[key].start]));
    const parsed = parseRates({ ...values, ...starts });
    const faulty = parsed.ok ? [] : parsed.faults.map(({ field }) => field);
    const more = missing.filter((key) => !needed.has(key) && faulty.includes(key));
    if (more.length === 0) return needed;
    for (const key of more) needed.add(key);
  }
}

type Names = () => ReadonlyMap<RateKey, Excel.NamedItem>;

/** Asks for the rates' names that exist, wherever they point; ready after the batch's sync. */
function askNames(context: Excel.RequestContext): Names {
  const asked = RATE_KEYS.map((key) => {
    const name = context.workbook.names.getItemOrNullObject(nameOf(key));
    name.load("formula");
    return [key, name] as const;
  });
  return () => new Map(asked.filter(([, name]) => !name.isNullObject));
}

function pointName(
  names: Excel.NamedItemCollection,
  key: RateKey,
  known: Excel.NamedItem | undefined,
  sheet: string,
  cell: Excel.Range,
  row: number,
  column: number,
): void {
  if (known) known.formula = `='${sheet.replaceAll("'", "''")}'!$${columnLetters(column)}$${row + 1}`;
  else names.add(nameOf(key), cell, RATE_ROWS[key].label);
}

/** Points the names to where they pointed before, and removes the names and sheets that were added. */
async function takeBack(
  before: ReadonlyMap<RateKey, string>,
  keys: readonly RateKey[],
  begun: readonly string[],
): Promise<void> {
  if (keys.length === 0 || (before.size === 0 && begun.length === 0)) return;
  await run(async (context) => {
    const { worksheets } = context.workbook;
    const known = askNames(context);
    const sheets = begun.map((name) => worksheets.getItemOrNullObject(name));
    for (const sheet of sheets) sheet.load("name");
    await context.sync();
    for (const [key, name] of known()) {
      if (!keys.includes(key)) continue;
      const formula = before.get(key);
      if (formula === undefined) name.delete();
      else if (name.formula !== formula) name.formula = formula;
    }
    for (const sheet of sheets) if (!sheet.isNullObject) sheet.delete();
    await context.sync();
  });
}

/** Empties rows that were blank before. */
async function clearRows(
  { sheet, row, column }: { readonly sheet: string; readonly row: number; readonly column: number },
  count: number,
): Promise<void> {
  await run(async (context) => {
    const rows = context.workbook.worksheets.getItem(sheet).getRangeByIndexes(row, column, count, 4);
    rows.clear();
    rows.dataValidation.clear();
    await context.sync();
  });
}

function ruleValue(cell: Excel.Range, key: RateKey): void {
  const { words }: RateRow = RATE_ROWS[key];
  if (words) cell.dataValidation.rule = { list: { inCellDropDown: true, source: words.join(",") } };
  cell.format.horizontalAlignment = "Right";
}

/** Writes rows below the others of the Rates sheet. Its widths and its print set-up are left to the person. */
function putRows(sheet: Excel.Worksheet, rows: readonly (readonly PaperCell[])[], row: number, column: number): void {
  const all = sheet.getRangeByIndexes(row, column, rows.length, 4);
  all.numberFormat = rows.map((cells) => cells.map(({ format }) => format ?? "General"));
  all.formulas = contentsOf({ widths: [0, 0, 0, 0], rows });
  rows.forEach((cells, down) => {
    cells.forEach(({ look }, right) => {
      if (look) dressAs(sheet.getRangeByIndexes(row + down, column + right, 1, 1), look);
    });
  });
  all.format.autofitRows();
}
