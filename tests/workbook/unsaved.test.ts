import { describe, expect, test } from "vitest";
import { fill, HUNDRED_GRAMS, press, sheetNames, withRates } from "./desk";
import { clickCell, settled, typeIn } from "./person.mjs";
import { StandIn } from "./standin";
import { deskForEach } from "./workshop";

const desk = deskForEach();
const reset = () => desk.page.getByRole("banner").getByRole("button", { name: "Reset the demo" }).click();
const question = () => desk.page.getByRole("dialog", { name: "Reset the demo?" });
const said = async () => {
  await question().waitFor();
  return question().getByRole("listitem").allTextContents();
};
const atDemo = () => desk.sit((workshop) => workshop.sitDown("book=workshop"));

/** Whether the browser would ask before the page is left: what it asks of the page itself. */
const wouldAsk = () => desk.page.evaluate(() => !window.dispatchEvent(new Event("beforeunload", { cancelable: true })));

/** Runs a batch of the add-in's. */
async function batch(act: (context: Excel.RequestContext) => Promise<void>) {
  await desk.pane.evaluate(`Excel.run(${act})`);
  await settled(desk.page);
}

async function save() {
  const [file] = await Promise.all([
    desk.page.waitForEvent("download"),
    desk.page.getByRole("button", { name: "Save as .xlsx" }).click(),
  ]);
  await desk.page.getByRole("button", { name: "Save as .xlsx" }).and(desk.page.locator(":enabled")).waitFor();
  return file;
}

describe("nothing is asked where nothing would be lost", () => {
  test("in a workbook just opened, looked through, selected in and calculated anew", async () => {
    await atDemo();
    for (const sheet of ["Designs", "Rates", "Orders"]) await clickCell(desk.page, sheet, "B6");
    await batch(async (context) => {
      context.workbook.application.calculate("Full");
      await context.sync();
    });
    expect(await wouldAsk()).toBe(false);
    await reset();
    await desk.page.getByRole("button", { name: "Reset the demo" }).and(desk.page.locator(":enabled")).waitFor();
    await settled(desk.page);
    expect(await question().count()).toBe(0);
    expect(await wouldAsk()).toBe(false);
  });

  test("for an order taken from a row of the sheet, which stands there still", async () => {
    await atDemo();
    await clickCell(desk.page, "Orders", "B6");
    await press(desk, "Take from the selected row");
    expect(await wouldAsk()).toBe(false);
  });

  test("for a change that was undone", async () => {
    await atDemo();
    await typeIn(desk.page, "Orders", "B6", "Another design");
    expect(await wouldAsk()).toBe(true);
    await desk.page.keyboard.press("Control+z");
    await settled(desk.page);
    expect(await wouldAsk()).toBe(false);
  });

  test("for a figure that moves by itself", async () => {
    await atDemo();
    await typeIn(desk.page, "Designs", "P1", "=RAND()");
    await save();
    const before = await desk.page.evaluate(() => window.workbookPage.read("Designs", "P1")[0]?.[0]?.value);
    await batch(async (context) => {
      context.workbook.application.calculate("Full");
      await context.sync();
    });
    expect(await desk.page.evaluate(() => window.workbookPage.read("Designs", "P1")[0]?.[0]?.value)).not.toBe(before);
    expect(await wouldAsk()).toBe(false);
  });
});

