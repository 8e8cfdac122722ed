import { beforeAll, expect, test } from "vitest";
import { cellAt, fill, HUNDRED_GRAMS, menu, press, setRate, sheetNames, texts, view, withRates } from "./desk";
import { settled, typeIn } from "./person.mjs";
import { deskForAll } from "./workshop";

/** One person at one workbook, from a first answer to price lists, a list of weights and the catalogue. */
const desk = deskForAll((workshop) => withRates(workshop, "pane=320"));

beforeAll(async () => {
  await setRate(desk, "LossBasis", "grams");
  await setRate(desk, "Loss", "2");
  await setRate(desk, "CostBasis", "quick");
  await fill(desk, HUNDRED_GRAMS);
  await desk.pane.locator(".price").waitFor();
});

const plain = (text: string | null) => (text ?? "").replaceAll(/\s+/g, " ").trim();
const part = () => desk.pane.locator("details.sourcing");
const said = async () =>
  plain((await part().locator(".answerbox:visible :is(h3, p):visible").allTextContents()).join(" "));
const until = (words: string | RegExp) => part().locator(".answerbox:visible", { hasText: words }).waitFor();
const CHAINS = "USD. Made and bought: a gram. Saves: the cheaper way, for all pieces.";
const rows = async (caption: string) => {
  const lines = part().getByRole("table", { name: caption, exact: true }).locator("tbody tr");
  const read = await lines.evaluateAll((all) =>
    all.map((row) => Array.from(row.children, ({ textContent }) => textContent).join(" ")),
  );
  return read.map(plain);
};
const loaded = () =>
  desk.pane.evaluate(
    () =>
      performance.getEntriesByType("resource").filter(({ name }) => new URL(name).pathname.endsWith("/sourcing.js"))
        .length,
  );
/** Writes into a row of the price lists as a person types there. */
const typeRow = async (row: number, cells: Readonly<Record<string, string>>) => {
  await desk.pane.evaluate(
    async ([at, texts]) => {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Maker prices");
        for (const [column, text] of Object.entries(texts ?? {})) sheet.getRange(`${column}${at}`).values = [[text]];
        await context.sync();
      });
    },
    [row, cells] as const,
  );
  await settled(desk.page);
};

test("the order in the form: made at 27.50 against the surcharge on Rates (common practice), and what it hangs on", async () => {
  expect(await loaded()).toBe(0);
  await view(desk, "Decide");
  await until("Make it");
  expect(await loaded()).toBe(1);
  // 100 x 1.75 less 50 labour and 2 x 25 lost: 75. 100 / 1.75 = 57.142… g. Level at 2.50 of 3.25.
  expect(await said()).toBe(
    "Plain curb: 100.00 g of plain chain, 1000 Make it USD 27.50 a gram made, USD 28.25 bought. Making saves USD 75.00 a piece. With heavier links or with more of them, making wins above 57.14 g (1.14 g per link). Hangs most on the maker's surcharge: 10% less or more of it moves what making saves between USD 42.50 and USD 107.50, and does not turn the answer. Both ways cost the same at USD 2.50 a gram, 23.1% less than now.",
  );
  expect(await part().getByText("No price lists yet: bought is the surcharge on Rates").count()).toBe(1);
});

test("the bars stand widest first, each to the side of what it does, and the same can be read as a table", async () => {
  const plot = part().locator(".plot", { has: desk.pane.getByRole("heading", { name: "What the answer hangs on" }) });
  // By hand: surcharge 65, one link 35, casting 30; labour, loss and spot 10 each.
  expect((await plot.locator(".barname").allTextContents()).slice(0, 3)).toEqual([
    "Maker's surcharge",
    "Weight of one link",
    "Casting fee",
  ]);
  const widths = await plot
    .locator(".swing")
    .evaluateAll((bars) => bars.map((bar) => Number(bar.getAttribute("width"))));
  const both = widths.filter((_, at) => at % 2 === 0).map((width, at) => width + (widths[2 * at + 1] ?? 0));
  expect(both).toEqual([...both].sort((a, b) => b - a));
  expect((both[1] ?? 0) / (both[0] ?? 1)).toBeCloseTo(35 / 65, 2);
  expect(await plot.locator(".picture").getAttribute("aria-hidden")).toBe("true");
  await plot.getByText("Points of this plot").click();
  const table = plot.getByRole("table", { name: "What the answer hangs on" });
  expect(plain((await table.getByRole("row", { name: /^Casting fee/ }).allTextContents()).join())).toBe(
    "Casting feeUSD 90.00USD 60.00USD 2.25 a gram",
  );
  expect(await part().getByText("The same made or bought: the setting fee").count()).toBe(1);
  // Nothing is wider than a pane of 320 pixels.
  const [inner, outer] = await desk.pane.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  expect(inner).toBeLessThanOrEqual(outer ?? 0);
});

