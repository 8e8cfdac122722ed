import Fraction from "fraction.js";
import { expect, test } from "vitest";
import { atRoundRates, dump, openCatalogue, ownSheet, readDesigns, said, unfold, value, valuesOf } from "./catalogue";
import { cellAt, clearRate, press, rateCell, setRate } from "./desk";
import { settled, typeIn } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach(atRoundRates);

const HEADER = ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link"];
const SMALL = [HEADER, ["Plain", 1000, "yellow", 12.5, 4, 2], ["Odd", "25K", "yellow", 12.5, 4, 2]];
const MARKS = [
  { mark: 1000, share: new Fraction(1) },
  { mark: 750, share: new Fraction(3, 4) },
  { mark: "14K", share: new Fraction(14, 24) },
];
const OUNCE = new Fraction("31.1034768");

/** Lines of a catalogue from their number alone, some too light to move by a whole price step. */
const lineOf = (index: number) => ({
  design: `Design ${index}`,
  ...(MARKS[index % 3] ?? { mark: 1000, share: new Fraction(1) }),
  length: 10 + (index % 21),
  weight: new Fraction((index % 157) + 1, 100),
});

/** Landed cost and price at these rates, in exact fractions: quick basis, 2 g lost, 1.50 cast, 50 labour, 30 %, up to 1. */
function pricedAt({ share, length, weight }: ReturnType<typeof lineOf>, spot: Fraction) {
  const chain = weight.mul(length * 4);
  const rate = spot.mul(share).div(OUNCE);
  const landed = chain.mul(rate.add("1.5")).add(rate.mul(2)).add(50);
  return { landed, price: landed.mul("1.3").ceil() };
}

/** Keeps the pane's long work from its next slice; the answer lets it go on. */
async function holdSlices(): Promise<() => Promise<void>> {
  await desk.pane.evaluate(() => {
    const begin = window.setTimeout;
    const held: (() => void)[] = [];
    const hold = (run: () => void, after?: number) => (after === undefined ? held.push(run) : begin(run, after));
    Object.assign(window, {
      setTimeout: hold,
      goOn: () => {
        window.setTimeout = begin;
        for (const run of held) run();
      },
    });
  });
  return () => desk.pane.evaluate("goOn()");
}

const rate = async (name: string) => value(desk, ...(await rateCell(desk, name)));
const number = (text: string) => new Intl.NumberFormat("en-US").format(Number(text));

async function see(spot: string): Promise<void> {
  await desk.pane.locator("#newspot").fill(spot);
  await press(desk, "See before and after");
  await desk.pane.locator(".repricing").waitFor();
}

