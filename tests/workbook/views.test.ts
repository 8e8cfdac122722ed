import { beforeAll, expect, test } from "vitest";
import { fill } from "./desk";
import { settled } from "./person.mjs";
import { deskForAll } from "./workshop";

const desk = deskForAll((workshop) => workshop.sitDown("book=workshop&pane=320"));

beforeAll(async () => {
  await desk.pane.getByLabel("Customer", { exact: true }).waitFor();
});

const shown = () => desk.pane.locator("[role=tabpanel]:not([hidden])").getAttribute("id");
const focused = () => desk.pane.evaluate(() => document.activeElement?.textContent);

// WAI-ARIA Authoring Practices, tabs pattern with automatic activation.
test("tabs: one stop of the Tab key, arrows around, Home and End; what is shown is named by its tab", async () => {
  const { keyboard } = desk.page;
  const tab = desk.pane.getByRole("tab", { name: "Quote" });
  await tab.focus();
  const seen: (string | null | undefined)[] = [];
  for (const key of ["ArrowRight", "End", "ArrowRight", "ArrowLeft", "Home"]) {
    await keyboard.press(key);
    seen.push(await shown(), await focused());
  }
  expect(seen).toEqual(
    [
      ["view-check", "Check"],
      ["view-catalogue", "Catalogue"],
      ["view-quote", "Quote"],
      ["view-catalogue", "Catalogue"],
      ["view-quote", "Quote"],
    ].flat(),
  );
  expect(await desk.pane.locator("[role=tab][tabindex='0']").allTextContents()).toEqual(["Quote"]);
  expect(await desk.pane.getByRole("tabpanel", { name: "Quote" }).count()).toBe(1);
});

test("what is typed and where it was left stay when another view is looked at; only an order can be made a quote", async () => {
  await fill(desk, { Customer: "Ada Quillfeather" });
  await desk.pane.evaluate(() => window.scrollTo(0, 300));
  const press = desk.pane.getByRole("button", { name: "Make the quote" });
  expect(await press.isVisible()).toBe(true);
  await press.click();
  await desk.pane.locator(".banner.failed").waitFor();
  await desk.pane.evaluate(() => window.scrollTo(0, 300));
  await desk.pane.getByRole("tab", { name: "Links" }).click();
  await settled(desk.page);
  expect(await press.isVisible()).toBe(false);
  // What was said of the order has gone with it.
  expect(await desk.pane.locator(".banner.failed").count()).toBe(0);
  await desk.page.keyboard.press("Control+Enter");
  expect(await desk.pane.locator(".banner.failed").count()).toBe(0);
  await desk.pane.getByRole("tab", { name: "Quote" }).click();
  expect(await desk.pane.evaluate(() => window.scrollY)).toBe(300);
  expect(await desk.pane.getByLabel("Customer", { exact: true }).inputValue()).toBe("Ada Quillfeather");
});
