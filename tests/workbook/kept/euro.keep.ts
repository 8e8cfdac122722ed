import { expect, test } from "vitest";
import { fill, press, sheetNames, withRates } from "../desk";
import { keep } from "../keptfile";
import { settled } from "../person.mjs";
import { deskForEach } from "../workshop";
import { makeQuote, setRates, writeBeside } from "./making";

const desk = deskForEach((workshop) => withRates(workshop, "locale=de-DE&clock=2026-07-07T10:00:00"));

/** Prices by premium, tax in the price, loss as a share of the finished weight, lost grams without the casting fee. */
const RATES = {
  Workshop: "Werkstatt am Steg",
  WorkshopContact: "Am Steg 3",
  Currency: "EUR",
  Spot: "3705.25",
  SpotTime: "2026-07-07 09:45",
  SpotSource: "abgelesen",
  CastingFee: "2.1",
  CastingMinimum: "45",
  Loss: "0.03",
  LossBasis: "finished",
  CostBasis: "quick",
  LabourFlat: "60",
  LabourPerLink: "0.5",
  SettingFee: "4.25",
  Breakage: "0.02",
  Plating: "38",
  Surcharge: "4.4",
  PriceBy: "premium",
  Markup: "",
  Premium: "31.5",
  LeastMargin: "0.12",
  TaxName: "MwSt.",
  Tax: "0.19",
  TaxIs: "in the price",
  ShippingTaxed: "yes",
  Deposit: "0.3",
  Tolerance: "0.04",
  OwnGoldShare: "",
  Validity: "21",
  NextNumber: "2601",
};

const PLAIN = {
  Customer: "Ada Quillfeather",
  Design: "Flachpanzer",
  Mark: "585",
  Length: "50",
  "Links per length": "1,6",
  "Weight of one link": "1,31",
  "Clasp length": "2,5",
  "Clasp weight": "4,4",
  "Clasp cost": "240",
};

const WHITE = {
  Design: "Weißer Reif",
  Mark: "750",
  Colour: "white",
  "Kind of piece": "bracelet",
  Quantity: "2",
  Length: "19",
  "Links per length": "1,25",
  "Weight of one link": "2,4",
  Clasp: "cast hidden clasp",
  "Clasp length": "1,2",
  "Clasp weight": "5,05",
  "Links with stones": "all links",
  "Stones per link": "2",
  "Kind of stone": "Saphir",
  "Stone diameter": "1,5",
  "Price of one stone": "6,5",
  "This line's price by": "own price",
  "This line's figure": "8450",
};

/** A template of the person's own, in their language. */
const TEMPLATE = [
  ["{{workshop}}", "", ""],
  ["Angebot {{number}}", "vom {{date}}", "gültig bis {{validUntil}}"],
  ["Für", "{{customer}}", ""],
  [
    "{{line.design}}",
    "{{line.kind|chain=Kette|bracelet=Armband}}, {{line.colour|yellow=gelb|white=weiß}}, {{line.mark}} Gold",
    "{{line.amount}}",
  ],
  ["Summe", "", "{{total}}"],
  ["[[enthält {{taxIncludedName}}]]", "", "[[{{taxIncluded}}]]"],
  ["[[Goldkurs {{spot}}]]", "", ""],
];

test("quotes in euros, with decimal commas, tax in the price and a template of one's own", async () => {
  await setRates(desk, RATES);
  await fill(desk, PLAIN);
  await makeQuote(desk, "2601");
  await fill(desk, { Customer: "Bram Oakhollow", "Price settled": "by final weight", "Spot on the quote": "yes" });
  await press(desk, "Add a line");
  await fill(desk, WHITE);
  await fill(desk, { Shipping: "9,9", "Customer's gold": "8,5", "Mark of the customer's gold": "333" });
  await makeQuote(desk, "2602");
  await desk.pane.evaluate(async (rows) => {
    await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Quote template");
      sheet.getRange().clear();
      sheet.pageLayout.setPrintArea("A1:C7");
      sheet.getRange("A1:C7").values = rows;
      sheet.getRange("C4:C6").numberFormat = [["#,##0.00"], ["#,##0.00"], ["#,##0.00"]];
      sheet.name = "Angebot (template)";
      await context.sync();
    });
  }, TEMPLATE);
  await settled(desk.page);
  await desk.pane.getByText("Earlier quotes", { exact: true }).click();
  await settled(desk.page);
  await desk.pane.locator("details.template > summary").click();
  await settled(desk.page);
  await fill(desk, { "Make quotes from": "Angebot (template)" });
  await press(desk, "Open quote 2602");
  await fill(desk, { Discount: "2,5 %" });
  await makeQuote(desk, "2602a");

  await writeBeside(desk, "Job 2601", "Cast", { D: "78", E: "105.1" });
  await writeBeside(desk, "Job 2601", "Polished", { D: "76", E: "99.8" });
  await writeBeside(desk, "Job 2601", "Finished pieces", { D: "1", E: "104.2" });
  expect(await sheetNames(desk)).toHaveLength(13);
  await keep(desk, "euro");
});
