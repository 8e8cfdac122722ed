import { beforeAll, expect, test } from "vitest";
import { fill, press, view } from "./desk";
import { clickCell, settled } from "./person.mjs";
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
  const make = desk.pane.getByRole("button", { name: "Make the quote" });
  expect(await make.isVisible()).toBe(true);
  await make.click();
  await desk.pane.locator(".banner.failed").waitFor();
  await desk.pane.evaluate(() => window.scrollTo(0, 300));
  await desk.pane.getByRole("tab", { name: "Links" }).click();
  await settled(desk.page);
  expect(await make.isVisible()).toBe(false);
  // What was said of the order has gone with it.
  expect(await desk.pane.locator(".banner.failed").count()).toBe(0);
  await desk.page.keyboard.press("Control+Enter");
  expect(await desk.pane.locator(".banner.failed").count()).toBe(0);
  await desk.pane.getByRole("tab", { name: "Quote" }).click();
  expect(await desk.pane.evaluate(() => window.scrollY)).toBe(300);
  expect(await desk.pane.getByLabel("Customer", { exact: true }).inputValue()).toBe("Ada Quillfeather");
});

// WCAG 2.2, 2.5.8: links inside a sentence are excepted.
test("every tab, button and fold of the pane is a target of at least 24 px each way", async () => {
  const small: string[] = [];
  let seen = 0;
  for (const name of ["Quote", "Check", "Decide", "Links", "Catalogue"] as const) {
    await view(desk, name);
    await desk.pane.evaluate(() => {
      for (const fold of document.querySelectorAll<HTMLDetailsElement>("[role=tabpanel]:not([hidden]) > details"))
        fold.open = true;
    });
    await settled(desk.page);
    const targets = await desk.pane.locator("[role=tab]:visible, .button:visible, .part > summary:visible").all();
    for (const target of targets) {
      const box = await target.boundingBox();
      seen += 1;
      if (!box || box.width < 24 || box.height < 24)
        small.push(`${name}: ${await target.textContent()} ${box?.width} x ${box?.height}`);
    }
  }
  expect(seen).toBeGreaterThan(30);
  expect(small).toEqual([]);
});

test("the button that was pressed by the keyboard has the focus still when its work is done", async () => {
  await view(desk, "Quote");
  await clickCell(desk.page, "Orders", "B6");
  await press(desk, "Take from the selected row");
  await press(desk, "Make the quote");
  await press(desk, "Still to be agreed with the customer");
  await desk.pane.getByRole("button", { name: "Make the quote" }).focus();
  await desk.page.keyboard.press("Enter");
  await desk.pane.getByText("are in the workbook").waitFor();
  await settled(desk.page);
  expect(await focused()).toBe("Make the quote");
});