test("price lists in a table of the workbook: stepped surcharges, a least order, and rows at fault by their number", async () => {
  await part().getByText("Makers' price lists").click();
  await press(desk, "Begin the Makers table");
  expect(await sheetNames(desk)).toContain("Maker prices");
  expect((await texts(desk, "Maker prices", "A4:J4"))[0]).toEqual([
    "Maker",
    "Mark",
    "From g",
    "Surcharge per g",
    "Currency",
    "Minimum order",
    "Minimum in",
    "Lead time",
    "Date",
    "Note",
  ]);
  // One in the sheet, where the pane follows; two in the pane, by Enter.
  await typeRow(5, { A: "Fennick", B: "1000", D: "6", H: "12" });
  await until("USD 31.00 bought from Fennick");
  const write = async (values: Readonly<Record<string, string>>) => {
    for (const [key, text] of Object.entries(values)) {
      const control = desk.pane.locator(`#maker-${key}`);
      if (key === "minimumIn") await control.selectOption(text);
      else await control.fill(text);
    }
    await desk.pane.locator("#maker-surcharge").press("Enter");
    await settled(desk.page);
  };
  await write({ maker: "Fennick", mark: "1000", from: "60", surcharge: "2", minimum: "250", minimumIn: "g" });
  // Who sells 250 g cannot sell 100.
  await until("Make it");
  expect(await said()).toContain("Nobody on your price lists sells 1 piece of 100.00 g in 1000.");
  // 100 / (6 - 1.50) = 22.22 g up to 60 g, of 50 links; from 250 g on 2.00 is above the 1.50 + 100 / 250.
  expect(await said()).toContain(
    "With heavier links or with more of them, making wins between 22.22 g (0.44 g per link) and 60 g (1.2 g per link) and above 250 g (5 g per link).",
  );
  // 250 g are 3 pieces of 27.00 a gram; two more than wanted.
  expect(await said()).toContain(
    "Fennick sells no fewer than 3 pieces (300.00 g), at USD 27.00 per gram. That order would save USD 50.00 per piece. It takes USD 8,100.00 in cash, and 2 pieces worth USD 5,400.00 would stay in stock.",
  );
  await write({ maker: "Orrin", mark: "all", from: "", surcharge: "", minimum: "", minimumIn: "" });
  expect(plain(await desk.pane.locator("#maker-surcharge-fault").textContent())).toContain(
    "Surcharge per g: found nothing",
  );
  await write({ surcharge: "2.60" });
  await part().getByText("Written down: Orrin.").waitFor();
  expect(await rows("What each maker asks for this chain, the cheapest first")).toEqual([
    "Fennick USD 27.00 3 pieces, USD 8,100.00 USD 5,400.00",
    "no fewer than 3 pieces, from 60 g",
    "made by you USD 27.50 – –",
    "Orrin USD 27.60 1 piece, USD 2,760.00 –",
  ]);
  // 100 / 1.10: from there on made, since Fennick's 250 g cost more than 1.50 + 100 / 250 above the metal.
  expect(await said()).toContain("making wins above 90.91 g (1.82 g per link).");
  // The same in cells, over the table.
  await desk.pane.evaluate(async () => {
    await Excel.run(async (context) => {
      const cell = context.workbook.worksheets.getItem("Sheet1").getRange("A1");
      cell.formulas = [['=CURB.BESTMAKER(100,"1000",Makers[#All],Rate_Currency)']];
      await context.sync();
    });
  });
  await settled(desk.page);
  expect((await texts(desk, "Sheet1", "A1:B1"))[0]).toEqual(["Orrin", "2.6"]);
  // Typed key by key too, and what is typed after it is read as it stands.
  await typeIn(desk.page, "Sheet1", "A2", '=CURB.BESTMAKER(250,"1000",Makers[#All])');
  await typeIn(desk.page, "Sheet1", "A3", '=SUM(1,2)+3&"g"');
  expect(await texts(desk, "Sheet1", "A2:B3")).toEqual([
    ["Fennick", "2"],
    ["6g", ""],
  ]);
  // A surcharge that is gone: Fennick's price at 100 g is not known.
  await typeRow(6, { D: "soon" });
  await until("Not compared, because a row needs correcting: Fennick (row 6).");
  expect(await said()).toContain("USD 27.60 bought from Orrin");
  expect(
    await part()
      .getByText(/^Row 6, Fennick: Surcharge per g: found "soon", which is not a plain number/)
      .count(),
  ).toBe(1);
  await typeRow(6, { D: "2", E: "EUR" });
  await part().getByText("Row 6, Fennick: Currency: found EUR, and the workbook's amounts are in USD").waitFor();
  await typeRow(6, { E: "USD", C: "0" });
  await part()
    .getByText(/^Row 5, Fennick: From g: found the class from 0 g for 1000 in row 5 and in row 6; keep one of them/)
    .waitFor();
  await typeRow(6, { C: "60" });
  await until("Fennick sells no fewer than 3 pieces");
  expect(await part().locator(".faults:visible").count()).toBe(0);
  // What cannot be written is said, and stays typed.
  await menu(desk, "protect", "Maker prices");
  await write({ maker: "Thackley", surcharge: "3" });
  expect(
    await part()
      .getByText(/The sheet with the table Makers is protected/)
      .count(),
  ).toBe(1);
  expect(await desk.pane.locator("#maker-maker").inputValue()).toBe("Thackley");
});

