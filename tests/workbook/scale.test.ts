import { beforeEach, describe, expect, test } from "vitest";
import { published } from "../src/published";
import { menu, press, setRate, sheetNames, texts, withRates } from "./desk";
import { settled, typeIn } from "./person.mjs";
import { ADA, cellValue, fault, note, set, tableRow, unfold, warnings, weigh } from "./scale";
import { deskForEach } from "./workshop";

const desk = deskForEach(withRates);

beforeEach(async () => {
  await unfold(desk, "Weigh in");
});

const syncs = () => desk.page.evaluate(() => window.workbookPage.syncCount);
const rows = (address = "A5:L12") => texts(desk, "Weigh-ins", address);
const own = (row: number) => tableRow(desk, "Weigh-ins", row);

/** Does something to a table as a person does from Excel's own menus, through the pane's office.js. */
async function toTable(act: "rename" | "addColumn" | "dropHeader" | "swapRows", name = "WeighIns"): Promise<void> {
  await desk.pane.evaluate(
    async ([what = "", of = ""]) => {
      await Excel.run(async (context) => {
        const table = context.workbook.tables.getItem(of);
        const range = table.getRange();
        range.load("formulas,columnCount");
        await context.sync();
        if (what === "rename") table.name = `My${of}`;
        if (what === "dropHeader") range.getCell(0, 0).values = [["Day"]];
        if (what === "addColumn") {
          table.resize(range.getResizedRange(0, 1));
          range.getCell(0, range.columnCount).values = [["Box"]];
          range.getCell(1, range.columnCount).values = [["green"]];
        }
        if (what === "swapRows") {
          // As sorting the other way round does: what was typed changes places, formulas stay over their own row.
          const [, first = [], second = []] = range.formulas;
          range.getRow(1).getResizedRange(0, 0).formulas = [second];
          range.getRow(2).getResizedRange(0, 0).formulas = [first];
        }
        await context.sync();
      });
    },
    [act, name],
  );
  await settled(desk.page);
}

describe("weighing in", () => {
  test("writes a row by Enter, keeps what stays the same, and begins the three tables once", async () => {
    const said = await weigh(desk, { ...ADA, job: "1001", stage: "cast", pieces: "10", weight: "20.5" });
    expect(said).toContain("Written down: 10 pieces, 20.50 g, cast.");
    expect(said).toContain("still a guess: 2.050 g after one weighing");
    expect((await sheetNames(desk)).slice(-3)).toEqual(["Weigh-ins", "Link weights", "Finisher losses"]);
    const { Job, Model, Mark, Colour, Stage, Pieces, Who } = await own(1);
    expect([Job, Model, Mark, Colour, Stage, Pieces, Who]).toEqual([
      "1001",
      "Ada curb",
      "14K",
      "yellow",
      "cast",
      "10",
      "",
    ]);
    const value = (key: string) => desk.pane.locator(`#weighin-${key}`).inputValue();
    expect(await Promise.all(["job", "stage", "model", "mark", "pieces", "weight"].map(value))).toEqual([
      "1001",
      "cast",
      "Ada curb",
      "14K",
      "",
      "",
    ]);
    // The next one needs two figures and Enter: the focus is where the first belongs.
    await desk.page.keyboard.type("4");
    await desk.page.keyboard.press("Tab");
    await desk.page.keyboard.type("8.3");
    await desk.page.keyboard.press("Enter");
    await desk.pane.getByText("Written down: 4 pieces, 8.300 g, cast.").waitFor();
    await settled(desk.page);
    expect((await own(2))["Weight g"]).toBe("8.300");
    expect((await sheetNames(desk)).filter((name) => name.startsWith("Weigh-ins"))).toEqual(["Weigh-ins"]);
  });

  test("turns pennyweights into grams exactly: 13.2 dwt are 20.528294688 g (UCUM, by hand)", async () => {
    await weigh(desk, { ...ADA, pieces: "10", weight: "13.2 dwt" });
    expect(await cellValue(desk, "Weigh-ins", 1, "Weight g")).toBe(20.528294688);
  });

  test("takes the same few syncs, however many rows there are", async () => {
    await weigh(desk, { ...ADA, pieces: "10", weight: "20.5" });
    const counted = async () => {
      const before = await syncs();
      await weigh(desk, { pieces: "10", weight: "20.4" });
      return (await syncs()) - before;
    };
    // Two to write, and what the pane reads again of a workbook that has changed: rates and tables, a sync each time.
    expect(await counted()).toBeLessThanOrEqual(10);
    for (let count = 0; count < 6; count += 1) await weigh(desk, { pieces: "10", weight: "20.6" });
    expect(await counted()).toBeLessThanOrEqual(10);
  });

  test("tells what is wrong in every field, and writes nothing", async () => {
    await set(desk, "weighin", { model: "", width: "wide", mark: "gold", pieces: "2.5", weight: "2,05" });
    await desk.pane.locator("#weighin-weight").press("Enter");
    await settled(desk.page);
    expect(await fault(desk, "weighin", "model")).toContain("Model: found nothing");
    expect(await fault(desk, "weighin", "width")).toContain('Width: found "wide"');
    expect(await fault(desk, "weighin", "mark")).toContain('Mark: found "gold"');
    expect(await fault(desk, "weighin", "pieces")).toContain("Pieces: found");
    expect(await fault(desk, "weighin", "weight")).toContain("comma where a point would be right");
    expect(await sheetNames(desk)).not.toContain("Weigh-ins");
  });

  test("a model kept in one alloy fills the alloy", async () => {
    await weigh(desk, { ...ADA, pieces: "10", weight: "20.5" });
    await typeIn(desk.page, "Link weights", "A5", "Bram curb");
    await typeIn(desk.page, "Link weights", "B5", "6");
    await typeIn(desk.page, "Link weights", "E5", "18K");
    await typeIn(desk.page, "Link weights", "F5", "rose");
    await set(desk, "weighin", { mark: "", width: "", colour: "yellow", model: "bram CURB" });
    expect(await desk.pane.locator("#weighin-mark").inputValue()).toBe("18K");
    expect(await desk.pane.locator("#weighin-width").inputValue()).toBe("6");
    expect(await desk.pane.locator("#weighin-colour").inputValue()).toBe("rose");
  });
});

