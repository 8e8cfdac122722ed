import { afterAll, beforeAll, expect, test } from "vitest";
import demo from "./demo.json";
import { settled, typeIn } from "./person.mjs";
import { StandIn } from "./standin";

let book: StandIn;

beforeAll(async () => {
  book = await StandIn.open("pane=320");
});
afterAll(() => book.close());

/** What a cell of the demo's data becomes: a formula, a text behind an apostrophe, a number, or itself. */
function expected(content: unknown): unknown {
  if (typeof content !== "string") return content ?? "";
  if (content.startsWith("'")) return content.slice(1);
  return content.trim() !== "" && Number.isFinite(Number(content)) ? Number(content) : content;
}

test("the demo workbook is laid out as its data says", async () => {
  for (const { name, blocks } of demo.sheets) {
    for (const [first, lines] of Object.entries<unknown[][]>(blocks)) {
      const [, letter = "", row = ""] = /^([A-Z]+)(\d+)$/.exec(first) ?? [];
      const columns = Math.max(...lines.map((line) => line.length));
      const last = String.fromCharCode(letter.charCodeAt(0) + columns - 1);
      const shown = await book.read(name, `${first}:${last}${Number(row) + lines.length - 1}`);
      const contents = shown.map((line) => line.map(({ value, formula }) => formula || value));
      expect(contents).toEqual(
        lines.map((line) => Array.from({ length: columns }, (_, index) => expected(line[index]))),
      );
    }
  }
  const names = await book.page.evaluate(() => window.workbookPage.names());
  const wanted = demo.names.map(({ name, refersTo }) => [name, refersTo]);
  expect(names.map(({ name, formula }) => [name, formula]).sort()).toEqual(wanted.sort());
});

test("resetting the demo brings back what was there and drops what was made", async () => {
  const before = await book.page.evaluate(() => window.workbookPage.sheets());
  const cell = await book.values("Designs", "A5");
  await typeIn(book.page, "Designs", "A5", "changed");
  await book.run(async (context) => {
    context.workbook.worksheets.add("Made");
    context.workbook.worksheets.getItem("Orders").delete();
    await context.sync();
  });
  await book.page.getByRole("button", { name: "Reset the demo" }).click();
  await book.page.getByRole("button", { name: "Reset and lose this" }).click();
  await book.page.getByRole("button", { name: "Reset the demo" }).and(book.page.locator(":enabled")).waitFor();
  await settled(book.page);
  expect(before.map(({ name }) => name)).toEqual(demo.sheets.map(({ name }) => name));
  expect(await book.page.evaluate(() => window.workbookPage.sheets())).toEqual(before);
  expect(await book.values("Designs", "A5")).toEqual(cell);
});

test("the pane has the width asked for, and the splitter changes it by mouse and keyboard", async () => {
  const width = async () => (await book.page.locator("#pane").boundingBox())?.width;
  expect(await width()).toBe(320);
  const box = await book.page.locator("#splitter").boundingBox();
  if (!box) throw new Error("The splitter is not drawn");
  await book.page.mouse.move(box.x + 3, box.y + 200);
  await book.page.mouse.down();
  await book.page.mouse.move(box.x + 3 - 100, box.y + 200, { steps: 4 });
  await book.page.mouse.up();
  expect(await width()).toBe(420);
  await book.page.locator("#splitter").press("ArrowRight");
  expect(await width()).toBe(400);
});

test("a pane that is loaded anew talks to the same workbook", async () => {
  await book.pane.evaluate(() => {
    Object.assign(window, { isOld: true });
    location.reload();
  });
  await book.pane.waitForFunction(
    () => !("isOld" in window) && "Excel" in window && document.readyState === "complete",
  );
  const name = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.getFirst().load("name");
    await context.sync();
    return sheet.name;
  });
  expect(name).toBe(demo.sheets[0]?.name);
});
