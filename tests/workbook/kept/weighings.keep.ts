import { expect, test } from "vitest";
import { fill, press, sheetNames, view, withRates } from "../desk";
import { keep } from "../keptfile";
import { clickCell, settled, typeIn } from "../person.mjs";
import { set, unfold, weigh } from "../scale";
import { deskForEach } from "../workshop";
import { makeQuote, setRates, widen } from "./making";

const desk = deskForEach((workshop) => withRates(workshop, "clock=2026-07-08T16:00:00"));

const RATES = {
  Workshop: "Tin Lane Bench",
  Spot: "4301.75",
  CastingFee: "1.6",
  Loss: "0.04",
  LossBasis: "finished",
  LabourFlat: "55",
  Surcharge: "5.2",
  Plating: "30",
  PriceStep: "10",
};

const EIGHT = { model: "Ada curb", width: "8", mark: "14K", colour: "yellow" };
const TEN = { model: "Ada curb", width: "10", mark: "18K", colour: "white" };
const HOLLOW = { model: "Tide hollow", width: "", mark: "585", colour: "rose" };

/** Keeps the order's link under a name. */
async function keepLink(link: Readonly<Record<string, string>>, model: string, width: string): Promise<void> {
  await set(desk, "order", link);
  await unfold(desk, "Kept links");
  await set(desk, "link", { model, width });
  await press(desk, "Keep this link");
}

test("links with and without weighings, jobs weighed from wax to finished, those who polish, and a quote by a kept link", async () => {
  await setRates(desk, RATES);
  await fill(desk, { Customer: "Ada Quillfeather", Design: "Ada curb", Length: "20", "Clasp length": "1" });
  await keepLink({ mark: "14 kt", linksPer: "4", linkWeight: "1.4" }, "Ada curb", "8");
  await keepLink({ mark: "18K", colour: "white", linksPer: "3.2", linkWeight: "2.9" }, "Ada curb", "10");
  await keepLink({ mark: "585", colour: "rose", linksPer: "5", linkWeight: "0.61" }, "Tide hollow", "");
  await keepLink({ mark: "9K", colour: "yellow", linksPer: "7", linkWeight: "0.31" }, "River fine", "4.5");

  await unfold(desk, "Weigh in");
  await weigh(desk, { ...EIGHT, job: "1001", stage: "model", pieces: "78", weight: "7.85" });
  await weigh(desk, { stage: "cast", pieces: "78", weight: "107.4" });
  await weigh(desk, { stage: "polished", who: "Bram", pieces: "76", weight: "103.2" });
  await weigh(desk, { stage: "finished", who: "Cleo", pieces: "76", weight: "102.3", note: "second buffing" });
  await weigh(desk, { ...EIGHT, job: "1002", stage: "cast", who: "", note: "", pieces: "40", weight: "35.1 dwt" });
  await weigh(desk, { stage: "polished", who: "Bram", pieces: "40", weight: "53.9" });
  await weigh(desk, { stage: "finished", who: "Cleo", pieces: "40", weight: "53.65" });
  await weigh(desk, { job: "", stage: "finished", who: "", pieces: "10", weight: "13.42" });
  await weigh(desk, { pieces: "10", weight: "13.5" });
  // Far from the others, so the pane warns of it.
  await weigh(desk, { pieces: "10", weight: "17.9", note: "a clasp on the pan?" });
  await weigh(desk, { ...TEN, job: "R-7", stage: "cast", note: "", pieces: "20", weight: "58.4" });
  // More came back than went out.
  await weigh(desk, { stage: "finished", who: "Bram", pieces: "20", weight: "59.1" });
  await weigh(desk, { ...HOLLOW, job: "1003", stage: "finished", who: "Dov", pieces: "12", weight: "0.24 ozt" });
  await weigh(desk, { pieces: "12", weight: "7.31" });
  await weigh(desk, { pieces: "1", weight: "0.6" });
  // Words in place of the last weight: that row counts nowhere.
  await typeIn(desk.page, "Weigh-ins", "I19", "lost");
  await widen(desk, "WeighIns", "Box");
  await typeIn(desk.page, "Weigh-ins", "X5", "green");
  await typeIn(desk.page, "Link weights", "P5", "ada-8.stl");
  await typeIn(desk.page, "Link weights", "Q5", "drawer 3");

  await unfold(desk, "Weight from wax, another alloy, another width");
  const place = async (title: string, cell: string) => {
    await clickCell(desk.page, "Sheet1", cell);
    const part = desk.pane.locator("section.estimate", { hasText: title });
    await part.getByRole("button", { name: "Put the formula into the selected cell" }).click();
    await settled(desk.page);
  };
  await set(desk, "wax", { wax: "0.098", waxDensity: "0.95", metalDensity: "Au 585 Ag 265 Cu 150" });
  await place("From wax or resin", "B2");
  await set(desk, "recast", { weight: "1.35", fromDensity: "13.1", toDensity: "15.4" });
  await place("In another alloy", "B3");
  await set(desk, "resize", { weight: "1.35", fromWidth: "8", toWidth: "9", linksPer: "4" });
  await place("At another width", "B4");

  await unfold(desk, "Kept links");
  await desk.pane.locator("#link-choice").selectOption({ label: "Ada curb 8 mm 14K yellow" });
  await press(desk, "Use in the order");
  await view(desk, "Quote");
  await makeQuote(desk, "1001");
  expect(await sheetNames(desk)).toHaveLength(10);
  await keep(desk, "weighings");
});