test("a catalogue of 2,000 lines: before and after of every line in exact fractions, taken over, every price right", {
  timeout: 240_000,
}, async () => {
  const lines = Array.from({ length: 2000 }, (_, index) => lineOf(index));
  const cells = lines.map(({ design, mark, length, weight }) => [design, mark, "yellow", length, 4, weight.valueOf()]);
  await ownSheet(desk, "All", "A1", [HEADER, ...cells], "Everything");
  await openCatalogue(desk);
  const before = await desk.page.evaluate(() => window.workbookPage.syncCount);
  await readDesigns(desk, "Everything");
  await unfold(desk, "New spot");
  await see("778.5");
  // Reading and reckoning asks little of Excel, however long the catalogue.
  expect((await desk.page.evaluate(() => window.workbookPage.syncCount)) - before).toBeLessThanOrEqual(3);

  const was = lines.map((line) => pricedAt(line, new Fraction("777.58692")));
  const now = lines.map((line) => pricedAt(line, new Fraction("778.5")));
  const changes = now.map(({ price }, index) => price.sub(was[index]?.price ?? 0));
  const moved = changes.filter((change) => !change.equals(0)).length;
  expect(moved).toBeGreaterThan(100);
  expect(moved).toBeLessThan(2000);
  const most = changes.reduce((best, change, index) => (change.gt(changes[best] ?? 0) ? index : best), 0);
  expect(await said(desk, ".headcount")).toBe(`${number(String(moved))} of 2,000 lines get another price.`);
  const price = (fraction: Fraction | undefined) => `USD ${number(fraction?.toString() ?? "")}.00`;
  expect(await said(desk, ".repricing .move")).toBe(
    `Largest move up: Design ${most}, ${price(was[most]?.price)} to ${price(now[most]?.price)}.`,
  );
  expect(await desk.pane.locator(".listed.below").count()).toBe(0);

  await see("930");
  const high = lines.map((line) => pricedAt(line, new Fraction(930)));
  const below = high.filter(({ landed }, index) => landed.div("0.9").gt(was[index]?.price ?? 0)).length;
  expect(below).toBeGreaterThan(0);
  expect(below).toBeLessThan(2000);
  expect(await said(desk, ".listed.below > p")).toBe(
    `${below === 1 ? "One line falls below its" : `${number(String(below))} lines fall below their`} floor if they keep their present price:`,
  );
  expect(await rate("Spot")).toBe(777.58692);

  // More than 15 % away: asked about first.
  expect(await desk.pane.getByRole("button", { name: "Take over this spot" }).isVisible()).toBe(false);
  await desk.pane.getByLabel("It is right").check();
  await desk.pane.getByLabel("Source", { exact: true }).fill("=noon fixing");
  await desk.pane.getByLabel("Read at", { exact: true }).fill("2026-05-31T14:30");
  await press(desk, "See before and after");
  await desk.pane.getByLabel("It is right").check();
  await press(desk, "Take over this spot");
  await desk.pane.getByText("Spot on Rates is now").first().waitFor();
  expect([await rate("Spot"), await rate("SpotSource")]).toEqual([930, "=noon fixing"]);
  // Days from 30 December 1899 to 31 May 2026, and 14.5 hours.
  expect(await rate("SpotTime")).toBeCloseTo(46173 + 14.5 / 24, 8);

  await unfold(desk, "New spot");
  await unfold(desk, "Price list in the workbook");
  await press(desk, "Make the price list");
  const listed = await valuesOf(desk, "Price list", "A5:G2004");
  expect(listed.map((row) => [row[0], row[6]])).toEqual(
    lines.map(({ design }, index) => [design, high[index]?.price.valueOf()]),
  );
});

test("per gram of a mark it is turned into ounces exactly: 18.75 a gram of 750 is 25 fine, the spot there is", async () => {
  await ownSheet(desk, "D", "A1", SMALL);
  await openCatalogue(desk);
  await readDesigns(desk);
  await unfold(desk, "New spot");
  await desk.pane.getByLabel("Counted for").selectOption("gram");
  await desk.pane.locator("#newspot-mark").fill("750");
  await see("18.75");
  expect(await said(desk, ".outcome > p")).toBe("From USD 777.58692 to USD 777.58692 an ounce: +0%.");
  expect(await said(desk, ".headcount")).toBe("None of 1 lines gets another price: no move reaches a price step.");
  expect(await said(desk, ".listed.refused li")).toContain('Row 3, Odd. Mark: found "25K"');
  // 20 a gram of 750: 20 / 0.75 x 31.1034768 = 829.426048.
  await see("20");
  expect(await said(desk, ".outcome > p")).toBe("From USD 777.58692 to USD 829.426048 an ounce: +6.7%.");
  await press(desk, "Leave Rates as they are");
  expect(await rate("Spot")).toBe(777.58692);
});

test("what is typed wrong is told at its field; Rates changed meanwhile makes before and after old", async () => {
  await ownSheet(desk, "D", "A1", SMALL);
  await openCatalogue(desk);
  await readDesigns(desk);
  await unfold(desk, "New spot");
  await desk.pane.locator("#newspot").fill("2,650");
  await press(desk, "See before and after");
  expect(await desk.pane.locator("#newspot-fault").textContent()).toContain(
    'Spot: found "2,650", which has separators',
  );
  await see("800");
  await setRate(desk, "Markup", "0.4");
  await desk.pane.getByText("Rates or designs have changed since.").waitFor();
  expect(await desk.pane.getByRole("button", { name: "Take over this spot" }).count()).toBe(0);
});

