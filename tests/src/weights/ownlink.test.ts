import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { parseMark } from "../../../src/gold/mark";
import { lengthIn } from "../../../src/units/length";
import { grams } from "../../../src/units/weight";
import { nearestLink, readOwnLinks, type SoughtPiece } from "../../../src/weights/ownlink";

const ADA = {
  model: "Ada curb",
  width: 8,
  mark: "14K",
  colour: "yellow",
  linksPer: 4,
  linksPerUnit: "in",
  weight: 2,
  basis: "weighed",
};
const BRAM = { ...ADA, model: "Bram curb", width: 4, linksPer: 8, weight: 0.25, basis: "estimate" };
const CLEO = { ...ADA, model: "Cleo curb, hollow", weight: 0.9 };

const piece = (changes: Partial<SoughtPiece> & { readonly of?: string; readonly at?: string } = {}): SoughtPiece => ({
  weight: grams(Quotient.of(changes.of ?? "40")),
  mark: parseMark(changes.at ?? "14K"),
  hollow: false,
  colour: undefined,
  length: lengthIn(Quotient.of(22), "in"),
  ...changes,
});
const nearest = (rows: readonly object[], sought = piece()) => {
  const cells = rows as Parameters<typeof readOwnLinks>[0];
  return nearestLink(readOwnLinks(cells), cells.length, sought);
};
const modelOf = (found: ReturnType<typeof nearest>) => (found.found ? found.match.link.name.model : found.lacks);

describe("the kept link that is nearest to a piece", () => {
  test("is the one whose chain of that length weighs nearest: 22 in are 176 g of Ada, 44 g of Bram (hand arithmetic)", () => {
    // 88 links of 2 g and 176 of 0.25 g.
    const found = nearest([ADA, BRAM]);
    expect(modelOf(found)).toBe("Bram curb");
    if (!found.found) return;
    // 40 g of links of 0.25 g.
    expect(found.match.links.value().toString()).toBe("160");
    expect(found.match.wouldWeigh?.grams.value().toString()).toBe("44");
    expect(modelOf(nearest([ADA, BRAM], piece({ of: "100" })))).toBe("Ada curb");
    // Nearest as a ratio: 88 g is twice 44 g and half of 176 g; a little more is Ada's.
    expect(modelOf(nearest([ADA, BRAM], piece({ of: "88.1" })))).toBe("Ada curb");
    expect(modelOf(nearest([ADA, BRAM], piece({ of: "87.9" })))).toBe("Bram curb");
  });

  test("has the piece's mark before all, then its colour, before weight is looked at", () => {
    const rose = { ...ADA, model: "Rosa", colour: "rose" };
    const high = { ...BRAM, model: "High", mark: "18K" };
    expect(modelOf(nearest([high, ADA]))).toBe("Ada curb");
    expect(modelOf(nearest([BRAM, rose], piece({ colour: "rose" })))).toBe("Rosa");
    const other = nearest([high]);
    expect(other.found && other.match.sameMark).toBe(false);
  });

  test("marks are compared as what they say: 750 and 18K are one, 585 and 14K are two", () => {
    const same = (mark: unknown, at: string) => {
      const found = nearest([{ ...ADA, mark }], piece({ at }));
      return found.found && found.match.sameMark;
    };
    expect([same(750, "18K"), same("18 kt", "750"), same("585", "14K")]).toEqual([true, true, false]);
  });

  test("is hollow for a hollow piece, solid for a solid one", () => {
    expect(modelOf(nearest([ADA, CLEO], piece({ hollow: true })))).toBe("Cleo curb, hollow");
    expect(modelOf(nearest([ADA], piece({ hollow: true })))).toBe("a hollow link");
    expect(modelOf(nearest([CLEO]))).toBe("a solid link");
  });

  test("or it is said what is missing for one", () => {
    expect(modelOf(nearest([]))).toBe("any link");
    expect(modelOf(nearest([{ ...ADA, weight: "" }]))).toBe("a weight");
    expect(modelOf(nearest([ADA], piece({ of: "3.9" })))).toBe("a lighter link");
    expect(modelOf(nearest([ADA], piece({ of: "4" })))).toBe("Ada curb");
  });

  test("comes after all others where nobody wrote down its links per length", () => {
    const unknown = { ...BRAM, model: "Unknown", linksPer: "" };
    expect(modelOf(nearest([unknown, ADA]))).toBe("Ada curb");
    const found = nearest([unknown]);
    expect(found.found && found.match.wouldWeigh).toBeUndefined();
  });
});

test("a mean is of finished links, taken to the six figures that an order takes of it", () => {
  const { stage, weight } = readOwnLinks([{ ...ADA, weight: 2.0533333333 }])[0]?.weight ?? {};
  expect([stage, weight?.grams.value().toString()]).toEqual(["finished", "2.05333"]);
});

test("rows that cannot be costed are left out, a person's own among them", () => {
  const rows = [
    { ...ADA, model: "" },
    { ...ADA, mark: "gold" },
    { ...ADA, weight: 0 },
    { ...ADA, weight: "heavy" },
    ADA,
  ];
  expect(readOwnLinks(rows).map(({ name }) => name.model)).toEqual(["Ada curb"]);
});
