import { describe, expect, test } from "vitest";
import { addedShapes, namesOfCells, rowsFilled, theirCells } from "../../../../taskpane/excel/tables/addedcells";

/** Columns D and E of a sheet, from row 3 on: what stands in A, counted, and that at a rate. */
const line = (row: number, design = row) => [`=CURB.LINKCOUNT($A${design},1)`, `=$D${row}*Rate_Loss+$A${design}`];
const CELLS = [["Links", "Price"], line(4), ["", ""], line(6)];
const ADDED = addedShapes("Added", CELLS);
const BLOCK = { row: 2, column: 3, rows: 4, columns: 2 };
const theirs = (cells: readonly (readonly unknown[])[]) => namesOfCells(theirCells(cells, BLOCK, ADDED));

test("columns as they were added hold nothing of the person's", () => {
  expect(ADDED.headers).toEqual(["Links", "Price"]);
  expect(ADDED.shapes).toHaveLength(2);
  expect(theirs(CELLS)).toEqual([]);
});

test("designs that moved, were sorted or deleted leave the formulas ours", () => {
  // A table's row deleted above: what stood in row 6 is read from row 5, and what is gone is #REF!.
  expect(theirs([["Links", "Price"], ["=CURB.LINKCOUNT(#REF!,1)", "=$D4*Rate_Loss+#REF!"], line(5, 4)])).toEqual([]);
  expect(
    theirs([
      ["Links", "Price"],
      ["=CURB.LINKCOUNT($B4,1)", "=$D4*Rate_Loss+$B4"],
    ]),
  ).toEqual([]);
  expect(
    theirs([
      ["Links", "Price"],
      ["=CURB.LINKCOUNT(Mine!$A9,1)", "=$D4*Rate_Loss+Mine!$A9"],
    ]),
  ).toEqual([]);
});

describe("what somebody put there is theirs", () => {
  test.each<[string, unknown, unknown]>([
    ["a figure", 4999, "=$D4*Rate_Loss+$A4"],
    ["a figure as it was shown", 100, "=$D4*Rate_Loss+$A4"],
    ["a text", "sold", "=$D4*Rate_Loss+$A4"],
    ["a formula of one's own", "=1+1", "=$D4*Rate_Loss+$A4"],
    ["a formula of ours with another word", "=CURB.LINKCOUNT($A4,2)", "=$D4*Rate_Loss+$A4"],
    ["TRUE", true, ""],
  ])("%s", (_what, links, price) => {
    expect(
      theirs([
        ["Links", "Price"],
        [links, price],
      ]),
    ).toEqual(["D4"]);
  });

  test("a reference turned to another row, of the columns or of the designs", () => {
    expect(
      theirs([
        ["Links", "Price"],
        ["", "=$D5*Rate_Loss+$A4"],
      ]),
    ).toEqual(["E4"]);
    const two = addedShapes("Added", [["Links"], ["=$A4*$B4"]]);
    expect(namesOfCells(theirCells([["Links"], ["=$A4*$B9"]], { ...BLOCK, columns: 1 }, two))).toEqual(["D4"]);
  });

  test("a header with another name; a blank one is nobody's", () => {
    expect(theirs([["Links", "Ask"], line(4)])).toEqual(["E3"]);
    expect(theirs([["", "Price"], line(4)])).toEqual([]);
  });
});

test("rows to which the columns were filled down belong to them, up to the first that holds none", () => {
  const filled = [...CELLS, line(7), line(8), ["", ""], line(10)];
  expect(rowsFilled(filled, BLOCK, ADDED)).toBe(6);
  expect(rowsFilled(CELLS, BLOCK, ADDED)).toBe(4);
  expect(rowsFilled(CELLS.slice(0, 2), BLOCK, ADDED)).toBe(4);
  expect(rowsFilled([...CELLS, [7, 8]], BLOCK, ADDED)).toBe(4);
});

test("cells under each other are named as one range", () => {
  const cells = [
    { row: 5, column: 16 },
    { row: 3, column: 16 },
    { row: 4, column: 16 },
    { row: 2, column: 14 },
    { row: 9, column: 16 },
  ];
  expect(namesOfCells(cells)).toEqual(["O3", "Q4:Q6", "Q10"]);
});

test("what is the same for every row, headers and rates, is no design", () => {
  const priced = (row: number) => `=CURB.PRICELINE($A$1:$B$1,$A${row}:$B${row},'My rates'!$A$1:$B$80,"Price")`;
  const added = addedShapes("Added", [["Price"], [priced(4)], [priced(5)]]);
  const block = { row: 2, column: 3, rows: 3, columns: 1 };
  const theirs = (cells: readonly string[]) =>
    namesOfCells(theirCells([["Price"], ...cells.map((each) => [each])], block, added));
  expect(theirs([priced(4), priced(9)])).toEqual([]);
  expect(theirs([priced(4), priced(5).replace(",$A5", ",$A5:$B5,$A7")])).toEqual(["D5"]);
});