test("a spot that is a formula of the person's is never written over; a time that is one is left", async () => {
  await setRate(desk, "SpotTime", "=TODAY()");
  await ownSheet(desk, "D", "A1", SMALL);
  await openCatalogue(desk);
  await readDesigns(desk);
  await unfold(desk, "New spot");
  await see("800");
  await press(desk, "Take over this spot");
  await desk.pane.getByText("Spot as of: a formula of yours stands there and was left as it is.").first().waitFor();
  expect(await rate("Spot")).toBe(800);
  // Put back, the formula is as it was too.
  await press(desk, "Put the old spot back: USD 777.58692");
  await desk.pane.getByText("again, with Spot source as before.").first().waitFor();
  const time = await rateCell(desk, "SpotTime");
  expect([await rate("Spot"), (await cellAt(desk, ...time))?.formula]).toEqual([777.58692, "=TODAY()"]);
  const [sheet, cell] = await rateCell(desk, "Spot");
  await typeIn(desk.page, sheet, cell, "=400*2");
  await see("810");
  await press(desk, "Take over this spot");
  await desk.pane.getByText("Spot on Rates is a formula, =400*2.").waitFor();
  expect(await rate("Spot")).toBe(800);
});

test("a spot taken over is put back in one press, as it stood in every cell; not over what was changed since", async () => {
  const back = () => press(desk, "Put the old spot back: USD 777.58692");
  const entry = desk.pane.locator(".added > li", { hasText: "Spot on Rates" });
  await setRate(desk, "SpotTime", "2026-01-02");
  await setRate(desk, "SpotSource", "'=first call");
  await setRate(desk, "SpotAge", "24");
  await ownSheet(desk, "D", "A1", SMALL);
  await openCatalogue(desk);
  await readDesigns(desk);
  const before = await dump(desk);
  const age = await said(desk, "header .spotage");
  expect(age).toMatch(/^Spot is [\d,]+ days old; your limit is 24 hours\.$/);
  const accept = async (spot: string, source: string) => {
    await desk.pane.getByLabel("Source", { exact: true }).fill(source);
    await see(spot);
    await press(desk, "Take over this spot");
    await entry.waitFor();
  };
  await unfold(desk, "New spot");
  await accept("800", "noon");
  expect(await said(desk, ".added > li > span")).toBe("Spot on Rates: USD 800.00, in place of USD 777.58692");
  expect([await rate("Spot"), await rate("SpotSource")]).toEqual([800, "noon"]);
  expect(await desk.pane.locator("header .spotage:visible").count()).toBe(0);

  // Another day: the pane is opened anew, and no designs are chosen.
  await desk.pane.evaluate(() => location.reload());
  await desk.page.evaluate(() => window.workbookPage.settled());
  await desk.pane.getByLabel("Customer", { exact: true }).waitFor();
  await openCatalogue(desk);
  await back();
  await desk.pane
    .getByText("Spot on Rates is USD 777.58692 again, with Spot as of and Spot source as before.")
    .first()
    .waitFor();
  expect(await dump(desk)).toEqual(before);
  expect(await said(desk, "header .spotage")).toBe(age);
  expect(await entry.count()).toBe(0);

  // Before and after are reckoned from the old spot again: 777.58692 x 1.05 = 816.466266.
  await readDesigns(desk);
  await unfold(desk, "New spot");
  await see("816.466266");
  expect(await said(desk, ".outcome > p")).toBe("From USD 777.58692 to USD 816.466266 an ounce: +5%.");
  await accept("800", "noon");
  for (const [name, text, label] of [
    ["SpotSource", "=400&CHAR(32)", "Spot source"],
    ["Spot", "801", "Spot, Spot source"],
    ["Currency", "EUR", "Spot, Spot source, Currency"],
  ] as const) {
    await setRate(desk, name, text);
    const held = await dump(desk);
    await back();
    const sentence = `Changed on Rates since that spot was taken over: ${label}.`;
    await desk.pane.getByText(`${sentence} It is yours and is left as it is, so nothing was put back.`).waitFor();
    expect(await dump(desk)).toEqual(held);
  }
  expect(await rate("Spot")).toBe(801);
});

