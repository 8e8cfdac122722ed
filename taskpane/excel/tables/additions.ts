import type { AdditionKind } from "../../wording/additionkinds";
import { type Looked, lookAt } from "../looked";
import { readAfterEdit, run, WorkbookFault } from "../run";
import { type AddedShapes, addedShapes } from "./addedcells";
import { type Before, clearColumns } from "./cellsbefore";

/** Something that was added to the workbook, noted so that it can be taken out again. Saved in the workbook itself. */
export interface Addition {
  readonly id: string;
  readonly what: AdditionKind;
  /** The sheet it is on; its name may change, its id does not. */
  readonly sheetId: string;
  /** The sheet's name when it was added. */
  readonly sheet: string;
  /** The sheet whose designs it follows; undefined where it follows none. */
  readonly from: string | undefined;
  /** The table it grows and shrinks with; undefined where its size is fixed. */
  readonly follows: string | undefined;
  /** What was written, as ranges of its sheet. */
  readonly areas: readonly string[];
  /** A fingerprint of the formulas in those areas: what was changed since is not taken out. */
  readonly print: string;
  /** For an added sheet: the range that was written. Undefined for columns added to a sheet of the person's. */
  readonly extent: string | undefined;
  /** How the cells of added columns looked. */
  readonly before: Before | undefined;
  /** How added columns are recognized; undefined for an added sheet. */
  readonly columns?: AddedShapes | undefined;
}

/** Something that was just added, looked at where it stands. */
export interface Added extends Addition {
  readonly looked: Looked;
}

/** Rows of a price list's sheet down to its head row. */
const LIST_HEAD = 4;

const SETTING = "curbwright.catalogue.additions";

/** Asks for the additions, oldest first, along with whatever else a batch reads; ready after its sync. */
export function askAdditions(context: Excel.RequestContext): () => readonly Addition[] {
  const setting = context.workbook.settings.getItemOrNullObject(SETTING);
  setting.load("value");
  return () => (setting.isNullObject ? [] : additionsIn(setting.value));
}

/** The additions whose sheet still exists, newest first. */
export async function listAdditions(): Promise<readonly Addition[]> {
  return readAfterEdit(async (context) => {
    const asked = askAdditions(context);
    const { worksheets } = context.workbook;
    worksheets.load("items/id,items/name");
    await context.sync();
    const names = new Map(worksheets.items.map(({ id, name }) => [id, name]));
    return asked()
      .flatMap((addition) => {
        const sheet = names.get(addition.sheetId);
        return sheet === undefined ? [] : [{ ...addition, sheet }];
      })
      .reverse();
  });
}

/**
 * Notes an addition that was just written, with the formulas as Excel has them; two syncs.
 * @param made its name, where it has one, is the defined name over columns that were added
 */
export async function noteAddition(
  context: Excel.RequestContext,
  made: Omit<Addition, "id" | "print" | "sheetId" | "sheet" | "columns"> & {
    readonly worksheet: Excel.Worksheet;
    readonly name?: string;
    /** The row of its headers, counted from 0: what stands above is not looked at. */
    readonly headRow?: number;
  },
): Promise<Added> {
  const { worksheet, name, headRow, ...rest } = made;
  worksheet.load("id,name");
  const asked = askAdditions(context);
  const formulas = askFormulas(worksheet, rest.areas);
  await context.sync();
  const others = asked();
  const addition: Addition = {
    ...rest,
    id: crypto.randomUUID(),
    sheetId: worksheet.id,
    sheet: worksheet.name,
    print: await fingerprintOf(formulas()),
    columns: name === undefined ? undefined : addedShapes(name, formulas()[0] ?? []),
  };
  saveAdditions(context, [...others, addition]);
  await context.sync();
  const [looked] = await lookAt(context, () => writtenAreas(worksheet, addition), { headRow });
  return { ...addition, looked };
}

/** What was written; on a sheet of its own whatever stands there by now. */
function writtenAreas(sheet: Excel.Worksheet, { extent, areas }: Addition): readonly Excel.Range[] {
  return extent === undefined ? areas.map((area) => sheet.getRange(area)) : [sheet.getUsedRange(true)];
}

/**
 * Takes out what was added, whole or not at all. Errors: WorkbookFault where it was changed since, where its
 * sheet holds more by now, or where a later addition depends on it.
 */