test("a list of weights, typed or taken from cells, each with its answer, and all of it on a sheet", async () => {
  await part().getByLabel("Weights", { exact: true }).check();
  await desk.pane.locator("#sourcing-weights").fill("20; 100, 0\n10 ozt");
  await until("Make 2, buy 1");
  expect(await part().getByText('Weight 3: found "0"; give grams above 0').count()).toBe(1);
  // 26.50 and 50 labour and 50 lost: 20 g 31.50, 100 g 27.50, 311.034768 g 26.82; bought 27.60, 27.60, 27.00: 100 g do not reach the 250 g of Fennick.
  expect(await rows(CHAINS)).toEqual([
    "20.00 g 31.50 27.60 78.00 buy: Orrin",
    "100.00 g 27.50 27.60 10.00 make",
    "311.03 g 26.82 27.00 55.52 make",
  ]);
  // Three dots, each on its weight's cheaper line; the crossings are those of the order's own curve.
  expect(await part().locator(".plot:visible circle.small").count()).toBe(3);
  expect(await said()).toContain("With more of the same links, making wins above 90.91 g.");
  // 552 + 2,750 + 311.034768 x 26.5 + 100.
  expect(await said()).toContain("Each done the cheaper way they cost USD 11,644.42 in all.");
  expect(
    await part()
      .getByText(
        /for USD\s50\.00 less\. 150\.00\sg are missing to the minimum of 250\.00\sg\. Filling it up takes about USD\s4,050\.00/,
      )
      .count(),
  ).toBe(1);
  await press(desk, "Put it on a sheet");
  await part().getByText("It is on the sheet Make or buy").waitFor();
  // The weight of 0 was not read: the answer is of the others, on the sheet too, and the ending says so.
  expect(await said()).toContain("1 of the list could not be read and is not counted.");
  expect((await texts(desk, "Make or buy", "A3"))[0]?.[0]).toBe("1 of the list could not be read and is not counted.");
  await part().locator(".banner.noted", { hasText: "1 of the list could not be read" }).waitFor();
  const [head = [], ...lines] = await texts(desk, "Make or buy", "A8:K11");
  expect(head.slice(0, 5)).toEqual(["Chain", "Mark", "Answer", "Cheapest maker", "Chain g"]);
  expect(lines.map((line) => [0, 8, 2, 9].map((at) => plain(line[at] ?? null)))).toEqual([
    ["20.00 g", "-78.00", "buy: Orrin", "1"],
    ["100.00 g", "10.00", "make", "1"],
    ["311.03 g", "55.52", "make", "1"],
  ]);
  // From cells, under a header; the mark of the list itself.
  for (const [cell, text] of [
    ["D1", "Weight"],
    ["D2", "12.5"],
    ["D3", "30 dwt"],
  ] as const)
    await typeIn(desk.page, "Sheet1", cell, text);
  await desk.pane.evaluate(async () => {
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").getRange("D1:D3").select();
      await context.sync();
    });
  });
  await press(desk, "Take the selected cells");
  expect(await desk.pane.locator("#sourcing-weights").inputValue()).toBe("12.5\n30 dwt");
  await desk.pane.locator("#sourcing-mark").fill("gold");
  await part().getByText('Mark: found "gold"').waitFor();
  expect(await part().locator(".answerbox:visible").count()).toBe(0);
});

