import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { typeIn } from "./person.mjs";
import { StandIn } from "./standin";

let book: StandIn;

beforeAll(async () => {
  book = await StandIn.open();
});
afterAll(() => book.close());

test("values, formulas and formats are read back as they were written", async () => {
  const read = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Round trip");
    const range = sheet.getRange("A1:B2");
    range.values = [
      [10, 20],
      ["x", true],
    ];
    range.numberFormat = [
      ["0.00", "$#,##0.00"],
      ["@", "General"],
    ];
    range.format.fill.color = "#FFF2CC";
    range.format.font.bold = true;
    sheet.getRange("C1").formulas = [["=SUM(A1:B1)"]];
    const all = sheet.getRange("A1:C2").load("values,formulas,numberFormat,text,valueTypes,address");
    range.load("format/fill/color,format/font/bold");
    await context.sync();
    const { values, formulas, numberFormat, text, valueTypes, address } = all;
    return {
      values,
      formulas,
      numberFormat,
      text,
      valueTypes,
      address,
      fill: range.format.fill.color,
      bold: range.format.font.bold,
    };
  });
  expect(read).toEqual({
    values: [
      [10, 20, 30],
      ["x", true, ""],
    ],
    formulas: [
      [10, 20, "=SUM(A1:B1)"],
      ["x", true, ""],
    ],
    numberFormat: [
      ["0.00", "$#,##0.00", "General"],
      ["@", "General", "General"],
    ],
    text: [
      ["10.00", "$20.00", "30"],
      ["x", "TRUE", ""],
    ],
    valueTypes: [
      ["Double", "Double", "Double"],
      ["String", "Boolean", "Empty"],
    ],
    address: "'Round trip'!A1:C2",
    fill: "#FFF2CC",
    bold: true,
  });
});

test("texts that look like numbers become numbers, and an apostrophe or the text format keeps them", async () => {
  const read = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Texts");
    sheet.getRange("E1").numberFormat = [["@"]];
    const range = sheet.getRange("A1:G1");
    range.values = [["'=1+1", "12", "'12", "5%", "12", "14K", "'-1"]];
    range.load("values,formulas,numberFormat");
    await context.sync();
    return [range.values, range.formulas, range.numberFormat];
  });
  expect(read).toEqual([
    [["=1+1", 12, "12", 0.05, "12", "14K", "-1"]],
    [["=1+1", 12, "12", 0.05, "12", "14K", "-1"]],
    [["General", "General", "General", "0%", "@", "General", "General"]],
  ]);
});

test("null leaves a cell alone and an empty text clears it", async () => {
  await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Blanks");
    sheet.getRange("A1:B1").values = [["kept", "gone"]];
    sheet.getRange("A1:B1").values = [[null, ""]];
    await context.sync();
  });
  expect(await book.values("Blanks", "A1:B1")).toEqual([["kept", ""]]);
});

test("what is wrong is answered with Excel's codes, and what ran before it stays", async () => {
  expect(
    await book.failure(async (context) => {
      const sheet = context.workbook.worksheets.add("Partly");
      sheet.getRange("A1").values = [["done"]];
      sheet.getRange("A1:B2").values = [[1, 2, 3]];
      sheet.getRange("A2").values = [["never"]];
      await context.sync();
    }),
  ).toMatchObject({ code: "InvalidArgument", location: "Values" });
  expect(await book.values("Partly", "A1:A2")).toEqual([["done"], [""]]);

  expect(
    await book.failure(async (context) => {
      context.workbook.worksheets.getItem("no such sheet").load("name");
      await context.sync();
    }),
  ).toMatchObject({ code: "ItemNotFound" });
  expect(
    await book.failure(async (context) => {
      const range = context.workbook.worksheets.getItem("Partly").getRange("A1");
      await context.sync();
      return range.values;
    }),
  ).toMatchObject({ code: "PropertyNotLoaded" });
  expect(
    await book.failure(async (context) => {
      context.workbook.worksheets.getItem("Partly").getRange("A1").load("valuez");
      await context.sync();
    }),
  ).toMatchObject({ code: "InvalidArgument", message: "The property 'valuez' does not exist on Range" });
});

