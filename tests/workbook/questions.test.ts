import { expect, test } from "vitest";
import { clearRate, fill, HUNDRED_GRAMS, press, rateCell, setRate, sheetNames, withRates } from "./desk";
import { settled } from "./person.mjs";
import { deskForEach } from "./workshop";

/** At a spot that nobody doubts. */
const desk = deskForEach(async (workshop) => {
  const sat = await withRates(workshop);
  await setRate(sat, "Spot", "2400");
  return sat;
});

const HEAVY = "One link of 75 g is unusual. Is the decimal point in its place?";
const questions = () => desk.pane.locator("footer .question");
const sentences = () => desk.pane.locator("footer .question > p").allTextContents();
const head = () => desk.pane.locator("footer .questionshead");
const focused = () => desk.pane.evaluate(() => document.activeElement?.textContent ?? "");
const answer = async (words: string) => {
  await questions().getByRole("button", { name: words, exact: true }).first().click();
  await settled(desk.page);
};
const made = (number: string) =>
  desk.pane.getByText(`Quote ${number}, Job ${number} and Tickets ${number} are in the workbook.`).waitFor();

test("a doubtful figure is asked beside the button, by keyboard too, and no quote is made before", async () => {
  await fill(desk, { ...HUNDRED_GRAMS, "Weight of one link": "75" });
  // While one types, one line tells of it.
  expect(await head().textContent()).toBe("1 question before the quote");
  expect(await questions().isVisible()).toBe(false);
  await desk.page.keyboard.press("Control+Enter");
  await settled(desk.page);
  expect(await sheetNames(desk)).not.toContain("Quote 1001");
  expect(await focused()).toContain(HEAVY);
  await desk.page.keyboard.press("Tab");
  expect(await focused()).toBe("Correct it");
  await desk.page.keyboard.press("Tab");
  expect(await focused()).toBe("Yes, 75 g");
  await desk.page.keyboard.press("Enter");
  await settled(desk.page);
  expect(await focused()).toBe("Make the quote");
  await desk.page.keyboard.press("Enter");
  await made("1001");
});

test("an answer is kept for its figure: the same figure is not asked again, another is", async () => {
  await fill(desk, { ...HUNDRED_GRAMS, "Weight of one link": "75" });
  await press(desk, "Make the quote");
  await answer("Yes, 75 g");
  await fill(desk, { "Weight of one link": "2" });
  await fill(desk, { "Weight of one link": "75" });
  expect(await head().isVisible()).toBe(false);
  await fill(desk, { "Weight of one link": "76" });
  expect(await head().isVisible()).toBe(true);
  await fill(desk, { "Weight of one link": "75" });
  await press(desk, "Make the quote");
  await made("1001");
  // The form holds the quote: its revision is not asked either.
  await fill(desk, { Quantity: "2" });
  await press(desk, "Make the quote");
  await made("1002");
});

test("several questions are drawn alike, one after the other, and each leads to where its figure is typed", async () => {
  await setRate(desk, "Plating", "40");
  await clearRate(desk, "PlatingMetal");
  await fill(desk, { ...HUNDRED_GRAMS, Mark: "14K", Colour: "white", "Weight of one link": "75" });
  expect(await head().textContent()).toBe("2 questions before the quote");
  await press(desk, "Make the quote");
  expect(await sentences()).toEqual([
    "Plated with which metal? Until the metal is named, the quote says nothing of plating.",
    HEAVY,
  ]);
  await answer("Leave plating out of the quote");
  expect(await focused()).toContain(HEAVY);
  await answer("Correct it");
  expect(await desk.pane.locator("#order-linkWeight").evaluate((field) => field.matches(":focus"))).toBe(true);
  await fill(desk, { "Weight of one link": "7.5" });
  expect(await head().isVisible()).toBe(false);
});

test("a spot is asked that looks like a price per gram, and one that moved by more than 15 % since the last quote", async () => {
  const makePressed = async () => {
    await desk.pane.getByRole("button", { name: "Make the quote", exact: true }).click();
    await settled(desk.page);
  };
  await setRate(desk, "Spot", "77.25");
  await fill(desk, HUNDRED_GRAMS);
  await makePressed();
  expect(await sentences()).toEqual([
    "Spot is USD 77.25 per troy ounce, which looks like a price per gram. Is it right?",
  ]);
  await answer("Correct it on the Rates sheet");
  const [sheet, cell] = await rateCell(desk, "Spot");
  expect(await desk.page.evaluate(() => window.workbookPage.active())).toBe(`${sheet}!${cell}`);
  await setRate(desk, "Spot", "2400");
  await makePressed();
  await made("1001");
  // 15 % above is 2,760.
  await setRate(desk, "Spot", "2761");
  await fill(desk, { Quantity: "2" });
  await makePressed();
  expect(await sentences()).toEqual(["Spot is USD 2761.00, 15% above that of your last quote. Is it right?"]);
  await setRate(desk, "Spot", "2760");
  await makePressed();
  await made("1002");
});
