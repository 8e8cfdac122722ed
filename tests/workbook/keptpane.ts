import type { Locator } from "playwright-core";
import { expect } from "vitest";
import { unfold } from "./catalogue";
import { answerAll, type Desk, press, view } from "./desk";
import { settled } from "./person.mjs";

/**
 * What a person finds in the pane of a kept workbook, as numbers and counts. The one place of those tests that knows the
 * pane's words and looks: when they change, what must go on reading stays said as it is.
 */

/** Every figure in a text, as its language writes figures. */
export function figuresIn(text: string, locale: string): readonly number[] {
  const parts = new Intl.NumberFormat(locale).formatToParts(1234.5);
  const [group = ",", decimal = "."] = ["group", "decimal"].map(
    (type) => parts.find((part) => part.type === type)?.value,
  );
  return (text.match(/\d[\d.,]*/g) ?? []).map((figure) =>
    Number(figure.replaceAll(group, "").replace(decimal, ".").replace(/\.$/, "")),
  );
}

const textOf = async (desk: Desk, selector: string) => (await desk.pane.locator(selector).allInnerTexts()).join("\n");

/** The pane's text about rates: it shows a spot only where all rates could be read. */
export function ratesHead(desk: Desk): Promise<string> {
  return textOf(desk, ".spotline");
}

export function result(desk: Desk): Promise<string> {
  return textOf(desk, ".result");
}

/** The earlier quotes as listed: the text of each, by its number. */
export async function earlierQuotes(desk: Desk): Promise<ReadonlyMap<string, string>> {
  await view(desk, "Quote");
  const list = desk.pane.locator("details.earlier");
  if ((await list.getAttribute("open")) === null) await list.locator("> summary").click();
  await settled(desk.page);
  return entriesOf(list.locator("ul > li"));
}

export async function openQuote(desk: Desk, number: string): Promise<void> {
  await press(desk, `Open quote ${number}`);
}

/** Makes a quote of the form's order. @param template the sheet to copy, where not the usual one */
export async function makeQuote(desk: Desk, number: string, template?: string): Promise<void> {
  if (template !== undefined) {
    await desk.pane.locator("details.template > summary").click();
    await settled(desk.page);
    await desk.pane.locator("#template").selectOption(template);
  }
  await press(desk, "Make the quote");
  if (await desk.pane.locator("footer .question").first().isVisible()) {
    await answerAll(desk);
    await press(desk, "Make the quote");
  }
  await desk.pane.getByText(`Quote ${number}, Job ${number} and Tickets ${number}`).first().waitFor();
  await settled(desk.page);
}

/** Unfolds a part of a view by its title. */
export async function part(desk: Desk, tab: Parameters<typeof view>[1], title: string): Promise<void> {
  await view(desk, tab);
  const found = desk.pane.locator("[role=tabpanel]:not([hidden]) details.part", { hasText: title });
  if ((await found.getAttribute("open")) === null) await found.locator("> summary").click();
  await settled(desk.page);
}

/** The open quotes that today's spot may turn into a loss, with the text of each. */
export async function openQuotes(desk: Desk): Promise<ReadonlyMap<string, string>> {
  await part(desk, "Decide", "Open quotes and spot");
  const list = desk.pane.locator("ul.risks > li");
  await list.first().waitFor();
  return entriesOf(list);
}

/** What is said of the open quotes besides the list of them. */
export function besidesOpenQuotes(desk: Desk): Promise<string> {
  return textOf(desk, ".decidepart .besides");
}

/** Items of a list by the number that each shows in bold. */
async function entriesOf(items: Locator): Promise<ReadonlyMap<string, string>> {
  const [numbers, texts] = [await items.locator("b").allTextContents(), await items.allInnerTexts()];
  expect(numbers).toHaveLength(texts.length);
  return new Map(numbers.map((number, index) => [number, texts[index] ?? ""]));
}

/** The kept links that an order can take, by their names. */
export async function keptLinks(desk: Desk): Promise<readonly string[]> {
  await part(desk, "Links", "Kept links");
  await desk.pane.locator("#link-choice option").first().waitFor({ state: "attached" });
  return desk.pane.locator("#link-choice option").allTextContents();
}

/** Takes a kept link into the order and gives the order's weight of one link. */
export async function takeLink(desk: Desk, name: string): Promise<number> {
  await view(desk, "Links");
  await desk.pane.locator("#link-choice").selectOption({ label: name });
  const links = desk.pane.getByRole("tabpanel", { name: "Links", exact: true });
  await links.getByRole("button", { name: /^Use in the order/ }).click();
  await settled(desk.page);
  return Number(await desk.pane.locator("#order-linkWeight").inputValue());
}

/** The names that the scale's form offers for those who polish or finish. */
export async function finishersOffered(desk: Desk): Promise<readonly string[]> {
  await part(desk, "Links", "Weigh in");
  await desk.pane.locator("#weighin-who").waitFor();
  const list = await desk.pane.locator("#weighin-who").getAttribute("list");
  return desk.pane
    .locator(`[id="${list}"] option`)
    .evaluateAll((options) => options.map((option) => (option instanceof HTMLOptionElement ? option.value : "")));
}

/** What can be taken out of the workbook again, or put back: the names of the buttons, in their order. */
export async function additions(desk: Desk): Promise<readonly string[]> {
  await view(desk, "Catalogue");
  await desk.pane.getByRole("button", { name: "Read the designs", exact: true }).waitFor();
  await settled(desk.page);
  return buttonsOf(desk, "[aria-labelledby=added-title]");
}

/** The lists of asking prices that can be taken out again. */
export async function askingLists(desk: Desk): Promise<readonly string[]> {
  await part(desk, "Check", "A list of asking prices");
  await desk.pane.locator("[aria-labelledby=lists-title]").waitFor();
  await settled(desk.page);
  return buttonsOf(desk, "[aria-labelledby=lists-title]");
}

function buttonsOf(desk: Desk, section: string): Promise<readonly string[]> {
  return desk.pane
    .locator(`${section} [aria-label]`)
    .evaluateAll((buttons) => buttons.map((button) => button.getAttribute("aria-label") ?? ""));
}

/** How many asking prices the plot of premiums draws. */
export async function premiumsDrawn(desk: Desk): Promise<number> {
  await part(desk, "Check", "Premiums seen");
  const points = desk.pane.locator(".asking .plot .picture .point");
  await points.first().waitFor();
  return points.count();
}

/** Who asks what for the chain of the form's order, with the workshop's own cost among them, row by row. */
export async function makersAsking(desk: Desk): Promise<readonly string[]> {
  await view(desk, "Decide");
  const rows = desk.pane
    .getByRole("table", { name: "What each maker asks for this chain", exact: false })
    .locator("tbody tr");
  await rows.first().waitFor();
  await settled(desk.page);
  return rows.allInnerTexts();
}

/** The address from which a spot was last read; designs must have been read before. */
export async function spotAddress(desk: Desk): Promise<string> {
  await unfold(desk, "New spot");
  await unfold(desk, "Read it from an address");
  await settled(desk.page);
  return desk.pane.locator("#source-url").inputValue();
}
