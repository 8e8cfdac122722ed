import { beforeAll, describe, expect, test } from "vitest";
import { cellsOf, UNCOSTED_HEADERS, UNCOSTED_ROWS } from "../uncostedrows";
import { atRoundRates, openCatalogue, ownSheet, readDesigns, unfold } from "./catalogue";
import { cellAt, press, sheetNames, view } from "./desk";
import { clickCell, settled } from "./person.mjs";
import { deskForAll } from "./workshop";

const desk = deskForAll(atRoundRates);

/** The rows of the designs, one for each thing that would count as nothing, and a plain one before and after. */
const ROWS = [{}, ...UNCOSTED_ROWS.map(({ cells }) => cells), {}].map((cells, at) =>
  ["Ada", ...cellsOf(cells)].concat(at),
);
const SHEET = "Mine";
const questions = () => desk.pane.locator("footer .question");

beforeAll(async () => {
  await ownSheet(desk, SHEET, "A1", [["Customer", ...UNCOSTED_HEADERS, "Shelf"], ...ROWS], "Mine");
});

test("added columns show the fault in its own row", async () => {
  await openCatalogue(desk);
  await readDesigns(desk, "Mine");
  await unfold(desk, "Price list in the workbook");
  await press(desk, "Add columns beside the designs");
  await desk.pane.locator(".ending", { hasText: "were added on Mine" }).first().waitFor();
  const cells = await desk.page.evaluate((name) => window.workbookPage.read(name, "A1:AZ12").flat(), SHEET);
  const prices = cells.filter(({ formula }) => /PRICELINE\(.*"Price"\)/.test(formula));
  expect(prices).toHaveLength(ROWS.length);
  expect(prices.map(({ value, error }) => error?.sentence ?? typeof value)).toEqual([
    "number",
    ...UNCOSTED_ROWS.map(({ fault }) => fault),
    "number",
  ]);
});

describe.each(UNCOSTED_ROWS.map((row, at) => ({ ...row, at })))("beside the button", ({ what, asks, at }) => {
  test(`${what} is asked, and no quote is made before`, async () => {
    await view(desk, "Quote");
    await clickCell(desk.page, SHEET, `B${at + 3}`);
    await press(desk, "Take from the selected row");
    await press(desk, "Make the quote");
    expect((await questions().locator("p").allTextContents()).filter((said) => said === asks)).toHaveLength(1);
    expect((await sheetNames(desk)).filter((name) => name.startsWith("Quote 1"))).toEqual([]);
  });
});

test("what is said to be free is typed as 0, and the cost lines say so", async () => {
  const { at } = { at: UNCOSTED_ROWS.findIndex(({ asks }) => asks.endsWith("have no cost. Are they free?")) };
  await clickCell(desk.page, SHEET, `B${at + 3}`);
  await press(desk, "Take from the selected row");
  await press(desk, "Make the quote");
  await questions().getByRole("button", { name: "Yes, they are free" }).click();
  await settled(desk.page);
  expect(await desk.pane.locator("#order-findingsCost").inputValue()).toBe("0");
  expect(await desk.pane.locator("dt:text-is('Other findings') + dd").first().textContent()).toBe("free you typed 0");
  expect(await cellAt(desk, SHEET, `B${at + 3}`)).toMatchObject({ value: "Curb" });
});
