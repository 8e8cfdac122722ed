import { expect, test } from "vitest";
import { RATE_ROWS, type RateKey } from "../../../../src/rates/raterows";
import { figureWritings, OPTIONAL_KEYS, wordsOf, wordWritings } from "../../../ratewritings";
import { openCatalogue, ownSheet, readDesigns, unfold, valuesOf } from "../../../workbook/catalogue";
import { fill, HUNDRED_GRAMS, press, rateCell, sheetNames, view, withRates } from "../../../workbook/desk";
import { settled } from "../../../workbook/person.mjs";
import { deskForEach } from "../../../workbook/workshop";

const desk = deskForEach(withRates);

type Written = Readonly<Partial<Record<RateKey, string | number>>>;

/** White, six stones of 7 on a chain of 100 g, one piece: what every rate has something to do with. */
const ORDER = {
  ...HUNDRED_GRAMS,
  Colour: "white",
  "Links with stones": "a number of links",
  "How many links": "6",
  "Price of one stone": "7",
  Shipping: "20",
};
const DESIGNS = [
  [
    "Design",
    "Mark",
    "Colour",
    "Length (in)",
    "Links per in",
    "Weight of one link",
    "How many links",
    "Price of one stone",
  ],
  ["Plain curb", 1000, "white", 12.5, 4, 2, 6, 7],
];
/** 25.00 a gram of fine gold (desk.ts). */
const USUAL: Written = {
  spot: 777.58692,
  spotAge: 8000,
  castingFee: 1.5,
  castingMinimum: 0,
  loss: 2,
  lossBasis: "grams",
  costBasis: "finished",
  labourFlat: 50,
  labourPerLink: 0,
  labourPerGram: 0,
  labourMinimum: 0,
  settingFee: 1,
  breakage: 0,
  plating: 40,
  overhead: 0,
  surcharge: 3.25,
  priceBy: "markup",
  markup: 0.3,
  margin: 0.35,
  premium: 7.5,
  leastMargin: 0.1,
  priceStep: 1,
  tax: 0.08,
  taxIs: "on top",
  shippingTaxed: "no",
  deposit: 0.5,
  taxDue: "at delivery",
  tolerance: 0.05,
  ownGoldShare: 0.95,
};

interface Case {
  readonly what: string;
  readonly rates: Written;
  /** By hand: landed cost, price of one piece, what the customer pays; undefined where agreement is enough. */
  readonly hand?: { readonly landed: number; readonly price: number; readonly total: number };
}

const CASES: readonly Case[] = [
  {
    what: "tax in the price",
    rates: { taxIs: "in the price", taxDue: "with the deposit" },
    // 102 x 26.5 + 50 + 6 x 8 + 40 = 2,841; x 1.3 x 1.08 = 3,988.764, up to 3,989; with 20 of shipping 4,009.
    hand: { landed: 2841, price: 3989, total: 4009 },
  },
  {
    what: "quick, shipping taxed",
    rates: { costBasis: "quick", shippingTaxed: "yes" },
    // 100 x 26.5 + 2 x 25 + 50 + 48 + 40 = 2,838; x 1.3 = 3,689.40, up to 3,690; (3,690 + 20) x 1.08 = 4,006.80.
    hand: { landed: 2838, price: 3690, total: 4006.8 },
  },
  {
    what: "a share of the cast weight, minimums, overhead, a margin in steps of 5",
    rates: {
      lossBasis: "cast",
      loss: 0.02,
      priceBy: "margin",
      castingMinimum: 600,
      labourPerLink: 0.2,
      labourPerGram: 0.1,
      labourMinimum: 90,
      breakage: 0.05,
      settingFee: 1.25,
      overhead: 0.06,
      priceStep: 5,
    },
  },
  {
    what: "a share of the finished weight, a premium, no step, tax in the price and on shipping",
    rates: {
      lossBasis: "finished",
      loss: 0.05,
      priceBy: "premium",
      priceStep: 0,
      taxIs: "in the price",
      shippingTaxed: "yes",
    },
    // 105 x 26.5 + 50 + 48 + 40 = 2,920.50; (100 x 32.5 + 48 + 40) x 1.08 = 3,605.04; with shipping 3,625.04.
    hand: { landed: 2920.5, price: 3605.04, total: 3625.04 },
  },
  {
    what: "nothing where nothing is needed",
    rates: Object.fromEntries(OPTIONAL_KEYS.map((key) => [key, ""])),
    // 102 x 26.5 + 6 x 7 + 40 = 2,785; x 1.3 = 3,620.50; with shipping 3,640.50.
    hand: { landed: 2785, price: 3620.5, total: 3640.5 },
  },
];