describe("losses", () => {
  test("Teague's weights: 5.877 g cast and 4.907 g finished lose 16.51 %, in the pane and in the sheets", async () => {
    await setRate(desk, "Loss", "0.17");
    await weigh(desk, { ...ADA, job: "7", stage: "cast", pieces: "1", weight: "5.877" });
    const said = await weigh(desk, { stage: "finished", who: "Bram", pieces: "1", weight: "4.907" });
    expect(said).toContain("Loss since cast: 16.51 %");
    expect(said).toContain("Allowed on Rates: 17 % of the cast weight.");
    expect(await cellValue(desk, "Weigh-ins", 2, "Loss")).toBeCloseTo(0.1651, 4);
    expect(await cellValue(desk, "Finisher losses", 1, "Loss")).toBeCloseTo(0.1651, 4);
    expect((await own(2)).Remark).toBe("");
  });

  test("each finisher's are of what went out to them; above the allowed since cast is pointed at (hand arithmetic)", async () => {
    await setRate(desk, "Loss", "0.025");
    await weigh(desk, { ...ADA, job: "1001", stage: "cast", pieces: "50", weight: "102.5" });
    // 48 of 50 at 102.5 g are 98.4 g; 96.432 back are 2 % lost.
    await weigh(desk, { stage: "polished", who: "Bram", pieces: "48", weight: "96.432" });
    expect(await warnings(desk)).toEqual([]);
    // From 96.432 to 95.46768 is 1 %; since cast 2.98 %.
    await weigh(desk, { stage: "finished", who: "Cleo", pieces: "48", weight: "95.46768" });
    expect(await warnings(desk)).toEqual(["The loss since cast, 2.98 %, is above the 2.5 % that Rates allows."]);
    expect(await cellValue(desk, "Weigh-ins", 2, "Went out g")).toBeCloseTo(98.4, 9);
    expect(await cellValue(desk, "Weigh-ins", 2, "Loss")).toBeCloseTo(0.02, 9);
    expect(await cellValue(desk, "Weigh-ins", 3, "Loss")).toBeCloseTo(0.01, 9);
    expect(await cellValue(desk, "Weigh-ins", 3, "Since cast")).toBeCloseTo(0.0298, 9);
    expect((await own(2)).Remark).toBe("");
    expect((await own(3)).Remark).toBe("Loss above the allowed 2.5 %.");
    const [bram, cleo] = await Promise.all([1, 2].map((row) => tableRow(desk, "Finisher losses", row)));
    expect([bram?.Who, bram?.Passages, bram?.Loss, cleo?.Who, cleo?.Loss]).toEqual([
      "Bram",
      "1",
      "2.0%",
      "Cleo",
      "1.0%",
    ]);

    // Another job of Bram's: 50 g out, 49.5 back. Together 1.968 + 0.5 of 148.4; spread of 2 % and 1 %: 0.01 / √2.
    await weigh(desk, { job: "1002", stage: "cast", pieces: "25", weight: "50" });
    await weigh(desk, { stage: "polished", who: "Bram", pieces: "25", weight: "49.5" });
    expect(await cellValue(desk, "Finisher losses", 1, "Loss")).toBeCloseTo(2.468 / 148.4, 9);
    expect(await cellValue(desk, "Finisher losses", 1, "Spread")).toBeCloseTo(0.01 / Math.SQRT2, 9);
    expect((await tableRow(desk, "Finisher losses", 3)).Who).toBe("");
  });

  test("the allowed share follows Rates: 0.025 of the finished weight is 0.025/1.025 of the cast; grams give none", async () => {
    await setRate(desk, "Loss", "0.025");
    await setRate(desk, "LossBasis", "finished");
    await weigh(desk, { ...ADA, job: "7", stage: "cast", pieces: "1", weight: "100" });
    await weigh(desk, { stage: "finished", who: "Bram", pieces: "1", weight: "97.55" });
    expect(await warnings(desk)).toEqual(["The loss since cast, 2.45 %, is above the 2.44 % that Rates allows."]);
    expect(await cellValue(desk, "Weigh-ins", 2, "Allowed")).toBeCloseTo(0.025 / 1.025, 12);
    expect((await own(2)).Remark).toBe("Loss above the allowed 2.44 %.");
    await setRate(desk, "LossBasis", "grams");
    expect((await own(2)).Remark).toBe("");
    expect(await weigh(desk, { job: "7", pieces: "1", weight: "97.55" })).toContain("Rates gives no share");
  });

  test("more metal back than went out is pointed at, and written down all the same", async () => {
    await weigh(desk, { ...ADA, job: "7", stage: "cast", pieces: "10", weight: "20.5" });
    await weigh(desk, { stage: "finished", who: "Bram", pieces: "10", weight: "21" });
    expect(await warnings(desk)).toEqual([
      "More metal came back than went out: 21.00 g against 20.50 g. It is written down, but left out of averages. Look at count and weight, and weigh again.",
    ]);
    expect((await own(2)).Remark).toBe("More back than went out: left out of averages until Confirmed says yes.");
    const finisher = () => tableRow(desk, "Finisher losses", 1);
    expect([(await finisher()).Passages, (await finisher()).Remark]).toEqual(["0", "Left out until confirmed: 1."]);
    await press(desk, "It is right: count it");
    expect((await own(2)).Confirmed).toBe("yes");
    expect((await own(2)).Remark).toBe("More back than went out, confirmed.");
    expect([(await finisher()).Passages, (await finisher()).Remark]).toEqual(["1", "More back than went out."]);
    expect(await note(desk, "Weigh in")).toContain("It counts now");
    await press(desk, "Take it out again");
    expect((await own(2)).Pieces ?? "").toBe("");
  });

  test("what was sent and did not return is told with pieces, grams and money; what was not sent is spare (hand arithmetic)", async () => {
    await setRate(desk, "Spot", String(2 * 31.1034768));
    await weigh(desk, { ...ADA, mark: "12K", job: "7", stage: "cast", pieces: "95", weight: "190" });
    // 2 g each as cast; 12K at a spot of 2 a gram of fine gold is 1 a gram.
    const said = await weigh(desk, { stage: "polished", who: "Bram", sent: "93", pieces: "91", weight: "173.81" });
    expect(said).toContain("Loss since cast: 4.5 %, 8.190 g of the 182.00 g that went out.");
    expect(said).toContain("Sent and not returned: 2 pieces, 4.000 g, USD 4.00 at the metal rate.");
    expect(await cellValue(desk, "Weigh-ins", 2, "Loss")).toBeCloseTo(0.045, 12);
    const told = ["Sent", "Missing", "Missing g", "Missing at metal rate"];
    expect(await Promise.all(told.map((title) => cellValue(desk, "Weigh-ins", 2, title)))).toEqual([93, 2, 4, 4]);
    expect((await own(2)).Remark).toContain("Sent and not returned: 2. Spare, not sent: 2.");
    await set(desk, "weighin", { sent: "90", pieces: "91", weight: "173.81" });
    await press(desk, "Write it down");
    expect(await fault(desk, "weighin", "sent")).toContain("Sent: found 90, and 91 pieces came back");
  });
});

