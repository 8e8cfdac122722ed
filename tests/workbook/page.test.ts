import { afterAll, beforeAll, expect, test } from "vitest";
import demo from "./demo.json";
import { settled, typeIn } from "./person.mjs";
import { StandIn } from "./standin";

let book: StandIn;

beforeAll(async () => {
  book = await StandIn.open("pane=320");
});
afterAll(() => book.close());

test("the demo workbook is laid out as its data says", async () => {
  const [designs] = demo.sheets;
  const [title, ...lines] = designs?.blocks.A4 ?? [];
  const shown = await book.values("Designs", "A4:I16");
  expect(shown[0]).toEqual(title?.slice(0, 9));
  expect(shown.slice(1)).toEqual(
    lines.map((line) => line.slice(0, 9).map((cell) => (/^\d+$/.test(`${cell}`) ? Number(cell) : cell))),
  );
  const formulas = (await book.read("Designs", "J5:M5"))[0]?.map(({ formula }) => formula);
  expect(formulas).toEqual(lines[0]?.slice(9));
  expect(await book.page.evaluate(() => window.workbookPage.names())).toMatchObject([
    { name: "Spot", formula: "=Designs!$B$2" },
  ]);
});

test("resetting the demo brings back what was there and drops what was made", async () => {
  await typeIn(book.page, "Designs", "A5", "changed");
  await book.run(async (context) => {
    context.workbook.worksheets.add("Made");
    context.workbook.worksheets.getItem("Orders").delete();
    await context.sync();
  });
  await book.page.getByRole("button", { name: "Reset the demo" }).click();
  await book.page.getByRole("button", { name: "Reset the demo" }).and(book.page.locator(":enabled")).waitFor();
  await settled(book.page);
  expect(await book.page.evaluate(() => window.workbookPage.sheets())).toEqual([
    { name: "Designs", visibility: "Visible" },
    { name: "Orders", visibility: "Visible" },
  ]);
  expect(await book.values("Designs", "A5")).toEqual([["Harbour flat"]]);
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
  await book.pane.evaluate(() => location.reload());
  await book.page.waitForFunction(() => {
    const frame = document.getElementById("pane");
    return frame instanceof HTMLIFrameElement && frame.contentDocument?.readyState === "complete";
  });
  await book.pane.waitForFunction(() => "Excel" in window);
  const name = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.getFirst().load("name");
    await context.sync();
    return sheet.name;
  });
  expect(name).toBe("Designs");
});
