import { beforeEach, describe, expect, test } from "vitest";
import { cellAt, fill, filledCells, HUNDRED_GRAMS, menu, press, sheetNames, withRates } from "./desk";
import { settled, typeIn } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach(withRates);

beforeEach(async () => {
  await fill(desk, HUNDRED_GRAMS);
});

const SHEETS = ["Sheet1", "Rates", "Quote template"];
const TEMPLATE = "Quote template";
const quoteIsMade = () => desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();
const syncs = () => desk.page.evaluate(() => window.workbookPage.syncCount);

/** Clears the template and writes a person's own, from a cell on; formats are given where they matter. */
async function ownTemplate(at: string, cells: string[][], formats: Record<string, string> = {}): Promise<void> {
  await desk.pane.evaluate(
    async ([address, rows, looks]) => {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Quote template");
        sheet.getRange().clear();
        for (const [cell, format] of Object.entries(looks)) sheet.getRange(cell).numberFormat = [[format]];
        const start = sheet.getRange(address);
        start.getAbsoluteResizedRange(rows.length, rows[0]?.length ?? 1).values = rows;
        await context.sync();
      });
    },
    [at, cells, formats] as const,
  );
  await settled(desk.page);
}

describe("a template of the person's own", () => {
  test("that begins below the first row, in another language, is filled where its fields stand", async () => {
    await ownTemplate("C4", [
      ["Für", "{{customer}}"],
      ["Farbe", "{{line.colour|yellow=Gelb|white=Weiß}}"],
      ["Ausführung", "585 in {{line.colour|YELLOW=gelb}}[[, {{line.plated|plated=rhodiniert}}]]"],
    ]);
    await press(desk, "Make the quote");
    await quoteIsMade();
    const quote = await filledCells(desk, "Quote 1001");
    expect(quote.map(({ text }) => text)).toEqual([
      "Für",
      "Ada Quillfeather",
      "Farbe",
      "Gelb",
      "Ausführung",
      "585 in gelb",
    ]);
    expect((await cellAt(desk, "Quote 1001", "D5"))?.value).toBe("Gelb");
  });

  test("with a field inside a formula keeps the formula's value and is told of it", async () => {
    await typeIn(desk.page, TEMPLATE, "B3", '="For "&"{{customer}}"');
    await press(desk, "Make the quote");
    await quoteIsMade();
    await desk.pane.getByText("The template has {{customer}} in B3 inside a formula, which is not filled.").waitFor();
    expect(await cellAt(desk, "Quote 1001", "B3")).toMatchObject({ value: "For {{customer}}", formula: "" });
    expect((await cellAt(desk, "Quote 1001", "B5"))?.value).toBe("Ada Quillfeather");
  });

  test.each(["=CURB.METALRATE(Rate_Spot,14)", "=IF(TRUE,curb.karat(0.585),1)"])(
    "that computes with %s is refused before anything is made",
    async (formula) => {
      await typeIn(desk.page, TEMPLATE, "B3", formula);
      await press(desk, "Make the quote");
      await desk.pane.getByText('The sheet "Quote template" computes with =CURB. in B3').waitFor();
      expect(await sheetNames(desk)).toEqual(SHEETS);
    },
  );

  test("that only speaks of CURB is not, and refers to a cell that computes with it", async () => {
    await typeIn(desk.page, "Sheet1", "A1", '=CURB.METALRATE(Rate_Spot,"1000")');
    await typeIn(desk.page, TEMPLATE, "B3", '="CURB.X("&Sheet1!A1');
    await press(desk, "Make the quote");
    await quoteIsMade();
    expect((await cellAt(desk, "Quote 1001", "B3"))?.value).toBe("CURB.X(25");
  });

  test("whose formulas come to errors keeps them and says where", async () => {
    await typeIn(desk.page, TEMPLATE, "B3", "=NA()");
    await typeIn(desk.page, TEMPLATE, "C3", "=1/0");
    const before = await syncs();
    await press(desk, "Make the quote");
    await quoteIsMade();
    // Three to fill, one to look at what was filled, one to read Rates again, and one where the remark on the age of spot has calculated since.
    expect((await syncs()) - before).toBeLessThanOrEqual(6);
    await desk.pane.getByText("The template's formula gave #N/A in B3 of the quote.").waitFor();
    await desk.pane.getByText("The template's formula gave #DIV/0! in C3 of the quote.").waitFor();
    expect(await cellAt(desk, "Quote 1001", "B3")).toMatchObject({ value: "#N/A", formula: "" });
  });

  test("whose cells have the text format gets amounts and dates as such", async () => {
    await ownTemplate("A1", [["{{total}}", "{{date}}", "{{customer}}", "{{line.links}}"]], {
      A1: "@",
      B1: "@",
      C1: "@",
      D1: "@",
    });
    await press(desk, "Make the quote");
    await quoteIsMade();
    // 3,581 as in template.test.ts; 50 links as in quote.test.ts.
    expect(await cellAt(desk, "Quote 1001", "A1")).toMatchObject({ value: 3581, text: "3,581.00" });
    expect(typeof (await cellAt(desk, "Quote 1001", "B1"))?.value).toBe("number");
    expect((await cellAt(desk, "Quote 1001", "C1"))?.value).toBe("Ada Quillfeather");
    expect((await cellAt(desk, "Quote 1001", "D1"))?.value).toBe(50);
  });

  test("without any field is refused with a sentence that shows what one looks like", async () => {
    await ownTemplate("A1", [["Quote", "for you"]]);
    await press(desk, "Make the quote");
    await desk.pane
      .getByText('The sheet "Quote template" has no field to fill. Put fields such as {{customer}}')
      .waitFor();
    expect(await sheetNames(desk)).toEqual(SHEETS);
  });

  test("with merged cells and fonts of its own keeps both on the quote", async () => {
    await ownTemplate("A1", [["{{customer}}", "", "{{total}}"]]);
    await desk.pane.evaluate(async () => {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Quote template");
        sheet.getRange("A1:B1").merge();
        sheet.getRange("A1").format.font.name = "Georgia";
        sheet.getRange("A1").format.font.size = 17;
        await context.sync();
      });
    });
    await press(desk, "Make the quote");
    await quoteIsMade();
    const kept = await desk.pane.evaluate(() =>
      Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Quote 1001");
        const merged = sheet.getRange("A1:C1").getMergedAreasOrNullObject().load("address");
        const cell = sheet.getRange("A1").load("values,format/font/name,format/font/size");
        await context.sync();
        return [merged.address, cell.values[0]?.[0], cell.format.font.name, cell.format.font.size];
      }),
    );
    expect(kept).toEqual(["'Quote 1001'!A1:B1", "Ada Quillfeather", "Georgia", 17]);
  });
});