describe("the weight of a link", () => {
  test("is the mean of its finished weighings with spread and width, as defined, also for a row typed by hand", async () => {
    await weigh(desk, { ...ADA, stage: "cast", pieces: "10", weight: "30" });
    await typeIn(desk.page, "Link weights", "A5", "Ada curb");
    await typeIn(desk.page, "Link weights", "B5", "8");
    await typeIn(desk.page, "Link weights", "E5", "14K");
    await typeIn(desk.page, "Link weights", "F5", "yellow");
    await typeIn(desk.page, "Link weights", "G5", "2.2");
    const link = () => tableRow(desk, "Link weights", 1);
    expect([(await link())["Weight of one link g"], (await link()).Basis]).toEqual(["2.2000", "estimate"]);
    await weigh(desk, { stage: "finished", pieces: "30", weight: "60" });
    await weigh(desk, { pieces: "10", weight: "24" });
    // 84 g over 40; 30 x 0.1² + 10 x 0.3² = 1.2 over one degree of freedom, whose t is 12.706.
    expect(await cellValue(desk, "Link weights", 1, "Weight of one link g")).toBeCloseTo(2.1, 12);
    expect(await cellValue(desk, "Link weights", 1, "Spread g")).toBeCloseTo(Math.sqrt(1.2), 9);
    expect(await cellValue(desk, "Link weights", 1, "Within g")).toBeCloseTo(12.706 * Math.sqrt(1.2 / 40), 3);
    expect(await cellValue(desk, "Link weights", 1, "Estimate off")).toBeCloseTo(2.2 / 2.1 - 1, 12);
    const { Basis, Weighings, "Pieces weighed": pieces, Remark } = await link();
    expect([Basis, Weighings, pieces, Remark]).toEqual(["weighed", "2", "40", "Still a guess: few weighings."]);
    // 10 at 21 g in place of 24: 81 over 40.
    await typeIn(desk.page, "Weigh-ins", "I7", "21");
    expect(await cellValue(desk, "Link weights", 1, "Weight of one link g")).toBeCloseTo(2.025, 12);
    // Words in place of a weight: that row no longer counts, and says why.
    await typeIn(desk.page, "Weigh-ins", "I7", "heavy");
    expect(await cellValue(desk, "Link weights", 1, "Weight of one link g")).toBe(2);
    expect((await own(3)).Remark).toBe("Give pieces and weight, both above 0.");
  });

  test("is known as closely as the published t says: the sheet's own function gives what the pane is held to", async () => {
    const { rows } = published<{ rows: readonly { freedom: number; t: string }[] }>("student-t.json");
    const inSheet = await desk.pane.evaluate(async (all) => {
      return Excel.run(async (context) => {
        const cells = context.workbook.worksheets.getItem("Sheet1").getRange(`A1:A${all.length}`);
        cells.formulas = all.map(({ freedom }) => [`=T.INV.2T(0.05,${freedom})`]);
        cells.load("values");
        await context.sync();
        return cells.values.map(([value]) => Number(value).toFixed(3));
      });
    }, rows);
    expect(inSheet).toEqual(rows.map(({ t }) => t));
  });

  test("one far from three others is pointed at in pane and sheet, and stays", async () => {
    for (const weight of ["20", "20.2", "19.8"]) await weigh(desk, { ...ADA, pieces: "10", weight });
    expect(await warnings(desk)).toEqual([]);
    await weigh(desk, { pieces: "10", weight: "26" });
    expect((await warnings(desk))[0]).toContain("One piece comes to 2.600 g, far from the other weighings");
    expect((await own(4)).Remark).toBe("Far from the others.");
    expect(await cellValue(desk, "Weigh-ins", 4, "Usual g")).toBeCloseTo(2, 12);
    expect((await own(1)).Remark).toBe("");
  });

  test("the scale's last digit is never far, in pane and sheet", async () => {
    for (const weight of ["20.5", "20.5", "20.5"]) await weigh(desk, { ...ADA, pieces: "10", weight });
    await weigh(desk, { pieces: "10", weight: "20.51" });
    expect(await warnings(desk)).toEqual([]);
    expect((await own(4)).Remark).toBe("");
    await weigh(desk, { pieces: "10", weight: "20.6" });
    expect((await warnings(desk))[0]).toContain("far from the other weighings");
    expect((await own(5)).Remark).toBe("Far from the others.");
  });

  test("a slip of the point is kept and shown, and left out of every mean until it is confirmed (hand arithmetic)", async () => {
    await weigh(desk, { ...ADA, stage: "finished", pieces: "10", weight: "20" });
    for (const [cell, text] of Object.entries({ A5: "Ada curb", B5: "8", E5: "14K", F5: "yellow" })) {
      await typeIn(desk.page, "Link weights", cell, text);
    }
    const link = () => tableRow(desk, "Link weights", 1);
    await weigh(desk, { pieces: "10", weight: "20.4" });
    const said = await weigh(desk, { pieces: "10", weight: "205" });
    expect(said).toContain(
      "One piece comes to 20.50 g, ten times the other weighings of it or a tenth. It is written down, but left out",
    );
    expect(said).toContain("2.020 g, give or take");
    expect(await cellValue(desk, "Link weights", 1, "Weight of one link g")).toBeCloseTo(2.02, 12);
    expect([(await link()).Weighings, (await link()).Remark]).toEqual([
      "2",
      "Still a guess: few weighings. Left out until confirmed: 1.",
    ]);
    expect((await own(3)).Remark).toBe(
      "One piece weighs ten times another: left out of averages until Confirmed says yes.",
    );
    // The person says so in the table, as well as by the button.
    await typeIn(desk.page, "Weigh-ins", "M7", "yes");
    expect((await link()).Weighings).toBe("3");
    // 20 + 20.4 + 205 over 30.
    expect(await cellValue(desk, "Link weights", 1, "Weight of one link g")).toBeCloseTo(245.4 / 30, 12);
  });

  test("a name with signs that stand for any letter is that name only", async () => {
    await weigh(desk, { ...ADA, model: "Ada*", job: "7", stage: "cast", pieces: "10", weight: "20" });
    await weigh(desk, { model: "Ada curb", job: "7", stage: "finished", pieces: "10", weight: "10" });
    await weigh(desk, { model: "Ada*", job: "7", stage: "finished", pieces: "10", weight: "19.8" });
    expect((await own(2)).Loss).toBe("");
    expect(await cellValue(desk, "Weigh-ins", 3, "Loss")).toBeCloseTo(0.01, 12);
  });
});

