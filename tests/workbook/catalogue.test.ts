import { beforeEach, describe, expect, test } from "vitest";
import { atRoundRates, dump, openCatalogue, ownSheet, readDesigns, said, unfold, value, valuesOf } from "./catalogue";
import { cellAt, press, setRate, sheetNames, texts } from "./desk";
import { settled, typeIn } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach(atRoundRates);

const syncs = () => desk.page.evaluate(() => window.workbookPage.syncCount);
const takeOut = (what: string) => press(desk, `Take it out again: ${what}`);
const COLUMNS = "Columns beside the designs, on My designs";
const KEEP = "Take the columns out, keep what is mine";
const SHEETS = ["Sheet1", "Rates", "Quote template"];

/** A workshop's own words, order and units; 63.5 cm are 25 in, 1 dwt is 1.55517384 g. */
const OWN = [
  ["Wieght of one link (dwt)", "Lenght cm", "Karat", "Remark", "Model", "Links pr inch", "Colour"],
  [1, 63.5, 1000, "for the window", "Own curb", 4, "yellow"],
  ["", "", "", "", "", "", ""],
  [1, 63.5, "25K", "", "Odd", 4, "yellow"],
  [2, 31.75, 500, "", "Half", 4, "rose"],
];
/*
 * Own curb: 100 links of 1 dwt, 5 ozt, 155.517384 g. Metal 5 x 777.58692 = 3,887.9346, lost 2 g x 25 = 50, casting
 * 155.517384 x 1.50 = 233.276076, labour 50: 4,221.210676. x 1.3 = 5,487.5738788, up to 5,488.
 * Half: 50 links of 2 dwt weigh the same, of half the gold: 1,943.9673 + 25 + 233.276076 + 50 = 2,252.243376, x 1.3 = 2,927.9163888.
 */
const OWN_CURB = { links: 100, finished: 155.517384, landed: 4221.210676, price: 5488 };
const HALF = { links: 50, finished: 155.517384, landed: 2252.243376, price: 2928 };

describe("a blank catalogue", () => {
  test("is a table with two invented designs, lists of words and its prices beside it; taken out, nothing of it is left", async () => {
    await openCatalogue(desk);
    await press(desk, "Begin a blank catalogue");
    expect(await sheetNames(desk)).toEqual([...SHEETS, "Catalogue"]);
    expect((await texts(desk, "Catalogue", "A4:P4"))[0]?.filter((text) => text !== "")).toHaveLength(15);
    // Figures of one's own: 12.5 in at 4 an inch are 50 links of 2 g, no clasp: as in quote.test.ts, 3,575.
    await desk.pane.evaluate(async () => {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Catalogue");
        const head = sheet.getRange("D4");
        head.load("values");
        await context.sync();
        const inch = String(head.values[0]?.[0]).includes("in");
        const row = inch ? [12.5, 4] : [31.75, 4 / 2.54];
        sheet.getRange("A5:J5").values = [["Plain curb", 1000, "yellow", ...row, 2, "none", "", "", ""]];
        await context.sync();
      });
    });
    await settled(desk.page);
    const [priced = []] = await valuesOf(desk, "Catalogue", "L5:P5");
    expect(priced.slice(0, 4)).toEqual([50, 100, 2750, 3575]);
    // Changed by the person, it is no longer ours to take out.
    await takeOut("Blank catalogue, on Catalogue");
    await desk.pane.getByText("The sheet Catalogue was changed since, so nothing was taken out").waitFor();
    expect(await sheetNames(desk)).toContain("Catalogue");

    await desk.sit(atRoundRates);
    // Of this very workbook: Rates laid out in another minute say another time.
    const before = await dump(desk);
    await openCatalogue(desk);
    await press(desk, "Begin a blank catalogue");
    await takeOut("Blank catalogue, on Catalogue");
    await desk.pane.getByText("taken out again. The workbook is as it was before.").first().waitFor();
    expect(await dump(desk)).toEqual(before);
  });
});