describe("whoever changes the workbook, and whatever of it, is asked", () => {
  const CHANGES: readonly [what: string, change: () => Promise<void>, named: readonly string[]][] = [
    ["a typed cell", () => typeIn(desk.page, "Orders", "B6", "Another design"), ["Changed sheet: Orders"]],
    [
      "a cleared cell",
      async () => {
        await clickCell(desk.page, "Orders", "B6");
        await desk.page.keyboard.press("Delete");
        await settled(desk.page);
      },
      ["Changed sheet: Orders"],
    ],
    [
      "a cell's look and a column's width",
      () =>
        batch(async (context) => {
          context.workbook.worksheets.getItem("Designs").getRange("A5").format.fill.color = "#FF0000";
          context.workbook.worksheets.getItem("Rates").getRange("A:A").format.columnWidth = 200;
          await context.sync();
        }),
      ["Changed sheets: Designs, Rates"],
    ],
    [
      "rows put in",
      () =>
        batch(async (context) => {
          context.workbook.worksheets.getItem("Orders").getRange("6:6").insert("Down");
          await context.sync();
        }),
      ["Changed sheet: Orders"],
    ],
    [
      "a sheet that came, one that went and one that has another name",
      () =>
        batch(async (context) => {
          const { worksheets } = context.workbook;
          worksheets.add("Mine");
          worksheets.getItem("Orders").delete();
          worksheets.getItem("Designs").name = "Chains";
          await context.sync();
        }),
      ["New sheet: Mine", "Changed sheet: Chains", "Deleted sheet: Orders"],
    ],
    [
      "a table",
      () =>
        batch(async (context) => {
          context.workbook.tables.add("Orders!A4:O6", true);
          await context.sync();
        }),
      ["Changed sheet: Orders"],
    ],
    [
      "a sheet's print set-up",
      () =>
        batch(async (context) => {
          context.workbook.worksheets.getItem("Rates").pageLayout.orientation = "Landscape";
          await context.sync();
        }),
      ["Changed sheet: Rates"],
    ],
    [
      "a defined name",
      () =>
        batch(async (context) => {
          context.workbook.names.add("Mine", "=0.05");
          await context.sync();
        }),
      ["The order of the sheets, or names and settings of the workbook"],
    ],
    [
      "the order of the sheets",
      () =>
        batch(async (context) => {
          context.workbook.worksheets.getItem("Rates").position = 0;
          await context.sync();
        }),
      ["The order of the sheets, or names and settings of the workbook"],
    ],
    [
      "what an add-in keeps in the workbook",
      () =>
        batch(async (context) => {
          context.workbook.settings.add("mine", 1);
          await context.sync();
        }),
      ["The order of the sheets, or names and settings of the workbook"],
    ],
  ];

  test.each(CHANGES)("%s", async (_what, change, named) => {
    await atDemo();
    await change();
    expect(await wouldAsk()).toBe(true);
    await reset();
    expect(await said()).toEqual(named);
    await desk.page.keyboard.press("Escape");
    await question().waitFor({ state: "hidden" });
    expect(await wouldAsk()).toBe(true);
  });
});

describe("the question before a reset", () => {
  test("names the quotes and sheets that go, and leaves all as it is by Enter on Cancel, and by Esc", async () => {
    await atDemo();
    await clickCell(desk.page, "Orders", "B6");
    await press(desk, "Take from the selected row");
    await press(desk, "Make the quote");
    await press(desk, "Still to be agreed with the customer");
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();
    const before = await sheetNames(desk);
    for (const key of ["Enter", "Escape"]) {
      await reset();
      expect(await said()).toEqual([
        "Quote 1001, with its job and tickets",
        "New sheets: Quote template, Quotes",
        "Changed sheet: Rates",
      ]);
      await question().getByText("Since the workbook was opened").waitFor();
      const cancel = question().getByRole("button", { name: "Cancel" });
      expect(await cancel.evaluate((button) => button.matches(":focus"))).toBe(true);
      await desk.page.keyboard.press(key);
      await question().waitFor({ state: "hidden" });
      expect(await sheetNames(desk)).toEqual(before);
      const button = desk.page.getByRole("button", { name: "Reset the demo" });
      expect(await button.evaluate((each) => each.matches(":focus"))).toBe(true);
    }
  });

  test("is answered by one press more, and asked no more after it", async () => {
    await atDemo();
    await typeIn(desk.page, "Orders", "B6", "Another design");
    await reset();
    await question().getByRole("button", { name: "Reset and lose this" }).click();
    await desk.page
      .getByText("Tollgate bracelet")
      .first()
      .waitFor({ state: "attached" })
      .catch(() => undefined);
    await desk.page.getByRole("button", { name: "Reset the demo" }).and(desk.page.locator(":enabled")).waitFor();
    await settled(desk.page);
    expect((await desk.page.evaluate(() => window.workbookPage.read("Orders", "B6")))[0]?.[0]?.text).toBe(
      "Tollgate bracelet",
    );
    expect(await wouldAsk()).toBe(false);
    await typeIn(desk.page, "Orders", "B6", "Another design");
    await reset();
    await question().getByText("Since the demo was reset").waitFor();
    await desk.page.keyboard.press("Escape");
  });

  test("counts quotes where they are many", async () => {
    await atDemo();
    await batch(async (context) => {
      for (let number = 1001; number <= 1008; number += 1)
        for (const kind of ["Quote", "Job", "Tickets"]) context.workbook.worksheets.add(`${kind} ${number}`);
      await context.sync();
    });
    await reset();
    expect(await said()).toEqual(["8 quotes, with their jobs and tickets: 1001, 1002, 1003, 1004, 1005 and 3 more"]);
    await desk.page.keyboard.press("Escape");
  });
});

