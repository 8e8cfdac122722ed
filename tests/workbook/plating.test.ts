import { beforeEach, describe, expect, test } from "vitest";
import { openCatalogue, ownSheet, readDesigns, unfold } from "./catalogue";
import {
  clearRate,
  type Desk,
  fill,
  filledCells,
  HUNDRED_GRAMS,
  press,
  rateCell,
  setRate,
  texts,
  view,
  withRates,
} from "./desk";
import { settled } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach(withRates);

const WHITE = { ...HUNDRED_GRAMS, Mark: "14K", Colour: "white" };
const QUESTION = "Plated with which metal? Until the metal is named, the quote says nothing of plating.";
const ask = () => desk.pane.locator("footer .questions");
/** The questions are folded while one types: the button unfolds them. */
const asked = async () => {
  await press(desk, "Make the quote");
  return ask().locator("p").textContent();
};
const metal = () => desk.pane.locator("#order-platingMetal");
const paper = async (sheet: string) => (await filledCells(desk, sheet)).map(({ text }) => text).join("\n");
const make = async (number: string) => {
  await press(desk, "Make the quote");
  await desk.pane.getByText(`Quote ${number}, Job ${number} and Tickets ${number} are in the workbook.`).waitFor();
};
const pressAnswer = async (name: string) => {
  await ask().getByRole("button", { name, exact: true }).click();
  await settled(desk.page);
};

/** Deletes the row of a rate, as a workbook from before that rate has none. */
async function deleteRow(at: Desk, rate: string): Promise<void> {
  const cell = await rateCell(at, rate);
  await at.pane.evaluate(
    async ([name = "", address = ""]) => {
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem(name).getRange(address).getEntireRow().delete("Up");
        await context.sync();
      });
    },
    cell as readonly string[],
  );
  await settled(at.page);
}

beforeEach(async () => {
  await setRate(desk, "Plating", "40");
  // A spot that nobody doubts.
  await setRate(desk, "Spot", "2400");
});

describe("a piece that is plated", () => {
  test("is asked for its metal and no other piece is; a new Rates sheet names rhodium", async () => {
    await fill(desk, { ...WHITE, Colour: "yellow" });
    await desk.pane.locator("summary", { hasText: "Alloy and colours" }).first().click();
    expect(await metal().isVisible()).toBe(false);
    await fill(desk, { Plating: "plated" });
    expect(await metal().isVisible()).toBe(true);
    await fill(desk, { Plating: "as usual", "Colour pattern": "yyw", "Weight of one white link": "2" });
    expect(await metal().isVisible()).toBe(true);
    expect(await metal().getAttribute("placeholder")).toBe("rhodium");
    expect(await ask().isVisible()).toBe(false);
  });

  test("is plated with rhodium on the customer's paper, and on the papers of the workshop", async () => {
    await fill(desk, WHITE);
    await make("1001");
    expect(await paper("Quote 1001")).toContain(
      "Chain in white 14K gold, solid links, plated with rhodium. Finished length 12.5 in, 50 links",
    );
    expect(await paper("Job 1001")).toContain("white, plated with rhodium");
    expect(await paper("Tickets 1001")).toMatch(/Plate with[\s\S]*the whole piece\nrhodium/);
  });
});