describe("a workbook protected against new sheets", () => {
  test("is told before anything is made, and quotes once it is free", async () => {
    await protect(true);
    await press(desk, "Make the quote");
    await desk.pane.getByText("The workbook is protected against new sheets.").waitFor();
    expect(await sheetNames(desk)).toEqual(SHEETS);
    await protect(false);
    await press(desk, "Make the quote");
    await quoteIsMade();
  });

  test("gets no Rates sheet either, and no name of one", async () => {
    await desk.sit((workshop) => workshop.sitDown("book=blank"));
    await protect(true);
    await fill(desk, { Spot: "1000" });
    await press(desk, "Lay out the Rates sheet");
    await desk.pane.getByText("A sheet or the workbook is protected.").waitFor();
    expect(await sheetNames(desk)).toEqual(["Sheet1"]);
    expect(await desk.page.evaluate(() => window.workbookPage.names())).toEqual([]);
  });

  async function protect(on: boolean): Promise<void> {
    await desk.pane.evaluate(async (isOn) => {
      await Excel.run(async (context) => {
        const { protection } = context.workbook;
        if (isOn) protection.protect();
        else protection.unprotect();
        await context.sync();
      });
    }, on);
  }
});

test("a template deleted and a Rates sheet protected: nothing is left behind, the form stays", async () => {
  await menu(desk, "delete", TEMPLATE);
  await menu(desk, "protect", "Rates");
  await press(desk, "Make the quote");
  await desk.pane.getByText("A sheet or the workbook is protected.").waitFor();
  expect(await sheetNames(desk)).toEqual(["Sheet1", "Rates"]);
  expect(await desk.pane.getByLabel("Customer", { exact: true }).inputValue()).toBe(HUNDRED_GRAMS.Customer);
});
