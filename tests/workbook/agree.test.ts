import { expect, test } from "vitest";
import { fill, HUNDRED_GRAMS, press, setRate, view, withRates } from "./desk";
import { deskForEach } from "./workshop";

const desk = deskForEach();

interface Case {
  readonly what: string;
  readonly rates: Readonly<Record<string, string>>;
  readonly order: Readonly<Record<string, string>>;
  /** By hand, from the definitions of the trade; see the arithmetic beside each. */
  readonly links: number;
  readonly landed: number;
  readonly price: number;
  readonly shown: string;
}

const CASES: readonly Case[] = [
  {
    what: "centimetres against links an inch, a clasp, three pieces under the caster's minimum",
    rates: { CastingMinimum: "600", LossBasis: "grams", Loss: "0", Surcharge: "9" },
    // 31.75 cm are 12.5 in; less 2.54 cm of clasp 11.5 in: 46 links, 92 g. Casting 3 x 92 x 1.5 = 414, so 600, 200 a piece.
    // 92 x 25 + 200 + 50 + 30 = 2,580; x 1.3 = 3,354.
    order: {
      Length: "31.75",
      "Length unit": "cm",
      Clasp: "bought lobster clasp",
      "Clasp length": "2.54",
      "Clasp weight": "5",
      // 5 g of it are worth 25.00.
      "Mark of the clasp": "200",
      "Clasp cost": "30",
      Quantity: "3",
    },
    links: 46,
    landed: 2580,
    price: 3354,
    shown: "2,580.00",
  },
  {
    what: "quick basis on a share, labour per link and per gram under a minimum, stones, a price by margin in steps of 5",
    rates: {
      CostBasis: "quick",
      Loss: "0.04",
      LabourFlat: "10",
      LabourPerLink: "0.2",
      LabourPerGram: "0.1",
      LabourMinimum: "45",
      SettingFee: "4",
      PriceBy: "margin",
      Margin: "0.35",
      PriceStep: "5",
    },
    // 100 x 26.5 + 4 x 25 lost + labour 10 + 10 + 10, so 45 + 6 stones x (7 + 4) = 2,861; / 0.65 = 4,401.54, up to 4,405.
    order: {
      "Links with stones": "a number of links",
      "How many links": "6",
      "Price of one stone": "7",
      Discount: "0.12",
    },
    links: 50,
    landed: 2861,
    price: 4405,
    shown: "2,861.00",
  },
  {
    what: "a loss counted on the finished weight, white gold plated, a price by premium with stones and plating at cost",
    rates: { LossBasis: "finished", Loss: "0.05", Plating: "40", PriceBy: "premium", Premium: "7.5", PriceStep: "0" },
    // Cast 105 g: 105 x 26.5 + 50 + 2 x (3 + 1) + 40 + clasp 30 = 2,910.50. Price 100 x 32.5 + 8 + 40 + 30 = 3,328:
    // the clasp has a cost but no weight, and is not given away.
    order: {
      Colour: "white",
      "Links with stones": "a number of links",
      "How many links": "2",
      "Price of one stone": "3",
      Clasp: "bought lobster clasp",
      "Clasp length": "0",
      "Clasp weight": "0",
      "Clasp cost": "30",
    },
    links: 50,
    landed: 2910.5,
    price: 3328,
    shown: "2,910.50",
  },
  {
    what: "a currency without minor unit and no step",
    rates: { Currency: "JPY", LossBasis: "grams", Loss: "1", PriceStep: "0", Markup: "0.123" },
    // 101 x 26.5 + 50 = 2,726.5; x 1.123 = 3,061.8595, up to the coin: 3,062.
    order: {},
    links: 50,
    landed: 2726.5,
    price: 3062,
    shown: "2,727",
  },
  {
    what: "spot typed for one order, away from Rates",
    rates: { LossBasis: "grams", Loss: "2" },
    // Twice the spot: 102 x 51.5 + 50 = 5,303; x 1.3 = 6,893.90, up to 6,894.
    order: { Spot: "1555.17384" },
    links: 50,
    landed: 5303,
    price: 6894,
    shown: "5,303.00",
  },
];

test.each(CASES)("pane, job sheet and hand agree: $what", async ({ rates, order, links, landed, price, shown }) => {
  await desk.sit(withRates);
  for (const [name, text] of Object.entries(rates)) await setRate(desk, name, text);
  await fill(desk, { ...HUNDRED_GRAMS, ...order });
  expect(await desk.pane.locator('dt:text-is("Landed cost") + dd').first().textContent()).toContain(shown);
  await press(desk, "Make the quote");
  await desk.pane.getByText("are in the workbook.").waitFor();
  const rows = await desk.page.evaluate(() =>
    window.workbookPage.read("Job 1001", "A1:G140").map((row) => row.map(({ value }) => value)),
  );
  const figure = (label: string) => rows.find(([first]) => first === label)?.[1];
  expect(figure("What is cast")).toBe(links);
  expect(figure("Landed cost")).toBeCloseTo(landed, 9);
  expect(figure("Quoted")).toBe(price);
  const net = price * (1 - Number(order.Discount ?? 0));
  expect(figure("Price at today's rates")).toBe(price);
  expect(figure("Margin")).toBeCloseTo((net - landed) / net, 12);
});

