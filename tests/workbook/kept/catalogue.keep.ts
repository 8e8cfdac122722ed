import { expect, test } from "vitest";
import { openCatalogue, ownSheet, readDesigns, unfold } from "../catalogue";
import { fill, press, sheetNames, view, withRates } from "../desk";
import { keep } from "../keptfile";
import { settled, typeIn } from "../person.mjs";
import { deskForEach } from "../workshop";
import { makeQuote, setRates } from "./making";

const desk = deskForEach((workshop) => withRates(workshop, "clock=2026-07-09T11:00:00"));

/** Prices by margin, no tax, loss in grams, lost grams without the casting fee. */
const RATES = {
  Workshop: "Tin Lane Bench",
  Spot: "4288.4",
  SpotTime: "2026-07-09 08:00",
  SpotSource: "morning",
  CastingFee: "1.5",
  Loss: "2",
  LossBasis: "grams",
  CostBasis: "quick",
  LabourFlat: "50",
  LabourPerLink: "0.4",
  Plating: "32",
  PriceBy: "margin",
  Margin: "0.28",
  Markup: "",
  PriceStep: "10",
};

/** Designs in a workshop's own words, order of columns and units, with a blank row and one that cannot be priced. */
const OWN = [
  ["Wieght of one link (dwt)", "Lenght cm", "Karat", "Remark", "Model", "Links pr inch", "Colour"],
  [1.1, 50, "14K", "for the window", "Own curb", 4, "yellow"],
  ["", "", "", "", "", "", ""],
  [1, 63.5, "25K", "", "Odd", 4, "yellow"],
  [2, 31.75, 500, "", "Half", 3.5, "rose"],
  [0.4, 45, 750, "", "Fine", 6, "white"],
];

/** The words of the order form, with clasps, findings and quantities. */
const RICH = [
  [
    "Design",
    "Mark",
    "Colour",
    "Plating",
    "Quantity",
    "Length (cm)",
    "Links per in",
    "Weight of one link (dwt)",
    "Clasp",
    "Clasp length (mm)",
    "Clasp weight (g)",
    "Clasp cost",
    "Weight of other findings",
    "Cost of other findings",
    "Engraving cost",
    "Model and mould share",
  ],
  ["White", "14K", "white", "", 3, 45.5, 4.25, 0.83, "cast box clasp", 12, 3.4, 20, "", "", "", 12.5],
  ["Plain", 750, "yellow", "not plated", "", 61, 3, 1.27, "bought lobster clasp", 15, 2.1, 145, 0.6, 38, 15, ""],
  ["Light", "9K", "rose", "plated", 1, 19.05, 6, 0.21, "none", "", "", "", "", "", "", ""],
];

const ASKED = [
  "Date;Shop;Karat;Weight (dwt);Price (EUR);Style",
  '25.04.2026;"Fair; hall 2";585;10;"1.480,50";curb',
  "03.05.2026;Window;750;20,5;4.999,00;curb",
  "04.05.2026;Window;25K;0;999,00;curb",
  "05.06.2026;Window;585;12,5;1.399,00;rope",
].join("\n");

const ORDER = {
  Customer: "Dov Larkmere",
  Design: "Own curb",
  Mark: "14K",
  Length: "20",
  "Links per length": "4",
  "Weight of one link": "1.71",
};

const MAKERS = [
  { maker: "Fennick", mark: "14K", surcharge: "6", lead: "12" },
  { maker: "Fennick", mark: "14K", from: "60", surcharge: "3.5", minimum: "250", minimumIn: "g" },
  { maker: "Orrin", mark: "all", from: "", minimum: "", minimumIn: "", surcharge: "4.8" },
];

async function openPart(title: string): Promise<void> {
  const summary = desk.pane.locator("details.part:visible > summary", { hasText: title });
  await summary.click();
  await settled(desk.page);
}

const done = (title: string) => desk.pane.locator(".ending", { hasText: title }).first().waitFor();