describe("taking a weigh-in out again", () => {
  test("takes its own row, wherever it was sorted to, and brings back what was typed", async () => {
    await weigh(desk, { ...ADA, job: "7", pieces: "10", weight: "20.5" });
    await weigh(desk, { pieces: "12", weight: "24.6", note: "second" });
    await toTable("swapRows");
    expect((await own(1)).Pieces).toBe("12");
    await press(desk, "Take it out again");
    await desk.pane.getByText("It was taken out of the Weigh-ins sheet.", { exact: false }).waitFor();
    expect((await rows()).map((cells) => cells[7]).filter((text) => text !== "")).toEqual(["10"]);
    expect(await desk.pane.locator("#weighin-weight").inputValue()).toBe("24.6");
    expect(await desk.pane.locator("#weighin-note").inputValue()).toBe("second");
    // The table still grows.
    await weigh(desk, { pieces: "5", weight: "10" });
    expect((await rows()).map((cells) => cells[7]).filter((text) => text !== "")).toEqual(["10", "5"]);
    expect((await own(2))["One piece g"]).toBe("2.0000");
  });

  test("of the only row leaves it blank for the next one", async () => {
    await weigh(desk, { ...ADA, pieces: "10", weight: "20.5" });
    await press(desk, "Take it out again");
    await settled(desk.page);
    expect((await own(1)).Pieces).toBe("");
    expect((await own(1)).Remark).toBe("");
    await weigh(desk, { pieces: "4", weight: "8" });
    expect((await own(1)).Pieces).toBe("4");
  });

  test("takes the finisher out that it added, and none who was there or of whom something was noted", async () => {
    const finishers = async () => (await texts(desk, "Finisher losses", "A5:A8")).flat().filter((name) => name !== "");
    await weigh(desk, { ...ADA, stage: "polished", who: "Bram", pieces: "10", weight: "20.5" });
    await weigh(desk, { who: "Cleo", pieces: "10", weight: "20.4" });
    expect(await finishers()).toEqual(["Bram", "Cleo"]);
    await press(desk, "Take it out again");
    expect(await finishers()).toEqual(["Bram"]);
    await weigh(desk, { who: "bram", pieces: "9", weight: "18.4" });
    await press(desk, "Take it out again");
    expect(await finishers()).toEqual(["Bram"]);
    await toTable("addColumn", "Finishers");
    await weigh(desk, { who: "Dov", pieces: "8", weight: "16" });
    await typeIn(desk.page, "Finisher losses", "J6", "new here");
    await press(desk, "Take it out again");
    expect(await finishers()).toEqual(["Bram", "Dov"]);
  });

  test("takes nothing where the row was changed meanwhile", async () => {
    await weigh(desk, { ...ADA, pieces: "10", weight: "20.5" });
    await weigh(desk, { pieces: "12", weight: "24.6" });
    await typeIn(desk.page, "Weigh-ins", "I6", "24.7");
    await press(desk, "Take it out again");
    expect(await note(desk, "Weigh in")).toContain("no longer stands in the table WeighIns as it was written");
    expect((await rows()).map((cells) => cells[8]).filter((text) => text !== "")).toEqual(["20.500", "24.700"]);
  });
});

