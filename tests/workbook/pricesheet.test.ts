import { readFile } from "node:fs/promises";
import Fraction from "fraction.js";
import { beforeEach, expect, test } from "vitest";
import { monthlyMoves } from "../src/goldmonths";
import { atRoundRates, dump, openCatalogue, ownSheet, readDesigns, said, unfold, value, valuesOf } from "./catalogue";
import { press, rateCell, setRate, sheetNames, texts } from "./desk";
import { deskForEach } from "./workshop";

const desk = deskForEach(atRoundRates);

beforeEach(async () => {
  await setRate(desk, "Workshop", "Tin Lane Bench");
  await setRate(desk, "SpotTime", "2026-05-31 14:30");
  await ownSheet(desk, "D", "A1", DESIGNS, "Designs");
  await openCatalogue(desk);
  await readDesigns(desk, "Designs");
});

/** 50 links of 2 g, 100 g: fine at 25.00 a gram 2,750 landed, 3,575; of half the gold 1,250 + 25 + 150 + 50 = 1,475, x 1.3 = 1,917.5. */
const DESIGNS = [
  ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link"],
  ["Plain, wide", 1000, "yellow", 12.5, 4, 2],
  ["+Half", 500, "rose", 12.5, 4, 2],
  ["Odd", "25K", "rose", 12.5, 4, 2],
];

/** Every text and figure of a sheet, and whether any is a formula. */
async function contents(sheet: string) {
  const cells = await desk.page.evaluate((name) => window.workbookPage.read(name, "A1:N20").flat(), sheet);
  return {
    all: cells.map(({ text }) => text).join("|"),
    formulas: cells.filter(({ formula }) => formula !== "").length,
  };
}

test("a sheet for customers holds values only, dated with its spot, and no cost; taken out, nothing of it is left", async () => {
  const before = await dump(desk);
  await unfold(desk, "Price sheet and CSV");
  for (const cost of ["Landed cost", "Margin", "Casting", "Labour"]) {
    expect(await desk.pane.getByLabel(cost, { exact: true }).count()).toBe(0);
  }
  await press(desk, "Make the sheet");
  await desk.pane.getByText("One line cannot be priced and was left out.").first().waitFor();
  expect(
    (await texts(desk, "Prices", "A5:E7")).map((row) => row.map((text) => text.replaceAll("\u00a0", " "))),
  ).toEqual([
    ["Design", "Mark", "Colour", "Length", "Price, USD"],
    ["Plain, wide", "1000", "yellow", "12.5 in", "3,575.00"],
    ["+Half", "500", "rose", "12.5 in", "1,918.00"],
  ]);
  const { all, formulas } = await contents("Prices");
  expect(formulas).toBe(0);
  expect(all).toContain("Tin Lane Bench");
  expect(all.replaceAll(/\s/g, " ")).toMatch(
    /Prices of .+, at gold of USD 777\.58692 an ounce, read May 31, 2026, 2:30 PM\./,
  );
  for (const figure of ["2,750", "2750", "1,475", "1475", "cost", "argin"]) expect(all).not.toContain(figure);
  const { setup } = await desk.page.evaluate(() => window.workbookPage.print("Prices"));
  expect(setup).toMatchObject({
    zoom: { horizontalFitToPages: 1 },
    area: { row: 0, rows: 7 },
    titleRows: { row: 4, rows: 1 },
  });
  // It stays as it is when spot moves.
  await setRate(desk, "Spot", "1555.17384");
  expect(await value(desk, "Prices", "E6")).toBe(3575);
  await setRate(desk, "Spot", "777.58692");
  await press(desk, "Take it out again: Price sheet, on Prices");
  await desk.pane.getByText("taken out again. The workbook is as it was before.").first().waitFor();
  expect(await dump(desk)).toEqual(before);
});

test("a sheet for the bench shows what costs were asked for, and says whom it is not for", async () => {
  await unfold(desk, "Price sheet and CSV");
  await desk.pane.getByLabel("Who reads it").selectOption("bench");
  await desk.pane.getByLabel("Labour", { exact: true }).check();
  await press(desk, "Make the sheet");
  await desk.pane.getByText("Bench prices is in the workbook").first().waitFor();
  expect(await value(desk, "Bench prices", "A1")).toBe("Bench prices: not for customers");
  const heads = (await texts(desk, "Bench prices", "A5:J5"))[0] ?? [];
  const row = (await valuesOf(desk, "Bench prices", "A6:J6"))[0] ?? [];
  expect([row[heads.indexOf("Landed cost, USD")], row[heads.indexOf("Labour, USD")]]).toEqual([2750, 50]);
  // Back to customers: no box of a cost is left checked.
  await desk.pane.getByLabel("Who reads it").selectOption("customers");
  await press(desk, "Make the sheet");
  await desk.pane.locator(".banner.noted", { hasText: /^Prices is in the workbook/ }).waitFor();
  expect((await contents("Prices")).all).not.toContain("cost");
});

