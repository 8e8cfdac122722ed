import ExcelJS from "exceljs";
import { beforeEach, describe, expect, test } from "vitest";
import { cellAt, fill, filledCells, HUNDRED_GRAMS, menu, press, sheetNames, withRates } from "./desk";
import { typeIn } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach(withRates);

beforeEach(async () => {
  await fill(desk, HUNDRED_GRAMS);
});

const quoteIsMade = () => desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();

describe("the person's own template", () => {
  test("a field nobody knows stays in sight and is reported", async () => {
    await typeIn(desk.page, "Quote template", "B3", "{{courier}}");
    await press(desk, "Make the quote");
    await quoteIsMade();
    await desk.pane.getByText("{{courier}} in B3").waitFor();
    expect((await cellAt(desk, "Quote 1001", "B3"))?.value).toBe("{{courier}}");
  });

  test("fields may stand among other words, in any language", async () => {
    await typeIn(desk.page, "Quote template", "A5", "Für {{customer}}, am {{date}}");
    await press(desk, "Make the quote");
    await quoteIsMade();
    const date = new Intl.DateTimeFormat("en-US", { dateStyle: "long" }).format(new Date());
    expect((await cellAt(desk, "Quote 1001", "A5"))?.value).toBe(`Für Ada Quillfeather, am ${date}`);
  });

  test("what the template computes arrives as a value: a quote holds no formula and no way to a cost", async () => {
    await typeIn(desk.page, "Quote template", "A3", "=Rate_Spot*2");
    await typeIn(desk.page, "Quote template", "B3", "=E17/2");
    await press(desk, "Make the quote");
    await quoteIsMade();
    const quote = await filledCells(desk, "Quote 1001");
    expect(quote.filter(({ formula }) => formula !== "")).toEqual([]);
    // 100 g at 25 with 2 % of the cast weight lost: (100 / 0.98) x 26.5 + 50 = 2,754.08; x 1.3 = 3,580.31, up to 3,581.
    expect((await cellAt(desk, "Quote 1001", "E17"))?.value).toBe(3581);
    expect((await cellAt(desk, "Quote 1001", "B3"))?.value).toBe(1790.5);
    // The template keeps its formula.
    expect((await cellAt(desk, "Quote template", "B3"))?.formula).toBe("=E17/2");
  });

  test("rows whose fields are all empty are hidden, phrases in double brackets go", async () => {
    await press(desk, "Make the quote");
    await quoteIsMade();
    const printed = await desk.page.evaluate(() => window.workbookPage.print("Quote 1001").html);
    expect(printed).not.toContain("Discount");
    expect(printed).not.toContain("Sales tax");
    expect(printed).not.toContain("stones set");
    expect(printed).not.toContain("plated");
    await fill(desk, {
      Clasp: "bought lobster clasp",
      "Clasp length": "0",
      "Clasp weight": "0",
      "Clasp cost": "20",
      "Links with stones": "a number of links",
      "How many links": "10",
      "Price of one stone": "9",
      Discount: "0.05",
    });
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1002, Job 1002 and Tickets 1002").waitFor();
    const second = await desk.page.evaluate(() => window.workbookPage.print("Quote 1002").html);
    expect(second).toContain("Discount");
    expect(second).toContain("about 100.0 g; lobster clasp; stones set: 10");
  });

  test("a protected template is told in a sentence, and nothing half made stays behind", async () => {
    await menu(desk, "protect", "Quote template");
    await press(desk, "Make the quote");
    await desk.pane.getByText('The sheet "Quote template" is protected').waitFor();
    expect(await sheetNames(desk)).toEqual(["Sheet1", "Rates", "Quote template"]);
    expect(await desk.pane.getByLabel("Customer", { exact: true }).inputValue()).toBe(HUNDRED_GRAMS.Customer);
  });

  test("a deleted template comes back built in", async () => {
    await menu(desk, "delete", "Quote template");
    await press(desk, "Make the quote");
    await quoteIsMade();
    expect(await sheetNames(desk)).toEqual([
      "Sheet1",
      "Rates",
      "Quote template",
      "Quotes",
      "Quote 1001",
      "Job 1001",
      "Tickets 1001",
    ]);
    expect((await filledCells(desk, "Quote 1001")).map(({ text }) => text)).toContain("Ada Quillfeather");
  });

  test("a sheet that has the quote's name already is left alone: the next number is taken", async () => {
    await menu(desk, "rename", "Sheet1", "quote 1001");
    await typeIn(desk.page, "quote 1001", "A1", "mine");
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1002, Job 1002 and Tickets 1002 are in the workbook.").waitFor();
    expect((await cellAt(desk, "quote 1001", "A1"))?.value).toBe("mine");
  });
});

describe("taking the result away", () => {
  test("the saved .xlsx holds the quote as values, the job as formulas with their values, and the names", async () => {
    await press(desk, "Make the quote");
    await quoteIsMade();
    const base64 = await desk.page.evaluate(() => window.workbookPage.saveXlsx());
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(Uint8Array.from(Buffer.from(base64, "base64")).buffer);
    expect(book.worksheets.map(({ name }) => name)).toEqual([
      "Sheet1",
      "Rates",
      "Quote template",
      "Quotes",
      "Quote 1001",
      "Job 1001",
      "Tickets 1001",
    ]);
    const quote = cellsOf(book.getWorksheet("Quote 1001"));
    expect(quote.every(({ formula }) => formula === undefined)).toBe(true);
    expect(quote.map(({ value }) => value)).toContain(3581);
    const job = cellsOf(book.getWorksheet("Job 1001")).filter(({ formula }) => formula !== undefined);
    expect(job.length).toBeGreaterThan(15);
    // A formula that shows nothing yet, such as what the scale will say, has no value in the file.
    expect(job.filter(({ formula, result }) => result === undefined && !formula?.includes('""'))).toEqual([]);
    expect(book.definedNames.model.map(({ name }) => name)).toContain("Rate_Spot");
    expect(book.getWorksheet("Quote 1001")?.pageSetup).toMatchObject({ fitToPage: true, fitToWidth: 1 });
  });

  test("the printed quote is the quote, one page wide, with its header row repeated, and shows no cost", async () => {
    await press(desk, "Make the quote");
    await quoteIsMade();
    const { setup, html } = await desk.page.evaluate(() => window.workbookPage.print("Quote 1001"));
    expect(setup).toMatchObject({ orientation: "Portrait", titleRows: { row: 8, rows: 1 } });
    expect(html).toContain("Ada Quillfeather");
    expect(html).toContain("3,581.00");
    expect(html).not.toContain("2,754");
  });
});

function cellsOf(
  sheet: ExcelJS.Worksheet | undefined,
): { value: unknown; formula: string | undefined; result: unknown }[] {
  const cells: { value: unknown; formula: string | undefined; result: unknown }[] = [];
  sheet?.eachRow((row) =>
    row.eachCell((cell) => cells.push({ value: cell.value, formula: cell.formula || undefined, result: cell.result })),
  );
  return cells;
}
