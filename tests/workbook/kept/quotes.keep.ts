import { expect, test } from "vitest";
import { fill, inSight, press, sheetNames, withRates } from "../desk";
import { keep } from "../keptfile";
import { settled, typeIn } from "../person.mjs";
import { deskForEach } from "../workshop";
import { makeQuote, setRates, widen, writeBeside } from "./making";

const desk = deskForEach((workshop) => withRates(workshop, "clock=2026-07-06T09:00:00"));

/** Prices by markup, tax on top, loss as a share of the cast weight, all cast metal paid for. */
const RATES = {
  Workshop: "Tin Lane Bench",
  WorkshopContact: "7 Tin Lane, by appointment",
  Spot: "4250",
  SpotTime: "2026-07-06 08:30",
  SpotSource: "read aloud at the counter",
  SpotAge: "24",
  CastingFee: "1.85",
  CastingMinimum: "60",
  Loss: "0.045",
  LabourFlat: "48",
  LabourPerLink: "0.6",
  LabourPerGram: "0.15",
  LabourMinimum: "40",
  SettingFee: "3.5",
  Breakage: "0.05",
  Plating: "36",
  Overhead: "0.04",
  Surcharge: "4.9",
  Markup: "0.32",
  PriceStep: "5",
  Tax: "0.0825",
  ShippingTaxed: "yes",
  OwnGoldShare: "0.92",
  Validity: "14",
};

const PLAIN = {
  Customer: "Ada Quillfeather",
  Design: "Plain curb",
  Mark: "14K",
  Length: "20",
  "Links per length": "4",
  "Weight of one link": "1.35",
  "Clasp length": "1.1",
  "Clasp weight": "4.8",
  "Clasp cost": "291",
};

/** White and so plated, on a wrist, with stones in links and clasp, against gold of the customer's that is credited. */
const SET_BRACELET = {
  Customer: "Bram Oakhollow",
  Design: "River bracelet",
  Mark: "18K",
  Colour: "white",
  "Kind of piece": "bracelet",
  "Length given as": "wrist",
  Length: "17",
  "Length unit": "cm",
  Ease: "1.5",
  "Links per length": "1.6",
  "Links counted per": "cm",
  "Weight of one link": "1.92",
  Clasp: "cast box clasp",
  "Clasp length": "1.4",
  "Clasp weight": "4.1",
  "Clasp cost": "18.5",
  "Links with stones": "a number of links",
  "How many links": "6",
  "Kind of stone": "sapphire",
  "Stone shape": "rectangular",
  "Stone length": "3",
  "Stone width": "1.5",
  "Specific gravity of the stone": "4",
  "Price of one stone": "22",
  "Stones on the clasp": "3",
  "Kind of clasp stone": "diamond",
  "Clasp stone diameter": "2",
  "Carat of one clasp stone": "0.03",
  "Price of one clasp stone": "900",
  "Clasp stones priced by": "a carat",
  "Setting fee on the clasp": "6",
  Discount: "5 %",
  Shipping: "25",
  "Spot on the quote": "yes",
  "Customer's gold": "12.4",
  "Mark of the customer's gold": "14K",
};

/** By margin, three alike, engraved, with findings and a share of the model. */
const THREE_ALIKE = {
  Customer: "Cleo Fenwright",
  Design: "Mill curb",
  Mark: "375",
  Colour: "rose",
  Quantity: "3",
  "Length given as": "neck",
  Length: "16",
  Ease: "1.5",
  "Links per length": "5",
  "Weight of one link": "0.62",
  Clasp: "cast hidden clasp",
  "Clasp length": "0.8",
  "Clasp weight": "2.9",
  "Other findings": "jump rings",
  "Weight of other findings": "0.4",
  "Cost of other findings": "26",
  Engraving: "C & F 2026",
  "Engraving cost": "15",
  "Model and mould share": "30",
  "Price by": "margin",
  "Markup, margin or premium": "0.38",
  Deposit: "60 %",
};

