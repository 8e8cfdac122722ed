import { beforeEach, describe, expect, test } from "vitest";
import { atRoundRates, dump, ownSheet, valuesOf } from "./catalogue";
import { fill, HUNDRED_GRAMS, menu, press, setRate, sheetNames, texts, view } from "./desk";
import { settled, typeIn } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach(atRoundRates);
/** 25.00 a gram fine, 1.50 cast, 50 labour, 2 g lost, quick basis, markup 30 %; a link of 2 g kept, 4 to the inch, of 1000 ‰. */
beforeEach(async () => {
  await fill(desk, HUNDRED_GRAMS);
  await view(desk, "Links");
  await desk.pane.locator("#link-model").fill("Ada curb");
  await press(desk, "Keep this link");
  await view(desk, "Check");
});

const SHEET = "Asking prices";
const part = (title: string) => desk.pane.locator("details.part", { hasText: title });
async function unfold(title: string): Promise<void> {
  await part(title).locator("> summary").click();
  await settled(desk.page);
}
/** What stands somewhere in the pane, with plain spaces. */
async function said(selector: string): Promise<string> {
  const all = await desk.pane.locator(selector).allInnerTexts();
  return all.join(" ").replaceAll(/\s+/g, " ").trim();
}
async function typed(values: Readonly<Record<string, string>>): Promise<void> {
  for (const [key, text] of Object.entries(values)) await desk.pane.locator(`#check-${key}`).fill(text);
  await settled(desk.page);
}
/** The table's rows by the titles of its columns, as values. */
async function rows(): Promise<readonly Readonly<Record<string, unknown>>[]> {
  const [titles = [], ...cells] = await valuesOf(desk, SHEET, "A4:T16");
  return cells
    .filter((row) => row[6] !== "")
    .map((row) => Object.fromEntries(titles.map((title, place) => [String(title), row[place]])));
}

describe("one asking price", () => {
  test("is checked as it is typed, held against a kept link, written down and taken out again", async () => {
    await typed({ price: "668", weight: "20", mark: "1000" });
    expect(await said(".checkcard .headline")).toBe("USD 8.40 a gram over metal");
    // 20 x 26.50 + 50 + 50 = 630, 31.50 a gram; 38 of 668 are 5.7 %; x 1.3 = 819.
    await desk.pane.getByText("We land at", { exact: false }).waitFor();
    expect(await said(".checkcard .answer")).toBe(
      "We land at USD 6.50 over; matching it leaves 5.7%. That is below your least margin of 10%.",
    );
    expect(await said(".checkcard .against")).toContain("Our price for it: USD 819.00");
    expect(await said(".checkcard .basis")).toContain("10 links of Ada curb 1000 yellow");

    // An ounce is asked about; the button answers: 0.5 ozt are 15.5517384 g, of 388.79 gold.
    await typed({ weight: "0.5 oz" });
    expect(await said(".checkcard .headline")).toBe("Type price, weight and mark");
    await press(desk, "Troy ounces, 31.10 g each");
    expect(await desk.pane.locator("#check-weight").inputValue()).toBe("0.5 ozt");
    expect(await said(".checkcard .said")).toContain("USD 388.79 of gold in it");

    // Another currency needs its rate: EUR 400 x 1.08 is 432 for 20 g, 3.40 below.
    await typed({ price: "EUR 400", weight: "20" });
    expect(await said(".checkcard")).toContain("Still to fill: Rate of exchange.");
    await typed({ exchange: "1.08" });
    expect(await said(".checkcard .headline")).toBe("USD 3.40 a gram below the metal");
    expect(await said(".checkcard .watch")).toMatch(/weight.*mark.*hollow.*plated.*stones/i);

    // The worksheet function says the same: 21.60 asked, 25.00 melt, 3.40 below, and 9.90 less than 31.50 landed.
    await typeIn(desk.page, "Sheet1", "A1", '=CURB.ASKINGCHECK(400*1.08,20,"1000",Rate_Spot,31.5)');
    const [check = []] = await valuesOf(desk, "Sheet1", "A1:E1");
    expect(check.map(Number)).toEqual([21.6, 25, -3.4, -0.136, -9.9].map((each) => expect.closeTo(each, 12)));

    const before = await sheetNames(desk);
    await desk.pane.getByLabel("Where seen", { exact: true }).fill("Spring fair");
    await press(desk, "Write it down");
    await desk.pane.getByText("Written down on Asking prices", { exact: false }).waitFor();
    const [row] = await rows();
    expect(row).toMatchObject({
      "Where seen": "Spring fair",
      Mark: "1000",
      "Solid or hollow": "solid",
      "Weight g": 20,
      "Asked price": 400,
      Currency: "EUR",
      "Rate of exchange": 1.08,
      Spot: 777.58692,
      "Weight class": "20 to 50 g",
      Remark: "Below melt: look at weight, mark, hollow, plating, stones.",
    });
    const near = (title: string) => Number(row?.[title]);
    expect(near("Asked per g")).toBeCloseTo(21.6, 12);
    expect(near("Melt per g")).toBeCloseTo(25, 12);
    expect(near("Premium per g")).toBeCloseTo(-3.4, 12);
    expect(near("Above melt")).toBeCloseTo(-0.136, 12);
    await press(desk, "Write it down");
    await desk.pane.getByText("stands in the table AskingPrices already", { exact: false }).waitFor();
    await press(desk, "Take it out again");
    await desk.pane.getByText("Taken out again.", { exact: true }).waitFor();
    expect(await sheetNames(desk)).toEqual(before);
  });
});

