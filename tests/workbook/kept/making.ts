import { type Desk, press, rateCell, setRate, texts } from "../desk";
import { clickCell, settled, typeIn } from "../person.mjs";

/** Steps that a person repeats while making a workbook that is kept. */

/** Types rates, given by the ends of their names, and empties the cells of those that are to be blank. */
export async function setRates(desk: Desk, rates: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, text] of Object.entries(rates)) {
    if (text !== "") await setRate(desk, name, text);
    else {
      await clickCell(desk.page, ...(await rateCell(desk, name)));
      await desk.page.keyboard.press("Delete");
      await settled(desk.page);
    }
  }
}

export async function makeQuote(desk: Desk, number: string): Promise<void> {
  await press(desk, "Make the quote");
  await desk.pane.getByText(`Quote ${number}, Job ${number} and Tickets ${number} are in the workbook.`).waitFor();
}

/** Writes beside a label of a sheet. @param which of the rows that have it, from 1 */
export async function writeBeside(
  desk: Desk,
  sheet: string,
  label: string,
  cells: Readonly<Record<string, string>>,
  which = 1,
): Promise<void> {
  const labels = (await texts(desk, sheet, "A1:A320")).map(([text]) => text);
  const row = labels.flatMap((text, index) => (text === label ? [index + 1] : []))[which - 1];
  if (row === undefined) throw new Error(`${sheet} has no ${label}, ${which}`);
  for (const [column, text] of Object.entries(cells)) await typeIn(desk.page, sheet, `${column}${row}`, text);
}

/** Adds a column to a table, as Excel's menus do. */
export async function widen(desk: Desk, table: string, title: string): Promise<void> {
  await desk.pane.evaluate(
    async ([name = "", head = ""]) => {
      await Excel.run(async (context) => {
        const found = context.workbook.tables.getItem(name);
        const range = found.getRange();
        range.load("columnCount");
        await context.sync();
        found.resize(range.getResizedRange(0, 1));
        range.getCell(0, range.columnCount).values = [[head]];
        await context.sync();
      });
    },
    [table, title],
  );
  await settled(desk.page);
}