test("beside the choice to settle by final weight stands what a heavier piece brings and what it costs, per gram", async () => {
  await desk.sit(withRates);
  await fill(desk, { ...HUNDRED_GRAMS, "Price settled": "by final weight" });
  const caution = async () =>
    (await desk.pane.locator("#order-settled-caution").textContent())?.replaceAll("\u00a0", " ");
  expect(await caution()).toBe(
    // Of 1/0.98 g cast at 25 and 1.50 a gram: 27.0408…
    "Weigh on a scale that is legal for trade where you sell. " +
      "A heavier piece brings USD 25.00 per gram and costs USD 27.04: you lose USD 2.04 on each gram.",
  );
  await fill(desk, { "Price by": "premium", "Markup, margin or premium": "10" });
  expect(await caution()).toContain("brings USD 35.00 per gram and costs USD 27.04: you keep USD 7.96 on each gram.");
  await fill(desk, { "Links with stones": "all links" });
  expect(await desk.pane.locator(".watch").textContent()).toContain(
    "Weigh the stones and type the carat of one stone.",
  );
  await fill(desk, { "Carat of one stone": "0.02" });
  expect(await desk.pane.locator(".watch").textContent()).not.toContain("Weigh the stones");
  await fill(desk, { "Price settled": "fixed" });
  expect(await caution()).toBe("");
});

test("the same label is the same figure in card, footer, budget, job and margins (hand arithmetic)", async () => {
  await desk.sit(withRates);
  await setRate(desk, "LossBasis", "grams");
  await setRate(desk, "Loss", "2");
  await fill(desk, { ...HUNDRED_GRAMS, Discount: "0.1", Quantity: "2" });
  const plain = async (selector: string) =>
    ((await desk.pane.locator(selector).first().textContent()) ?? "").replaceAll("\u00a0", " ");
  // 102 x 26.5 + 50 = 2,753; x 1.3 = 3,578.90, up to 3,579; less 10 % 3,221.10, of which 468.10 are left: 14.5 %.
  expect(await plain(".headline")).toBe("USD 3,579.00 each before the discount");
  expect(await desk.pane.locator(".glance").getAttribute("data-text")).toMatch(
    /^Price USD.3,579\.00 each before the discount, margin 14\.5% after it$/,
  );
  // 32.211 a gram less 25.
  expect(await plain('dt:text-is("Premium") + dd')).toBe("USD 7.21 a gram after the discount");
  // 2 x 2,753 go out, 85.5 % of 6,442.20: 90 %, 5,797.98, up to 5,798.
  expect(await plain('dt:text-is("Deposit") + dd')).toBe(
    "USD 5,798.00 raised from 50% to 90%, to cover the USD 5,506.00 that you pay out first",
  );
  await press(desk, "Make the quote");
  await desk.pane.getByText("are in the workbook.").waitFor();
  const rows = await desk.page.evaluate(() =>
    window.workbookPage.read("Job 1001", "A1:G160").map((row) => row.map(({ value }) => value)),
  );
  const figure = (label: string) => rows.find(([first]) => first === label)?.[1];
  expect(figure("Premium over the metal rate")).toBeCloseTo(7.211, 9);
  expect(figure("Cash out before it is sold")).toBe(5506);
  expect(figure("What the deposit covers")).toBe(5798);
  await view(desk, "Decide");
  const open = async (title: string, label: string) => {
    await desk.pane.locator("details.part > summary", { hasText: title }).click();
    await desk.pane.getByLabel(label, { exact: true }).waitFor();
  };
  await open("Budget for a start", "Models");
  await press(desk, "Fill from the order");
  await expect
    .poll(async () => (await plain("[role=tabpanel]:not([hidden])")).replaceAll("\u00a0", " "))
    .toContain("USD 5,506.00 goes out; deposits bring USD 5,798.00.");
  // The margin of a markup of 30 % is shown as 23.1 %, and counts as 3/13: the price that it came from.
  await open("What it must bring", "Wanted margin");
  await expect
    .poll(async () => (await plain("[role=tabpanel]:not([hidden])")).replaceAll("\u00a0", " "))
    .toContain("USD 3,578.90");
});
