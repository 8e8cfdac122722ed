import { beforeEach, expect, test } from "vitest";
import { fill, HUNDRED_GRAMS, setRate, withRates } from "./desk";
import { settled } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach(withRates);

beforeEach(async () => {
  await setRate(desk, "LossBasis", "grams");
  await setRate(desk, "Loss", "2");
  await setRate(desk, "CostBasis", "quick");
  await fill(desk, HUNDRED_GRAMS);
  await desk.pane.locator(".price").waitFor();
});

/** Scripts the pane has loaded since it was opened. */
const scripts = () =>
  desk.pane.evaluate(() =>
    performance
      .getEntriesByType("resource")
      .map(({ name }) => new URL(name).pathname.split("/").pop() ?? "")
      .filter((name) => name.endsWith(".js")),
  );
const plot = (title: string) =>
  desk.pane.locator(".plot", { has: desk.pane.getByRole("heading", { name: title, exact: true }) });
const open = () => desk.pane.getByText("Plots", { exact: true }).click();

/** What a plot says, with plain spaces. */
async function said(title: string): Promise<string> {
  return ((await plot(title).locator(":scope > p").textContent()) ?? "").replace(/\s/g, " ");
}

test("nothing of the plots is loaded before they are opened, and then once", async () => {
  expect(await scripts()).toContain("taskpane.js");
  expect(await scripts()).not.toContain("plots.js");
  await open();
  await plot("Make or buy by weight").locator("svg").waitFor();
  await open();
  await open();
  await plot("Make or buy by weight").locator("svg").waitFor();
  await settled(desk.page);
  expect((await scripts()).filter((name) => name === "plots.js")).toHaveLength(1);
});

test("100 g at 25.00, 1.50 cast, 50 labour, 2 g lost, surcharge 3.25: both plots, and what they say (common practice)", async () => {
  await open();
  // 50 + 2 x 25 flat, over 3.25 - 1.50: 57.142… g.
  const sourcing = plot("Make or buy by weight");
  await sourcing.locator("svg").waitFor();
  expect(await said("Make or buy by weight")).toBe(
    "With heavier links or with more of them, making costs less per gram above 57.1 g of plain chain. The curves are of heavier links. The plain chain of this order, 100.0 g, costs USD 27.50 a gram made and USD 28.25 bought.",
  );
  // 2750 x 1.3 = 3575; 825 / 3575. Floor: (3575 x 0.9 - 150 - 50) / 102 g x 31.1034768 = 920.144…
  expect(await said("Margin if spot moves")).toBe(
    "The price of USD 3,575.00 leaves a margin of 23.1% at this order's spot of USD 777.58692. Your least margin of 10% is kept up to a spot of USD 920.14.",
  );
  expect(await sourcing.locator("path.curve").count()).toBe(2);
  expect(await plot("Margin if spot moves").locator("path.curve").count()).toBe(1);
  for (const svg of await desk.pane.locator(".picture svg").all()) {
    const box = await svg.boundingBox();
    expect(box?.width).toBeGreaterThan(200);
    expect(box?.height).toBeGreaterThan(150);
  }
  // The dots of crossing and order lie on the lines they mark: the crossing where both are equally high.
  const [crossing, orderBought, orderMade] = await sourcing
    .locator("circle")
    .evaluateAll((dots) =>
      dots.map((dot) => ({ x: Number(dot.getAttribute("cx")), y: Number(dot.getAttribute("cy")) })),
    );
  const bought = await sourcing.locator("path.bought").evaluate((path) => path.getAttribute("d") ?? "");
  expect(Number(/^M[\d.]+,([\d.]+)/.exec(bought)?.[1])).toBeCloseTo(crossing?.y ?? 0, 2);
  expect(orderBought?.y).toBeCloseTo(crossing?.y ?? 0, 2);
  expect(orderMade?.x).toBeGreaterThan(crossing?.x ?? 0);
  expect(orderMade?.y).toBeGreaterThan(crossing?.y ?? 0);
});

test("the points can be read as a table, with this order among them", async () => {
  await open();
  const sourcing = plot("Make or buy by weight");
  await sourcing.getByText("Points of this plot").click();
  const table = sourcing.getByRole("table", { name: "Make or buy by weight" });
  await table.waitFor();
  const row = table.getByRole("row", { name: /^100\.0/ });
  expect((await row.allTextContents()).map((text) => text.replace(/\s/g, " "))).toEqual(["100.0USD 27.50USD 28.25"]);
});

test("while open they follow the order, and the cursor's field stays where it is", async () => {
  await open();
  await plot("Make or buy by weight").locator("svg").waitFor();
  const length = desk.pane.getByLabel("Length", { exact: true });
  await length.scrollIntoViewIfNeeded();
  await length.focus();
  const before = await length.evaluate((field) => field.getBoundingClientRect().top);
  await length.fill("2.5");
  // 20 g x 26.50 + 50 + 50 = 630.
  await desk.pane.getByText(/this order, 20\.0\sg, costs USD\s31\.50 a gram made/).waitFor();
  expect(await length.evaluate((field) => field.getBoundingClientRect().top)).toBeCloseTo(before, 0);
  await fill(desk, { Discount: "0.2" });
  // 20 g: 630 x 1.3 = 819, less 20 %: 655.2; 25.2 / 655.2 = 3.8 %, under the floor.
  await desk.pane.getByText(/The price after the discount, USD\s655\.20, leaves a margin of 3\.8%/).waitFor();
  expect(await said("Margin if spot moves")).toContain("would be kept only up to a spot of USD ");
});

test("where making never wins it says so, and marks no crossing", async () => {
  await setRate(desk, "Surcharge", "1.5");
  await open();
  await plot("Make or buy by weight").locator("svg").waitFor();
  expect(await said("Make or buy by weight")).toContain(
    "With heavier links or with more of them, making never costs less per gram at these rates.",
  );
  expect(await plot("Make or buy by weight").locator("circle.crossing").count()).toBe(0);
});

test("plots that could not be loaded are told of, and load at the next opening", async () => {
  await desk.page.route("**/plots.js?*", (route) => route.abort());
  await open();
  await desk.pane.getByText("The plots could not be loaded.").waitFor();
  await desk.page.unroute("**/plots.js?*");
  await open();
  await open();
  await plot("Margin if spot moves").locator("svg").waitFor();
  expect(await desk.pane.getByText("The plots could not be loaded.").count()).toBe(0);
});