test("the catalogue's designs, read as the view Catalogue reads them, and forgotten when rates move", async () => {
  await part().getByLabel("Catalogue", { exact: true }).check();
  await settled(desk.page);
  await part().getByRole("button", { name: "Begin a blank catalogue" }).click();
  await part().getByRole("button", { name: "Compare the designs" }).waitFor();
  await press(desk, "Compare the designs");
  // Fennick sells 1000 alone; Orrin all at 2.60. 78 links of 1.35 g of 14K: 105.3 x 1.10 - 50 - 2 x 14.5833 = 36.66 saved by making;
  // 20 links of 2.4 g of 750: 48 x 1.10 - 50 - 2 x 18.75 = -34.70.
  expect(await rows(CHAINS)).toEqual([
    "Example chain 16.84 17.18 36.66 make",
    "Example bracelet 22.07 21.35 34.70 buy: Orrin",
  ]);
  await until("Make 1, buy 1");
  expect(await part().locator("#sourcing-designs-from option").allTextContents()).not.toContain("Table Makers");
  await setRate(desk, "LabourFlat", "0");
  await part().locator(".answerbox:visible").waitFor({ state: "detached" });
  await part().getByLabel("This order", { exact: true }).check();
  await until("Make");
  // An alloy of 600 stamped 585, quick: (100 + 2) x 15 + 150 = 1,680 made; Orrin's chain of 585 at 14.625 + 2.60.
  const own = { Mark: "585", Colour: "own", "Name of the colour": "champagne", Composition: "Au 600 Cu 400" };
  await fill(desk, own);
  await view(desk, "Decide");
  await until("USD 16.80 a gram made, USD 17.23 bought from Orrin.");
  expect(await said()).toContain("Making saves USD 42.50 a piece.");
  await part().getByText("Your alloy holds 600 parts of gold in 1,000. Ready-made chain marked 585").waitFor();
  await fill(desk, { Colour: "yellow" });
  // Solid chain says nothing of a hollow piece, here and beside the order's result.
  await fill(desk, { "Solid or hollow": "hollow" });
  await view(desk, "Decide");
  await part().getByText("The piece is hollow. Price lists and the surcharge on Rates are for solid chain").waitFor();
  expect(await said()).not.toContain("bought");
  await view(desk, "Quote");
  await desk.pane.getByText("Not compared: the piece is hollow, and ready-made chain is solid.").waitFor();
  await fill(desk, { "Solid or hollow": "solid" });
  // Without an order there is nothing to compare, and it says what is missing.
  await fill(desk, { Mark: "" });
  await view(desk, "Decide");
  await part().getByText("Fill in mark, length, links and link weight of a piece in Quote.").waitFor();
  expect((await cellAt(desk, "Sheet1", "A1"))?.text).toBe("Orrin");
});
