import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Parsed } from "../../../src/reading/parse";
import type { StagedWeight } from "../../../src/trade/stagedweight";
import { parseRecast, parseResizing, parseWax, type ResizeKey } from "../../../src/weights/estimate";
import { published } from "../published";
import { expectExact, positives } from "../reference";

function value<T>(parsed: Parsed<T>): T {
  if (!parsed.ok) throw new Error(parsed.faults.map(({ sentence }) => sentence).join(" "));
  return parsed.value;
}
const grams = (of: { weight: StagedWeight }) => of.weight.weight.grams;
const faultsOf = (parsed: Parsed<unknown>) =>
  parsed.ok ? [] : parsed.faults.map(({ field, code }) => `${field} ${code}`);

describe("metal from wax or resin", () => {
  const { rows, source } = published<{ source: string; rows: readonly Record<string, string>[] }>("casting.json");
  const row = rows.find((each) => each.check === "wax to metal");

  test(`5.5 g of wax at a ratio of 13.5 are the published weight (${source})`, () => {
    const metal = value(parseWax({ wax: row?.wax ?? "", waxDensity: "1", metalDensity: row?.ratio ?? "" }));
    expect(grams(metal).value().toString()).toBe(row?.expected);
  });

  test("0.8 dwt of resin of 1.15 to a composition (hand arithmetic)", () => {
    const metal = value(parseWax({ wax: "0.8 dwt", waxDensity: "1.15", metalDensity: "Au 750 Ag 125 Cu 125" }));
    const density = 1000 / (750 / 19.32 + 125 / 10.49 + 125 / 8.96);
    expect(grams(metal).toNumber()).toBeCloseTo((0.8 * 1.55517384 * density) / 1.15, 11);
  });

  test("wax has no composition, and every field says what it wants", () => {
    expect(faultsOf(parseWax({ wax: "", waxDensity: "Au 1000", metalDensity: "x" }))).toEqual([
      "wax blank",
      "waxDensity notANumber",
      "metalDensity unknownWord",
    ]);
  });
});

test("recast there and back is the same weight, and heavier in the denser alloy", () => {
  fc.assert(
    fc.property(positives(500, 3), positives(22, 2), positives(22, 2), (weight, from, to) => {
      const there = value(
        parseRecast({ weight: weight.text, stage: "cast", fromDensity: from.text, toDensity: to.text }),
      );
      expectExact(grams(there), weight.fraction.mul(to.fraction).div(from.fraction));
      expect(Math.sign(grams(there).compare(weight.quotient))).toBe(to.fraction.compare(from.fraction));
    }),
  );
});

describe("a link at another width", () => {
  const typed: Record<ResizeKey, string> = {
    weight: "2",
    stage: "finished",
    fromWidth: "8",
    toWidth: "10",
    linksPer: "4",
    seats: "no",
  };

  test("2 g at 8 mm are 3.90625 g at 10 mm, and 4 links in the length 3.2 (hand arithmetic)", () => {
    const resized = value(parseResizing(typed));
    expect(grams(resized).value().toString()).toBe("3.90625");
    expect(resized.linksPer?.value().toString()).toBe("3.2");
  });

  test("makes a chain of the same length heavier by the square of the widths", () => {
    fc.assert(
      fc.property(positives(20, 3), positives(30, 2), positives(30, 2), positives(9, 2), (weight, from, to, links) => {
        const resized = value(
          parseResizing({
            weight: weight.text,
            stage: "finished",
            fromWidth: from.text,
            toWidth: to.text,
            linksPer: links.text,
            seats: "no",
          }),
        );
        const { linksPer } = resized;
        if (!linksPer) throw new Error("no links");
        const before = weight.fraction.mul(links.fraction);
        expectExact(grams(resized).times(linksPer), before.mul(to.fraction.div(from.fraction).pow(2) ?? 0));
      }),
    );
  });

  test("is refused with the reason where stones are seated in it", () => {
    const parsed = parseResizing({ ...typed, seats: "yes" });
    expect(faultsOf(parsed)).toEqual(["seats outOfRange"]);
    expect(parsed.ok ? "" : parsed.faults[0]?.sentence).toContain("its seats would no longer fit their stones");
  });

  test("may leave the links out, never a width", () => {
    expect(value(parseResizing({ ...typed, linksPer: "" })).linksPer).toBe(undefined);
    expect(faultsOf(parseResizing({ ...typed, fromWidth: "0", toWidth: "wide", linksPer: "-4" }))).toEqual([
      "fromWidth outOfRange",
      "toWidth notANumber",
      "linksPer outOfRange",
    ]);
  });
});