/** Four colours with a weight each, plated; stones weighed and by the size; terms of its own. */
const FOUR_COLOURS = {
  Customer: "Esme Harrowgate",
  Design: "Garland",
  Mark: "18K",
  Colour: "white",
  Plating: "plated",
  "Colour pattern": "WYRG",
  Length: "430",
  "Length unit": "mm",
  "Links per length": "4",
  "Weight of one link": "1.1",
  "Weight of one yellow link": "1.12",
  "Weight of one rose link": "1.09",
  "Weight of one green link": "1.13",
  "Links are cast": "all closed",
  Clasp: "cast box clasp",
  "Clasp length": "14",
  "Clasp weight": "4.6",
  "Clasp cost": "22",
  "Links with stones": "every n-th link",
  "Every how many links": "4",
  "Stones per link": "2",
  "Kind of stone": "ruby",
  "Stone shape": "round",
  "Stone diameter": "1.8",
  "Stone depth": "1.1",
  "Carat of one stone": "0.032",
  "Price of one stone": "310",
  "Stones priced by": "a carat",
  "Stones on the clasp": "2",
  "Kind of clasp stone": "garnet",
  "Clasp stone shape": "rectangular",
  "Clasp stone length": "4",
  "Clasp stone width": "2.5",
  "Clasp stone depth": "1.6",
  "Specific gravity of the clasp stone": "3.9",
  "Price of one clasp stone": "35",
  "This line's price by": "own price",
  "This line's figure": "14900",
  "Price by": "premium",
  "Markup, margin or premium": "33",
  "Weight tolerance": "8 %",
  "Customer's gold": "30",
  "Mark of the customer's gold": "22K",
  "Customer's gold is": "used",
  "Share of its melt value": "80 %",
};

/** Two yellow links, then a white one; hollow, a stone in every fifth link. */
const PATTERN = {
  Design: "Tide curb",
  Mark: "750",
  "Solid or hollow": "hollow",
  Plating: "not plated",
  "Colour pattern": "YYW",
  Length: "18",
  "Links per length": "4",
  "Weight of one link": "1.5",
  "Weight of one white link": "1.6",
  Clasp: "none",
  "Links with stones": "every n-th link",
  "Every how many links": "5",
  "Stone diameter": "2",
  "Price of one stone": "12",
  "Setting fee": "3",
  "Stone breakage": "25 %",
};

/** An alloy of the workshop's own, priced by a premium of its own. */
const CUFF = {
  Design: "Low street cuff",
  Mark: "585",
  Colour: "own",
  "Name of the colour": "champagne",
  Composition: "Au 585 Ag 265 Cu 150",
  "Kind of piece": "bracelet",
  Quantity: "2",
  Length: "8",
  "Links per length": "3.5",
  "Weight of one link": "2.35",
  "Links are cast": "all open",
  "Clasp weight": "3.2",
  "Clasp cost": "118",
  "This line's price by": "premium",
  "This line's figure": "28",
};

