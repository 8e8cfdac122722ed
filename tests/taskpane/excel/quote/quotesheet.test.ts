import { afterAll, beforeAll, expect, test } from "vitest";
import { fillCopy, printedArea } from "../../../../taskpane/excel/quote/quotesheet";
import type { Fields } from "../../../../taskpane/excel/template/fields";
import { planFill } from "../../../../taskpane/excel/template/fill";
import { StandIn } from "../../../workbook/standin";

let book: StandIn;

beforeAll(async () => {
  book = await StandIn.open();
});
afterAll(() => book.close());

const line = (design: string, note: string): Fields =>
  new Map([
    ["line.design", { value: design, text: design }],
    ["line.note", { value: note, text: note }],
  ]);
const TEMPLATE = [
  ["{{customer}}", "", ""],
  ["{{line.design}}", "", "=LEN(A2)"],
  ["", "{{line.note}}", ""],
  ["End", "", ""],
];
const QUOTE: Fields = new Map([["customer", { value: "Ada", text: "Ada" }]]);

/** Fills a sheet through the real office.js with the add-in's own code, which runs in the pane. */
async function fillWith(sheet: string, lines: readonly Fields[], area: string): Promise<unknown> {
  const plan = planFill(TEMPLATE, [], QUOTE, lines);
  const given = JSON.stringify({ plan, sheet, area, template: TEMPLATE });
  return book.pane.evaluate(`(async () => {
    const printedArea = ${printedArea};
    const fillCopy = ${fillCopy};
    const { plan, sheet: name, area, template } = ${given};
    await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.add(name);
      sheet.getRange("A1:C4").formulas = template;
      sheet.getRange("A2:B2").merge();
      sheet.getRange("A2").format.font.name = "Georgia";
      sheet.getRange("B3:C3").merge();
      sheet.getRange("B3:C3").format.fill.color = "#FFF2CC";
      sheet.pageLayout.setPrintArea(area);
      await context.sync();
    });
    const [, rows] = /:[A-Z]+(\\d+)$/.exec(area);
    return Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem(name);
      fillCopy(sheet, plan, 3, { row: 0, column: 0, rows: Number(rows), columns: 3 });
      await context.sync();
      const used = sheet.getUsedRange().load("values");
      const merged = sheet.getRange("A1:C20").getMergedAreasOrNullObject();
      merged.areas.load("items/address");
      const printed = sheet.pageLayout.getPrintAreaOrNullObject().load("address");
      const fonts = [2, 4, 6].map((row) => sheet.getRange("A" + row).load("format/font/name"));
      const fills = [3, 5, 7].map((row) => sheet.getRange("C" + row).load("format/fill/color"));
      await context.sync();
      return {
        values: used.values,
        merged: merged.areas.items.map(({ address }) => address.split("!")[1]).sort(),
        printed: printed.address.split("!")[1],
        fonts: fonts.map((cell) => cell.format.font.name),
        fills: fills.map((cell) => cell.format.fill.color),
      };
    });
  })()`);
}

test("three lines of a template keep its merged cells, fonts, fills and formulas, and all of them print", async () => {
  const lines = [line("Plain curb", "first"), line("River curb", "second"), line("Oak", "third")];
  expect(await fillWith("Three", lines, "A1:C3")).toEqual({
    values: [
      ["Ada", "", ""],
      ["Plain curb", "", "Plain curb".length],
      ["", "first", ""],
      ["River curb", "", "River curb".length],
      ["", "second", ""],
      ["Oak", "", "Oak".length],
      ["", "third", ""],
      ["End", "", ""],
    ],
    merged: ["A2:B2", "A4:B4", "A6:B6", "B3:C3", "B5:C5", "B7:C7"],
    printed: "A1:C7",
    fonts: ["Georgia", "Georgia", "Georgia"],
    fills: ["#FFF2CC", "#FFF2CC", "#FFF2CC"],
  });
});

test("what stands in the print area below the lines stays in it", async () => {
  const lines = [line("Plain curb", "first"), line("River curb", "second")];
  expect(await fillWith("Below", lines, "A1:C4")).toMatchObject({ printed: "A1:C6" });
});

test("eight lines are asked of Excel in as many syncs as one", async () => {
  const count = async (sheet: string, lines: readonly Fields[]) => {
    const before = await book.page.evaluate(() => window.workbookPage.syncCount);
    await fillWith(sheet, lines, "A1:C4");
    return (await book.page.evaluate(() => window.workbookPage.syncCount)) - before;
  };
  const one = await count("One", [line("Oak", "")]);
  const eight = Array.from({ length: 8 }, (_, index) => line(`Design ${index}`, ""));
  expect(await count("Eight", eight)).toBe(one);
});