describe("saving as .xlsx", () => {
  test("makes the work safe, and what is changed after it is asked about as such", async () => {
    await atDemo();
    await typeIn(desk.page, "Orders", "B6", "Another design");
    await save();
    expect(await wouldAsk()).toBe(false);
    await typeIn(desk.page, "Rates", "B5", "Another workshop");
    await reset();
    await question().getByText("Since the workbook was saved").waitFor();
    expect(await said()).toEqual(["Changed sheet: Rates"]);
    await desk.page.keyboard.press("Escape");
  });

  test("that failed leaves it unsaved, and says that it failed", async () => {
    await atDemo();
    await typeIn(desk.page, "Orders", "B6", "Another design");
    await desk.page.evaluate(() => {
      const real = URL.createObjectURL;
      URL.createObjectURL = () => {
        URL.createObjectURL = real;
        throw new Error("no room on the disk");
      };
    });
    await desk.page.getByRole("button", { name: "Save as .xlsx" }).click();
    await desk.page.getByText("That failed: no room on the disk").waitFor();
    expect(await wouldAsk()).toBe(true);
    await save();
    expect(await wouldAsk()).toBe(false);
  });
});

describe("what is typed into the pane and not yet in the workbook", () => {
  test("is lost with the page, so the browser asks; cleared again, it does not", async () => {
    await desk.sit(withRates);
    await save();
    expect(await wouldAsk()).toBe(false);
    await fill(desk, { Customer: "Ada Quillfeather" });
    expect(await wouldAsk()).toBe(true);
    await fill(desk, { Customer: "" });
    expect(await wouldAsk()).toBe(false);
  });

  test("is in the workbook once its quote is made", async () => {
    await desk.sit(withRates);
    await fill(desk, HUNDRED_GRAMS);
    await press(desk, "Make the quote");
    await desk.pane.getByText("are in the workbook").waitFor();
    expect(await wouldAsk()).toBe(true);
    await save();
    expect(await wouldAsk()).toBe(false);
  });
});

test("the browser asks before a reload only where work would be lost, and keeps the page where the answer is no", async () => {
  const book = await StandIn.open();
  const asked: string[] = [];
  const answers: ("stay" | "leave")[] = ["stay", "leave"];
  book.page.on("dialog", async (dialog) => {
    asked.push(dialog.type());
    await (answers.shift() === "stay" ? dialog.dismiss() : dialog.accept());
  });
  await clickCell(book.page, "Sheet1", "A1");
  await book.page.reload();
  await book.page.evaluate(() => window.workbookPage.ready);
  expect(asked).toEqual([]);
  await typeIn(book.page, "Sheet1", "A1", "mine");
  const dialog = book.page.waitForEvent("dialog");
  await book.page.evaluate(() => {
    setTimeout(() => location.reload());
  });
  await dialog;
  expect(await book.values("Sheet1", "A1")).toEqual([["mine"]]);
  await book.page.reload();
  await book.page.waitForFunction(() => "workbookPage" in window);
  await book.page.evaluate(() => window.workbookPage.ready);
  expect(asked).toEqual(["beforeunload", "beforeunload"]);
  expect(await book.values("Sheet1", "A1")).toEqual([[""]]);
  await typeIn(book.page, "Sheet1", "A1", "mine");
  // Closing, as the tests close their pages, asks nobody.
  await book.page.close();
  expect(asked).toHaveLength(2);
  await book.close();
});