test("CSV by download and by hand: quoted, without formulas, figures plain", async () => {
  await unfold(desk, "Price sheet and CSV");
  const waiting = desk.page.waitForEvent("download");
  await desk.pane.getByRole("button", { name: "Download CSV", exact: true }).click();
  const download = await waiting;
  expect(download.suggestedFilename()).toMatch(/^prices-\d{4}-\d{2}-\d{2}\.csv$/);
  const wanted =
    'Design,Mark,Colour,Length,"Price, USD"\r\n"Plain, wide",1000,yellow,12.5 in,3575.00\r\n\'+Half,500,rose,12.5 in,1918.00\r\n';
  expect(await readFile(await download.path(), "utf8")).toBe(`\uFEFF${wanted}`);
  await desk.pane.evaluate(() => {
    Object.defineProperty(navigator, "clipboard", { value: undefined });
  });
  await press(desk, "Copy CSV");
  expect(await desk.pane.locator(".byhand textarea").inputValue()).toBe(wanted.replaceAll("\r\n", "\n"));
});

test("prices at other spots: a plot with its words, and every price on a sheet (hand arithmetic)", async () => {
  await unfold(desk, "Prices at other spots");
  await desk.pane.getByLabel("Step", { exact: true }).fill("30 %");
  await press(desk, "Reckon");
  expect(await said(desk, "#range-step-fault")).toContain("give a share up to 20 %");
  await desk.pane.getByLabel("Step", { exact: true }).fill("5 %");
  await press(desk, "Reckon");
  await desk.pane.locator(".cataloguebody .plot svg").waitFor();
  // At 20 a gram: 2,000 + 40 + 150 + 50 = 2,240, x 1.3 = 2,912; half: 1,000 + 20 + 200 = 1,220, x 1.3 = 1,586.
  // At 30: 3,000 + 60 + 200 = 3,260, 4,238, floor 3,622.2 above 3,575; half: 1,500 + 30 + 200 = 1,730, 2,249, floor 1,922.2 above 1,918.
  expect(await said(desk, ".cataloguebody .plot > p")).toBe(
    "One piece of each of 2 designs comes to USD 5,493.00 at the present spot of USD 777.58692. At USD 622.069536 it would come to USD 4,498.00, at USD 933.104304 to USD 6,487.00. At USD 933.104304 2 lines would be below their floor at present prices.",
  );
  await press(desk, "Put every price on a sheet");
  const rows = await valuesOf(desk, "Prices at other spots", "A6:J9");
  expect(rows[1]?.map(String)).toEqual(["Lines below the floor", "0", "0", "0", "0", "0", "0", "0", "0", "2"]);
  expect([rows[2]?.[0], rows[2]?.[1], rows[2]?.[5], rows[2]?.[9]]).toEqual(["Plain, wide", 2912, 3575, 4238]);
  expect([rows[3]?.[0], rows[3]?.[1], rows[3]?.[5], rows[3]?.[9]]).toEqual(["+Half", 1586, 1918, 2249]);
  expect((await contents("Prices at other spots")).formulas).toBe(0);

  // What gold did in its largest months, from the published table of monthly averages, in exact fractions.
  const moves = monthlyMoves().sort((a, b) => a.ratio.compare(b.ratio));
  const [down, up] = [moves[0]?.ratio ?? new Fraction(0), moves.at(-1)?.ratio ?? new Fraction(0)];
  const spots = [down, new Fraction(1), up].map((ratio) => ratio.mul("777.58692"));
  const linesAt = spots.map((spot) =>
    [1, 0.5].map((share) => {
      const rate = spot.div("31.1034768").mul(share);
      return rate.add("1.5").mul(100).add(rate.mul(2)).add(50).mul("1.3").ceil().valueOf();
    }),
  );
  const cents = (spot: Fraction | undefined) => spot?.round(2).valueOf() ?? 0;
  const shown = (amount: number) => new Intl.NumberFormat("en-US", { minimumFractionDigits: 2 }).format(amount);
  await desk.pane.getByLabel("At which spots").selectOption({ label: "Largest months since 1968" });
  expect(await desk.pane.locator(".cataloguebody .plot:visible").count()).toBe(0);
  expect(await desk.pane.getByLabel("Step", { exact: true }).isVisible()).toBe(false);
  await press(desk, "Reckon");
  await desk.pane.locator(".cataloguebody .plot:visible svg").waitFor();
  const table = desk.pane.locator(".cataloguebody .plot tbody tr");
  const shownRows = await table.evaluateAll((rows) =>
    rows.map((row) => [...row.children].slice(0, 2).map((cell) => (cell.textContent ?? "").replaceAll("\u00a0", " "))),
  );
  const sums = linesAt.map((prices) => shown(prices.reduce((sum, price) => sum + price, 0)));
  expect(shownRows).toEqual([
    [`${shown(cents(spots[0]))}, -16.7% as from February 1980 to March 1980`, sums[0]],
    [shown(777.59), sums[1]],
    [`${shown(cents(spots[2]))}, +48.4% as from December 1979 to January 1980`, sums[2]],
  ]);
  await press(desk, "Put every price on a sheet");
  expect(await valuesOf(desk, "Prices at other (Curbwright)", "A6:D11")).toEqual([
    ["Design", cents(spots[0]), 777.59, cents(spots[2])],
    ["Change of spot", "-16.7%", "present", "+48.4%"],
    ["As gold moved from", "February 1980 to March 1980", "", "December 1979 to January 1980"],
    ["Lines below the floor", "0", "0", "2"],
    ["Plain, wide", ...linesAt.map(([plain]) => plain)],
    ["+Half", ...linesAt.map(([, half]) => half)],
  ]);
});