test("what the stand-in has not been taught it names", async () => {
  expect(
    await book.failure(async (context) => {
      context.workbook.worksheets.getFirst().charts.load("count");
      await context.sync();
    }),
  ).toMatchObject({ code: "ApiNotFound", location: "Worksheet.charts" });
  expect(
    await book.failure(async (context) => {
      context.workbook.worksheets.getFirst().getRange("A1").load("linkedDataTypeState");
      await context.sync();
    }),
  ).toMatchObject({ code: "ApiNotFound", location: "Range.linkedDataTypeState" });
  expect(
    await book.failure(async (context) => {
      context.workbook.worksheets.getFirst().getRange("A1").style = "Good";
      await context.sync();
    }),
  ).toMatchObject({ code: "ApiNotFound", location: "Range.style" });
});

test("what is not there is a null object where the add-in asks for one", async () => {
  const absent = await book.run(async (context) => {
    const { worksheets, names, tables } = context.workbook;
    const sheet = worksheets.getItemOrNullObject("no such sheet");
    const name = names.getItemOrNullObject("NoSuchName");
    const table = tables.getItemOrNullObject("NoSuchTable");
    const used = worksheets.add("Empty").getUsedRangeOrNullObject();
    await context.sync();
    return [sheet.isNullObject, name.isNullObject, table.isNullObject, used.isNullObject];
  });
  expect(absent).toEqual([true, true, true, true]);
});

test("sheets take no name that Excel would not", async () => {
  for (const name of ["a/b", "a[b", "x".repeat(32), "'a", "  "]) {
    const add = `async (context) => { context.workbook.worksheets.add(${JSON.stringify(name)}); await context.sync(); }`;
    const code = await book.pane.evaluate(`Excel.run(${add}).then(() => "none", (error) => error.code)`);
    expect([name, code]).toEqual([name, "InvalidArgument"]);
  }
  await book.run(async (context) => {
    context.workbook.worksheets.add("Twice");
    await context.sync();
  });
  expect(
    await book.failure(async (context) => {
      context.workbook.worksheets.add("TWICE");
      await context.sync();
    }),
  ).toMatchObject({ code: "ItemAlreadyExists" });
});

test("a copied sheet keeps its formulas, looks, merges and print set-up, and takes its names along", async () => {
  const copied = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Source");
    sheet.getRange("A1:C1").formulas = [[2, 3, "=A1*B1"]];
    sheet.getRange("A1").format.font.italic = true;
    sheet.getRange("A3:C3").merge();
    sheet.pageLayout.setPrintArea("A1:C3");
    sheet.pageLayout.zoom = { horizontalFitToPages: 1 };
    context.workbook.names.add("SourceProduct", sheet.getRange("C1"));
    const copy = sheet.copy(Excel.WorksheetPositionType.after, sheet);
    await context.sync();
    copy.load("name");
    copy.names.load("items/name,items/formula");
    const range = copy.getRange("A1:C1").load("formulas,values");
    const font = copy.getRange("A1").format.font.load("italic");
    const merged = copy.getRange("A1:D9").getMergedAreasOrNullObject().load("address");
    const area = copy.pageLayout.getPrintAreaOrNullObject().load("address");
    copy.pageLayout.load("zoom");
    await context.sync();
    const names = copy.names.items.map((item) => [item.name, item.formula]);
    const { zoom } = copy.pageLayout;
    return [copy.name, range.formulas, range.values, font.italic, merged.address, area.address, zoom, names];
  });
  expect(copied).toEqual([
    "Source (2)",
    [[2, 3, "=A1*B1"]],
    [[2, 3, 6]],
    true,
    "'Source (2)'!A3:C3",
    "'Source (2)'!A1:C3",
    { horizontalFitToPages: 1 },
    [["SourceProduct", "='Source (2)'!$C$1"]],
  ]);
});

test("defined names stand for ranges, constants and formulas, and follow inserted rows", async () => {
  const read = await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Named");
    sheet.getRange("B1:B2").values = [[20], [5]];
    const { names } = context.workbook;
    names.add("TestRate", sheet.getRange("B1"), "a comment");
    names.add("TestShare", "=0.05");
    names.add("TestSum", "=Named!$B$1+Named!$B$2");
    sheet.getRange("D1:D4").formulas = [["=TestRate*2"], ["=TestShare*100"], ["=TestSum*2"], ["=NoSuchName"]];
    const values = sheet.getRange("D1:D4").load("values");
    await context.sync();
    sheet.getRange("1:2").insert("Down");
    const name = names.getItem("TestRate").load("formula,comment,scope,type");
    const range = name.getRange().load("address,values");
    await context.sync();
    return [values.values, name.formula, name.comment, name.scope, name.type, range.address, range.values];
  });
  expect(read).toEqual([
    [[40], [5], [50], ["#NAME?"]],
    "=Named!$B$3",
    "a comment",
    "Workbook",
    "Range",
    "Named!B3",
    [[20]],
  ]);
});