test("quotes of every kind, with their jobs and tickets, a revision, and what was written into them since", async () => {
  await setRates(desk, RATES);
  await fill(desk, PLAIN);
  await makeQuote(desk, "1001");
  await fill(desk, SET_BRACELET);
  await makeQuote(desk, "1002");
  await fill(desk, {
    "Links with stones": "no links",
    "Stones on the clasp": "",
    Discount: "",
    Shipping: "",
    "Customer's gold": "",
    "Mark of the customer's gold": "",
    "Spot on the quote": "no",
    "Length unit": "in",
    "Links counted per": "in",
    "Clasp cost": "",
    "Kind of piece": "chain",
  });
  await fill(desk, THREE_ALIKE);
  await desk.pane.locator("details.template > summary").click();
  await settled(desk.page);
  await fill(desk, { "Make quotes from": "Counter ticket template" });
  await makeQuote(desk, "1003");
  await fill(desk, { "Make quotes from": "Quote template" });

  await desk.pane.getByText("Earlier quotes", { exact: true }).click();
  await settled(desk.page);
  await press(desk, "Open quote 1001");
  await fill(desk, { Quantity: "2", Length: "22" });
  await makeQuote(desk, "1001a");
  await press(desk, "Start a new order");

  await fill(desk, {
    "Length given as": "finished length",
    "Other findings": "",
    "Weight of other findings": "",
    "Cost of other findings": "",
    Engraving: "",
    "Engraving cost": "",
    "Model and mould share": "",
    Deposit: "",
    Quantity: "1",
  });
  await fill(desk, FOUR_COLOURS);
  await makeQuote(desk, "1004");
  await fill(desk, {
    "Colour pattern": "",
    Plating: "as usual",
    "Length unit": "in",
    "Links are cast": "closed and open in turn",
    "Links with stones": "no links",
    "Stones on the clasp": "",
    "This line's price by": "as the quote",
    "Price by": "as Rates",
    "Weight tolerance": "",
    "Share of its melt value": "",
    Colour: "yellow",
    Clasp: "bought lobster clasp",
  });
  await fill(desk, { ...PLAIN, Customer: "Dov Larkmere" });
  await press(desk, "Add a line");
  await fill(desk, PATTERN);
  await press(desk, "Add a line");
  await fill(desk, CUFF);
  const extra = async (text: string, amount: string, cost: string) => {
    const add = desk.pane.getByRole("button", { name: "Add a free line", includeHidden: true });
    await inSight(add);
    await press(desk, "Add a free line");
    for (const [label, typed] of Object.entries({ "Free line": text, Amount: amount, "Cost to you": cost }))
      await desk.pane.getByLabel(label, { exact: true }).last().fill(typed);
  };
  await extra("Gift box", "15.50", "4");
  await extra("For the wait", "-40", "");
  await fill(desk, {
    Discount: "10 %",
    Shipping: "20",
    "Price settled": "by final weight",
    "Customer's gold": "20",
    "Mark of the customer's gold": "500",
    "Customer's gold is": "used",
  });
  await makeQuote(desk, "1005");

  const setStatus = async (number: string, word: string) => {
    await desk.pane.getByLabel(`Where quote ${number} stands`, { exact: true }).selectOption(word);
    await settled(desk.page);
  };
  await setStatus("1001", "turned down");
  await setStatus("1001a", "agreed");
  await setStatus("1003", "at the caster");
  await widen(desk, "Quotes", "Note");
  await typeIn(desk.page, "Quotes", "K6", "rang twice");
  await typeIn(desk.page, "Quote 1001", "B5", "Ada, by hand");

  // All three equal pieces are back.
  await writeBeside(desk, "Job 1003", "Links sent as models", { D: "264", F: "2026-07-02" });
  await writeBeside(desk, "Job 1003", "Cast", { D: "261", E: "175.1", F: "2026-07-03", G: "Ivo" });
  await writeBeside(desk, "Job 1003", "Polished", { D: "258", E: "166.2", F: "2026-07-04", G: "Mara" });
  await writeBeside(desk, "Job 1003", "Finished pieces", { D: "3", E: "167.3", F: "2026-07-05" });
  // Of the three lines the first came out too heavy for its price to settle, the second is half cast, the third is done.
  await writeBeside(desk, "Job 1005", "Cast", { D: "76", E: "118.2" });
  await writeBeside(desk, "Job 1005", "Polished", { D: "76", E: "109.9" });
  await writeBeside(desk, "Job 1005", "Finished pieces", { D: "1", E: "115" });
  await writeBeside(desk, "Job 1005", "Cast, yellow", { D: "48", E: "75.8" });
  await writeBeside(desk, "Job 1005", "Cast", { D: "56", E: "138.4" }, 2);
  await writeBeside(desk, "Job 1005", "Polished", { D: "56", E: "131.9" }, 2);
  await writeBeside(desk, "Job 1005", "Finished pieces", { D: "2", E: "138.9" }, 3);
  await writeBeside(desk, "Tickets 1005", "Due", { B: "July 17" });
  await writeBeside(desk, "Tickets 1005", "Out", { B: "204", C: "361", E: "2026-07-06", F: "Ivo" });

  // Read two days ago, which is marked as old.
  await setRates(desk, { Spot: "4391.5", SpotTime: "2026-07-04 16:00" });
  expect(await sheetNames(desk)).toHaveLength(23);
  await keep(desk, "quotes");
});