describe("a table with other headers, units and order", () => {
  beforeEach(async () => {
    await ownSheet(desk, "My designs", "B3", OWN, "Mine");
    await openCatalogue(desk);
    await readDesigns(desk, "Mine");
  });

  test("is matched as far as it can be, and waits for the person", async () => {
    const chosen = await desk.pane
      .locator(".columnlist > li")
      .evaluateAll((items) => items.map((item) => [...item.querySelectorAll("select")].map((select) => select.value)));
    expect(chosen).toEqual([
      ["linkWeight", "dwt"],
      ["length", "cm"],
      ["mark", ""],
      ["", ""],
      ["design", ""],
      ["linksPer", "in"],
      ["colour", ""],
    ]);
    expect(await desk.pane.locator(".columnlist li.likely").count()).toBe(3);
    expect(await desk.pane.locator(".tasks").isVisible()).toBe(false);
    // A column taken for another is told before it can be used.
    await desk.pane.getByLabel("Colour is").selectOption("mark");
    expect(await said(desk, ".columns > .fault")).toBe(
      "Still missing for a price: Colour. Found Mark in D3 and in H3; keep one of them.",
    );
    await press(desk, "Use these columns");
    expect(await desk.pane.locator(".tasks").isVisible()).toBe(false);
    await desk.pane.getByLabel("Colour is").selectOption("colour");
    await press(desk, "Use these columns");
    expect(await desk.pane.locator(".tasks").isVisible()).toBe(true);
  });

  test("gets a spilled price list over a copy of it under our words (hand arithmetic); taken out, the workbook is as it was", async () => {
    const before = await dump(desk);
    await press(desk, "Use these columns");
    await unfold(desk, "Price list in the workbook");
    const asked = await syncs();
    await press(desk, "Make the price list");
    expect((await syncs()) - asked).toBeLessThanOrEqual(13);
    expect((await texts(desk, "Price list", "A4:H4"))[0]).toEqual([
      "Design",
      "Links",
      "Finished weight",
      "Cast weight",
      "Landed cost",
      "Landed cost per gram",
      "Price",
      "Margin",
    ]);
    const rows = await valuesOf(desk, "Price list", "A5:G8");
    expect([rows[0]?.[0], rows[0]?.[1], rows[0]?.[6]]).toEqual(["Own curb", OWN_CURB.links, OWN_CURB.price]);
    expect(rows[0]?.[2]).toBeCloseTo(OWN_CURB.finished, 9);
    expect(rows[0]?.[4]).toBeCloseTo(OWN_CURB.landed, 9);
    expect(rows[1]).toEqual(["", "", "", "", "", "", ""]);
    expect(rows[2]?.slice(0, 2)).toEqual(["Odd", "#VALUE!"]);
    expect([rows[3]?.[1], rows[3]?.[6]]).toEqual([HALF.links, HALF.price]);
    // It follows the person's cells.
    await typeIn(desk.page, "My designs", "F4", "Renamed");
    expect(await value(desk, "Price list", "A5")).toBe("Renamed");
    await typeIn(desk.page, "My designs", "F4", "Own curb");
    await takeOut("Price list, on Price list");
    await desk.pane.getByText("taken out again. The workbook is as it was before.").first().waitFor();
    expect(await dump(desk)).toEqual(before);
  });

  test("gets columns of formulas beside it that give the same (hand arithmetic); taken out, also by a pane opened anew, the workbook is as it was", async () => {
    const before = await dump(desk);
    await press(desk, "Use these columns");
    await unfold(desk, "Price list in the workbook");
    await press(desk, "Add columns beside the designs");
    await desk.pane.getByText("1 of 3 rows shows an error: row 6.").first().waitFor();
    expect((await texts(desk, "My designs", "J3:P3"))[0]).toEqual([
      "Links",
      "Finished weight (g)",
      "Cast weight (g)",
      "Fine gold (g)",
      "Landed cost",
      "Price",
      "Margin",
    ]);
    const rows = await valuesOf(desk, "My designs", "J4:P7");
    for (const [row, expected] of [
      [rows[0], OWN_CURB],
      [rows[3], HALF],
    ] as const) {
      expect([row?.[0], row?.[5]]).toEqual([expected.links, expected.price]);
      expect(row?.[1]).toBeCloseTo(expected.finished, 9);
      expect(row?.[4]).toBeCloseTo(expected.landed, 9);
    }
    expect(rows[1]?.join("")).toBe("");
    // What cannot be priced says so where it stands, and follows once it is put right.
    const odd = await cellAt(desk, "My designs", "O6");
    expect([odd?.value, odd?.error?.sentence]).toEqual(["#VALUE!", expect.stringContaining('found "25K"')]);
    await typeIn(desk.page, "My designs", "D6", "1000");
    expect(await value(desk, "My designs", "O6")).toBe(OWN_CURB.price);
    await typeIn(desk.page, "My designs", "D6", "25K");
    // At twice the spot: 7,775.8692 + 100 + 233.276076 + 50 = 8,159.145276, x 1.3 = 10,606.8888588.
    await setRate(desk, "Spot", "1555.17384");
    expect(await value(desk, "My designs", "O4")).toBe(10607);
    await setRate(desk, "Spot", "777.58692");

    await desk.pane.evaluate(() => location.reload());
    await desk.page.evaluate(() => window.workbookPage.settled());
    await desk.pane.getByLabel("Customer", { exact: true }).waitFor();
    await openCatalogue(desk);
    await takeOut(COLUMNS);
    await desk.pane.getByText("taken out again. Your own cells are as they were.").first().waitFor();
    expect(await dump(desk)).toEqual(before);
  });

  test("keeps what the person has put beside it: columns go right of that; what is theirs by now is asked about and stays", async () => {
    await typeIn(desk.page, "My designs", "J5", "mine");
    await press(desk, "Use these columns");
    await unfold(desk, "Price list in the workbook");
    await press(desk, "Add columns beside the designs");
    expect(await value(desk, "My designs", "J5")).toBe("mine");
    expect(await value(desk, "My designs", "L3")).toBe("Links");
    // A price and a header of one's own, a note in a row without formulas, and formulas here and elsewhere that read the columns.
    await typeIn(desk.page, "My designs", "Q4", "4999");
    await typeIn(desk.page, "My designs", "Q3", "Ask");
    await typeIn(desk.page, "My designs", "L5", "sold");
    await typeIn(desk.page, "My designs", "T4", "=SUM(L4:P4)");
    await typeIn(desk.page, "Sheet1", "A1", "='My designs'!P4*2");
    const before = await dump(desk);
    await takeOut(COLUMNS);
    const question = desk.pane.locator(".added .banner");
    await question.waitFor();
    expect(await question.locator("li").allTextContents()).toEqual([
      "Changed since: L5 and Q3:Q4. That stays as it is.",
      "Formulas or names that read the columns, and would find them empty: Sheet1 A1 and T4.",
    ]);
    expect(await dump(desk)).toEqual(before);
    await press(desk, "Leave all as it is");
    expect(await question.count()).toBe(0);
    // Agreed to what was found, and to no more than that.
    await takeOut(COLUMNS);
    await typeIn(desk.page, "My designs", "O7", "2800");
    await press(desk, KEEP);
    await question.getByText("L5, O7, and Q3:Q4").waitFor();
    expect(await value(desk, "My designs", "L4")).toBe(100);
    await press(desk, KEEP);
    await desk.pane.getByText("taken out. What is yours stayed.").first().waitFor();
    const left = await valuesOf(desk, "My designs", "J3:S8");
    expect(left.flat().filter((cell) => cell !== "")).toEqual(["Ask", 4999, "mine", "sold", 2800]);
    expect(await value(desk, "My designs", "Q4")).toBe(4999);
    expect((await cellAt(desk, "My designs", "T4"))?.formula).toBe("=SUM(L4:P4)");
    expect((await desk.page.evaluate(() => window.workbookPage.names())).map(({ name }) => name)).not.toContainEqual(
      expect.stringMatching(/^CurbwrightAdded/),
    );
  });

  test("after rows came, went and were sorted, and columns moved, the added ones come out and the rest stays; not out of a table", async () => {
    const resize = (address: string) =>
      desk.pane.evaluate(async (to) => {
        await Excel.run(async (context) => {
          context.workbook.tables.getItem("Mine").resize(to);
          await context.sync();
        });
      }, address);
    await press(desk, "Use these columns");
    await unfold(desk, "Price list in the workbook");
    await press(desk, "Add columns beside the designs");
    await desk.pane.getByText("Columns for 2 rows were added on My designs.").first().waitFor();
    await resize("B3:P7");
    await takeOut(COLUMNS);
    await desk.pane
      .getByText("The added columns are part of the table Mine by now, so nothing was taken out: they are yours.")
      .waitFor();
    expect(await value(desk, "My designs", "J4")).toBe(100);
    await resize("B3:H7");
    // As Excel's menus do: a row of the table deleted and one added, a sheet row and a column inserted, a row hidden by a filter.
    await desk.pane.evaluate(async () => {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("My designs");
        const { rows } = context.workbook.tables.getItem("Mine");
        rows.getItemAt(1).delete();
        rows.add(undefined, [[3, 63.5, 1000, "", "Heavy", 4, "yellow"]]);
        sheet.getRange("5:5").insert("Down");
        sheet.getRange("A:A").insert("Right");
        await context.sync();
        // Sorted by hand: the table's first and last row change places.
        const [first, last] = [sheet.getRange("C4:I4"), sheet.getRange("C8:I8")];
        first.load("values");
        last.load("values");
        await context.sync();
        const [one, other] = [first.values, last.values];
        first.values = other;
        last.values = one;
        sheet.getRange("6:6").rowHidden = true;
        // Filled down for the row that came.
        sheet.getRange("K9:Q9").copyFrom("K8:Q8");
        await context.sync();
      });
    });
    await settled(desk.page);
    expect(await value(desk, "My designs", "K3")).toBe("Links");
    expect(await value(desk, "My designs", "G4")).toBe("Heavy");
    const theirs = await valuesOf(desk, "My designs", "A1:I12");
    await takeOut(COLUMNS);
    await desk.pane.getByText("taken out again. Your own cells are as they were.").first().waitFor();
    expect(await valuesOf(desk, "My designs", "A1:I12")).toEqual(theirs);
    expect((await valuesOf(desk, "My designs", "J1:S12")).flat().join("")).toBe("");
    const looks = await desk.pane.evaluate(() =>
      Excel.run(async (context) => {
        const range = context.workbook.worksheets.getItem("My designs").getRange("J1:S12");
        range.load("numberFormat");
        await context.sync();
        return range.numberFormat.flat();
      }),
    );
    expect(new Set(looks)).toEqual(new Set(["General"]));
    expect(await desk.pane.getByText("Put into this workbook").isVisible()).toBe(false);

    await press(desk, "Add columns beside the designs");
    await desk.pane.getByText("Columns for 3 rows were added on My designs.").first().waitFor();
    await desk.pane.evaluate(async () => {
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("My designs").getRange("K:Q").delete("Left");
        await context.sync();
      });
    });
    await takeOut(COLUMNS);
    await desk.pane.getByText("Those columns were deleted already: there is nothing left to take out.").waitFor();
    expect(await desk.pane.getByText("Put into this workbook").isVisible()).toBe(false);
  });
});

