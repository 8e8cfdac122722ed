import { beforeEach, describe, expect, test } from "vitest";
import { fill, HUNDRED_GRAMS, press, setRate, sheetNames, withRates } from "./desk";
import { clickCell, typeIn } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach();

const SHEETS = ["Sheet1", "Rates", "Quote template"];

describe("an order that can't be right", () => {
  beforeEach(async () => {
    await desk.sit(withRates);
    await fill(desk, HUNDRED_GRAMS);
  });

  test("each bad field gets its sentence, keeps what was typed, and no sheet is made", async () => {
    const wrong: Record<string, [typed: string, sentence: string]> = {
      Mark: ["25K", 'Mark: found "25K", which is not a fineness from above 0 to 24 karats'],
      Length: ["14.5.2", 'Length: found "14.5.2", which is not a plain number'],
      "Links per length": ["four", 'Links per length: found "four"'],
      "Weight of one link": ["-2", 'Weight of one link: found "-2"; give grams above 0'],
      "Clasp weight": ["1e308", 'Clasp weight: found "1e308"'],
      "Clasp cost": ["1,250.00", 'Clasp cost: found "1,250.00", which has separators in it'],
      "How many links": ["2.5", 'How many links: found "2.5"; give a whole number from 0'],
      Quantity: ["0", 'Quantity: found "0"; give a whole number of pieces'],
      Discount: ["100", 'Discount: found "100"; give a share from 0 to below 1'],
    };
    await fill(desk, { "Links with stones": "a number of links", Clasp: "bought lobster clasp" });
    await fill(desk, Object.fromEntries(Object.entries(wrong).map(([label, [typed]]) => [label, typed])));
    await press(desk, "Make the quote");
    for (const [label, [typed, sentence]] of Object.entries(wrong)) {
      const field = desk.pane.getByLabel(label, { exact: true });
      expect(await field.inputValue()).toBe(typed);
      expect(await field.getAttribute("aria-invalid")).toBe("true");
      expect(await described(label)).toContain(sentence);
    }
    expect(await desk.pane.evaluate(() => document.activeElement?.id)).toBe(
      await desk.pane.getByLabel("Mark", { exact: true }).getAttribute("id"),
    );
    expect(await sheetNames(desk)).toEqual(SHEETS);
    expect(await desk.pane.locator(".price").count()).toBe(0);
  });

  test.each<[string, Record<string, string>, string, string]>([
    [
      "a chain shorter than its clasp",
      { Length: "2", Clasp: "bought lobster clasp", "Clasp length": "3" },
      "Length",
      "Length: found 50.8 mm, no longer than the clasp of 76.2 mm",
    ],
    ["10,000 links", { Length: "2500" }, "Length", "Length: found a chain of 10000 links"],
    ["a length of nothing", { Length: "" }, "Length", "Length: found nothing; give a length above 0"],
    [
      "white gold nobody has priced the plating of",
      { Colour: "white" },
      "Plating",
      "Plating: found no plating cost on Rates",
    ],
  ])("%s is told at its field", async (_, typed, label, sentence) => {
    await fill(desk, typed);
    await press(desk, "Make the quote");
    expect(await described(label)).toContain(sentence);
    expect(await sheetNames(desk)).toEqual(SHEETS);
  });

  test("rates that can't be right are told with their row's name, and no price is shown", async () => {
    await setRate(desk, "Loss", "1");
    await desk.pane.getByText("Polish loss: found 1; give a share from 0 to below 1").waitFor();
    expect(await desk.pane.locator(".price").count()).toBe(0);
    await setRate(desk, "Loss", "0.02");
    await desk.pane.locator(".price").waitFor();
  });

  test("a row that is no order is refused with a sentence, and the form stays as it was", async () => {
    await clickCell(desk.page, "Sheet1", "B7");
    await press(desk, "Take from the selected row");
    await desk.pane.getByText("This sheet is empty.").waitFor();
    expect(await desk.pane.getByLabel("Customer", { exact: true }).inputValue()).toBe(HUNDRED_GRAMS.Customer);
  });

  test("a field that two headers name is told with both cells, and the form stays as it was", async () => {
    const cells = [
      ["B3", "Customer"],
      ["C3", "Mark"],
      ["D3", "Length"],
      ["E3", "Karat"],
      ["B4", "Ines Wardle"],
    ] as const;
    for (const [cell, text] of cells) await typeIn(desk.page, "Sheet1", cell, text);
    await clickCell(desk.page, "Sheet1", "B4");
    await press(desk, "Take from the selected row");
    await desk.pane
      .getByText("The headers above the selected row: found Mark in C3 and in E3; keep one of them.")
      .waitFor();
    expect(await desk.pane.getByLabel("Customer", { exact: true }).inputValue()).toBe(HUNDRED_GRAMS.Customer);
  });

  /** What a field is described by, for eyes and screen readers alike. */
  async function described(label: string): Promise<string> {
    const ids = (await desk.pane.getByLabel(label, { exact: true }).getAttribute("aria-describedby")) ?? "";
    const words = await Promise.all(
      ids
        .split(" ")
        .filter(Boolean)
        .map((id) => desk.pane.locator(`#${id}`).textContent()),
    );
    return words.join(" ");
  }
});