/** As a shop abroad would have it: semicolons, decimal commas, day first, quoted fields, pennyweights and euros in the headers. */
const ABROAD = [
  "Date;Shop;Karat;Weight (dwt);Price (EUR);Style",
  '25.04.2026;"Fair; hall 2";1000;10;"1.080,50";curb',
  "03.04.2026;Window;1000;20,5;999,00;curb",
  "04.04.2026;Window;25K;0;999,00;curb",
  "05.04.2026;Window;1000;20,5;999,00;rope",
].join("\n");

describe("a list of asking prices", () => {
  beforeEach(async () => {
    await unfold("Price check");
    await unfold("A list of asking prices");
    await desk.pane.getByRole("button", { name: "Read the list", exact: true }).waitFor();
  });
  const paste = async (text: string) => {
    await desk.pane.getByLabel("Where it is", { exact: true }).selectOption("paste");
    await desk.pane.getByLabel("Paste the list here, headers first").fill(text);
    await press(desk, "Read the list");
  };
  const outcome = () => said(".askingbody > .outcome");

  test("pasted as CSV is asked about, taken in with its faults told, recognised again, and taken out but for what was changed", async () => {
    await paste(ABROAD);
    expect(await said(".asking .summaryline")).toBe("4 rows in the pasted text, separated by semicolons");
    expect(await outcome()).toContain("No row can be taken in yet.");
    await desk.pane.getByLabel("1 EUR in USD").fill("1.08");
    await settled(desk.page);
    expect(await outcome()).toContain("3 of 4 rows can be taken in.");
    expect(await outcome()).toContain('Row 4: Mark: found "25K"');
    expect(await outcome()).toContain('Weight: found "0"');
    await press(desk, "Take 3 rows in");
    await desk.pane.getByText("3 rows taken in on Asking prices.").waitFor();
    const [first, second] = await rows();
    // 1,080.50 x 1.08 / (10 x 1.55517384), less 25.00 a gram.
    expect(first).toMatchObject({
      "Where seen": "Fair; hall 2",
      "Asked price": 1080.5,
      Remark: "Melt at the spot on Rates.",
    });
    expect(Number(first?.["Premium per g"])).toBeCloseTo((1080.5 * 1.08) / 15.5517384 - 25, 9);
    expect(Number(second?.["Weight g"])).toBeCloseTo(20.5 * 1.55517384, 9);
    expect((await texts(desk, SHEET, "A5:A6")).flat()).toEqual(["2026-04-25", "2026-04-03"]);

    // Rates move, and with them what has no spot of its own day.
    await setRate(desk, "Spot", "622.069536");
    expect(Number((await rows())[0]?.["Melt per g"])).toBeCloseTo(20, 9);

    await paste(`${ABROAD}\n06.04.2026;Window;1000;8;700,00;curb`);
    await settled(desk.page);
    expect(await outcome()).toContain("1 of 5 rows can be taken in.");
    expect(await outcome()).toContain("Row 2: stands in the table AskingPrices");
    await press(desk, "Take 1 row in");
    await desk.pane.getByText("1 row taken in on Asking prices.", { exact: false }).waitFor();
    expect((await rows()).map((row) => row.List)).toEqual([1, 1, 1, 2]);

    // A row that was put right since is the person's.
    await typeIn(desk.page, SHEET, "F6", "32");
    await press(desk, "Take it out again: List 1: 3 rows");
    await desk.pane.getByText("2 rows taken out again. 1 row changed since: they stay, and are yours.").waitFor();
    expect((await rows()).map((row) => [row["Weight g"], row.List])).toEqual([
      [32, ""],
      [expect.closeTo(8 * 1.55517384, 9), 2],
    ]);

    // A long list is called off while it is written: beside other rows, and where it had begun the table.
    const long = Array.from({ length: 220 }, (_, index) => `2026-04-${10 + (index % 20)};1000;${index + 1};${index}50`);
    const callOff = async () => {
      await paste(["Date;Mark;Weight;Price", ...long].join("\n"));
      await desk.pane.getByRole("button", { name: "Take 220 rows in" }).waitFor();
      await settled(desk.page);
      const before = await dump(desk);
      // Reading and growing the table pass; a quick machine would be done with the rest before a mouse is there.
      await desk.page.evaluate(() => window.workbookPage.hold(3));
      await desk.pane.getByRole("button", { name: "Take 220 rows in" }).click();
      await desk.pane.locator(".askingbody > .progress:not([hidden]) .button").click();
      await desk.page.evaluate(() => window.workbookPage.letGo());
      await desk.pane.locator(".askingbody > .ending", { hasText: "Called off. The workbook is as it was." }).waitFor();
      await settled(desk.page);
      expect(await dump(desk)).toEqual(before);
    };
    await callOff();
    expect((await rows()).length).toBe(2);
    await menu(desk, "delete", SHEET);
    await callOff();
    expect(await sheetNames(desk)).not.toContain(SHEET);
  });

  test("selected in the sheet or in a file has its doubtful dates, figures and ounces asked about; taken out, nothing is left", async () => {
    const before = await sheetNames(desk);
    await ownSheet(desk, "Seen", "B2", [
      ["Day", "Karat", "Wieght", "Price"],
      [46115, 1000, "0.5 oz", 668],
      [46116, 1000, 20, "$700"],
    ]);
    await press(desk, "Read the list");
    // A near header is proposed, not hidden.
    expect(await said(".asking .columnlist .badge")).toBe("likely");
    expect(await outcome()).toContain("1 of 2 rows can be taken in.");
    await desk.pane.getByLabel("“oz” is").selectOption({ label: "avoirdupois ounces (28.35 g)" });
    await settled(desk.page);
    await press(desk, "Take 2 rows in");
    await desk.pane.getByText("2 rows taken in on Asking prices.").waitFor();
    expect((await rows()).map((row) => row["Weight g"])).toEqual([expect.closeTo(28.349523125 / 2, 12), 20]);
    await press(desk, "Take it out again: List 1: 2 rows");
    await desk.pane.getByText("Taken out again. The workbook is as it was before.").waitFor();
    expect(await sheetNames(desk)).toEqual([...before, "Seen"]);

    // Windows-1252, where 0x80 is the euro sign.
    await desk.pane.getByLabel("Where it is", { exact: true }).selectOption("file");
    const bytes = Buffer.from("Date,Mark,Weight,Price\n03/04/2026,1000,20,\x801.500\n", "latin1");
    await desk.pane
      .locator(".asking input[type=file]")
      .setInputFiles({ name: "seen.csv", mimeType: "text/csv", buffer: bytes });
    await desk.pane.getByText("1 row in seen.csv, separated by commas").waitFor();
    await desk.pane.getByLabel("“1.500” is").selectOption({ label: "1500 (decimal comma)" });
    await desk.pane.getByLabel("“03/04/2026” is").selectOption({ label: "Apr 3, 2026" });
    await desk.pane.getByLabel("1 EUR in USD").fill("1.1");
    await settled(desk.page);
    await press(desk, "Take 1 row in");
    await desk.pane.getByText("1 row taken in on Asking prices.").waitFor();
    const [row] = await rows();
    expect(row).toMatchObject({ Currency: "EUR", "Asked price": 1500, Date: 46115 });
    expect(Number(row?.["Premium per g"])).toBeCloseTo((1500 * 1.1) / 20 - 25, 9);
  });

  test("is drawn against weight with our own price through it, and told in words and month by month", async () => {
    const scripts = () =>
      desk.pane.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => new URL(name).pathname));
    await paste(
      "Date;Mark;Weight;Price;Spot\n2026-04-03;1000;20;668;777.58692\n2026-04-09;1000;25;800;777.58692\n2026-05-02;500;100;2000;777.58692",
    );
    await press(desk, "Take 3 rows in");
    await desk.pane.getByText("3 rows taken in on Asking prices.").waitFor();
    expect((await scripts()).filter((path) => path.endsWith("/premiums.js"))).toEqual([]);
    await unfold("Premiums seen");
    const plot = desk.pane.locator(".asking .plot", { hasText: "Premium against weight" });
    await plot.locator("svg .curve").waitFor();
    expect(await plot.locator(".picture .point").count()).toBe(3);
    expect(await plot.locator(".picture .point.strong").count()).toBe(2);
    // 8.40, 7.00 and 20 - 12.50; ours: 819 / 20 - 25 = 15.95 and (25 x 26.50 + 100) x 1.3 = 991.25, up to 992: 14.68.
    expect(await said(".asking .plot > p:first-of-type")).toContain(
      "3 prices from USD 7.00 to USD 8.40 a gram over metal. Our price in 1000 is USD 15.95 a gram over at 20.00 g and USD 14.68 at 25.00 g. All 2 in 1000 ask less over metal than we do.",
    );
    await plot.locator("summary").click();
    expect(await plot.locator("tbody tr").allInnerTexts()).toEqual([
      expect.stringMatching(/20\.00.g\s+1000\s+USD.8\.40\s+USD.15\.95\s+Apr 3, 2026/),
      expect.stringMatching(/25\.00.g\s+1000\s+USD.7\.00\s+USD.14\.68\s+Apr 9, 2026/),
      expect.stringMatching(/100\.00.g\s+500\s+USD.7\.50\s+May 2, 2026/),
    ]);
    const medians = desk.pane.locator(".asking .plot", { hasText: "Month by month" });
    expect(await medians.locator("tbody tr").allInnerTexts()).toEqual([
      expect.stringMatching(/20 to 50 g, 1000\s+Apr 2026\s+USD.7\.70\s+2/),
      expect.stringMatching(/100 g and more, 500\s+May 2026\s+USD.7\.50\s+1/),
    ]);
    // What it must bring: the order's 100 g of 1000 are nearest to the two of 20 to 50 g, (8.40 + 7.00) / 2.
    await view(desk, "Decide");
    await unfold("What it must bring");
    await desk.pane.locator(".medianoffer p:visible").waitFor();
    expect(await said(".medianoffer p")).toBe(
      "The median of 2 prices seen for 1000, 20 to 50 g, in April 2026, is USD 7.70 a gram over metal.",
    );
    const premium = desk.pane.locator("#mustbring-premium");
    await premium.fill("12");
    expect(await premium.inputValue()).toBe("12");
    await press(desk, "Use the median seen (2 prices)");
    expect(await premium.inputValue()).toBe("7.70");
    await desk.pane.getByText("At USD 7.70 it brings").waitFor();
    // Prices that are gone are not offered; what was taken over stays in the field.
    await view(desk, "Check");
    await press(desk, "Take it out again: List 1: 3 rows");
    await view(desk, "Decide");
    await desk.pane.locator(".medianoffer").waitFor({ state: "hidden" });
    expect(await premium.inputValue()).toBe("7.70");
    await view(desk, "Check");
    // Narrow panes have no scroll bar across.
    const [wide, seen] = await desk.pane.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
    expect(wide).toBeLessThanOrEqual(seen ?? 0);
  });
});