/** Fields of every kind, in units of their own: patterns, stones and alloys of one's own too. */
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
    "Pattern",
    "Weight of one white link (dwt)",
    "Composition",
    "Name of the colour",
    "How many links",
    "Price of one stone",
  ],
  [
    "White",
    "14K",
    "white",
    "",
    3,
    45.5,
    4.25,
    0.83,
    "cast box clasp",
    12,
    3.4,
    20,
    "",
    "",
    "",
    12.5,
    "",
    "",
    "",
    "",
    12,
    4.5,
  ],
  [
    "Plain",
    750,
    "yellow",
    "not plated",
    "",
    61,
    3,
    1.27,
    "bought lobster clasp",
    15,
    2.1,
    145,
    0.6,
    48,
    15,
    "",
    "",
    "",
    "",
    "",
    "",
    "",
  ],
  ["Light", "9K", "rose", "plated", 1, 19.05, 6, 0.21, "none", "", "", "", "", "", "", "", "", "", "", "", "", ""],
  ["Two", "18K", "yellow", "", 2, 45, 3, 1.1, "none", "", "", "", "", "", "", "", "YYW", 1.2, "", "", 6, 9],
  [
    "Own",
    585,
    "own",
    "",
    "",
    50,
    3,
    1.1,
    "none",
    "",
    "",
    "",
    "",
    "",
    "",
    "",
    "",
    "",
    "Au 585 Ag 200 Cu 215",
    "dawn",
    "",
    "",
  ],
];

