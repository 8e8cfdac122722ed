import { type Desk, inSight, texts, view } from "./desk";
import { settled } from "./person.mjs";

/** Steps of a person in the parts about weighing. */

export const ADA = { model: "Ada curb", width: "8", mark: "14K", colour: "yellow" };

/** Unfolds a part and waits for its fields. */
export async function unfold(desk: Desk, title: string): Promise<void> {
  await view(desk, "Links");
  const part = desk.pane.locator("details.part", { hasText: title });
  if ((await part.getAttribute("open")) === null) await part.locator("summary").click();
  await part.locator("form").first().waitFor();
  await settled(desk.page);
}

/** Fills fields by the name of their form and their keys. */
export async function set(desk: Desk, form: string, values: Readonly<Record<string, string>>): Promise<void> {
  for (const [key, text] of Object.entries(values)) {
    const control = desk.pane.locator(`#${form}-${key}`);
    await inSight(control);
    if ((await control.evaluate((element) => element.tagName)) === "SELECT") await control.selectOption(text);
    else await control.fill(text);
  }
  await settled(desk.page);
}

/** Types a weigh-in, ends with Enter and gives the pane's sentence about it. */
export async function weigh(desk: Desk, values: Readonly<Record<string, string>>): Promise<string> {
  await set(desk, "weighin", values);
  await desk.pane.locator("#weighin-weight").press("Enter");
  await settled(desk.page);
  await desk.pane.locator(".answerbox .answerhead").waitFor();
  return plain((await desk.pane.locator(".answerbox p").allTextContents()).join(" "));
}

/** The warnings of the last weigh-in. */
export async function warnings(desk: Desk): Promise<string[]> {
  return (await desk.pane.locator(".answerbox .warning").allTextContents()).map(plain);
}

/** The sentence below the fields of a part. */
export async function note(desk: Desk, title: string): Promise<string> {
  const part = desk.pane.locator("details.part", { hasText: title });
  const said = await part.locator(".scalebody p[role=status]").allTextContents();
  return plain(said.filter((text) => text !== "").join(" "));
}

/** The sentence under a field. */
export async function fault(desk: Desk, form: string, key: string): Promise<string> {
  return plain((await desk.pane.locator(`#${form}-${key}-fault`).textContent()) ?? "");
}

/** A row of a table by the titles of its columns; `row` counts the table's own rows from 1. */
export async function tableRow(desk: Desk, sheet: string, row: number): Promise<Readonly<Record<string, string>>> {
  const [titles = []] = await texts(desk, sheet, "A4:AN4");
  const [cells = []] = await texts(desk, sheet, `A${4 + row}:AN${4 + row}`);
  return Object.fromEntries(
    titles.map((title, place) => [title, cells[place] ?? ""]).filter(([title]) => title !== ""),
  );
}

/** The exact value of a cell of a table. */
export async function cellValue(desk: Desk, sheet: string, row: number, title: string): Promise<number> {
  const [titles = []] = await texts(desk, sheet, "A4:AN4");
  const place = titles.indexOf(title);
  return desk.page.evaluate(
    ([name, at, column]) =>
      Number(window.workbookPage.read(String(name), `A${at}:AN${at}`)[0]?.[Number(column)]?.value ?? Number.NaN),
    [sheet, 4 + row, place],
  );
}

function plain(text: string): string {
  return text.replaceAll(/\s+/g, " ").trim();
}