export async function takeOut(id: string): Promise<void> {
  await run(async (context) => {
    const asked = askAdditions(context);
    await context.sync();
    const all = asked();
    const addition = all.find((each) => each.id === id);
    if (!addition) throw new WorkbookFault("That is no longer in the workbook.");
    const sheet = context.workbook.worksheets.getItemOrNullObject(addition.sheetId);
    sheet.load("name");
    const used = sheet.getUsedRangeOrNullObject(true);
    used.load("rowIndex,columnIndex,rowCount,columnCount");
    const extent = addition.extent === undefined ? undefined : sheet.getRange(addition.extent);
    extent?.load("rowIndex,columnIndex,rowCount,columnCount");
    const formulas = askFormulas(sheet, addition.areas);
    const followed =
      addition.follows === undefined
        ? undefined
        : context.workbook.tables.getItemOrNullObject(addition.follows).getDataBodyRange();
    followed?.load("rowCount");
    await context.sync();
    if (sheet.isNullObject) throw new WorkbookFault("The sheet it stood on is gone already.");
    const resting = all.find((each) => each.from === addition.sheetId && each.id !== id);
    if (addition.extent !== undefined && resting) {
      throw new WorkbookFault(`The sheet ${resting.sheet} follows ${sheet.name}. Take that out first.`);
    }
    const grown = followed && !followed.isNullObject ? followed.rowCount + LIST_HEAD : 0;
    if (
      (await fingerprintOf(formulas())) !== addition.print ||
      (extent && !used.isNullObject && isBeyond(used, extent, grown))
    ) {
      throw new WorkbookFault(
        `The sheet ${sheet.name} was changed since, so nothing was taken out: it might be yours. Delete by hand what you do not want.`,
      );
    }
    if (addition.extent === undefined) clearColumns(sheet, addition);
    else sheet.delete();
    forgetAddition(context, all, addition);
    await context.sync();
  });
}

/** Removes the note of an addition at the next sync, and the name over its columns. */
export function forgetAddition(context: Excel.RequestContext, all: readonly Addition[], addition: Addition): void {
  if (addition.columns) context.workbook.names.getItemOrNullObject(addition.columns.name).delete();
  saveAdditions(
    context,
    all.filter(({ id }) => id !== addition.id),
  );
}

function saveAdditions(context: Excel.RequestContext, additions: readonly Addition[]): void {
  const { settings } = context.workbook;
  if (additions.length > 0) settings.add(SETTING, JSON.stringify(additions));
  else settings.getItemOrNullObject(SETTING).delete();
}

function askFormulas(
  sheet: Excel.Worksheet,
  areas: readonly string[],
): () => readonly (readonly (readonly unknown[])[])[] {
  const ranges = areas.map((area) => sheet.getRange(area));
  for (const range of ranges) range.load("formulas");
  return () => ranges.map((range) => range.formulas);
}

/** @param grown rows that a list which follows a table may have by now */
function isBeyond(used: Excel.Range, extent: Excel.Range, grown: number): boolean {
  return (
    used.rowIndex < extent.rowIndex ||
    used.columnIndex < extent.columnIndex ||
    used.rowIndex + used.rowCount > extent.rowIndex + Math.max(extent.rowCount, grown) ||
    used.columnIndex + used.columnCount > extent.columnIndex + extent.columnCount
  );
}

/** A short text that is the same only for the same content. */
export async function fingerprintOf(content: unknown): Promise<string> {
  const bytes = new TextEncoder().encode(JSON.stringify(content));
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** What the setting holds; nothing for a damaged one, or another program's. */
function additionsIn(value: unknown): readonly Addition[] {
  try {
    const parsed: unknown = typeof value === "string" ? JSON.parse(value) : undefined;
    return Array.isArray(parsed) ? parsed.filter(isAddition) : [];
  } catch {
    return [];
  }
}

function isAddition(value: unknown): value is Addition {
  if (typeof value !== "object" || value === null) return false;
  const texts = ["id", "what", "sheetId", "sheet", "print"].map((key): unknown => Reflect.get(value, key));
  return texts.every((text) => typeof text === "string") && Array.isArray(Reflect.get(value, "areas"));
}