test("columns of formulas give what the price list gives, whatever the rates: by markup, margin and premium, both bases, tax in the price", {
  timeout: 120_000,
}, async () => {
  await setRate(desk, "Plating", "40");
  await ownSheet(desk, "Rich", "A1", RICH);
  await openCatalogue(desk);
  await readDesigns(desk);
  await unfold(desk, "Price list in the workbook");
  await press(desk, "Add columns beside the designs");
  await desk.pane.locator(".cataloguebody > .ending, footer > .ending", { hasText: /\w/ }).waitFor();
  expect(await desk.pane.locator(".ending", { hasText: /\w/ }).allTextContents()).toEqual([
    "Columns for 5 rows were added on Rich.Show Rich",
  ]);
  await press(desk, "Make the price list");
  await desk.pane.getByText("Price list is in the workbook.").first().waitFor();
  const same = async () => {
    const columns = await valuesOf(desk, "Rich", "X2:AD6");
    const listed = await valuesOf(desk, "Price list", "A5:H9");
    for (const [row, [links, finished, cast, , landed, price, margin]] of columns.entries()) {
      const list = listed[row] ?? [];
      expect([links, finished, cast, landed, price, margin].map((each) => typeof each)).toEqual(
        Array(6).fill("number"),
      );
      expect([links, finished, cast, landed, price, margin]).toEqual([...list.slice(1, 5), list[6], list[7]]);
    }
    return columns.map((row) => row[5]).join();
  };
  const seen = new Set([await same()]);
  const steps: [string, string][] = [
    ["Loss", "0.06"],
    ["LossBasis", "cast"],
    ["CostBasis", "finished"],
    ["CastingMinimum", "310"],
    ["Overhead", "0.12"],
    ["LabourPerLink", "0.35"],
    ["Margin", "0.42"],
    ["PriceBy", "margin"],
    ["PriceStep", "5"],
    ["Tax", "0.08"],
    ["TaxIs", "in the price"],
    ["Premium", "17.5"],
    ["PriceBy", "premium"],
    ["Spot", "2651.37"],
  ];
  for (const [name, text] of steps) {
    await setRate(desk, name, text);
    seen.add(await same());
  }
  // Some steps change no price by themselves, such as a margin not priced by.
  expect(seen.size).toBeGreaterThan(8);
});

