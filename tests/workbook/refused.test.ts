import { beforeEach, describe, expect, test } from "vitest";
import { fill, HUNDRED_GRAMS, press, rateCell, SPOT_FOR_25, setRate, sheetNames, withRates } from "./desk";
import { clickCell, settled } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach();

const plain = (text: string | null) => (text ?? "").replaceAll("\u00a0", " ");
const price = async () => plain(await desk.pane.locator(".price").first().textContent());
const spotLine = async () => plain(await desk.pane.locator(".spotline").textContent());
const offers = () => desk.pane.getByRole("button", { name: "Lay out the Rates sheet", exact: true }).count();
const names = () => desk.page.evaluate(() => window.workbookPage.names());
const refuse = (code?: string) => desk.page.evaluate((given) => window.workbookPage.refuse(given), code);
const unread = () => desk.pane.getByText("The Rates sheet could not be read just now.");

/** Codes of "Error handling with the application-specific JavaScript APIs", the last of them none that a person can mend. */
const CODES = ["InvalidOperationInCellEditMode", "AccessDenied", "RequestAborted", "GeneralException"];

describe("Rates that Excel does not let be read", () => {
  test.each(CODES)(
    "are not rates that are not there: %s keeps price and form, and offers nothing anew",
    async (code) => {
      await desk.sit(withRates);
      await setRate(desk, "LossBasis", "grams");
      await setRate(desk, "Loss", "2");
      await fill(desk, HUNDRED_GRAMS);
      // 2,753 landed x 1.30 = 3,578.90, up to 3,579, as in quote.test.ts.
      expect(await price()).toContain("3,579.00");
      const before = await names();

      await refuse(code);
      await setRate(desk, "CastingFee", "2.5");
      await unread().waitFor();
      expect(await price()).toContain("3,579.00");
      expect(await spotLine()).toContain("777.58692");
      expect(await offers()).toBe(0);
      await press(desk, "Make the quote");
      expect(await desk.pane.locator(".ending .banner.done").count()).toBe(0);
      expect(await desk.pane.locator(".ending .banner.failed").count()).toBe(1);

      await refuse();
      await press(desk, "Read again");
      expect(await unread().count()).toBe(0);
      // (100 + 2) x (25 + 2.50) + 50 = 2,855; x 1.30 = 3,711.50, up to 3,712.
      expect(await price()).toContain("3,712.00");
      expect(await names()).toEqual(before);
      expect(await sheetNames(desk)).toEqual(["Sheet1", "Rates", "Quote template"]);
      if (code === "GeneralException") desk.forgive(/refused/);
    },
  );

  test("at the first look either: nothing is offered until it is known that there are none", async () => {
    await desk.sit(withRates);
    await refuse("AccessDenied");
    await desk.pane.evaluate(() => location.reload());
    await unread().waitFor();
    expect(await offers()).toBe(0);
    await refuse();
    await press(desk, "Read again");
    await desk.pane.getByLabel("Customer", { exact: true }).waitFor();
  });
});

test("laying out Rates looks again for itself: a workbook that has them by now keeps every figure and name", async () => {
  await desk.sit((workshop) => workshop.sitDown("book=blank"));
  await desk.pane.getByRole("button", { name: "Lay out the Rates sheet", exact: true }).waitFor();
  // Another window's doing: one rate alone, on a sheet of the person's own, unseen by this pane.
  await desk.pane.evaluate(async () => {
    await Excel.run(async (context) => {
      context.runtime.enableEvents = false;
      const cell = context.workbook.worksheets.getItem("Sheet1").getRange("C3");
      cell.values = [[3150]];
      context.workbook.names.add("Rate_Spot", cell);
      await context.sync();
    });
  });
  const before = await names();
  await fill(desk, { Spot: SPOT_FOR_25 });
  await press(desk, "Lay out the Rates sheet");
  await desk.pane.getByText('This workbook has its rates already, on the sheet "Sheet1".').waitFor();
  expect(await names()).toEqual(before);
  expect(await sheetNames(desk)).toEqual(["Sheet1"]);
  expect(await offers()).toBe(0);
});

