import { run, WorkbookFault } from "../run";
import { isFormula, namesOfCells, rowsFilled, theirCells } from "./addedcells";
import { askAdditions, forgetAddition } from "./additions";
import { type Before, clearCells } from "./cellsbefore";
import { type Block, overlap, reads } from "./formulareferences";

/** What belongs to the person in and around added columns. */
export interface TheirPart {
  readonly sheet: string;
  /** Cells of the columns that hold something else than what was added, such as "Q4:Q6"; these stay. */
  readonly own: readonly string[];
  /** Formulas and names elsewhere that read the columns, and would find them empty. */
  readonly readers: readonly string[];
}

/** Cells read at once. */
const CHUNK = 50_000;

/**
 * Takes added columns out, wherever they are by now and whichever rows were added, deleted or sorted since. Cells that belong to
 * the person by now stay. If anything in or around the columns belongs to them, nothing is done at first: it is returned, so that
 * the person can be asked.
 * Syncs: six, and one for every 50,000 cells of the workbook. Errors: WorkbookFault where the columns are gone, or are part of
 * a table by now.
 * @param seen what the person was asked about, and agreed to
 */
export async function takeColumnsOut(id: string, seen?: TheirPart): Promise<TheirPart | undefined> {
  return run(async (context) => {
    const asked = askAdditions(context);
    await context.sync();
    const addition = asked().find((each) => each.id === id);
    if (!addition?.columns) throw new WorkbookFault("That is no longer in the workbook.");
    const { columns: added, before } = addition;
    const named = context.workbook.names.getItemOrNullObject(added.name);
    const range = named.getRangeOrNullObject();
    range.load("rowIndex,columnIndex,rowCount,columnCount,worksheet/id,worksheet/name");
    const sheets = askSheets(context);
    await context.sync();
    if (range.isNullObject) {
      forgetAddition(context, asked(), addition);
      await context.sync();
      throw new WorkbookFault("Those columns were deleted already: there is nothing left to take out.");
    }
    const sheet = context.workbook.worksheets.getItem(range.worksheet.id);
    const { rowIndex: row, columnIndex: column, columnCount: columns } = range;
    const all = await readFormulas(context, sheets());
    const own = all.filter(({ sheet: on }) => on === range.worksheet.name);
    const given = { row, column, rows: range.rowCount, columns };
    const lines = new Map(
      own.flatMap((part) =>
        part.cells.map((line, index) => [part.row + index, cut(line, column - part.column, columns)] as const),
      ),
    );
    const last = Math.max(row - 1, ...own.map((part) => part.row + part.cells.length - 1));
    const below = Array.from({ length: last - row + 1 }, (_, index) => lines.get(row + index) ?? []);
    const block = { ...given, rows: rowsFilled(below, given, added) };
    await refuseTables(context, sheet, block);
    const cells = Array.from({ length: block.rows }, (_, index) => below[index] ?? []);
    const theirs = theirCells(cells, block, added);
    const part: TheirPart = {
      sheet: range.worksheet.name,
      own: namesOfCells(theirs),
      readers: [
        ...readersIn(all, range.worksheet.name, block),
        ...(await namesReading(context, added.name, range.worksheet.name, block)),
      ],
    };
    const isTheirs = part.own.length + part.readers.length > 0;
    if (isTheirs && JSON.stringify(part) !== JSON.stringify(seen)) return part;
    clearOurs(sheet, block, theirs, before);
    forgetAddition(context, asked(), addition);
    await context.sync();
    return undefined;
  });
}

interface Part {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly cells: readonly (readonly unknown[])[];
}

function askSheets(context: Excel.RequestContext): () => readonly (readonly [Excel.Worksheet, Excel.Range])[] {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  return () =>
    worksheets.items.map((sheet) => {
      const used = sheet.getUsedRangeOrNullObject(true);
      used.load("rowIndex,columnIndex,rowCount,columnCount");
      return [sheet, used] as const;
    });
}