test("a protected sheet refuses the add-in and the person, but for unlocked cells", async () => {
  const code = await book.failure(async (context) => {
    const sheet = context.workbook.worksheets.add("Guarded");
    sheet.getRange("A1").values = [["locked"]];
    sheet.getRange("A2").format.protection.locked = false;
    sheet.protection.protect();
    sheet.getRange("A2").values = [["open"]];
    await context.sync();
    sheet.getRange("A1").values = [["changed"]];
    await context.sync();
  });
  expect(code).toMatchObject({ code: "AccessDenied" });
  await typeIn(book.page, "Guarded", "A1", "changed");
  expect(await book.page.textContent("#status")).toContain("protected");
  await typeIn(book.page, "Guarded", "A2", "typed");
  expect(await book.values("Guarded", "A1:A2")).toEqual([["locked"], ["typed"]]);
});

test("changes are told to the add-in, its own and a person's apart", async () => {
  await book.pane.evaluate(() =>
    Excel.run(async (context) => {
      const told: unknown[] = [];
      Object.assign(window, { told });
      const sheet = context.workbook.worksheets.add("Watched");
      context.workbook.worksheets.onChanged.add(async (event) => {
        told.push(["workbook", event.address, event.changeType, event.source, event.triggerSource]);
      });
      sheet.onChanged.add(async (event) => {
        await Excel.run(async (own) => {
          const range = event.getRange(own).load("values");
          await own.sync();
          told.push(["sheet", range.values]);
        });
      });
      await context.sync();
      sheet.getRange("B2:C2").values = [[1, 2]];
      await context.sync();
    }),
  );
  await typeIn(book.page, "Watched", "B3", "7");
  expect(await book.pane.evaluate(() => Reflect.get(window, "told"))).toEqual([
    ["workbook", "B2:C2", "RangeEdited", "Local", "ThisLocalAddin"],
    ["sheet", [[1, 2]]],
    ["workbook", "B3", "RangeEdited", "Local", "Unknown"],
    ["sheet", [[7]]],
  ]);
});

test("a batch counts as one sync, however much it holds", async () => {
  const count = () => book.page.evaluate(() => window.workbookPage.syncCount);
  const before = await count();
  await book.run(async (context) => {
    const sheet = context.workbook.worksheets.add("Counted");
    for (let row = 1; row < 30; row += 1) sheet.getRange(`A${row}`).values = [[row]];
    await context.sync();
    sheet.getRange("B1").values = [["second"]];
    await context.sync();
  });
  expect((await count()) - before).toBe(2);
});

test("nothing is asked of any other machine", () => {
  expect(book.outside).toEqual([]);
});

describe("a request that a test wants to fail", () => {
  const writes = (code: string) =>
    book
      .run(async (context) => {
        const sheet = context.workbook.worksheets.getActiveWorksheet();
        sheet.getRange("Z1:Z3").clear();
        await context.sync();
        for (const [row, value] of ["one", "two", "three"].entries()) sheet.getCell(row, 25).values = [[value]];
        await context.sync();
      })
      .then(
        () => "done",
        (error: unknown) => String(error).includes(code),
      );
  const cells = () =>
    book.page.evaluate(() => {
      const [sheet = ""] = window.workbookPage.active().split("!");
      return window.workbookPage.read(sheet, "Z1:Z3").map(([cell]) => cell?.value);
    });
  const fail = (planned: string) => book.page.evaluate((text) => window.workbookPage.fail(text), planned);

  test("fails before, in the middle or after its actions, once: what was done stays done", async () => {
    await fail("AccessDenied@2");
    expect(await writes("AccessDenied")).toBe(true);
    expect(await cells()).toEqual(["", "", ""]);
    const states: unknown[] = [];
    for (let action = 1; ; action += 1) {
      await fail(`RequestAborted@2.${action}`);
      // Beyond the last action nothing is refused.
      if ((await writes("RequestAborted")) === "done") break;
      states.push(await cells());
    }
    const nothing = ["", "", ""];
    expect(states).toEqual(expect.arrayContaining([nothing, ["one", "", ""], ["one", "two", ""]]));
    expect(states).not.toContainEqual(["one", "two", "three"]);
    await fail("RequestAborted@2!");
    expect(await writes("RequestAborted")).toBe(true);
    expect(await cells()).toEqual(["one", "two", "three"]);
    expect(await writes("")).toBe("done");
  });

  test("is refused a plan that names no request", async () => {
    await expect(fail("AccessDenied")).rejects.toThrow("CODE@request");
  });
});
