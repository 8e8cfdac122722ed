import ExcelJS from "exceljs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { StandIn } from "./standin";

let file: ExcelJS.Workbook;
let html: string;
let book: StandIn;

/** A PNG of one dark dot, in base64. */
const DOT = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR4nGNgYGD4DwABBAEAX+XDSwAAAABJRU5ErkJggg==";

beforeAll(async () => {
  book = await StandIn.open();
  await book.run(async (context, dot) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    sheet.name = "Quote 1";
    sheet.getRange("A1:C1").values = [["Title", "'=1+1", "<b>&"]];
    sheet.getRange("A1:B1").format.font.bold = true;
    sheet.getRange("A2:B3").formulas = [
      [1234.5, '=CURB.SEEN("CURB.ONE(")'],
      [2, "=A2*A3"],
    ];
    sheet.getRange("A2").numberFormat = [["$#,##0.00"]];
    sheet.getRange("A2").format.fill.color = "#F4ECD8";
    sheet.getRange("A3").format.borders.getItem("EdgeBottom").style = "Double";
    sheet.getRange("D1").formulas = [["=CURB.DOUBLED(A2:A3)"]];
    sheet.getRange("D3").formulas = [['=CURB.GIVE("missing")']];
    sheet.getRange("A5:C5").merge();
    sheet.getRange("A5").values = [["merged"]];
    sheet.getRange("A:A").format.columnWidth = 120;
    sheet.getRange("5:5").format.rowHeight = 33;
    sheet.getRange("A6").dataValidation.rule = { list: { inCellDropDown: true, source: "yellow,white" } };
    sheet.freezePanes.freezeRows(1);
    sheet.showGridlines = false;
    const page = sheet.pageLayout;
    page.orientation = "Landscape";
    page.paperSize = "A4";
    page.zoom = { horizontalFitToPages: 1 };
    page.setPrintArea("A1:D6");
    page.setPrintTitleRows("$1:$1");
    page.setPrintMargins("Inches", { left: 1, top: 0.5 });
    const under = sheet.getRange("B6").load("left,top");
    await context.sync();
    sheet.shapes.addImage(dot).set({ left: under.left + 3, top: under.top + 1.5, width: 24, height: 12 });
    context.workbook.names.add("Fee", sheet.getRange("A3"));
    context.workbook.names.add("Share", "=0.05");
    sheet.names.add("Own", sheet.getRange("B3"));
    context.workbook.worksheets.add("Hidden").visibility = "VeryHidden";
    await context.sync();
  }, DOT);
  const base64 = await book.page.evaluate(() => window.workbookPage.saveXlsx());
  file = new ExcelJS.Workbook();
  const bytes = Buffer.from(base64, "base64");
  await file.xlsx.load(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer);
  html = await book.page.evaluate(() => window.workbookPage.print("Quote 1").html);
});
afterAll(() => book.close());

const cell = (address: string) => {
  const sheet = file.getWorksheet("Quote 1");
  if (!sheet) throw new Error("The file has no sheet Quote 1");
  return sheet.getCell(address);
};

test("values keep their kind, and a text that looks like a formula stays one", () => {
  expect(cell("A1").value).toBe("Title");
  expect(cell("B1").value).toBe("=1+1");
  expect(cell("A2").value).toBe(1234.5);
});

test("formulas carry the value they had, add-in functions under the name Excel saves them by", () => {
  expect(cell("B3").value).toEqual({ formula: "A2*A3", result: 2469 });
  expect(cell("B2").value).toEqual({
    formula: '_xldudf_CURB_SEEN("CURB.ONE(")',
    result: '[[["CURB.ONE("]],null,null]',
  });
  expect(cell("D3").value).toEqual({ formula: '_xldudf_CURB_GIVE("missing")', result: { error: "#N/A" } });
});

test("a spilled array is an array formula with its values in their cells", () => {
  expect(cell("D1").value).toMatchObject({ formula: "_xldudf_CURB_DOUBLED(A2:A3)", result: 2469, ref: "D1:D2" });
  expect(cell("D2").value).toBe(4);
});

