import { beforeEach, describe, expect, test } from "vitest";
import {
  cellAt,
  fill,
  HUNDRED_GRAMS,
  menu,
  press,
  rateCell,
  refuseNaming,
  SPOT_FOR_25,
  setRate,
  sheetNames,
  texts,
  withRates,
} from "./desk";
import { settled, typeIn } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach();

const syncs = () => desk.page.evaluate(() => window.workbookPage.syncCount);
const plain = (text: string | null) => (text ?? "").replaceAll("\u00a0", " ");
const price = async () => plain(await desk.pane.locator(".price").first().textContent());
const spotLine = async () => plain(await desk.pane.locator(".spotline").textContent());
const SHEETS = ["Sheet1", "Rates", "Quote template"];
const QUOTED = [...SHEETS, "Quotes", "Quote 1001", "Job 1001", "Tickets 1001"];

/** Names with what they mean, in the order of the alphabet. */
const nameFormulas = () =>
  desk.page.evaluate(() => window.workbookPage.names().map(({ name, formula }) => `${name} ${formula}`));

/** Deletes the row of a rate from the sheet, as a person does from the row's menu. */
async function deleteRow(rate: string): Promise<void> {
  const [sheet, cell] = await rateCell(desk, rate);
  await desk.pane.evaluate(
    async ([name = "", address = ""]) => {
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem(name).getRange(address).getEntireRow().delete("Up");
        await context.sync();
      });
    },
    [sheet, cell],
  );
  await settled(desk.page);
}

/** Whether Excel tells of changes at all: off, what is typed reaches the sheets but not the pane. */
async function tell(enableEvents: boolean): Promise<void> {
  await desk.pane.evaluate(async (on) => {
    await Excel.run(async (context) => {
      context.runtime.enableEvents = on;
      await context.sync();
    });
  }, enableEvents);
}

describe("a spot typed on Rates", () => {
  const asked = () => desk.pane.locator("header .banner", { hasText: "were written for a spot of" });
  const held = async (name: string) => {
    const [sheet, cell] = await rateCell(desk, name);
    return (await cellAt(desk, sheet, cell))?.value ?? "";
  };

  beforeEach(async () => {
    await desk.sit((workshop) => withRates(workshop, "clock=2026-07-06T09:00:00"));
    await setRate(desk, "LossBasis", "grams");
    await setRate(desk, "Loss", "2");
    await setRate(desk, "SpotSource", "noon fixing");
    await fill(desk, HUNDRED_GRAMS);
  });

  test("has no time until one is given: neither in the head, nor with a quote, nor on its job", async () => {
    expect(await spotLine()).toMatch(/^Spot USD 777\.58692 an ounce, Jul 6, 2026, 9:00 AM, noon fixing/);
    const written = await held("SpotTime");
    await setRate(desk, "Spot", "800");
    await asked().waitFor();
    expect(plain(await asked().textContent())).toContain("were written for a spot of USD 777.58692.");
    expect(await spotLine()).toMatch(/^Spot USD 800\.00 an ounce, time not known Show Rates$/);
    expect(plain(await desk.pane.locator("header .spotage").textContent())).toContain("its age is not known");
    // Nothing is written on Rates unless a person presses.
    expect([await held("SpotTime"), await held("SpotSource")]).toEqual([written, "noon fixing"]);
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();
    const { quoted } = await orderText();
    expect([quoted.tax, quoted.spotTime, quoted.spotSource]).toEqual(["0", undefined, undefined]);
    expect((await texts(desk, "Job 1001", "A1:A40")).flat()).not.toContain("Spot was read");
  });

  test("has the time of the press, with the source kept or cleared as the person chooses", async () => {
    await setRate(desk, "Spot", "800");
    await asked().waitFor();
    await press(desk, "I read it now, from another source");
    await asked().waitFor({ state: "detached" });
    expect(await held("SpotSource")).toBe("");
    expect(await spotLine()).toContain("no source noted");
    await setRate(desk, "SpotSource", "noon fixing");
    await setRate(desk, "Spot", "810");
    await asked().waitFor();
    await press(desk, "I read it now, from noon fixing");
    await asked().waitFor({ state: "detached" });
    expect(await spotLine()).toMatch(/^Spot USD 810\.00 an ounce, Jul 6, 2026, .*noon fixing/);
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();
    expect((await orderText()).quoted).toMatchObject({ spotSource: "noon fixing" });
    expect((await texts(desk, "Job 1001", "A1:D40")).find(([label]) => label === "Spot was read")?.[3]).toBe(
      "noon fixing",
    );
  });

  test("has the time that is typed after it, and the one that a person says is right", async () => {
    await setRate(desk, "Spot", "800");
    await asked().waitFor();
    await setRate(desk, "SpotTime", "2026-07-06 08:30");
    await asked().waitFor({ state: "detached" });
    expect(await spotLine()).toContain("8:30");
    await setRate(desk, "Spot", "805");
    await asked().waitFor();
    await press(desk, "The time on Rates is right");
    await asked().waitFor({ state: "detached" });
    expect(await spotLine()).toMatch(/^Spot USD 805\.00 an ounce, Jul 6, 2026, 8:30/);
  });

  async function orderText() {
    const cell = await cellAt(desk, "Quotes", "J5");
    return JSON.parse(String(cell?.value));
  }
});

