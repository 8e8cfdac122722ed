import { beforeEach, describe, expect, test } from "vitest";
import { published } from "../src/published";
import { cellAt, fill, HUNDRED_GRAMS, menu, press, sheetNames, view, withRates } from "./desk";
import { clickCell, settled, typeIn } from "./person.mjs";
import { ADA, fault, note, set, tableRow, unfold, weigh } from "./scale";
import { deskForEach } from "./workshop";

const desk = deskForEach(withRates);

const ESTIMATES = "Weight from wax, another alloy, another width";
const written = (label: string) => desk.pane.getByLabel(label, { exact: true }).first().inputValue();
const keep = () => press(desk, "Keep this link");

describe("kept links", () => {
  beforeEach(async () => {
    await fill(desk, { ...HUNDRED_GRAMS, Mark: "14 kt", Colour: "yellow" });
    await unfold(desk, "Kept links");
    await set(desk, "link", { model: "Ada curb", width: "8" });
  });

  test("are written down from the order, once", async () => {
    await keep();
    expect(await note(desk, "Kept links")).toContain("Ada curb 8 mm 14K yellow is in the table Links");
    const row = await tableRow(desk, "Link weights", 1);
    expect([row.Model, row["Width mm"], row["Links per length"], row.Per, row.Mark, row.Colour]).toEqual([
      "Ada curb",
      "8",
      "4",
      "in",
      "14K",
      "yellow",
    ]);
    expect([row["Estimate g"], row["Weight of one link g"], row.Basis]).toEqual(["2.0000", "2.0000", "estimate"]);
    await set(desk, "link", { model: "ada  CURB", width: "8" });
    await keep();
    expect(await note(desk, "Kept links")).toContain("has this model, width, mark and colour already");
    expect((await tableRow(desk, "Link weights", 2)).Model).toBe("");
  });

  test("bring alloy, links and weight into the order: the estimate, until finished ones are weighed", async () => {
    await keep();
    await unfold(desk, "Weigh in");
    await fill(desk, { "Weight of one link": "9", "Links per length": "9" });
    await desk.pane.locator("#order-mark").fill("18K");
    await view(desk, "Links");
    await press(desk, "Use in the order: 2.00 g finished");
    expect(await Promise.all(["Weight of one link", "Links per length"].map(written))).toEqual(["2", "4"]);
    expect(await desk.pane.locator("#order-mark").inputValue()).toBe("14K");
    const about = desk.pane.locator(".scalerow > .help");
    expect(await about.textContent()).toContain("an estimate: no finished ones of it were weighed yet");

    // 20.5 + 20.6 g of 20 pieces are 2.055 g each.
    await weigh(desk, { ...ADA, stage: "finished", pieces: "10", weight: "20.5" });
    await weigh(desk, { pieces: "10", weight: "20.6" });
    await desk.pane.getByText("the mean of 2 weighings of 20 finished pieces", { exact: false }).waitFor();
    await press(desk, "Use in the order: 2.06 g finished");
    expect(await written("Weight of one link")).toBe("2.055");
    const said = ((await about.textContent()) ?? "").replaceAll("\u00a0", " ");
    expect(said).toContain("give or take 0.064 g. It is still a guess. The estimate was 2.000 g.");
  });

  test("tell what is missing in the order and here, and write nothing", async () => {
    await view(desk, "Quote");
    await desk.pane.locator("#order-mark").fill("");
    await set(desk, "link", { model: "", width: "8 mm" });
    await keep();
    expect(await note(desk, "Kept links")).toContain("In the order: Mark: found nothing");
    expect(await fault(desk, "link", "model")).toContain("Model: found nothing");
    expect(await fault(desk, "link", "width")).toContain('found "8 mm"');
    expect(await sheetNames(desk)).not.toContain("Link weights");
  });

  test("without a weight leave the order's as it is", async () => {
    await keep();
    await typeIn(desk.page, "Link weights", "G5", "unknown");
    await desk.pane.getByText("has neither an estimate nor a weighing yet", { exact: false }).first().waitFor();
    expect(await desk.pane.getByRole("button", { name: /^Use in the order/ }).count()).toBe(0);
    expect(await written("Weight of one link")).toBe("2");
  });
});