test("designs with all that the catalogue adds, asking prices, makers' price lists, make or buy and a budget", async () => {
  await setRates(desk, RATES);
  await fill(desk, ORDER);
  await makeQuote(desk, "1001");
  await ownSheet(desk, "My designs", "B3", OWN, "Mine");
  await ownSheet(desk, "Rich", "A1", RICH, "Richer");

  await openCatalogue(desk);
  await readDesigns(desk, "Mine");
  await press(desk, "Use these columns");
  await unfold(desk, "Price list in the workbook");
  await press(desk, "Make the price list");
  await done("Price list is in the workbook.");
  await press(desk, "Add columns beside the designs");
  await done("Columns for 3 rows were added on My designs.");
  await unfold(desk, "Price sheet and CSV");
  await press(desk, "Make the sheet");
  await done("Prices is in the workbook");
  await desk.pane.getByLabel("Who reads it").selectOption("bench");
  await desk.pane.getByLabel("Labour", { exact: true }).check();
  await press(desk, "Make the sheet");
  await done("Bench prices is in the workbook");
  await unfold(desk, "Prices at other spots");
  await desk.pane.getByLabel("Step", { exact: true }).fill("5 %");
  await press(desk, "Reckon");
  await press(desk, "Put every price on a sheet");
  await done("Prices at other spots is in the workbook");

  await readDesigns(desk, "Richer");
  await press(desk, "Add columns beside the designs");
  await done("Columns for 3 rows were added on Rich.");
  await press(desk, "Begin a blank catalogue");

  await desk.page.route("https://spot.example/**", (route) =>
    route.fulfill({ body: '{"data":[{"price":4310.25}]}', headers: { "access-control-allow-origin": "*" } }),
  );
  await unfold(desk, "New spot");
  await unfold(desk, "Read it from an address");
  await desk.pane.getByLabel("Address", { exact: true }).fill("https://spot.example/now");
  await desk.pane.getByLabel("Place of the number").fill("data.0.price");
  await press(desk, "Read and see");
  await desk.pane.locator(".repricing").waitFor();
  await press(desk, "Take over this spot");

  await desk.pane.getByText("Spot on Rates is now").first().waitFor();

  await view(desk, "Check");
  const check = { price: "1490", weight: "16.2", mark: "14K" };
  for (const [key, text] of Object.entries(check)) await desk.pane.locator(`#check-${key}`).fill(text);
  await desk.pane.getByLabel("Where seen", { exact: true }).fill("Spring fair");
  await press(desk, "Write it down");
  await desk.pane.getByText("Written down on Asking prices", { exact: false }).waitFor();
  await openPart("A list of asking prices");
  await desk.pane.getByLabel("Where it is", { exact: true }).selectOption("paste");
  await desk.pane.getByLabel("Paste the list here, headers first").fill(ASKED);
  await press(desk, "Read the list");
  await desk.pane.getByLabel("1 EUR in USD").fill("1.08");
  await settled(desk.page);
  await press(desk, "Take 3 rows in");
  await desk.pane.getByText("3 rows taken in on Asking prices.").waitFor();

  await view(desk, "Decide");
  await desk.pane.getByText("Makers' price lists").click();
  await press(desk, "Begin the Makers table");
  for (const row of MAKERS) {
    for (const [key, text] of Object.entries(row)) {
      const field = desk.pane.locator(`#maker-${key}`);
      if (key === "minimumIn") await field.selectOption(text);
      else await field.fill(text);
    }
    await desk.pane.locator("#maker-surcharge").press("Enter");
    await settled(desk.page);
  }
  await typeIn(desk.page, "Sheet1", "A1", '=CURB.BESTMAKER(100,"14K",Makers[#All])');
  await desk.pane.locator("details.sourcing").getByLabel("Weights", { exact: true }).check();
  await desk.pane.locator("#sourcing-weights").fill("20; 100\n10 ozt");
  await settled(desk.page);
  await press(desk, "Put it on a sheet");
  await desk.pane.getByText("It is on the sheet Make or buy").waitFor();

  await openPart("Budget for a start");
  await press(desk, "Fill from the order");
  await desk.pane.getByLabel("Models", { exact: true }).fill("600");
  await desk.pane.getByLabel("Cash at hand", { exact: true }).fill("12000");
  await settled(desk.page);
  await desk.pane.getByRole("button", { name: "Put it on a sheet", exact: true }).last().click();
  await desk.pane.getByRole("tabpanel").getByText("Budget is in the workbook").waitFor();
  await settled(desk.page);

  expect(await sheetNames(desk)).toHaveLength(18);
  await keep(desk, "catalogue");
});