/** Every cell in another writing, each time the next one. */
function otherwise(rates: Written, turn: number): Written {
  const pairs = Object.entries(rates) as [RateKey, string | number][];
  return Object.fromEntries(
    pairs.map(([key, value], at) => {
      if (value === "") return [key, " "];
      const writings = wordsOf(key).length > 0 ? wordWritings(String(value)) : inDigits(key, value);
      return [key, writings[(at + turn) % writings.length] ?? value];
    }),
  );
}

/** Two grams are no share. */
function inDigits(key: RateKey, value: string | number): readonly string[] {
  const writings = figureWritings(key, String(value));
  return key === "loss" && Number(value) >= 1 ? writings.filter((each) => !each.includes("%")) : writings;
}

let places: ReadonlyMap<string, readonly [sheet: string, cell: string]> = new Map();

async function write(rates: Written): Promise<void> {
  const cells = Object.entries(rates).map(([key, value]) => [...(places.get(key) ?? ["", ""]), value] as const);
  await desk.pane.evaluate(async (all) => {
    await Excel.run(async (context) => {
      for (const [sheet, address, value] of all) {
        const cell = context.workbook.worksheets.getItem(sheet).getRange(address);
        // A text stays the text it is: "5 %" in a cell of texts is no 0.05.
        cell.values = [[typeof value === "string" && value !== "" ? `'${value}` : value]];
      }
      await context.sync();
    });
  }, cells);
  await settled(desk.page);
}

const JOB_ROWS = [
  "Landed cost",
  "Casting",
  "Labour",
  "Asked, before tax and step",
  "Price at today's rates",
  "Quoted",
  "Quoted, less discount and tax",
  "Margin",
  "Floor",
  "Tax",
  "Total",
  "To pay, as quoted",
  "Net, without tax and shipping",
];

/** What stands beside the labels of the newest job sheet, and all that its formulas give. */
async function jobOf(job: string) {
  const cells = await desk.page.evaluate(
    (sheet) => window.workbookPage.read(sheet, "A1:G170").map((row) => row.map(({ value }) => value)),
    job,
  );
  const beside = Object.fromEntries(JOB_ROWS.map((label) => [label, cells.find(([first]) => first === label)?.[1]]));
  return { beside, cells };
}

