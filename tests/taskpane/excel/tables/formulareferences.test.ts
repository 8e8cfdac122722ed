import { describe, expect, test } from "vitest";
import { reads, referencesIn, shapeOf } from "../../../../taskpane/excel/tables/formulareferences";

const cells = (formula: string) =>
  referencesIn(formula).map(({ sheet, block: { row, column, rows, columns } }) => [sheet, row, column, rows, columns]);

describe("references (rows and columns counted by hand: A is 0, Z 25, AA 26, XFD 16,383)", () => {
  test.each<[string, ReturnType<typeof cells>]>([
    [
      "=A1+$B$2",
      [
        [undefined, 0, 0, 1, 1],
        [undefined, 1, 1, 1, 1],
      ],
    ],
    [
      "=SUM(B2:D4,xfd1)",
      [
        [undefined, 1, 1, 3, 3],
        [undefined, 0, 16383, 1, 1],
      ],
    ],
    ["=D4:B2", [[undefined, 1, 1, 3, 3]]],
    [
      "=Rates!B2*'My ''own'' sheet'!$AA10",
      [
        ["Rates", 1, 1, 1, 1],
        ["My 'own' sheet", 9, 26, 1, 1],
      ],
    ],
    [
      "=SUM(A:B)-SUM($3:$3)",
      [
        [undefined, 0, 0, Infinity, 2],
        [undefined, 2, 0, 1, Infinity],
      ],
    ],
    [
      "=#REF!+A1#",
      [
        [undefined, 0, 0, 0, 0],
        [undefined, 0, 0, 1, 1],
      ],
    ],
  ])("%s", (formula, expected) => {
    expect(cells(formula)).toEqual(expected);
  });

  test.each([
    ['="A1"&"say ""B2"""'],
    ["=LOG10(Rate_Spot)"],
    ["=Designs[A1]+Designs[[#This Row],[Price B2]]"],
    ["=Rate_Q1+Q1.total"],
    ["=CURB.CASTWEIGHT(Rate_Loss)"],
  ])("none in %s", (formula) => {
    expect(cells(formula)).toEqual([]);
  });

  test("another workbook's cells are nobody's here", () => {
    const block = { row: 0, column: 0, rows: 5, columns: 5 };
    for (const formula of ["=[Book.xlsx]Mine!A1", "='[Our book.xlsx]Mine'!A1"])
      expect(reads(formula, "Other", "Mine", block)).toBe(false);
    expect(reads("=mine!A1", "Other", "Mine", block)).toBe(true);
  });
});

test("what reads a block: by its corner, by whole columns and rows, from its own sheet or another", () => {
  const block = { row: 2, column: 9, rows: 5, columns: 7 };
  const read = (formula: string, on = "Mine") => reads(formula, on, "Mine", block);
  for (const formula of ["=J3", "=P7*2", "=SUM(A1:J3)", "=SUM(P:P)", "=SUM(7:9)"]) expect(read(formula)).toBe(true);
  for (const formula of ["=I3", "=Q3", "=J2", "=J8", "=SUM(A:I)", "=SUM(8:9)", "=Other!J3"])
    expect(read(formula)).toBe(false);
  expect(read("=J3", "Other")).toBe(false);
  expect(read("='Mine'!J3", "Other")).toBe(true);
});

test("a formula keeps its shape when rows and columns move, and loses it with any other word, figure or text", () => {
  const own = '=CURB.LINKCOUNT(CURB.LENGTHIN($D4*$G4,"cm","in"),1)+IF(Rate_Tax="",0,1*Rate_Tax)';
  for (const moved of [
    '=CURB.LINKCOUNT(CURB.LENGTHIN($E12*$G12,"cm","in"),1)+IF(Rate_Tax="",0,1*Rate_Tax)',
    '=CURB.LINKCOUNT(CURB.LENGTHIN(\'My designs\'!$D4*#REF!,"cm","in"),1)+IF(Rate_Tax="",0,1*Rate_Tax)',
    '=curb.linkcount( CURB.LENGTHIN($D4*$G4, "cm", "in"), 1) + IF(Rate_Tax="", 0, 1*Rate_Tax)',
  ])
    expect(shapeOf(moved)).toBe(shapeOf(own));
  for (const other of [
    own.replace(",1)", ",2)"),
    own.replace('"cm"', '"mm"'),
    own.replace('"cm"', '"D4"'),
    own.replace("Rate_Tax=", "Rate_Loss="),
    own.replace("$D4*$G4", "$D4*2"),
    `${own}+1`,
  ])
    expect(shapeOf(other)).not.toBe(shapeOf(own));
  expect(shapeOf('="A1"')).not.toBe(shapeOf('="B1"'));
});
