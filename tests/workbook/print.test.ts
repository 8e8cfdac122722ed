import { beforeEach, describe, expect, test } from "vitest";
import { fill, HUNDRED_GRAMS, menu, press, withRates } from "./desk";
import { clickCell, settled, typeIn } from "./person.mjs";
import { countPrints, printedBy } from "./printed";
import { deskForEach } from "./workshop";

const desk = deskForEach();
const button = (name: string) => desk.page.getByRole("banner").getByRole("button", { name, exact: true });
const question = () => desk.page.getByRole("dialog");
const buttons = () =>
  desk.page
    .getByRole("banner")
    .getByRole("button")
    .allTextContents()
    .then((names) => names.map((name) => name.trim()));

/** Goes to a sheet by its tab's cell, and looks at the page once it has followed. */
async function front(sheet: string) {
  await clickCell(desk.page, sheet, "A1");
}

async function makeQuote(number: string) {
  // An order of its own: an unchanged one makes no second quote.
  await fill(desk, { Engraving: `For always, ${number}`, "Engraving cost": "0" });
  await press(desk, "Make the quote");
  await desk.pane.getByText(`Quote ${number}, Job ${number} and Tickets ${number}`).waitFor();
}

test("without a quote the page offers none to print, and names the sheet in front", async () => {
  await desk.sit((workshop) => workshop.sitDown("book=workshop"));
  await front("Designs");
  expect(await button("No quote yet").isDisabled()).toBe(true);
  await button("Print this sheet: Designs").waitFor();
  await front("Rates");
  await button("Print this sheet: Rates").waitFor();
  expect(await button("No quote yet").isDisabled()).toBe(true);
});

describe("with a quote in the workbook", () => {
  beforeEach(async () => {
    await desk.sit(withRates);
    await fill(desk, HUNDRED_GRAMS);
    await makeQuote("1001");
  });

  test.each(["Quote 1001", "Job 1001", "Tickets 1001", "Rates", "Quotes", "Quote template", "Sheet1"])(
    "with %s in front the button prints the quote it names, without a word of cost",
    async (sheet) => {
      await front(sheet);
      const before = await countPrints(desk.page);
      const { title, words } = await printedBy(desk.page, () => button("Print quote 1001").click());
      expect(title).toBe("Quote 1001");
      expect(words).toContain("Ada Quillfeather");
      expect(words).not.toContain("Landed");
      expect(await countPrints(desk.page)).toBe(before + 1);
    },
  );

  test("the quote in front is offered once, not as quote and as sheet", async () => {
    await front("Quote 1001");
    expect((await buttons()).filter((name) => name.startsWith("Print"))).toEqual(["Print quote 1001"]);
  });

  test("a quote's job and tickets stand for that quote, other sheets for the newest one", async () => {
    await makeQuote("1002");
    for (const [sheet, number] of [
      ["Quote 1001", "1001"],
      ["Job 1001", "1001"],
      ["Tickets 1001", "1001"],
      ["Job 1002", "1002"],
      ["Rates", "1002"],
    ] as const) {
      await front(sheet);
      await button(`Print quote ${number}`).waitFor();
      expect((await buttons()).filter((name) => name.startsWith("Print quote"))).toEqual([`Print quote ${number}`]);
    }
    const { title } = await printedBy(desk.page, () => button("Print quote 1002").click());
    expect(title).toBe("Quote 1002");
  });

  test("tickets travel with the metal: their sheet prints at once, under its own name", async () => {
    await front("Tickets 1001");
    const { title } = await printedBy(desk.page, () => button("Print this sheet: Tickets 1001").click());
    expect(title).toBe("Tickets 1001");
    expect(await question().count()).toBe(0);
  });

  test.each(["Job 1001", "Rates"])("%s shows cost, and says so before it is printed", async (sheet) => {
    await front(sheet);
    const before = await countPrints(desk.page);
    await button(`Print this sheet: ${sheet}`).click();
    await question().getByText(`${sheet} shows your cost: not for the customer.`).waitFor();
    expect(
      await question()
        .getByRole("button", { name: "Cancel" })
        .evaluate((each) => each.matches(":focus")),
    ).toBe(true);
    await desk.page.keyboard.press("Escape");
    await question().waitFor({ state: "hidden" });
    expect(await countPrints(desk.page)).toBe(before);
    await button(`Print this sheet: ${sheet}`).click();
    const { title } = await printedBy(desk.page, () =>
      question()
        .getByRole("button", { name: `Print ${sheet}` })
        .click(),
    );
    expect(title).toBe(sheet);
  });

  test.each([
    ["a formula over the rates", "=Rate_Spot*2", true],
    ["one of the worksheet functions", '=CURB.METALRATE(2000,"14K")', true],
    ["the word cost", "Clasp cost", true],
    ["a greeting", "Thank you", false],
  ])("a sheet of the person's own with %s", async (_what, content, showsCost) => {
    await typeIn(desk.page, "Sheet1", "A1", content);
    const press = () => button("Print this sheet: Sheet1").click();
    if (!showsCost) {
      expect((await printedBy(desk.page, press)).title).toBe("Sheet1");
      return;
    }
    await press();
    await question().getByText("Sheet1 shows your cost: not for the customer.").waitFor();
    await desk.page.keyboard.press("Escape");
  });

  test("a job whose quote has no sheet any more prints no other quote in its place", async () => {
    await makeQuote("1002");
    await menu(desk, "delete", "Quote 1001");
    await front("Job 1001");
    expect(await button("Quote 1001 has no sheet").isDisabled()).toBe(true);
    await menu(desk, "rename", "Quote 1002", "For Ada");
    await front("Rates");
    await settled(desk.page);
    expect(await button("No quote yet").isDisabled()).toBe(true);
    await front("For Ada");
    const { title } = await printedBy(desk.page, () => button("Print this sheet: For Ada").click());
    expect(title).toBe("For Ada");
  });

  test("a reset leaves no quote to print", async () => {
    await desk.page.evaluate(() => window.workbookPage.reset());
    expect(await button("No quote yet").isDisabled()).toBe(true);
  });
});