describe("a plating metal that nobody has named", () => {
  beforeEach(async () => {
    await clearRate(desk, "PlatingMetal");
    await fill(desk, WHITE);
  });

  test("is asked for beside the button, and the quote can be made without: it says nothing of plating", async () => {
    expect(await asked()).toBe(QUESTION);
    // The question belongs to the order alone.
    await view(desk, "Links");
    expect(await ask().isVisible()).toBe(false);
    await view(desk, "Quote");
    expect(await ask().isVisible()).toBe(true);
    await desk.pane.locator("#order-colour").selectOption("yellow");
    await ask().waitFor({ state: "hidden" });
    await desk.pane.locator("#order-colour").selectOption("white");
    await asked();
    await pressAnswer("Leave plating out of the quote");
    await make("1001");
    const quote = await paper("Quote 1001");
    expect(quote).toContain("Chain in white 14K gold, solid links. Finished length 12.5 in");
    expect(quote).not.toMatch(/plat/i);
  });

  test("is named for the order, whose quote says it", async () => {
    await asked();
    await pressAnswer("Name the metal in the order");
    expect(await metal().evaluate((field) => field.matches(":focus"))).toBe(true);
    expect(await metal().getAttribute("placeholder")).toBe("none on Rates");
    await fill(desk, { "Plating metal": "black rhodium" });
    expect(await ask().isVisible()).toBe(false);
    await make("1001");
    expect(await paper("Quote 1001")).toContain("in white 14K gold, solid links, plated with black rhodium.");
    expect(await paper("Tickets 1001")).toContain("black rhodium");
  });

  test("is named once on Rates, for every order after it", async () => {
    await asked();
    await pressAnswer("Name the metal on the Rates sheet");
    const [sheet, cell] = await rateCell(desk, "PlatingMetal");
    expect(await desk.page.evaluate(() => window.workbookPage.active())).toBe(`${sheet}!${cell}`);
    await setRate(desk, "PlatingMetal", "rhodium");
    await ask().waitFor({ state: "hidden" });
    await make("1001");
    expect(await paper("Quote 1001")).toContain("solid links, plated with rhodium.");
  });

  test("of the second of two lines is asked for that line", async () => {
    await fill(desk, { Colour: "yellow" });
    await press(desk, "Copy this line");
    await fill(desk, { Colour: "white" });
    await desk.pane.locator(".linehead").first().click();
    expect(await asked()).toBe(`Line 2: ${QUESTION}`);
    await pressAnswer("Name the metal in the order");
    await fill(desk, { "Plating metal": "rhodium" });
    await make("1001");
    const quote = await paper("Quote 1001");
    expect([quote.match(/plated with rhodium/g)?.length, quote.match(/plated/g)?.length]).toEqual([1, 1]);
  });

  test("that is no metal's name is told at its field", async () => {
    await fill(desk, { "Plating metal": "rhodium plated" });
    await metal().blur();
    expect(await desk.pane.locator("#order-platingMetal-fault").textContent()).toBe(
      'Plating metal: found "rhodium plated"; give the metal alone, such as rhodium',
    );
  });
});

test("a workbook from before plating metals is asked, and given the row without a metal of ours in it", async () => {
  await deleteRow(desk, "PlatingMetal");
  await fill(desk, WHITE);
  await ask().waitFor();
  await desk.pane.getByText("Rates has no row for Plating metal.").waitFor();
  await press(desk, "Add the missing row");
  expect(await ask().isVisible()).toBe(true);
  await setRate(desk, "PlatingMetal", "rhodium");
  await ask().waitFor({ state: "hidden" });
});

test("a row of a sheet brings its plating metal into the order", async () => {
  await clearRate(desk, "PlatingMetal");
  await desk.pane.evaluate(async () => {
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").getRange("A1:J2").values = [
        [
          "Customer",
          "Design",
          "Mark",
          "Colour",
          "Plating metal",
          "Length (in)",
          "Links per in",
          "Weight of one link",
          "Quantity",
          "Clasp",
        ],
        ["Ada", "Curb", "14K", "white", "black rhodium", 12.5, 4, 2, 1, "none"],
      ];
      context.workbook.worksheets.getItem("Sheet1").activate();
      context.workbook.worksheets.getItem("Sheet1").getRange("B2").select();
      await context.sync();
    });
  });
  await settled(desk.page);
  await press(desk, "Take from the selected row");
  expect(await metal().inputValue()).toBe("black rhodium");
  expect(await ask().isVisible()).toBe(false);
});

test("a price sheet says the metal, and where nobody has named it says nothing and the pane tells how many", async () => {
  await ownSheet(
    desk,
    "D",
    "A1",
    [
      ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link", "Plated with"],
      ["Plain", "14K", "yellow", 12.5, 4, 2, ""],
      ["Cool", "14K", "white", 12.5, 4, 2, ""],
      ["Dark", "14K", "white", 12.5, 4, 2, "black rhodium"],
    ],
    "Designs",
  );
  await openCatalogue(desk);
  await readDesigns(desk, "Designs");
  await unfold(desk, "Price sheet and CSV");
  await press(desk, "Make the sheet");
  await desk.pane.getByText("Prices is in the workbook").first().waitFor();
  expect((await texts(desk, "Prices", "B6:B8")).flat()).toEqual([
    "Chain in yellow 14K gold, solid links.",
    "Chain in white 14K gold, solid links, plated with rhodium.",
    "Chain in white 14K gold, solid links, plated with black rhodium.",
  ]);
  expect(await desk.pane.getByText("nobody has named").count()).toBe(0);

  await clearRate(desk, "PlatingMetal");
  await press(desk, "Make the sheet");
  await desk.pane
    .getByText("1 design is plated with a metal that nobody has named, so nothing is said of its plating.")
    .first()
    .waitFor();
  expect((await texts(desk, "Prices (Curbwright)", "B6:B8")).flat()).toEqual([
    "Chain in yellow 14K gold, solid links.",
    "Chain in white 14K gold, solid links.",
    "Chain in white 14K gold, solid links, plated with black rhodium.",
  ]);
});
