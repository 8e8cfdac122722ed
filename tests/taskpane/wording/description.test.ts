import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lineWords } from "../../../taskpane/wording/description";
import type { Record_ } from "../../src/orders";
import { CUSTOMER_PAPERS, workOf } from "../papers";

/** What a customer reads of one line. */
const wordsOf = (line: Record_, rates: Record_ = {}, terms: Record_ = {}) => {
  const [first] = workOf([line], terms, rates).quote.lines;
  if (!first) throw new Error("no line");
  return lineWords(first, "en-US", true);
};
/** 20 in at 3.8 an inch: 76 links of 1.09 g, 82.84 g; 8 in at 4.1 an inch: 33 links, 8.05 in. */
const CHAIN = { kind: "chain", mark: "14K", length: "20", linksPer: "3.8", linkWeight: "1.09", clasp: "none" };
const DIAMONDS = { stoneCount: "10", stoneKind: "diamond", stoneDiameter: "2" };

describe("a line as a customer reads it", () => {
  test.each<[string, Record_, string]>([
    [
      "solid, one colour",
      {},
      "Chain in yellow 14K gold, solid links. Finished length 20.0 in, 76 links, about 82.8 g.",
    ],
    [
      "hollow",
      { solidity: "hollow", linkWeight: "0.413" },
      "Chain in yellow 14K gold, hollow links. Finished length 20.0 in, 76 links, about 31.4 g.",
    ],
    [
      "white with rhodium",
      { kind: "bracelet", colour: "white" },
      "Bracelet in white 14K gold, solid links, plated with rhodium.",
    ],
    [
      "rose with another metal",
      { mark: "18K", colour: "rose", plated: "plated", platingMetal: "black rhodium" },
      "Chain in rose 18K gold, solid links, plated with black rhodium.",
    ],
    [
      "not plated",
      { mark: "18K", colour: "white", plated: "not plated" },
      "Chain in white 18K gold, solid links, not plated.",
    ],
    [
      "several colours",
      { kind: "bracelet", mark: "18K", pattern: "YYW", linkWeightWhite: "1.1", plated: "not plated" },
      "Bracelet in yellow and white 18K gold, solid links: two yellow links, then one white, repeated.",
    ],
    [
      "several colours of which the white links are plated",
      { mark: "18K", pattern: "YYW", linkWeightWhite: "1.1" },
      "then one white, repeated. The white links are plated with rhodium.",
    ],
    [
      "three colours",
      { mark: "585", pattern: "YRRW", linkWeightWhite: "1.1", linkWeightRose: "1.1", solidity: "hollow" },
      "Chain in yellow, rose and white 585 gold, hollow links: one yellow link, then two rose, then one white, repeated.",
    ],
    [
      "an alloy by its own name",
      { mark: "750", colour: "own", colourName: "champagne", composition: "Au 750 Ag 140 Cu 110" },
      "Chain in champagne 750 gold, solid links.",
    ],
    [
      // 12.2 in hold 31.72 links of 2.6 an inch, so 32: 12.31 in.
      "a length that whole links make longer",
      { length: "12.2", linksPer: "2.6" },
      "Finished length 12.3 in (you ordered 12.2 in; whole links make it 0.1 in longer), 32 links, about 34.9 g.",
    ],
    [
      // 8.0 in at 1.9 an inch are 15.2 links, so 15: 7.89 in.
      "and shorter",
      { length: "8", linksPer: "1.9" },
      "Finished length 7.9 in (you ordered 8.0 in; whole links make it 0.1 in shorter), 15 links",
    ],
    [
      // 7.75 in at 4 an inch: 31 links.
      "a wrist with its ease",
      { lengthGiven: "wrist", length: "7", ease: "0.75", linksPer: "4" },
      "For a wrist of 7.0 in with 0.75 in ease: finished length 7.8 in, 31 links",
    ],
    ["several pieces", { quantity: "2" }, "76 links, about 82.8 g each."],
    [
      // 10 x 4 x 1.2 x 0.0061 = 0.29.
      "stones worked out from their size",
      DIAMONDS,
      "Set with 10 round diamonds of 2.0 mm. Worked out from the size: about 0.29 ct in total.",
    ],
    [
      "stones that were weighed",
      { ...DIAMONDS, stoneCarat: "0.03" },
      "Set with 10 round diamonds of 2.0 mm, 0.30 ct in total (weighed).",
    ],
    [
      "natural or grown",
      { ...DIAMONDS, stoneCarat: "0.03", stoneOrigin: "laboratory-grown" },
      "Set with 10 round laboratory-grown diamonds of 2.0 mm, 0.30 ct in total (weighed).",
    ],
    [
      "stones that nobody has named",
      { ...DIAMONDS, stoneKind: "", stoneCarat: "0.03" },
      "Set with 10 round stones of 2.0 mm (the kind of stone is still to be agreed).",
    ],
    [
      "two sides, and a kind that irregularly has its plural",
      {
        stoneCount: "3",
        stoneKind: "ruby",
        stoneOrigin: "natural",
        stoneShape: "oval",
        stoneLength: "4",
        stoneWidth: "3",
      },
      "Set with 3 oval natural rubies of 4.0 × 3.0 mm.",
    ],
    [
      "a kind in the person's own words",
      { stoneCount: "3", stoneKind: "Saphir, blau", stoneDiameter: "2.5" },
      "Set with 3 round stones (Saphir, blau) of 2.5 mm.",
    ],
    [
      "stones in the links and on the clasp",
      {
        ...DIAMONDS,
        clasp: "cast box clasp",
        claspWeight: "3",
        claspStoneCount: "1",
        claspStoneKind: "ruby",
        claspStoneCarat: "0.5",
      },
      "Box clasp. Set with 10 round diamonds of 2.0 mm in the links. Worked out from the size: about 0.29 ct in total. " +
        "Set with 1 ruby on the clasp, 0.50 ct in total (weighed).",
    ],
    [
      "engraving",
      { engraving: "A & T 2026", engravingPlace: "inside the clasp" },
      "Engraved inside the clasp: “A & T 2026”.",
    ],
    ["engraving that has no place yet", { engraving: "A & T 2026" }, "Engraved: “A & T 2026”."],
  ])("%s", (_case, line, sentence) => {
    expect(wordsOf({ ...CHAIN, ...line })).toContain(sentence);
  });

  test("says nothing of a plating whose metal nobody has named, and not that there is none", () => {
    expect(wordsOf({ ...CHAIN, colour: "white" }, { platingMetal: "" })).not.toMatch(/plat/i);
  });

  test("says what a gram changes where another line changes by another amount", () => {
    const settled = { settled: "by final weight", spot: "3110.34768" };
    const lines = [CHAIN, { ...CHAIN, mark: "18K" }];
    const [first] = workOf(lines, settled).quote.lines;
    // 14K of 100 a gram.
    expect(first && lineWords(first, "en-US", true)).toContain("USD 58.33 more or less per gram.");
    expect(wordsOf(CHAIN, {}, settled)).not.toContain("more or less");
  });
});