const added = async () => (await valuesOf(desk, "D", "J2:P2"))[0] ?? [];
const listed = async () => (await valuesOf(desk, "Price list", "A5:H5"))[0] ?? [];
const budget = () => valuesOf(desk, "Budget", "A1:E90");
const errors = (cells: readonly (readonly unknown[])[]) =>
  cells.flat().filter((each) => /^#[A-Z/0]+[!?A]/.test(String(each)));

test("pane, job sheet, added columns, price list and budget agree, however the words and figures of Rates are written", {
  timeout: 180_000,
}, async () => {
  const keys = Object.keys(USUAL) as RateKey[];
  places = new Map(
    await Promise.all(
      keys.map(async (key) => [key, await rateCell(desk, key.charAt(0).toUpperCase() + key.slice(1))] as const),
    ),
  );
  await write(USUAL);
  await fill(desk, ORDER);
  await ownSheet(desk, "D", "A1", DESIGNS);
  await openCatalogue(desk);
  await readDesigns(desk);
  await unfold(desk, "Price list in the workbook");
  await press(desk, "Make the price list");
  await desk.pane.getByText("Price list is in the workbook.").first().waitFor();
  await press(desk, "Add columns beside the designs");
  await desk.pane.getByText("Columns for 1 row").first().waitFor();
  await view(desk, "Decide");
  await desk.pane.locator("details.part > summary", { hasText: "Budget for a start" }).click();
  await desk.pane.getByLabel("Models", { exact: true }).waitFor();
  await press(desk, "Fill from the order");
  await press(desk, "Put it on a sheet");
  await desk.pane.getByText("Budget is in the workbook").first().waitFor();
  await view(desk, "Quote");

  for (const [turn, { what, rates, hand }] of CASES.entries()) {
    const plain = { ...USUAL, ...rates };
    await write(otherwise(plain, turn));
    // Another order gets a number of its own.
    await fill(desk, { Customer: `Ada ${turn}` });
    await press(desk, "Make the quote");
    const job = `Job ${1001 + turn}`;
    await expect.poll(() => sheetNames(desk)).toContain(job);
    await settled(desk.page);
    const { beside, cells } = await jobOf(job);
    const [columns, list, plan] = [await added(), await listed(), await budget()];
    expect(errors([...cells, columns, list, ...plan, ...(await valuesOf(desk, "Rates", "A1:D60"))]), what).toEqual([]);
    // 102 g at 25.00, whatever else Rates say.
    expect(plan.find(([label]) => label === "Metal")?.[1], what).toBe(2550);

    // The quote is what the pane made; all else are formulas.
    expect(beside["Price at today's rates"], what).toBe(beside.Quoted);
    expect(beside.Total, what).toBe(beside["To pay, as quoted"]);
    expect([columns[5], list[6]], what).toEqual([beside.Quoted, beside.Quoted]);
    expect([columns[0], columns[1], columns[2], columns[4], columns[6]], what).toEqual([
      list[1],
      list[2],
      list[3],
      list[4],
      list[7],
    ]);
    expect(beside["Landed cost"], what).toBeCloseTo(Number(columns[4]), 9);
    expect(beside.Margin, what).toBeCloseTo(Number(columns[6]), 12);
    if (hand) {
      expect([beside.Quoted, beside.Total], what).toEqual([hand.price, hand.total]);
      expect(columns[4], what).toBe(hand.landed);
    }

    // The same figures and words as Rates are laid out: nothing moves by a digit.
    await write(plain);
    expect((await jobOf(job)).cells, what).toEqual(cells);
    expect([await added(), await listed(), await budget()], what).toEqual([columns, list, plan]);
  }
});

test("what Rates say that cannot be read is told at the cells that read it, with its sentence", async () => {
  places = new Map([["taxIs", await rateCell(desk, "TaxIs")]]);
  await ownSheet(
    desk,
    "D",
    "A1",
    DESIGNS.map((row) => row.slice(0, 6).with(2, row === DESIGNS[0] ? "Colour" : "yellow")),
  );
  await fill(desk, HUNDRED_GRAMS);
  await openCatalogue(desk);
  await readDesigns(desk);
  await unfold(desk, "Price list in the workbook");
  await press(desk, "Add columns beside the designs");
  await desk.pane.getByText("Columns for 1 row").first().waitFor();
  await view(desk, "Quote");
  await press(desk, "Make the quote");
  await desk.pane.getByText("are in the workbook.").waitFor();
  await write({ taxIs: "inside" });
  const faults = (sheet: string, address: string) =>
    desk.page.evaluate(
      ([name = "", cells = ""]) =>
        window.workbookPage
          .read(name, cells)
          .flat()
          .flatMap(({ error }) => (error ? [[error.code, error.sentence]] : [])),
      [sheet, address],
    );
  const right = 'found "inside"; give one of "on top", "in the price"';
  for (const [sheet, address] of [
    ["Job 1001", "A1:G170"],
    ["D", "H2:N2"],
  ] as const) {
    const told = await faults(sheet, address);
    expect(told.length, sheet).toBeGreaterThan(0);
    expect(new Set(told.map(([value]) => value)), sheet).toEqual(new Set(["#VALUE!"]));
    expect(
      told.some(([, sentence]) => String(sentence).includes(right)),
      sheet,
    ).toBe(true);
  }
  expect(RATE_ROWS.taxIs.label).toBe("Tax is");
  await desk.pane.getByText(`Tax is: ${right}`).first().waitFor();
});