describe("weights from wax, another alloy, another width", () => {
  beforeEach(async () => {
    await unfold(desk, ESTIMATES);
  });
  const part = (title: string) => desk.pane.locator("section.estimate", { hasText: title });
  const place = (title: string) => part(title).getByRole("button", { name: "Put the formula into the selected cell" });
  const use = (title: string) => part(title).getByRole("button", { name: /^Use in the order/ });

  const { rows, source } = published<{ source: string; rows: readonly Record<string, string>[] }>("casting.json");
  const wax = rows.find((row) => row.check === "wax to metal");

  test(`wax gives the published weight, in the pane and by its formula in the sheet (${source})`, async () => {
    await set(desk, "wax", { wax: wax?.wax ?? "", waxDensity: "1", metalDensity: wax?.ratio ?? "" });
    expect(await part("From wax or resin").locator(".formula").textContent()).toBe("=CURB.METALFROMWAX(5.5,1,13.5)");
    await clickCell(desk.page, "Sheet1", "C3");
    await place("From wax or resin").click();
    await desk.pane.getByText("C3 now has =CURB.METALFROMWAX(5.5,1,13.5)").waitFor();
    await settled(desk.page);
    expect((await cellAt(desk, "Sheet1", "C3"))?.value).toBe(Number(wax?.expected));
    expect((await part("From wax or resin").locator(".answerhead").textContent())?.replaceAll("\u00a0", " ")).toBe(
      "5.5 g × 13.5 ÷ 1 = 74.25 g as cast",
    );
    // Rates start with a loss of 2 % of the cast weight: 74.25 x 0.98.
    await use("From wax or resin").click();
    expect(await written("Weight of one link")).toBe("72.765");
  });

  test("a composition goes into the formula as one: 2 g x 1000 / (750/19.32 + 250/8.96) / 13.5 (hand arithmetic)", async () => {
    await set(desk, "recast", { weight: "2", fromDensity: "13.5", toDensity: "Au 750 Cu 250" });
    await clickCell(desk.page, "Sheet1", "B2");
    await place("In another alloy").click();
    await desk.pane.getByText("B2 now has", { exact: false }).waitFor();
    await settled(desk.page);
    const { value, formula } = (await cellAt(desk, "Sheet1", "B2")) ?? {};
    expect(formula).toBe('=CURB.RECASTWEIGHT(2,13.5,CURB.ALLOYDENSITY({"Au";"Cu"},{750;250}))');
    expect(value).toBeCloseTo((2 * 1000) / (750 / 19.32 + 250 / 8.96) / 13.5, 12);
  });

  test("a wider link weighs by the cube and has fewer links in the length", async () => {
    await set(desk, "resize", { weight: "2", fromWidth: "8", toWidth: "10", linksPer: "4" });
    await use("At another width").click();
    expect(await Promise.all(["Weight of one link", "Links per length"].map(written))).toEqual(["3.90625", "3.2"]);
    await set(desk, "resize", { seats: "yes" });
    expect(await fault(desk, "resize", "seats")).toContain("its seats would no longer fit their stones");
    expect(await use("At another width").isVisible()).toBe(false);
  });

  test("the formula goes into one empty cell only", async () => {
    await set(desk, "wax", { wax: "1", waxDensity: "1", metalDensity: "13.5" });
    await typeIn(desk.page, "Sheet1", "C3", "mine");
    await clickCell(desk.page, "Sheet1", "C3");
    await place("From wax or resin").click();
    await desk.pane.getByText("C3 is not empty, and nothing in it was changed.", { exact: false }).waitFor();
    expect((await cellAt(desk, "Sheet1", "C3"))?.value).toBe("mine");
    await menu(desk, "protect", "Sheet1");
    await clickCell(desk.page, "Sheet1", "D4");
    await place("From wax or resin").click();
    await desk.pane.getByText("This sheet is protected.", { exact: false }).waitFor();
    expect((await cellAt(desk, "Sheet1", "D4"))?.value).toBe("");
  });

  test("every field that is wrong is told, and Enter goes to the first that is missing", async () => {
    await set(desk, "wax", { wax: "", waxDensity: "0", metalDensity: "brass" });
    await desk.pane.locator("#wax-metalDensity").press("Enter");
    expect(await fault(desk, "wax", "wax")).toContain("found nothing");
    expect(await fault(desk, "wax", "waxDensity")).toContain("above 0 and below 23");
    expect(await fault(desk, "wax", "metalDensity")).toContain("has no parts");
    expect(await desk.pane.evaluate(() => document.activeElement?.id)).toBe("wax-wax");
    expect(await place("From wax or resin").isVisible()).toBe(false);
  });
});