describe("a spot that moves", () => {
  beforeEach(async () => {
    await desk.sit(withRates);
    await setRate(desk, "LossBasis", "grams");
    await setRate(desk, "Loss", "2");
    await fill(desk, HUNDRED_GRAMS);
  });

  test("by recalculation alone is followed by the pane, and a quote is made at what the cell then says", async () => {
    const [sheet, cell] = await rateCell(desk, "Spot");
    await typeIn(desk.page, sheet, cell, "=1000+RAND()*100");
    const shown = async () => {
      const spot = Number((await cellAt(desk, sheet, cell))?.value);
      // At most six decimals, as a spot is shown.
      return new Intl.NumberFormat("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 6 }).format(spot);
    };
    await expect.poll(spotLine).toContain(await shown());
    const before = await shown();
    await desk.pane.evaluate(async () => {
      await Excel.run(async (context) => {
        context.workbook.application.calculate("Full");
        await context.sync();
      });
    });
    await settled(desk.page);
    expect(await shown()).not.toBe(before);
    await expect.poll(spotLine).toContain(await shown());

    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();
    // Making it calculates the spot anew: the pane follows, and then nothing more is asked of Excel.
    await expect.poll(spotLine).toContain(await shown());
    await settled(desk.page);
    const after = await syncs();
    await settled(desk.page);
    await settled(desk.page);
    expect(await syncs()).toBe(after);
  });

  test("unseen by the pane makes no quote at the old price; the new one is told and quoted at the next press", async () => {
    // 2,753 landed x 1.30 = 3,578.90, up to 3,579, as in quote.test.ts.
    expect(await price()).toContain("3,579.00");
    await tell(false);
    await setRate(desk, "Spot", "1555.17384");
    await tell(true);
    expect(await price()).toContain("3,579.00");
    const before = await syncs();
    await press(desk, "Make the quote");
    // Twice the spot: (100 + 2) x 51.50 + 50 = 5,303; x 1.30 = 6,893.90, up to 6,894.
    const told = desk.pane.locator(".banner.failed");
    await told.waitFor();
    expect(plain(await told.textContent())).toBe(
      "The rates have changed since this price was worked out, so no quote was made. It now comes to USD 6,894.00. Press again to quote that.",
    );
    expect((await syncs()) - before).toBeLessThanOrEqual(4);
    expect(await sheetNames(desk)).toEqual(SHEETS);
    expect(await price()).toContain("6,894.00");
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();
    expect(await sheetNames(desk)).toEqual(QUOTED);
    expect((await texts(desk, "Quotes", "E5"))[0]?.[0]).toBe("6,894.00");
  });

  test("is quoted, where only the next number or the note of when it was read has changed since", async () => {
    await tell(false);
    await setRate(desk, "NextNumber", "2001");
    await setRate(desk, "SpotSource", "the noon fixing");
    await tell(true);
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 2001, Job 2001 and Tickets 2001 are in the workbook.").waitFor();
  });

  test("away with its whole sheet, unseen, makes no quote and shows the offer to lay Rates out", async () => {
    await tell(false);
    await menu(desk, "delete", "Rates");
    await tell(true);
    await press(desk, "Make the quote");
    await desk.pane.getByText("Look at the rates first.").waitFor();
    await desk.pane.getByRole("button", { name: "Lay out the Rates sheet", exact: true }).waitFor();
    expect(await sheetNames(desk)).toEqual(["Sheet1", "Quote template"]);
  });
});

describe("rows missing from Rates", () => {
  beforeEach(async () => {
    await desk.sit(withRates);
  });

  test("Spot's among them, are told by name and added at the end, with nothing else touched", async () => {
    await setRate(desk, "CastingFee", "2.75");
    for (const rate of ["Spot", "PriceBy", "Markup", "Deposit"]) await deleteRow(rate);
    await desk.pane.getByText("Rates has no rows for Spot, Price by, Markup, and Deposit.").waitFor();
    expect(await desk.pane.getByRole("button", { name: "Lay out the Rates sheet", exact: true }).count()).toBe(0);
    await desk.pane.getByText("Spot: found nothing").waitFor();
    const stood = await cellsOf("A1:E60");
    const used = stood.findLastIndex((row) => row.some((cell) => cell !== ""));

    await press(desk, "Add the missing rows");
    const now = await cellsOf("A1:E60");
    expect(now.slice(0, used + 1)).toEqual(stood.slice(0, used + 1));
    // What there is no price without gets its start value; a deposit left out stays none.
    expect(now.slice(used + 1, used + 7).map((row) => row.slice(0, 2))).toEqual([
      ["Added", ""],
      ["Spot", ""],
      ["Price by", "markup"],
      ["Markup", "30.0%"],
      ["Deposit", ""],
      ["", ""],
    ]);
    expect(await rateCell(desk, "Spot")).toEqual(["Rates", `B${used + 3}`]);
    expect(await desk.pane.getByText("Rates has no row").count()).toBe(0);
    expect(await sheetNames(desk)).toEqual(SHEETS);
    // The list of words rules the cell again.
    await setRate(desk, "PriceBy", "haggling");
    expect((await cellAt(desk, ...(await rateCell(desk, "PriceBy"))))?.value).toBe("markup");
    await setRate(desk, "Spot", SPOT_FOR_25);
    await fill(desk, HUNDRED_GRAMS);
    await press(desk, "Make the quote");
    await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();
  });

  test("that nothing needs can be added without a change of price", async () => {
    await fill(desk, {
      ...HUNDRED_GRAMS,
      "Links with stones": "a number of links",
      "How many links": "10",
      "Price of one stone": "9",
    });
    // Its start value is not nothing, but without its row setting costs nothing.
    await deleteRow("SettingFee");
    await desk.pane.getByText("Rates has no row for Setting fee.").waitFor();
    const before = await price();
    expect(before).toMatch(/\d/);
    await press(desk, "Add the missing row");
    expect(await desk.pane.getByText("Rates has no row").count()).toBe(0);
    expect(await price()).toBe(before);
  });

  test("cannot be added to a protected sheet: it is told, and every name means what it meant", async () => {
    await deleteRow("Deposit");
    await menu(desk, "protect", "Rates");
    const [cells, names] = [await cellsOf("A1:E60"), await nameFormulas()];
    await press(desk, "Add the missing row");
    await desk.pane.getByText("A sheet or the workbook is protected.").waitFor();
    expect(await cellsOf("A1:E60")).toEqual(cells);
    expect(await nameFormulas()).toEqual(names);
  });

  const cellsOf = (address: string) => texts(desk, "Rates", address);
});

describe("laying out Rates", () => {
  test("that fails half way takes everything back: sheets, new names, and what old names meant", async () => {
    await desk.sit((workshop) => workshop.sitDown("book=blank"));
    await desk.pane.evaluate(async () => {
      await Excel.run(async (context) => {
        const { worksheets, names, tables } = context.workbook;
        names.add("Rate_Spot", "=1234");
        names.add("Rate_Tax", "=#REF!");
        // A table that is called as a rate would be stands in the way once the names before it are made.
        const table = tables.add(worksheets.getItem("Sheet1").getRange("A1:B3"), true);
        table.name = "Rate_Surcharge";
        await context.sync();
      });
    });
    await settled(desk.page);
    const before = await nameFormulas();
    await fill(desk, { Spot: SPOT_FOR_25 });
    await press(desk, "Lay out the Rates sheet");
    await desk.pane.getByText("A sheet or name with that name is there already.").waitFor();
    expect(await sheetNames(desk)).toEqual(["Sheet1"]);
    expect(await nameFormulas()).toEqual(before);
    // Its way cleared, the same press succeeds and old names lead to the new cells.
    await desk.pane.evaluate(async () => {
      await Excel.run(async (context) => {
        context.workbook.tables.getItem("Rate_Surcharge").name = "Surcharges";
        await context.sync();
      });
    });
    await press(desk, "Lay out the Rates sheet");
    await desk.pane.getByLabel("Customer", { exact: true }).waitFor();
    expect(await sheetNames(desk)).toEqual(SHEETS);
    expect((await cellAt(desk, ...(await rateCell(desk, "Spot"))))?.value).toBe(Number(SPOT_FOR_25));
  });

  test("anew after the sheet was deleted keeps formulas over the rates alive", async () => {
    await desk.sit(withRates);
    await typeIn(desk.page, "Sheet1", "A1", "=Rate_Spot*2");
    await menu(desk, "delete", "Rates");
    await fill(desk, { Spot: "1000" });
    await press(desk, "Lay out the Rates sheet");
    await desk.pane.getByLabel("Customer", { exact: true }).waitFor();
    expect((await cellAt(desk, "Sheet1", "A1"))?.value).toBe(2000);
  });

  test("finds a free name where sheets of the person's own are called Rates and Rates (Curbwright)", async () => {
    await desk.sit((workshop) => workshop.sitDown("book=blank"));
    await menu(desk, "rename", "Sheet1", "Rates");
    await desk.pane.evaluate(async () => {
      await Excel.run(async (context) => {
        context.workbook.worksheets.add("rates (curbwright)");
        await context.sync();
      });
    });
    await fill(desk, { Spot: "1000" });
    await press(desk, "Lay out the Rates sheet");
    await desk.pane.getByLabel("Customer", { exact: true }).waitFor();
    expect(await sheetNames(desk)).toEqual(["Rates", "rates (curbwright)", "Rates (Curbwright 2)", "Quote template"]);
  });
});

describe("a quote whose copy cannot be named", () => {
  test("is told, and the copy without a name is taken back", async () => {
    await desk.sit(withRates);
    await fill(desk, HUNDRED_GRAMS);
    await refuseNaming(desk, "Quote 1001");
    await press(desk, "Make the quote");
    await desk.pane.getByText("A sheet or name with that name is there already.").waitFor();
    expect(await sheetNames(desk)).toEqual(SHEETS);
  });
});
