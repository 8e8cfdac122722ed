import { describe, expect, test } from "vitest";
import { type Parsed, parseRecast, parseResizing, parseWax } from "../../../src/index";
import { recastFormula, resizeFormula, waxFormula } from "../../../taskpane/weights/formulas";

function value<T>(parsed: Parsed<T>): T {
  if (!parsed.ok) throw new Error(parsed.faults.map(({ sentence }) => sentence).join(" "));
  return parsed.value;
}

describe("the worksheet formula of an estimate", () => {
  test("has the figures as typed, without zeros behind the point", () => {
    const wax = parseWax({ wax: "1.25", waxDensity: "1.0", metalDensity: "13.5" });
    expect(waxFormula(value(wax))).toBe("=CURB.METALFROMWAX(1.25,1,13.5)");
    const resized = parseResizing({
      weight: "2.05 g",
      stage: "cast",
      fromWidth: "8",
      toWidth: "10.5",
      linksPer: "4",
      seats: "no",
    });
    expect(resizeFormula(value(resized))).toBe("=CURB.RESIZEDLINK(2.05,8,10.5)");
  });

  test("has a weight of another unit in grams: 0.5 dwt are 0.77758692 g (UCUM)", () => {
    const recast = parseRecast({ weight: "0.5 dwt", stage: "cast", fromDensity: "13.5", toDensity: "15.5" });
    expect(recastFormula(value(recast))).toBe("=CURB.RECASTWEIGHT(0.77758692,13.5,15.5)");
  });

  test("keeps a composition a composition", () => {
    const recast = parseRecast({
      weight: "2",
      stage: "finished",
      fromDensity: "13.5",
      toDensity: "au 75 Ag 12.5 cu 12.5",
    });
    expect(recastFormula(value(recast))).toBe(
      '=CURB.RECASTWEIGHT(2,13.5,CURB.ALLOYDENSITY({"Au";"Ag";"Cu"},{75;12.5;12.5}))',
    );
  });
});