test("a picture lies over the cell it was put on, as big as it was made", () => {
  const sheet = file.getWorksheet("Quote 1");
  const [picture] = sheet?.getImages() ?? [];
  // 24 x 12 points are 32 x 16 pixels; 3 and 1.5 points are 38,100 and 19,050 EMU.
  expect(picture?.range).toMatchObject({
    tl: { nativeRow: 5, nativeCol: 1, nativeRowOff: 19_050, nativeColOff: 38_100 },
    ext: { width: 32, height: 16 },
  });
  const image = file.getImage(Number(picture?.imageId));
  expect(Buffer.from(image.buffer ? new Uint8Array(image.buffer) : []).toString("base64")).toBe(DOT);
});

test("looks, sizes, merges, panes and hidden sheets are kept", () => {
  expect(cell("A1").font.bold).toBe(true);
  expect(cell("A2").numFmt).toBe("$#,##0.00");
  expect(cell("A2").fill).toMatchObject({ pattern: "solid", fgColor: { argb: "FFF4ECD8" } });
  expect(cell("A3").border.bottom?.style).toBe("double");
  expect(cell("B5").master.address).toBe("A5");
  const sheet = file.getWorksheet("Quote 1");
  // 120 points are 160 pixels: 155 of them at 7 a character.
  expect(sheet?.getColumn(1).width).toBeCloseTo(155 / 7, 2);
  expect(sheet?.getRow(5).height).toBe(33);
  expect(sheet?.views[0]).toMatchObject({ state: "frozen", ySplit: 1, showGridLines: false });
  expect(file.getWorksheet("Hidden")?.state).toBe("veryHidden");
  expect(cell("A6").dataValidation).toMatchObject({ type: "list", formulae: ['"yellow,white"'] });
});

test("the print set-up and the names are kept", () => {
  const setup = file.getWorksheet("Quote 1")?.pageSetup;
  expect(setup).toMatchObject({
    orientation: "landscape",
    paperSize: 9,
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
  });
  expect(setup?.printArea).toBe("A1:D6");
  expect(setup?.printTitlesRow).toBe("1:1");
  expect(setup?.margins).toMatchObject({ left: 1, top: 0.5, right: 0.7 });
  const names = file.definedNames.model.map(({ name, ranges }) => [name, ranges]);
  expect(names).toContainEqual(["Fee", ["'Quote 1'!$A$3"]]);
  expect(names).toContainEqual(["Own", ["'Quote 1'!$B$3"]]);
});

test("the print sheet is the print area on its paper, its first row a heading that repeats", async () => {
  const print = await book.show(html);
  expect(html).toContain("size: 297mm 210mm");
  expect(html).toContain("margin: 12.7mm 17.78mm 19.05mm 25.4mm");
  const rows = (where: string) =>
    print.$$eval(`#print-sheet ${where} tr`, (found) =>
      found.map((row) => [...row.querySelectorAll("td")].map((td) => td.textContent)),
    );
  expect(await rows("thead")).toEqual([["Title", "=1+1", "<b>&", "2469"]]);
  expect((await rows("tbody")).slice(0, 2)).toEqual([
    ["$1,234.50", '[[["CURB.ONE("]],null,null]', "", "4"],
    ["2", "2469", "", "#N/A"],
  ]);
  const merged = print.locator("td", { hasText: "merged" });
  expect(await merged.getAttribute("colspan")).toBe("3");
  expect(
    await print.locator("td", { hasText: "$1,234.50" }).evaluate((td) => getComputedStyle(td).backgroundColor),
  ).toBe("rgb(244, 236, 216)");
  await print.close();
});

test("pressing the button prints the quote that it names", async () => {
  const printed = book.page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        new MutationObserver((_changes, observer) => {
          const frame = document.getElementById("print-frame");
          if (!(frame instanceof HTMLIFrameElement)) return;
          observer.disconnect();
          frame.addEventListener("load", () => {
            const print = frame.contentWindow?.print;
            resolve(`${typeof print}: ${frame.contentDocument?.querySelector("#print-sheet td")?.textContent}`);
          });
        }).observe(document.body, { childList: true });
      }),
  );
  await book.page.evaluate(() => window.workbookPage.select("Quote 1", "A1"));
  await book.page.getByRole("button", { name: "Print quote 1", exact: true }).click();
  expect(await printed).toBe("function: Title");
});