test("long work is called off between two slices, and nothing in the workbook has changed", {
  timeout: 120_000,
}, async () => {
  // No two marks alike: lines that are alike would be done in one slice.
  const cells = Array.from({ length: 2000 }, (_, index) => [`D${index}`, 740 + index / 200, "yellow", 12.5, 4, 2]);
  await ownSheet(desk, "All", "A1", [HEADER, ...cells], "Everything");
  await openCatalogue(desk);
  await readDesigns(desk, "Everything");
  await unfold(desk, "New spot");
  await desk.pane.locator("#newspot").fill("800");
  // A quick machine would be done before the mouse is there: the next slice waits until Cancel is pressed.
  const goOn = await holdSlices();
  await desk.pane.getByRole("button", { name: "See before and after", exact: true }).click();
  await desk.pane.getByRole("button", { name: "Cancel", exact: true }).first().click();
  await goOn();
  await desk.pane.getByText("Called off. The workbook is as it was.").first().waitFor();
  expect(await desk.pane.locator(".repricing").count()).toBe(0);
  // Columns called off while they are written are taken back.
  await unfold(desk, "New spot");
  await unfold(desk, "Price list in the workbook");
  await desk.pane.getByRole("button", { name: "Add columns beside the designs", exact: true }).click();
  await desk.page.waitForFunction(() => window.workbookPage.read("All", "H1")[0]?.[0]?.value === "Links");
  await desk.page.evaluate(() => window.workbookPage.hold(0));
  await desk.pane.locator(".progress:not([hidden]) .button").click();
  await desk.page.evaluate(() => window.workbookPage.letGo());
  await desk.pane.locator(".cataloguebody > .ending", { hasText: "Called off. The workbook is as it was." }).waitFor();
  await settled(desk.page);
  expect((await valuesOf(desk, "All", "G1:P300")).flat().join("")).toBe("");
  expect(await desk.pane.getByText("Put into this workbook").isVisible()).toBe(false);
});

test("a spot older than the person's limit is told on Rates, in the head and above the press; a blank limit says nothing", async () => {
  const [sheet, cell] = await rateCell(desk, "SpotAge");
  const remark = async () => String(await value(desk, sheet, cell.replace("B", "D")));
  // A new Rates sheet marks a spot older than a day.
  expect((await value(desk, sheet, cell)) as unknown).toBe(24);
  await clearRate(desk, "SpotAge");
  expect(await remark()).toBe("An older spot is marked here and in the pane; empty: never");
  expect(await desk.pane.locator(".spotage:visible").count()).toBe(0);
  await setRate(desk, "SpotTime", "2026-01-01");
  await setRate(desk, "SpotAge", "24");
  await desk.pane.locator("footer .spotage:visible").waitFor();
  expect(await said(desk, "header .spotage")).toMatch(/^Spot is [\d,]+ days old; your limit is 24 hours\.$/);
  expect(await said(desk, "footer .spotage")).toContain("Read spot anew before you quote.");
  expect(await remark()).toMatch(/^OLD: Spot as of is [\d.]+ hours ago$/);
  await setRate(desk, "SpotTime", "=NOW()");
  await expect.poll(() => desk.pane.locator(".spotage:visible").count()).toBe(0);
  await setRate(desk, "SpotTime", "this morning");
  await expect.poll(() => said(desk, "header .spotage")).toContain("Spot has no date and time");
  expect(await remark()).toContain("the age of spot is not known");
});