test("a person who goes on typing in the next cell sees no fault, and the new figures when they are done", async () => {
  await desk.sit(withRates);
  const [sheet, cell] = await rateCell(desk, "Spot");
  await clickCell(desk.page, sheet, cell);
  await desk.page.keyboard.type("1555.17384");
  await desk.page.keyboard.press("Enter");
  await desk.page.keyboard.type("2026");
  await desk.page.evaluate(() => new Promise((resolve) => setTimeout(resolve)));
  expect(await unread().count()).toBe(0);
  expect(await offers()).toBe(0);
  await desk.page.keyboard.press("Escape");
  await expect.poll(spotLine).toContain("1,555.17384");
});

describe("an order that its quote was made from", () => {
  const MADE = "Quote 1001, Job 1001 and Tickets 1001 are in the workbook.";
  const QUOTED = ["Sheet1", "Rates", "Quote template", "Quotes", "Quote 1001", "Job 1001", "Tickets 1001"];
  const REVISED = ["Quote 1001a", "Job 1001a", "Tickets 1001a"];

  beforeEach(async () => {
    await desk.sit(withRates);
    await fill(desk, HUNDRED_GRAMS);
    await press(desk, "Make the quote");
    await desk.pane.getByText(MADE).waitFor();
  });

  test("makes no other at a second press: it shows the one that was made", async () => {
    await press(desk, "Show the job");
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001 was made from this order already").waitFor();
    expect(await sheetNames(desk)).toEqual(QUOTED);
    expect(await desk.page.evaluate(() => window.workbookPage.active())).toMatch(/Quote 1001/);
  });

  test("makes no other when spot has moved since: it says what it comes to now, and makes a revision where asked", async () => {
    await setRate(desk, "Spot", "1555.17384");
    await press(desk, "Make the quote");
    await desk.pane.getByText("With the rates as they are now it comes to").waitFor();
    expect(await sheetNames(desk)).toEqual(QUOTED);
    await press(desk, "Make a revision");
    await desk.pane.getByText("Quote 1001a, Job 1001a and Tickets 1001a are in the workbook.").waitFor();
    expect(await sheetNames(desk)).toEqual([...QUOTED, ...REVISED]);
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001a was made from this order already").waitFor();
    expect(await sheetNames(desk)).toEqual([...QUOTED, ...REVISED]);
  });

  test("that is changed makes another; one whose sheet was deleted is made again", async () => {
    await fill(desk, { Length: "13" });
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1002, Job 1002 and Tickets 1002 are in the workbook.").waitFor();
    await desk.pane.evaluate(async () => {
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Quote 1002").delete();
        await context.sync();
      });
    });
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1003, Job 1003 and Tickets 1003 are in the workbook.").waitFor();
  });

  test("is a finished quote, whatever comes of reading again afterwards", async () => {
    await fill(desk, { Length: "13" });
    // The quote's own batches are taken; what follows them is refused.
    await desk.page.evaluate(() => {
      const { workbookPage } = window;
      const watch = () => {
        if (workbookPage.sheets().some(({ name }) => name === "Tickets 1002")) workbookPage.refuse("AccessDenied");
        else setTimeout(watch);
      };
      watch();
    });
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1002, Job 1002 and Tickets 1002 are in the workbook.").waitFor();
    await unread().waitFor();
    expect(await desk.pane.locator(".ending .banner.failed").count()).toBe(0);
    await refuse();
    await press(desk, "Read again");
    await settled(desk.page);
    // The look at it was refused as well, which is said and makes it no failure.
    expect(await desk.pane.locator(".ending .banner.noted").textContent()).toContain(
      "It was written, and could not be looked at afterwards.",
    );
  });
});