test("a list over a table grows with it, and can still be taken out; not with something of the person's on its sheet", async () => {
  const designs = [
    ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link"],
    ["Plain", 1000, "yellow", 12.5, 4, 2],
  ];
  await ownSheet(desk, "Own", "A1", designs, "Growing");
  await openCatalogue(desk);
  await readDesigns(desk, "Growing");
  await unfold(desk, "Price list in the workbook");
  await press(desk, "Make the price list");
  await desk.pane.getByText("Price list is in the workbook.").first().waitFor();
  await desk.pane.evaluate(async () => {
    await Excel.run(async (context) => {
      context.workbook.tables.getItem("Growing").rows.add(undefined, [["Half", 500, "rose", 12.5, 4, 2]]);
      await context.sync();
    });
  });
  await settled(desk.page);
  // 100 g of half the gold: 1,250 + 25 + 150 + 50 = 1,475, x 1.3 = 1,917.5, up to 1,918.
  expect((await valuesOf(desk, "Price list", "A5:G6")).map((row) => [row[0], row[6]])).toEqual([
    ["Plain", 3575],
    ["Half", 1918],
  ]);
  await typeIn(desk.page, "Price list", "K9", "mine");
  await takeOut("Price list, on Price list");
  await desk.pane.getByText("The sheet Price list was changed since").waitFor();
  expect(await value(desk, "Price list", "K9")).toBe("mine");
  await desk.pane.evaluate(async () => {
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Price list").getRange("K9").clear();
      await context.sync();
    });
  });
  await takeOut("Price list, on Price list");
  await desk.pane.getByText("taken out again. The workbook is as it was before.").first().waitFor();
  expect(await sheetNames(desk)).toEqual([...SHEETS, "Own"]);
});

describe("what cannot be read", () => {
  test("is told: one cell selected, no rates' words", async () => {
    await openCatalogue(desk);
    await readDesigns(desk);
    await desk.pane.getByText("The selection holds no designs.").waitFor();
    await ownSheet(desk, "D", "A1", [
      ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link"],
      ["A", 750, "yellow", 10, 4, 1],
    ]);
    await readDesigns(desk);
    await desk.pane.evaluate(async () => {
      await Excel.run(async (context) => {
        const cell = context.workbook.names.getItem("Rate_CastingFee").getRange().getOffsetRange(0, -1);
        cell.values = [["Caster"]];
        await context.sync();
      });
    });
    await unfold(desk, "Price list in the workbook");
    await press(desk, "Make the price list");
    await desk.pane.getByText('these rows cannot be found by theirs: "Casting fee"').waitFor();
    expect(await sheetNames(desk)).toEqual([...SHEETS, "D"]);
  });
});
