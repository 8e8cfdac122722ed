import { afterAll, beforeAll, expect, test } from "vitest";
import { clickCell, typeIn } from "./person.mjs";
import { StandIn } from "./standin";

let book: StandIn;

beforeAll(async () => {
  book = await StandIn.open();
  await book.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    sheet.getRange("H1:I2").values = [
      [true, "t"],
      ["", 3],
    ];
    await context.sync();
  });
});
afterAll(() => book.close());

/** What a formula gives when a person types it into a free cell. */
let row = 0;
async function typed(formula: string) {
  row += 1;
  await typeIn(book.page, "Sheet1", `A${row}`, formula);
  return (await book.read("Sheet1", `A${row}`))[0]?.[0];
}

test("single cells and ranges reach a matrix parameter as rows of cells, omitted arguments as null", async () => {
  expect((await typed("=CURB.SEEN(5)"))?.value).toBe("[[[5]],null,null]");
  expect((await typed("=CURB.SEEN(H1)"))?.value).toBe("[[[true]],null,null]");
  expect((await typed('=CURB.SEEN(H1:I2,,"x")'))?.value).toBe('[[[true,"t"],[null,3]],null,[["x"]]]');
  expect((await typed("=CURB.ALL(1,H1:I1)"))?.value).toBe('[[[1]],[[true,"t"]]]');
});

test("a scalar parameter takes one cell, and a range in its place is #VALUE!", async () => {
  expect((await typed("=CURB.ONE(H1)"))?.value).toBe("true");
  expect(await typed("=CURB.ONE(H1:I2)")).toMatchObject({ value: "#VALUE!", error: { code: "#VALUE!", sentence: "" } });
});

test("texts and numbers come as they are, without conversion", async () => {
  expect((await typed('=CURB.SEEN("12","TRUE",FALSE)'))?.value).toBe('[[["12"]],[["TRUE"]],[[false]]]');
});

test("every function is handed the call as one argument more", async () => {
  expect((await typed("=CURB.COUNT(1)"))?.value).toBe(3);
});

test("errors keep their sentence where Excel shows one", async () => {
  expect(await typed('=CURB.GIVE("value")')).toMatchObject({
    error: { code: "#VALUE!", sentence: "weight: found 0; a weight above zero is needed" },
  });
  expect(await typed('=CURB.GIVE("missing")')).toMatchObject({
    error: { code: "#N/A", sentence: "mark: none is as low as that" },
  });
  expect(await typed('=CURB.GIVE("returned")')).toMatchObject({
    error: { code: "#N/A", sentence: "returned, not thrown" },
  });
  expect(await typed('=CURB.GIVE("divide")')).toMatchObject({ error: { code: "#DIV/0!", sentence: "" } });
  expect(await typed('=CURB.GIVE("plain")')).toMatchObject({ error: { code: "#VALUE!", sentence: "" } });
  expect(await typed('=CURB.GIVE("nan")')).toMatchObject({ error: { code: "#NUM!", sentence: "" } });
  expect(await typed('=CURB.GIVE("infinity")')).toMatchObject({ error: { code: "#NUM!", sentence: "" } });
  expect(await typed('=CURB.GIVE("ragged")')).toMatchObject({ error: { code: "#VALUE!", sentence: "" } });
});

test("a person reads the sentence below the grid when the cell is selected", async () => {
  await typeIn(book.page, "Sheet1", "C1", '=CURB.GIVE("missing")');
  await clickCell(book.page, "Sheet1", "C1");
  await book.page.getByText("C1: #N/A mark: none is as low as that").waitFor();
});

test("the sentence goes with its formula", async () => {
  await typeIn(book.page, "Sheet1", "C2", '=CURB.GIVE("value")');
  await typeIn(book.page, "Sheet1", "C2", '=1+"a"');
  expect((await book.read("Sheet1", "C2"))[0]?.[0]).toMatchObject({ error: { code: "#VALUE!", sentence: "" } });
});

test("an error in an argument is the answer, and the function is not called", async () => {
  expect((await typed("=CURB.SEEN(1/0)"))?.value).toBe("#DIV/0!");
  expect((await typed("=IFERROR(CURB.SEEN(NA()),7)"))?.value).toBe(7);
});

test("nothing given back shows as 0, and a text that looks like a formula stays a text", async () => {
  expect((await typed('=CURB.GIVE("nothing")'))?.value).toBe(0);
  expect(await typed('=CURB.GIVE("text")')).toMatchObject({ value: "=1+1" });
  expect((await typed('=CURB.GIVE("yes")'))?.value).toBe(true);
});

test("arrays spill, with each fault in its own cell", async () => {
  await typeIn(book.page, "Sheet1", "K1", "1");
  await typeIn(book.page, "Sheet1", "K2", "abc");
  await typeIn(book.page, "Sheet1", "K3", "3");
  await typeIn(book.page, "Sheet1", "L1", "=CURB.DOUBLED(K1:K3)");
  expect(await book.values("Sheet1", "L1:L4")).toEqual([[2], ["#VALUE!"], [6], [""]]);
  expect((await book.read("Sheet1", "L2"))[0]?.[0]).toMatchObject({
    formula: "",
    error: { code: "#VALUE!", sentence: "numbers: found abc" },
  });
});

test("a spilled array follows its source, and a cell in its way stops it", async () => {
  await typeIn(book.page, "Sheet1", "N1", "1");
  await typeIn(book.page, "Sheet1", "N2", "2");
  await typeIn(book.page, "Sheet1", "O1", "=CURB.DOUBLED(N1:N2)");
  await typeIn(book.page, "Sheet1", "N2", "5");
  expect(await book.values("Sheet1", "O1:O2")).toEqual([[2], [10]]);
  await typeIn(book.page, "Sheet1", "O2", "in the way");
  expect(await book.values("Sheet1", "O1:O2")).toEqual([["#SPILL!"], ["in the way"]]);
});

test("blank cells come as 0 where the page is told to be Excel for Windows", async () => {
  const windows = await StandIn.open("book=blank&blanks=zero");
  await typeIn(windows.page, "Sheet1", "A1", "=CURB.SEEN(C1:C2,D1)");
  expect(await windows.values("Sheet1", "A1")).toEqual([["[[[0],[0]],[[0]],null]"]]);
  await windows.close();
});