const MARKS = {
  "14K": "14K",
  "14 kt": "14K",
  "585": "585",
  "750": "750",
  "18/24": "18K",
  "0.585": "585",
  "999.9": "999.9",
};
const LOOKS: readonly Record_[] = [
  {},
  { colour: "rose" },
  { colour: "white" },
  { pattern: "YW", linkWeightWhite: "2" },
  { pattern: "YYRW", linkWeightWhite: "2", linkWeightRose: "2" },
  { colour: "own", colourName: "sea green gold", composition: "Au 999.9 Ag 0.1" },
];

describe.each(Object.entries(CUSTOMER_PAPERS))(
  "%s, whatever the mark, the colours, the plating and the stones",
  (_name, paper) => {
    test("has the mark directly before the word gold, solid or hollow behind it, and plating never without its metal", () => {
      fc.assert(
        fc.property(
          fc.constantFrom(...Object.entries(MARKS)),
          fc.constantFrom(...LOOKS),
          fc.constantFrom("solid", "hollow"),
          fc.constantFrom("as usual", "plated", "not plated"),
          fc.constantFrom("rhodium", "black rhodium", "platinum", ""),
          fc.constantFrom({}, DIAMONDS, { stoneCount: "3", stoneDiameter: "2", stoneCarat: "0.4" }),
          ([typed, mark], look, solidity, plated, platingMetal, stones) => {
            const line = { ...look, ...stones, mark: typed, solidity, plated, platingMetal };
            const text = paper(workOf([line], {}, { platingMetal: "" })).join("\n");
            const golds = [...text.matchAll(/(\S+) gold\b(?=(.*))/g)];
            const described = golds.filter(([, before]) => before === mark);
            expect(described.length, text).toBeGreaterThan(0);
            // "includes gold", "Your gold" and the gold price are no description of the piece.
            for (const [, before = ""] of golds) expect([mark, "includes", "Your", "fine", "a"]).toContain(before);
            for (const [, , after] of described) expect(after?.startsWith(`, ${solidity} links`), text).toBe(true);
            expect(text).not.toMatch(/gold.plated|solid gold|gold, plated|undefined/i);
            for (const [, before, after] of text.matchAll(/(\S+ )?plated\b(.*)/g)) {
              if (before === "not ") expect(plated).toBe("not plated");
              else
                expect([platingMetal === "" ? "no metal" : ` with ${platingMetal}`, after]).toContainEqual(
                  expect.stringMatching(new RegExp(`^ with ${platingMetal || "no metal"}`)),
                );
            }
            if ("stoneCount" in stones && stones.stoneCount === "3") expect(text).not.toMatch(/ ct\b/);
          },
        ),
        { numRuns: 150 },
      );
    });
  },
);
