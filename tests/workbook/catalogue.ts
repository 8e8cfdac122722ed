import { cellAt, type Desk, press, setRate, view, withRates } from "./desk";
import { settled } from "./person.mjs";
import type { Workshop } from "./workshop";

/** Rates of round figures: 25.00 a gram fine, 1.50 cast, 50 labour, 2 g lost, quick basis, markup 30 %, price step 1. */
export async function atRoundRates(workshop: Workshop): Promise<Desk> {
  const desk = await withRates(workshop);
  await setRate(desk, "LossBasis", "grams");
  await setRate(desk, "Loss", "2");
  await setRate(desk, "CostBasis", "quick");
  return desk;
}

export async function openCatalogue(desk: Desk): Promise<void> {
  await view(desk, "Catalogue");
  await desk.pane.getByRole("button", { name: "Read the designs", exact: true }).waitFor();
  await settled(desk.page);
}

/** Unfolds one of the tasks by its title. */
export async function unfold(desk: Desk, title: string): Promise<void> {
  await desk.pane.locator("details.catalogue summary", { hasText: title }).click();
}

/** Puts cells on a new sheet of the person's, and a table over them where a name for it is given. */
export async function ownSheet(
  desk: Desk,
  name: string,
  address: string,
  cells: readonly (readonly (string | number)[])[],
  table = "",
): Promise<void> {
  await desk.pane.evaluate(
    async ([sheetName, at, values, tableName]) => {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.add(sheetName);
        const range = sheet.getRange(at).getAbsoluteResizedRange(values.length, values[0]?.length ?? 1);
        range.values = values.map((row) => [...row]);
        if (tableName !== "") context.workbook.tables.add(range, true).name = tableName;
        sheet.activate();
        range.select();
        await context.sync();
      });
    },
    [name, address, cells, table] as const,
  );
  await settled(desk.page);
}

/** Has the pane read the designs that are selected, or those of a table. */
export async function readDesigns(desk: Desk, table = ""): Promise<void> {
  await desk.pane.getByLabel("Where they are").selectOption(table);
  await press(desk, "Read the designs");
}

/** All that a workbook holds: every sheet's cells, formats and widths, names, tables, and what the add-in saves in it. */
export async function dump(desk: Desk): Promise<unknown> {
  const page = await desk.page.evaluate(() => ({
    sheets: window.workbookPage.sheets(),
    names: window.workbookPage.names(),
    tables: window.workbookPage.tables(),
    cells: window.workbookPage.sheets().map(({ name }) => window.workbookPage.read(name, "A1:AF60")),
  }));
  const looks = await desk.pane.evaluate(() =>
    Excel.run(async (context) => {
      const { worksheets, settings } = context.workbook;
      worksheets.load("items/name");
      const count = settings.getCount();
      await context.sync();
      const all = worksheets.items.map((sheet) => {
        const range = sheet.getRange("A1:AF60");
        range.load("numberFormat");
        const columns = Array.from({ length: 32 }, (_, column) => {
          const cells = sheet.getRangeByIndexes(0, column, 60, 1);
          cells.load(
            "format/columnWidth,format/fill/color,format/font/bold,format/font/color,format/horizontalAlignment",
          );
          return cells;
        });
        return { range, columns };
      });
      await context.sync();
      return {
        settings: count.value,
        looks: all.map(({ range, columns }) => ({
          formats: range.numberFormat,
          columns: columns.map(({ format }) => [
            format.columnWidth,
            format.fill.color,
            format.font.bold,
            format.font.color,
            format.horizontalAlignment,
          ]),
        })),
      };
    }),
  );
  return { page, looks };
}

/** A sentence of the pane with plain spaces. */
export async function said(desk: Desk, selector: string): Promise<string> {
  const text = await desk.pane.locator(selector).first().textContent();
  return (text ?? "").replaceAll("\u00a0", " ");
}

/** A row of values. */
export async function valuesOf(desk: Desk, sheet: string, address: string): Promise<unknown[][]> {
  return desk.page.evaluate(
    ([name = "", cells = ""]) => window.workbookPage.read(name, cells).map((row) => row.map(({ value }) => value)),
    [sheet, address],
  );
}

export async function value(desk: Desk, sheet: string, cell: string): Promise<unknown> {
  return (await cellAt(desk, sheet, cell))?.value;
}
