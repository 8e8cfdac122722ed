import { beforeEach, describe, expect, test } from "vitest";
import {
  cellAt,
  fill,
  filledCells,
  HUNDRED_GRAMS,
  press,
  rateCell,
  setRate,
  sheetNames,
  texts,
  withRates,
} from "./desk";
import { clickCell, settled, typeIn } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach();

const result = async (term: string) =>
  ((await desk.pane.locator(`dt:text-is("${term}") + dd`).first().textContent()) ?? "").replaceAll("\u00a0", " ");
const price = async () => ((await desk.pane.locator(".price").first().textContent()) ?? "").replaceAll("\u00a0", " ");

describe("from a blank workbook to a quote", () => {
  beforeEach(async () => {
    await desk.sit(withRates);
  });

  test("Rates and the quote template are laid out, each rate a defined name", async () => {
    expect(await sheetNames(desk)).toEqual(["Sheet1", "Rates", "Quote template"]);
    const names = await desk.page.evaluate(() => window.workbookPage.names().map(({ name }) => name));
    for (const name of [
      "Rate_Spot",
      "Rate_SpotTime",
      "Rate_SpotSource",
      "Rate_CastingFee",
      "Rate_CastingMinimum",
      "Rate_Loss",
      "Rate_LossBasis",
      "Rate_LabourFlat",
      "Rate_LabourPerLink",
      "Rate_LabourPerGram",
      "Rate_LabourMinimum",
      "Rate_Surcharge",
      "Rate_SettingFee",
      "Rate_Plating",
      "Rate_Markup",
      "Rate_Margin",
      "Rate_Premium",
      "Rate_PriceStep",
      "Rate_Tax",
      "Rate_Deposit",
      "Rate_Validity",
      "Rate_Currency",
    ]) {
      expect(names).toContain(name);
    }
    expect((await cellAt(desk, ...(await rateCell(desk, "Spot"))))?.value).toBe(777.58692);
  });

  test("100 g with 2 g lost lands at 2,753.00, 27.53 a gram (common practice, finished basis)", async () => {
    await setRate(desk, "LossBasis", "grams");
    await setRate(desk, "Loss", "2");
    await fill(desk, HUNDRED_GRAMS);
    expect(await result("Links")).toContain("50");
    expect(await result("Finished weight")).toContain("100.0");
    expect(await result("Cast weight")).toContain("102");
    expect(await result("Landed cost")).toContain("2,753.00");
    expect(await result("Landed per gram")).toMatch(/27\.53.*finished basis/s);
    expect(await result("Make or buy")).toMatch(
      /^Make: .*27\.53 a gram made against .*28\.25 bought; making saves .*72\.00/s,
    );
    // 2,753 x 1.30 = 3,578.90, up to the step of 1: 3,579; margin (3,579 - 2,753) / 3,579.
    expect(await price()).toContain("3,579.00");
  });

  test("the same quick lands at 2,750.00, 27.50 a gram, and 20 g with 1 g lost at 605.00, 30.25: bought (common practice)", async () => {
    await setRate(desk, "LossBasis", "grams");
    await setRate(desk, "Loss", "2");
    await setRate(desk, "CostBasis", "quick");
    await fill(desk, HUNDRED_GRAMS);
    expect(await result("Landed cost")).toContain("2,750.00");
    expect(await result("Landed per gram")).toMatch(/27\.50.*quick basis/s);
    expect(await result("Make or buy")).toMatch(/^Make: /);
    await setRate(desk, "Loss", "1");
    await fill(desk, { Length: "2.5" });
    expect(await result("Landed cost")).toContain("605.00");
    expect(await result("Landed per gram")).toContain("30.25");
    expect(await result("Make or buy")).toMatch(
      /^Buy: .*30\.25 a gram made against .*28\.25 bought; buying saves .*40\.00/s,
    );
  });

  test("one press makes the quote without a cost or a formula, and the job with live cost lines", async () => {
    await setRate(desk, "LossBasis", "grams");
    await setRate(desk, "Loss", "2");
    await fill(desk, { ...HUNDRED_GRAMS, Quantity: "2", Discount: "0.1" });
    const before = await desk.page.evaluate(() => window.workbookPage.syncCount);
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();
    expect((await desk.page.evaluate(() => window.workbookPage.syncCount)) - before).toBeLessThanOrEqual(5);
    expect(await sheetNames(desk)).toEqual([
      "Sheet1",
      "Rates",
      "Quote template",
      "Quotes",
      "Quote 1001",
      "Job 1001",
      "Tickets 1001",
    ]);

    const quote = await filledCells(desk, "Quote 1001");
    expect(quote.filter(({ formula }) => formula !== "")).toEqual([]);
    const words = quote.map(({ text }) => text).join("\n");
    // Two at 3,579 are 7,158; 10 % off 715.80; 6,442.20 in all. Half would not cover 2 x 2,753 of metal, casting and labour, 85.5 % of it: 90 % is 5,797.98, up to 5,798.
    for (const shown of [
      "Ada Quillfeather",
      "Plain curb",
      "Chain in yellow 1000 gold, solid links. Finished length 12.5 in, 50 links, about 100.0 g each.",
      "3,579.00",
      "7,158.00",
      "715.80",
      "6,442.20",
      "5,798.00",
      "644.20",
    ]) {
      expect(words).toContain(shown);
    }
    for (const cost of ["2,753", "2753", "27.53", "2,703", "Landed", "Casting", "Markup"])
      expect(words).not.toContain(cost);
    expect(words).not.toMatch(/[{}[\]]/);

    const job = await filledCells(desk, "Job 1001");
    const formulas = job.map(({ formula }) => formula).filter((formula) => formula !== "");
    for (const name of [
      "LINKCOUNT",
      "CASTWEIGHT",
      "FINEGOLD",
      "METALRATE",
      "MELTVALUE",
      "MAKEORBUY",
      "LABOURCOST",
      "CASTINGCOST",
      "SELLINGPRICE",
      "MARGIN",
    ]) {
      expect(
        formulas.some((formula) => formula.includes(`CURB.${name}(`)),
        name,
      ).toBe(true);
    }
    expect(job.filter(({ error }) => error)).toEqual([]);
    expect(await jobFigure("Landed cost")).toBe(2753);
    expect(await jobFigure("Landed cost per gram")).toBe(27.53);
    // Two pieces of 102 g.
    expect(await jobFigure("Cast, g")).toBe(204);
    expect(await jobFigure("Price at today's rates")).toBe(3579);
  });

  test("changing spot re-costs cells, job sheets and the pane", async () => {
    await setRate(desk, "LossBasis", "grams");
    await setRate(desk, "Loss", "2");
    await fill(desk, HUNDRED_GRAMS);
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001").waitFor();
    await typeIn(desk.page, "Sheet1", "A1", '=CURB.METALRATE(Rate_Spot,"1000")');
    expect((await cellAt(desk, "Sheet1", "A1"))?.value).toBe(25);
    // Twice the spot: 50 a gram; (100 + 2) x 51.50 + 50 = 5,303.
    await setRate(desk, "Spot", "1555.17384");
    expect((await cellAt(desk, "Sheet1", "A1"))?.value).toBe(50);
    expect(await jobFigure("Landed cost")).toBe(5303);
    expect(await result("Landed cost")).toContain("5,303.00");
    // The quote stands as it was sent.
    expect((await filledCells(desk, "Quote 1001")).map(({ text }) => text)).toContain("3,579.00");
    expect(await jobFigure("Quoted")).toBe(3579);
  });

  test("two presses in a row make one quote; the next order gets the next number", async () => {
    await fill(desk, HUNDRED_GRAMS);
    // The spot of tests is asked about first.
    await desk.pane.getByRole("button", { name: "Make the quote", exact: true }).click();
    await press(desk, "Yes, USD 777.59");
    await desk.pane.getByRole("button", { name: "Make the quote", exact: true }).dblclick();
    await settled(desk.page);
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001").waitFor();
    await fill(desk, { Customer: "Bram Oakhollow" });
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1002, Job 1002 and Tickets 1002").waitFor();
    expect(await sheetNames(desk)).toEqual([
      "Sheet1",
      "Rates",
      "Quote template",
      "Quotes",
      "Quote 1001",
      "Job 1001",
      "Tickets 1001",
      "Quote 1002",
      "Job 1002",
      "Tickets 1002",
    ]);
  });

  test.each([
    "=1+1",
    "+49 30 Workshop",
    "-10% Ltd",
    "@SUM(A1)",
    "<b>Bold & Sons</b>",
    "'quoted'",
    "007",
    "3-4",
    "TRUE",
    "#N/A",
    "May 5",
  ])("a customer called %s stays that text and never becomes a formula, a number, a date or markup", async (name) => {
    await fill(desk, { ...HUNDRED_GRAMS, Customer: name, Design: name });
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001").waitFor();
    const quote = await filledCells(desk, "Quote 1001");
    expect(quote.filter(({ value }) => value === name)).toHaveLength(2);
    expect(quote.filter(({ formula }) => formula !== "")).toEqual([]);
    expect((await texts(desk, "Job 1001", "A2"))[0]?.[0]).toContain(name);
    expect(await desk.pane.locator("b").count()).toBe(0);
  });

  /** A figure of the job sheet by its label. */
  async function jobFigure(label: string): Promise<unknown> {
    const rows = await desk.page.evaluate(() =>
      window.workbookPage.read("Job 1001", "A1:G140").map((row) => row.map(({ value }) => value)),
    );
    return rows.find(([first]) => first === label)?.[1];
  }
});