/** The formulas of every sheet, in parts that Excel on the web can answer at once. */
async function readFormulas(
  context: Excel.RequestContext,
  sheets: readonly (readonly [Excel.Worksheet, Excel.Range])[],
): Promise<readonly Part[]> {
  await context.sync();
  const parts: Part[] = [];
  for (const [sheet, used] of sheets) {
    if (used.isNullObject) continue;
    const { rowIndex, columnIndex: column, rowCount, columnCount } = used;
    const most = Math.max(1, Math.floor(CHUNK / columnCount));
    for (let at = 0; at < rowCount; at += most) {
      const range = sheet.getRangeByIndexes(rowIndex + at, column, Math.min(most, rowCount - at), columnCount);
      range.load("formulas");
      await context.sync();
      parts.push({ sheet: sheet.name, row: rowIndex + at, column, cells: range.formulas });
    }
  }
  return parts;
}

/** Cells of a row from one column on; beyond the row's ends they are blank. */
function cut(line: readonly unknown[], from: number, count: number): readonly unknown[] {
  return Array.from({ length: count }, (_, index) => line[from + index] ?? "");
}

function readersIn(parts: readonly Part[], sheet: string, block: Block): readonly string[] {
  const places = parts.map((part) => ({
    sheet: part.sheet,
    cells: part.cells.flatMap((line, index) =>
      line.flatMap((cell, at) => {
        const place = { row: part.row + index, column: part.column + at };
        const isInside = part.sheet === sheet && overlap({ ...place, rows: 1, columns: 1 }, block);
        return isFormula(cell) && !isInside && reads(cell, part.sheet, sheet, block) ? [place] : [];
      }),
    ),
  }));
  return places.flatMap((each) =>
    namesOfCells(each.cells).map((name) => (each.sheet === sheet ? name : `${each.sheet} ${name}`)),
  );
}

/** The person's names over the columns; hidden names are Excel's or ours. */
async function namesReading(
  context: Excel.RequestContext,
  own: string,
  sheet: string,
  block: Block,
): Promise<readonly string[]> {
  const { names } = context.workbook;
  names.load("items/name,items/formula,items/visible");
  await context.sync();
  return names.items.flatMap(({ name, formula, visible }) =>
    visible && name !== own && isFormula(formula) && reads(formula, "", sheet, block) ? [name] : [],
  );
}

/** If a table has grown over the columns, it would keep them as empty columns. */
async function refuseTables(context: Excel.RequestContext, sheet: Excel.Worksheet, block: Block): Promise<void> {
  sheet.tables.load("items/name");
  await context.sync();
  const tables = sheet.tables.items.map((table) => {
    const range = table.getRange();
    range.load("rowIndex,columnIndex,rowCount,columnCount");
    return { name: table.name, range };
  });
  await context.sync();
  const over = tables.find(({ range: { rowIndex: row, columnIndex: column, rowCount: rows, columnCount: columns } }) =>
    overlap({ row, column, rows, columns }, block),
  );
  if (!over) return;
  throw new WorkbookFault(
    `The added columns are part of the table ${over.name} by now, so nothing was taken out: they are yours. Delete by hand the table columns that you do not want.`,
  );
}

/** Empties what is not the person's, column by column, and gives those cells the look they had. */
function clearOurs(
  sheet: Excel.Worksheet,
  { row, column, rows, columns }: Block,
  theirs: readonly { readonly row: number; readonly column: number }[],
  before: Before | undefined,
): void {
  for (let at = 0; at < columns; at += 1) {
    const kept = theirs.filter((cell) => cell.column === column + at).map((cell) => cell.row);
    const ends = [...kept, row + rows];
    const width = columns === before?.widths.length && kept.length === 0 ? before.widths[at] : undefined;
    ends.forEach((end, index) => {
      const start = index === 0 ? row : (ends[index - 1] ?? row) + 1;
      if (end === start) return;
      // The look of rows that were added since is not known: they get that of the last one.
      const formats = before?.numberFormats;
      clearCells(sheet.getRangeByIndexes(start, column + at, end - start, 1), {
        widths: [],
        numberFormats:
          formats &&
          Array.from({ length: end - start }, (_, line) => [
            (formats[start - row + line] ?? formats.at(-1))?.[at] ?? "General",
          ]),
      });
    });
    if (width !== undefined) sheet.getRangeByIndexes(row, column + at, 1, 1).format.columnWidth = width;
  }
}
