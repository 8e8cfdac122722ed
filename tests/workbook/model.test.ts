import { afterAll, beforeAll, expect, test } from "vitest";
import { clickCell, typeIn } from "./person.mjs";
import { StandIn } from "./standin";

let book: StandIn;

beforeAll(async () => {
  book = await StandIn.open();
});
afterAll(() => book.close());

test("ranges are found from one another as Excel finds them", async () => {
  const addresses = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    const range = sheet.getRange("B2:D4");
    const found = [
      range.getCell(1, 1),
      range.getRow(0),
      range.getColumn(2),
      range.getLastRow(),
      range.getOffsetRange(1, 1),
      range.getResizedRange(2, -1),
      range.getEntireRow(),
      range.getEntireColumn(),
      sheet.getRangeByIndexes(4, 5, 2, 3),
      range.getIntersectionOrNullObject("C3:Z9"),
      sheet.getRange("$A$1:B2"),
    ];
    for (const each of found) each.load("address");
    await context.sync();
    return found.map((each) => each.address);
  });
  expect(addresses).toEqual(
    ["C3", "B2:D2", "D2:D4", "B4:D4", "C3:E5", "B2:C6", "2:4", "B:D", "F5:H6", "C3:D4", "A1:B2"].map(
      (a) => `Sheet1!${a}`,
    ),
  );
});

test("copying moves relative references along, and copies values, formulas or looks alone", async () => {
  const copied = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Copies");
    sheet.getRange("A1:C1").formulas = [[2, 3, "=A1*$B$1"]];
    sheet.getRange("A1:C1").format.font.bold = true;
    sheet.getRange("A3:C4").copyFrom("A1:C1");
    sheet.getRange("A6").copyFrom("A1:C1", Excel.RangeCopyType.values);
    sheet.getRange("A8:C8").copyFrom("A1:C1", Excel.RangeCopyType.formats);
    const all = sheet.getRange("A3:C4").load("formulas,format/font/bold");
    const values = sheet.getRange("A6:C6").load("formulas,format/font/bold");
    const looks = sheet.getRange("A8:C8").load("formulas,format/font/bold");
    await context.sync();
    return [all, values, looks].map((range) => [range.formulas, range.format.font.bold]);
  });
  expect(copied).toEqual([
    [
      [
        [2, 3, "=A3*$B$1"],
        [2, 3, "=A4*$B$1"],
      ],
      true,
    ],
    [[[2, 3, 6]], false],
    [[["", "", ""]], true],
  ]);
});

test("inserted and deleted cells take references with them", async () => {
  const formulas = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Shifted");
    sheet.getRange("A1:B3").values = [
      [1, 2],
      [3, 4],
      [5, 6],
    ];
    sheet.getRange("D1:D2").formulas = [["=A3"], ["=SUM(A1:A3)"]];
    sheet.getRange("A2:B2").insert("Down");
    const inserted = sheet.getRange("D1:D2").load("formulas,values");
    await context.sync();
    const first = [inserted.formulas, inserted.values];
    sheet.getRange("1:1").insert("Down");
    sheet.getRange("A:A").insert("Right");
    const shifted = sheet.getRange("E2:E3").load("formulas,values");
    await context.sync();
    return [first, [shifted.formulas, shifted.values]];
  });
  expect(formulas).toEqual([
    [
      [["=A4"], ["=SUM(A1:A4)"]],
      [[5], [9]],
    ],
    [
      [["=B5"], ["=SUM(B2:B5)"]],
      [[5], [9]],
    ],
  ]);
});

test("a merged range keeps its first cell only, and comes apart again", async () => {
  const merged = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Merged");
    sheet.getRange("A1:C1").values = [["title", "lost", "lost"]];
    sheet.getRange("A1:C1").merge();
    sheet.getRange("A3:B4").merge(true);
    const areas = sheet.getRange("A1:Z9").getMergedAreasOrNullObject().load("address,areaCount");
    areas.areas.load("items/address");
    const values = sheet.getRange("A1:C1").load("values");
    await context.sync();
    const seen = [areas.address, areas.areas.items.length, values.values];
    sheet.getRange("A1:Z9").unmerge();
    const none = sheet.getRange("A1:Z9").getMergedAreasOrNullObject();
    await context.sync();
    return [...seen, none.isNullObject];
  });
  expect(merged).toEqual(["Merged!A1:C1,Merged!A3:B3,Merged!A4:B4", 3, [["title", "", ""]], true]);
});

test("looks are read back in Excel's words", async () => {
  const look = await book.run(async (context) => {
    const range = context.workbook.worksheets.add("Looks").getRange("B2:C3");
    range.format.set({
      horizontalAlignment: "Right",
      verticalAlignment: "Center",
      indentLevel: 2,
      wrapText: true,
      columnWidth: 90,
      rowHeight: 30,
      font: { name: "Georgia", size: 13, italic: true, underline: "Single", color: "#123456" },
    });
    const edge = range.format.borders.getItem("EdgeBottom");
    edge.style = "Double";
    edge.color = "#FF0000";
    range.format.load("horizontalAlignment,verticalAlignment,indentLevel,wrapText,columnWidth,rowHeight");
    range.format.font.load("name,size,bold,italic,underline,color");
    edge.load("style,color");
    const inner = range.format.borders.getItem("InsideVertical").load("style");
    await context.sync();
    const { borders: _borders, fill: _fill, protection: _protection, ...format } = range.format.toJSON();
    return [format, edge.style, edge.color, inner.style];
  });
  expect(look).toEqual([
    {
      horizontalAlignment: "Right",
      verticalAlignment: "Center",
      indentLevel: 2,
      wrapText: true,
      columnWidth: 90,
      rowHeight: 30,
      font: { name: "Georgia", size: 13, bold: false, italic: true, underline: "Single", color: "#123456" },
    },
    "Double",
    "#FF0000",
    "None",
  ]);
});

