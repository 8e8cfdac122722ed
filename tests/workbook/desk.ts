import type { Frame, Locator, Page } from "playwright-core";
import { clickCell, settled, typeIn } from "./person.mjs";
import type { Workshop } from "./workshop";

/** One person at one workbook page: the built add-in over the stand-in, in a real browser. */
export interface Desk {
  readonly page: Page;
  readonly pane: Frame;
  /** Errors that no code caught, on the page or in the pane. */
  readonly crashes: readonly string[];
  /** Removes the errors that a test caused on purpose. Fails where there was none. */
  forgive(pattern: RegExp): void;
  /** Ends a test; the next one finds a new workbook and pane. Fails where something had crashed. */
  leave(): Promise<void>;
}

/** Goes to one of the pane's views by its tab. */
export async function view(desk: Desk, name: "Quote" | "Check" | "Decide" | "Links" | "Catalogue"): Promise<void> {
  await desk.pane.getByRole("tab", { name, exact: true }).click();
  await settled(desk.page);
}

/** Fills fields of the pane by their labels, as a person would, and selects where there is a list. */
export async function fill(desk: Desk, order: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, text] of Object.entries(order)) {
    const field = desk.pane.getByLabel(label, { exact: true });
    // One evaluation and one search by label for each field: a search reads the whole pane, and there are many fields.
    const { id, isChoice, isInSight } = await field.evaluate((element) => ({
      id: element.id,
      isChoice: element.tagName === "SELECT",
      isInSight: !element.closest("[role='tabpanel'][hidden], details:not([open])"),
    }));
    if (!isInSight) await inSight(field);
    const found = desk.pane.locator(`[id="${id}"]`);
    if (isChoice) await found.selectOption(text);
    else await found.fill(text);
  }
  await settled(desk.page);
}

/** Brings a field into sight: goes to its view, and unfolds the group that it is in. */
export async function inSight(field: Locator): Promise<void> {
  const hidden = field.locator("xpath=ancestor::*[@role='tabpanel'][@hidden]");
  if ((await hidden.count()) > 0) {
    const tab = await hidden.getAttribute("aria-labelledby");
    await field.page().locator("#pane").contentFrame().locator(`#${tab}`).click();
  }
  const summary = field.locator("xpath=ancestor::details[not(@open)]/summary");
  if ((await summary.count()) > 0) await summary.click();
}

/**
 * Presses a button of the pane and waits for what follows. The spots of tests make round figures and are no spots of today: where that
 * is all that is asked before a quote, it is answered.
 */
export async function press(desk: Desk, name: string): Promise<void> {
  const button = desk.pane.getByRole("button", { name, exact: true });
  await button.click();
  await settled(desk.page);
  const isMaking = /^Make the (quote|revision)/.test(name);
  const question = desk.pane.locator("footer .question:visible");
  if (!isMaking || (await question.filter({ hasText: /^Spot is / }).count()) === 0) return;
  const others = (await question.count()) - 1;
  await question
    .filter({ hasText: /^Spot is / })
    .getByRole("button")
    .last()
    .click();
  await settled(desk.page);
  if (others > 0) return;
  await desk.pane.getByRole("button", { name: "Make the quote", exact: true }).click();
  await settled(desk.page);
}

/** Answers every question beside the button that what is typed is right, or free. */
export async function answerAll(desk: Desk): Promise<void> {
  const question = desk.pane.locator("footer .question:visible");
  while ((await question.count()) > 0) {
    await question.first().getByRole("button").last().click();
    await settled(desk.page);
  }
}

/** The values of a sheet's cells as a person reads them. */
export function texts(desk: Desk, sheet: string, address: string): Promise<string[][]> {
  return desk.page.evaluate(
    ([name = "", cells = ""]) => window.workbookPage.read(name, cells).map((row) => row.map(({ text }) => text)),
    [sheet, address],
  );
}

/** One cell: its value, its formula, its shown text, its fault. */
export function cellAt(desk: Desk, sheet: string, address: string) {
  return desk.page.evaluate(([name = "", cell = ""]) => window.workbookPage.read(name, cell)[0]?.[0], [sheet, address]);
}