test("a spot from an address is put into the form, seen, asked about where it jumps, and never taken over by itself", async () => {
  let answer = '{"data":[{"price":800}]}';
  await desk.page.route("https://spot.example/**", (route) =>
    route.fulfill({ body: answer, headers: { "access-control-allow-origin": "*" } }),
  );
  await desk.page.route("https://shut.example/**", (route) =>
    route.fulfill({ body: answer, headers: { "access-control-allow-origin": "https://its-own-pages.example" } }),
  );
  const spot = async () => value(desk, ...(await rateCell(desk, "Spot")));
  await unfold(desk, "New spot");
  await unfold(desk, "Read it from an address");
  await desk.pane.getByLabel("Address", { exact: true }).fill("http://spot.example/now");
  await desk.pane.getByLabel("Place of the number").fill("data.0.price");
  await press(desk, "Read and see");
  expect(await said(desk, ".source > .fault")).toBe("The address must be a whole one that begins with https://.");
  // An answer without leave for other pages: the browser keeps it (CORS).
  await desk.pane.getByLabel("Address", { exact: true }).fill("https://shut.example/now");
  await press(desk, "Read and see");
  await desk.pane.getByText("No answer from shut.example").waitFor();
  await desk.pane.getByLabel("Address", { exact: true }).fill("https://spot.example/now");
  await press(desk, "Read and see");
  await desk.pane.locator(".repricing").waitFor();
  expect(await said(desk, ".outcome > p")).toBe("From USD 777.58692 to USD 800.00 an ounce: +2.9%.");
  expect(await desk.pane.getByLabel("Source", { exact: true }).inputValue()).toBe("spot.example");
  expect(await spot()).toBe(777.58692);
  await press(desk, "Take over this spot");
  expect(await spot()).toBe(800);
  // 15.1 % above 800.
  answer = '{"data":[{"price":920.8}]}';
  await press(desk, "Read and see");
  await desk.pane.getByText("That is 15.1% away from the spot on Rates.").waitFor();
  expect(await desk.pane.getByRole("button", { name: "Take over this spot" }).isVisible()).toBe(false);
  answer = '{"data":[{"price":"soon"}]}';
  await press(desk, "Read and see");
  await desk.pane.getByText('The answer at data.0.price: found "soon"').waitFor();
  expect(await spot()).toBe(800);
  // Only the address asked was asked, and it is kept in the workbook for the next time.
  expect(await sheetNames(desk)).toEqual(["Sheet1", "Rates", "Quote template", "D"]);
});