describe("a workbook with orders in it", () => {
  test("an order jotted as a row is taken, quoted twice over, and gone after a reset", async () => {
    await desk.sit((workshop) => workshop.sitDown("book=workshop"));
    await clickCell(desk.page, "Orders", "B6");
    await press(desk, "Take from the selected row");
    expect(await desk.pane.getByLabel("Customer", { exact: true }).inputValue()).toBe("T. Okonjo-Reyes");
    expect(await desk.pane.getByLabel("Quantity", { exact: true }).inputValue()).toBe("2");
    expect(await desk.pane.getByLabel("Length unit", { exact: true }).inputValue()).toBe("in");
    // 8 inches less a clasp of 1.3, at 3.5 an inch: 23.45 links, so 23.
    expect(await result("Links")).toContain("23");
    await press(desk, "Make the quote");
    await press(desk, "Still to be agreed with the customer");
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();
    const words = (await filledCells(desk, "Quote 1001")).map(({ text }) => text).join("\n");
    expect(words).toContain("Alder Lane Bench");
    expect(words).toContain("Bracelet in white 14K gold, solid links, plated with rhodium. Finished length");
    await desk.page.getByRole("button", { name: "Reset the demo" }).click();
    await desk.page.getByRole("button", { name: "Reset and lose this" }).click();
    await desk.page.getByRole("button", { name: "Reset the demo" }).and(desk.page.locator(":enabled")).waitFor();
    await settled(desk.page);
    expect(await sheetNames(desk)).toEqual(["Designs", "Orders", "Rates"]);
  });
});