describe("a person's own tables", () => {
  test("columns of their own stay as they are", async () => {
    await weigh(desk, { ...ADA, pieces: "10", weight: "20.5" });
    await toTable("addColumn");
    await weigh(desk, { pieces: "12", weight: "24.6" });
    expect([(await own(1)).Box, (await own(2)).Box, (await own(2)).Pieces]).toEqual(["green", "", "12"]);
  });

  test("a table of another name is theirs: a new one is begun beside it", async () => {
    await weigh(desk, { ...ADA, pieces: "10", weight: "20.5" });
    await toTable("rename");
    await weigh(desk, { pieces: "12", weight: "24.6" });
    expect(await sheetNames(desk)).toContain("Weigh-ins (Curbwright)");
    expect((await own(1)).Pieces).toBe("10");
    expect((await own(2)).Pieces ?? "").toBe("");
    expect((await tableRow(desk, "Weigh-ins (Curbwright)", 1)).Pieces).toBe("12");
  });

  test("a header that is gone is named, and nothing is written", async () => {
    await weigh(desk, { ...ADA, pieces: "10", weight: "20.5" });
    await toTable("dropHeader");
    await set(desk, "weighin", { pieces: "12", weight: "24.6" });
    await press(desk, "Write it down");
    expect(await note(desk, "Weigh in")).toContain('The table WeighIns has no column "Date" any more');
    expect((await rows("H5:H8")).flat()).toEqual(["10", "", "", ""]);
    expect(await desk.pane.locator("#weighin-weight").inputValue()).toBe("24.6");
  });

  test("a protected sheet is told, nothing is written and what was typed stays; other tables are no hindrance", async () => {
    await weigh(desk, { ...ADA, pieces: "10", weight: "20.5" });
    await menu(desk, "protect", "Link weights");
    await weigh(desk, { pieces: "11", weight: "22" });
    await menu(desk, "protect", "Weigh-ins");
    await set(desk, "weighin", { pieces: "12", weight: "24.6" });
    await press(desk, "Write it down");
    expect(await note(desk, "Weigh in")).toContain("The sheet with the table WeighIns is protected");
    expect((await rows("H5:H8")).flat()).toEqual(["10", "11", "", ""]);
    expect(await desk.pane.locator("#weighin-pieces").inputValue()).toBe("12");
  });
});
