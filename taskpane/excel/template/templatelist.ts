import { locale } from "../host";
import { paperSizeFor } from "../paper";
import { readAfterEdit, run } from "../run";
import { fieldsIn } from "./placedfields";
import { type BuiltInTemplate, builtInTemplates, putTemplate, TEMPLATE_SHEET } from "./template";

/** The templates that quotes can be made from. */
export interface Templates {
  /** The workbook's sheets with "template" in their name and fields in them; the usual one first. */
  readonly there: readonly string[];
  /** Built-in ones that the workbook does not have yet. */
  readonly offered: readonly BuiltInTemplate[];
}

/** What a sheet's name must have in it to count as a template. */
const NAMED = /template/i;

/** Reads which templates a workbook has, in two syncs. */
export async function templatesIn(context: Excel.RequestContext): Promise<Templates> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const names = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
  const asked = worksheets.items
    .filter(({ name }) => NAMED.test(name))
    .map((sheet) => {
      const used = sheet.getUsedRangeOrNullObject(true);
      used.load("formulas");
      return { name: sheet.name, used };
    });
  await context.sync();
  const there = asked.filter(({ used }) => !used.isNullObject && hasFields(used.formulas)).map(({ name }) => name);
  return {
    there: [...there].sort((a, b) => Number(b === TEMPLATE_SHEET) - Number(a === TEMPLATE_SHEET)),
    offered: builtInTemplates(paperSizeFor(locale())).filter((name) => !names.has(name.toLowerCase())),
  };
}

/** The templates of the workbook, read on their own. */
export async function readTemplates(): Promise<Templates> {
  return readAfterEdit(templatesIn);
}

/** Adds a built-in template as a sheet and shows it; one that is there already is only shown. */
export async function addTemplate(name: BuiltInTemplate): Promise<void> {
  await run(async (context) => {
    const { worksheets } = context.workbook;
    const there = worksheets.getItemOrNullObject(name);
    there.load("name");
    await context.sync();
    const sheet = there.isNullObject ? worksheets.add(name) : there;
    if (there.isNullObject) putTemplate(sheet, name, paperSizeFor(locale()));
    sheet.activate();
    await context.sync();
  });
}

function hasFields(cells: readonly (readonly unknown[])[]): boolean {
  return cells.some((row) => row.some((cell) => typeof cell === "string" && fieldsIn(cell).length > 0));
}