/** Every cell of a sheet that holds something. */
export function filledCells(desk: Desk, sheet: string) {
  return desk.page.evaluate(
    (name) =>
      window.workbookPage
        .read(name, "A1:H260")
        .flat()
        .filter(({ value, formula }) => value !== "" || formula !== ""),
    sheet,
  );
}

export function sheetNames(desk: Desk): Promise<string[]> {
  return desk.page.evaluate(() => window.workbookPage.sheets().map(({ name }) => name));
}

/** Fine gold (1000 ‰) at this spot is exactly 25.00 a gram: 25 x 31.1034768. */
export const SPOT_FOR_25 = "777.58692";

/** 12.5 inches at 4 an inch are 50 links, 100 g at 2 g each, without a clasp. */
export const HUNDRED_GRAMS = {
  Customer: "Ada Quillfeather",
  Design: "Plain curb",
  Mark: "1000",
  Length: "12.5",
  "Links per length": "4",
  "Weight of one link": "2",
  Clasp: "none",
};

/** A blank workbook with Rates laid out at that spot. @param query more of the page, such as "locale=de-DE" */
export async function withRates(workshop: Workshop, query = ""): Promise<Desk> {
  const desk = await workshop.sitDown(query === "" ? "book=blank" : `book=blank&${query}`);
  await fill(desk, { Spot: SPOT_FOR_25 });
  await press(desk, "Lay out the Rates sheet");
  await desk.pane.getByLabel("Customer", { exact: true }).waitFor();
  return desk;
}

/** Types a value into the cell of a rate, found by its defined name. */
export async function setRate(desk: Desk, name: string, text: string): Promise<void> {
  const [sheet, cell] = await rateCell(desk, name);
  await typeIn(desk.page, sheet, cell, text);
}

/** Empties the cell of a rate, as the Delete key does. */
export async function clearRate(desk: Desk, name: string): Promise<void> {
  const [sheet, cell] = await rateCell(desk, name);
  await clickCell(desk.page, sheet, cell);
  await desk.page.keyboard.press("Delete");
  await settled(desk.page);
}

/** Sheet and cell that a rate's defined name refers to. */
export async function rateCell(desk: Desk, name: string): Promise<[sheet: string, cell: string]> {
  const names = await desk.page.evaluate(() => window.workbookPage.names());
  const [, sheet = "", cell = ""] =
    /^=?'?([^'!]+)'?!(.+)$/.exec(names.find((item) => item.name === `Rate_${name}`)?.formula ?? "") ?? [];
  return [sheet, cell.replaceAll("$", "")];
}

/** Protects, deletes or renames a sheet as a person does from Excel's menus, through the pane's office.js. */
export async function menu(desk: Desk, act: "protect" | "delete" | "rename", sheet: string, name = ""): Promise<void> {
  await desk.pane.evaluate(
    async ([what, of = "", to = ""]) => {
      await Excel.run(async (context) => {
        const worksheet = context.workbook.worksheets.getItem(of);
        if (what === "protect") worksheet.protection.protect();
        if (what === "delete") worksheet.delete();
        if (what === "rename") worksheet.name = to;
        await context.sync();
      });
    },
    [act, sheet, name],
  );
  await settled(desk.page);
}

/** Makes Excel refuse one sheet's name: office.js sends a name that another sheet has in its place. */
export async function refuseNaming(desk: Desk, refused: string): Promise<void> {
  await desk.pane.evaluate((name) => {
    const property = Object.getOwnPropertyDescriptor(Excel.Worksheet.prototype, "name");
    if (!property?.set) throw new Error("office.js has no Worksheet.name to write");
    const { set } = property;
    Object.defineProperty(Excel.Worksheet.prototype, "name", {
      ...property,
      set(this: Excel.Worksheet, given: string) {
        set.call(this, given === name ? "Rates" : given);
      },
    });
  }, refused);
}