test("a table has its header, body and columns, grows by rows, and is known to formulas", async () => {
  const table = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Lines");
    sheet.getRange("A1:B3").values = [
      ["Item", "Weight"],
      ["link", 2],
      ["clasp", 5],
    ];
    const made = context.workbook.tables.add("Lines!A1:B3", true);
    made.name = "TestLines";
    sheet.getRange("D1").formulas = [["=SUM(TestLines[Weight])"]];
    await context.sync();
    made.rows.add(undefined, [["stone", 1]]);
    const body = made.getDataBodyRange().load("address,values");
    const header = made.getHeaderRowRange().load("values");
    const sum = sheet.getRange("D1").load("values");
    made.columns.load("items/name");
    await context.sync();
    return [body.address, body.values, header.values, made.columns.items.map(({ name }) => name), sum.values];
  });
  expect(table).toEqual([
    "Lines!A2:B4",
    [
      ["link", 2],
      ["clasp", 5],
      ["stone", 1],
    ],
    [["Item", "Weight"]],
    ["Item", "Weight"],
    [[8]],
  ]);
});

test("a table grows by one blank row where no values are given, which cells of it then fill", async () => {
  const grown = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Blank row");
    sheet.getRange("A1:B2").values = [
      ["Item", "Weight"],
      ["link", 2],
    ];
    const made = context.workbook.tables.add("'Blank row'!A1:B2", true);
    made.rows.add().getRange().getCell(0, 1).values = [[5]];
    const all = made.getRange().load("address,values");
    await context.sync();
    return [all.address, all.values];
  });
  expect(grown).toEqual([
    "'Blank row'!A1:B3",
    [
      ["Item", "Weight"],
      ["link", 2],
      ["", 5],
    ],
  ]);
});

test("a cell ruled by a list takes what is in it from a person, and drops it down", async () => {
  await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Choice");
    const cell = sheet.getRange("B2");
    cell.values = [["yellow"]];
    cell.dataValidation.rule = { list: { inCellDropDown: true, source: "yellow,white,rose" } };
    cell.dataValidation.errorAlert = { message: "Pick a colour.", showAlert: true, style: "Stop", title: "Colour" };
    await context.sync();
  });
  await typeIn(book.page, "Choice", "B2", "green");
  expect(await book.values("Choice", "B2")).toEqual([["yellow"]]);
  expect(await book.page.textContent("#status")).toBe("Pick a colour.");
  await typeIn(book.page, "Choice", "B2", "white");
  expect(await book.values("Choice", "B2")).toEqual([["white"]]);
  await clickCell(book.page, "Choice", "B2");
  await book.page.keyboard.press("Alt+ArrowDown");
  await book.page.getByText("rose", { exact: true }).click();
  expect(await book.values("Choice", "B2")).toEqual([["rose"]]);
});

test("what an add-in keeps in the workbook is written over, and there until it is deleted", async () => {
  const kept = () =>
    book.run(async (context) => {
      const setting = context.workbook.settings.getItemOrNullObject("note");
      setting.load("value");
      await context.sync();
      return setting.isNullObject ? undefined : (setting.value as unknown);
    });
  expect(await kept()).toBeUndefined();
  await book.run(async (context) => {
    context.workbook.settings.add("note", "one");
    await context.sync();
    context.workbook.settings.add("note", "two");
    await context.sync();
  });
  expect(await kept()).toBe("two");
  await book.run(async (context) => {
    context.workbook.settings.getItem("note").delete();
    await context.sync();
  });
  expect(await kept()).toBeUndefined();
});

test("an array too large for one message arrives whole", async () => {
  const read = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Large");
    const range = sheet.getRange("A1:J2000");
    range.values = Array.from({ length: 2000 }, (_, row) =>
      Array.from({ length: 10 }, (_, column) => row * 10 + column),
    );
    const last = sheet.getRange("J2000").load("values");
    const sum = sheet.getRange("L1");
    sum.formulas = [["=SUM(A1:J2000)"]];
    sum.load("values");
    await context.sync();
    return [last.values, sum.values];
  });
  // 0 + 1 + … + 19,999
  expect(read).toEqual([[[19_999]], [[199_990_000]]]);
});

test("sheets are moved, hidden, coloured and deleted; names that pointed there are lost", async () => {
  const after = await book.run(async (context) => {
    const { worksheets, names } = context.workbook;
    const sheet = worksheets.add("Doomed");
    names.add("TestDoomed", sheet.getRange("A1"));
    worksheets.getItem("Sheet1").getRange("H1").formulas = [["=Doomed!A1"]];
    sheet.tabColor = "#336699";
    sheet.position = 0;
    sheet.visibility = "VeryHidden";
    sheet.load("visibility,position,tabColor");
    await context.sync();
    const seen = [sheet.visibility, sheet.position, sheet.tabColor];
    sheet.delete();
    const formula = worksheets.getItem("Sheet1").getRange("H1").load("values");
    const name = names.getItem("TestDoomed").load("formula");
    await context.sync();
    return [...seen, formula.values, name.formula];
  });
  expect(after).toEqual(["VeryHidden", 0, "#336699", [["#REF!"]], "=#REF!"]);
});
