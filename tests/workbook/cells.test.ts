import { describe, expect, test } from "vitest";
import { cellAt, texts } from "./desk";
import { clickCell, typeIn } from "./person.mjs";
import { deskForAll } from "./workshop";

const desk = deskForAll((workshop) => workshop.sitDown("book=blank"));

describe("typing =CURB. functions in any cell", () => {
  // Each expected value is published (tests/published), by hand, or common practice as said.
  test.each<[string, unknown]>([
    ['=CURB.FINENESS("18K")', 750], // 1000 x 18/24
    ['=CURB.KARAT("750")', 18],
    ["=CURB.STANDARDMARK(588)", 585], // Tukes, worked case
    ['=CURB.ASSAYPASSES(580.4,"14K",3)', true], // 15 U.S.C. 295
    ['=CURB.FINEGOLD(24,"14K")', 14], // 24 x 14/24
    ['=CURB.MELTVALUE(31.1034768,"1000",2000)', 2000], // one troy ounce of fine gold
    ['=CURB.WEIGHTIN(1,"dwt","g")', 1.55517384], // UCUM 1.9
    ['=CURB.LENGTHIN(24,"in","cm")', 60.96], // 24 x 2.54
    ["=CURB.LINKCOUNT(24,4)", 96], // common practice
    ["=CURB.CHAINLENGTH(96,4)", 24],
    ["=CURB.CHAINWEIGHT(96,2)", 192],
    ["=CURB.RESIZEDLINK(2,10,5)", 0.25], // cubic law
    ["=CURB.RECASTWEIGHT(100,13,15.6)", 120],
    ["=CURB.METALFROMWAX(5.5,1,13.5)", 74.25], // caster's data
    ['=CURB.CASTWEIGHT(10,0.025,"finished")', 10.25], // wastage norms, worked
    ['=CURB.FINISHEDWEIGHT(10.25,0.25,"grams")', 10],
    ['=CURB.LANDEDCOST(100,25,1.5,50,2,"grams",,"quick")', 2750], // common practice
    ['=CURB.LANDEDPERGRAM(100,25,1.5,50,2,"grams")', 27.53], // common practice
    ["=CURB.STONECOST(10,9,1)", 100], // common practice
    ["=CURB.CROSSOVERWEIGHT(50,2,3.25)", 40], // 50 / 1.25
    ["=CURB.MARKUP(100,125)", 0.25], // cost accounting notes
    ["=CURB.MARGIN(100,125)", 0.2],
    ["=CURB.PRICEATMARKUP(2753,0.3,5)", 3580], // 3578.90 up to 5
    ["=CURB.PRICEATMARGIN(100,0.2)", 125],
    ["=CURB.PRICEATPREMIUM(100,25,7)", 3200],
    ['=CURB.ASKINGPERGRAM(3110.34768,1,"ozt")', 100],
    ["=CURB.PREMIUM(27.5,25)", 2.5],
    ['=CURB.SPOTLIMIT(100,31.1034768,"1000",40)', 60],
  ])("%s is %s", async (formula, expected) => {
    await typeIn(desk.page, "Sheet1", "A1", formula);
    expect(await cellAt(desk, "Sheet1", "A1")).toMatchObject({ value: expected });
  });

  test("a range spills a row a cell, blanks stay blank, a fault stays in its own row", async () => {
    for (const [index, text] of ["10", "20", "", "ten", "40"].entries()) {
      if (text !== "") await typeIn(desk.page, "Sheet1", `B${index + 1}`, text);
    }
    await typeIn(desk.page, "Sheet1", "C1", '=CURB.FINEGOLD(B1:B5,"18K")');
    expect(await texts(desk, "Sheet1", "C1:C5")).toEqual([["7.5"], ["15"], [""], ["#VALUE!"], ["30"]]);
    expect((await cellAt(desk, "Sheet1", "C4"))?.error).toEqual({
      code: "#VALUE!",
      sentence: 'weight: found "ten", which is not a plain number; give grams above 0',
    });
    await typeIn(desk.page, "Sheet1", "B4", "30");
    expect((await cellAt(desk, "Sheet1", "C4"))?.value).toBe(22.5);
  });

  test("MAKEORBUY spills four columns: the first piece is made, the second bought (common practice)", async () => {
    await typeIn(desk.page, "Sheet1", "E1", "100");
    await typeIn(desk.page, "Sheet1", "E2", "20");
    await typeIn(desk.page, "Sheet1", "F1", "2");
    await typeIn(desk.page, "Sheet1", "F2", "1");
    await typeIn(desk.page, "Sheet1", "G1", '=CURB.MAKEORBUY(E1:E2,25,1.5,50,F1:F2,3.25,"grams",,"quick")');
    expect(await texts(desk, "Sheet1", "G1:J2")).toEqual([
      ["27.5", "28.25", "75", "make"],
      ["30.25", "28.25", "-40", "buy"],
    ]);
  });

  test.each<[string, string, string]>([
    ['=CURB.FINENESS("25K")', "#VALUE!", 'mark: found "25K"'],
    ["=CURB.FINEGOLD(B20,585)", "#VALUE!", "weight: found nothing; give grams above 0"],
    ["=CURB.CASTWEIGHT(10,1)", "#VALUE!", "loss: found 1; give a share from 0 to below 1"],
    ["=CURB.LINKCOUNT(2,4,3)", "#VALUE!", "claspLength: found a clasp as long as the whole chain"],
    ['=CURB.METALRATE(1E+308,"14K")', "#VALUE!", "spot: found 1e+308, which is too large"],
    ["=CURB.STANDARDMARK(300)", "#N/A", "fineness: found 300, below the lowest standard"],
  ])("%s shows %s and a sentence a person reads below the grid", async (formula, code, words) => {
    await typeIn(desk.page, "Sheet1", "A1", formula);
    const cell = await cellAt(desk, "Sheet1", "A1");
    expect(cell?.error?.code).toBe(code);
    expect(cell?.error?.sentence).toContain(words);
    await clickCell(desk.page, "Sheet1", "A1");
    await desk.page.locator("#status").getByText(words).waitFor();
  });
});
