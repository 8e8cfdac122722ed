import { beforeEach, expect, test } from "vitest";
import { fill, HUNDRED_GRAMS, menu, press, sheetNames, texts, withRates } from "./desk";
import { settled } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach(withRates);

beforeEach(async () => {
  await fill(desk, HUNDRED_GRAMS);
  await unfold();
});

async function unfold(): Promise<void> {
  await desk.pane.locator("details.template > summary").click();
  await settled(desk.page);
}

const choice = () => desk.pane.getByLabel("Make quotes from", { exact: true });

test("the usual template is chosen, and the built-in ones are offered beside it", async () => {
  expect(await choice().inputValue()).toBe("Quote template");
  const offered = await choice().locator("optgroup option").allTextContents();
  expect(offered).toContain("Counter ticket template");
  expect(offered.some((name) => /^Quote template (A4|Letter)$/.test(name))).toBe(true);
});

test("a quote made from the counter ticket adds that sheet and is a copy of it", async () => {
  await fill(desk, { "Make quotes from": "Counter ticket template" });
  await press(desk, "Make the quote");
  expect(await sheetNames(desk)).toEqual(
    expect.arrayContaining(["Quote template", "Counter ticket template", "Quote 1001", "Job 1001", "Tickets 1001"]),
  );
  const [ticket, quote] = await Promise.all(
    ["Counter ticket template", "Quote 1001"].map((sheet) => texts(desk, sheet, "A1:F40")),
  );
  // The same sheet, filled: what has no field in it stands in both.
  const fixed = ticket?.flat().filter((text) => text !== "" && !/\{\{|\[\[/.test(text)) ?? [];
  expect(fixed.length).toBeGreaterThan(2);
  expect(quote?.flat()).toEqual(expect.arrayContaining(fixed));
  expect(quote?.flat().join(" ")).toContain("Ada Quillfeather");
});

test("a template is added on request, to be restyled before the first quote", async () => {
  await fill(desk, { "Make quotes from": "Counter ticket template" });
  await press(desk, "Add it now, to restyle it");
  expect(await sheetNames(desk)).toContain("Counter ticket template");
  expect(await desk.pane.getByRole("button", { name: "Add it now, to restyle it" }).isVisible()).toBe(false);
  expect(await choice().inputValue()).toBe("Counter ticket template");
});

test("one that was renamed meanwhile is refused by its name, and nothing is made", async () => {
  await fill(desk, { "Make quotes from": "Counter ticket template" });
  await press(desk, "Add it now, to restyle it");
  await menu(desk, "rename", "Counter ticket template", "My ticket template");
  await unfold();
  await unfold();
  expect(await choice().locator("option").allTextContents()).toContain("My ticket template");
  await fill(desk, { "Make quotes from": "My ticket template" });
  await menu(desk, "rename", "My ticket template", "Something else");
  await press(desk, "Make the quote");
  expect(await desk.pane.locator(".banner.failed").textContent()).toContain(
    'The template "My ticket template" is gone',
  );
  expect(await sheetNames(desk)).not.toContain("Quote 1001");
});
