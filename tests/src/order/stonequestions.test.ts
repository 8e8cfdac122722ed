import { describe, expect, test } from "vitest";
import { stoneQuestions } from "../../../src/order/stonequestions";
import { orderOf, type Record_ } from "../orders";

const asked = (line: Record_) => {
  const [read] = orderOf({ stoneCount: "10", ...line }).lines;
  if (!read) throw new Error("no line");
  return stoneQuestions(read).map(({ sentence }) => sentence);
};
const RUBY = { stoneKind: "ruby", stoneOrigin: "natural" };

describe("what is asked about stones before a quote is made", () => {
  test("their kind, where nobody has named it", () => {
    expect(asked({})).toEqual([
      "What kind of stones are in the links? Until the kind is named, the quote says that it is still to be agreed.",
    ]);
  });

  test.each(["diamond", "Diamonds", "Ruby", "blue sapphire", "emerald"])("whether a %s is natural", (stoneKind) => {
    expect(asked({ stoneKind })).toEqual([
      "Are the stones in the links natural or laboratory-grown? The quote says which.",
    ]);
    expect(asked({ stoneKind, stoneOrigin: "natural" })).toEqual([]);
    expect(asked({ stoneKind: `laboratory-grown ${stoneKind}` })).toEqual([]);
  });

  test("nothing of where other stones come from", () => {
    expect(asked({ stoneKind: "garnet" })).toEqual([]);
  });

  // A round diamond of 2 mm is 0.02928 ct: 0.03 fits, 0.3 has its point in the wrong place.
  test.each([
    ["0.03", 0],
    ["0.025", 0],
    ["0.3", 1],
    ["0.003", 1],
  ])("a carat of %s typed beside a size of 2 mm: %i questions", (stoneCarat, count) => {
    const diamond = { stoneKind: "diamond", stoneOrigin: "natural", stoneDiameter: "2", stoneCarat };
    expect(asked(diamond)).toHaveLength(count);
  });

  test("in what was found and what the size says", () => {
    // 4 x 3 x 2 x 0.0020 x 4 of an oval: (3.5)² x 2 x 0.008 = 0.196.
    const oval = { ...RUBY, stoneShape: "oval", stoneLength: "4", stoneWidth: "3", stoneDepth: "2", stoneGravity: "4" };
    expect(asked({ ...oval, stoneCarat: "2" })).toEqual([
      "One stone of 4 x 3 mm oval is about 0.196 ct, and 2 ct is typed. Is that right?",
    ]);
    expect(asked({ ...oval, stoneCarat: "0.2" })).toEqual([]);
  });
});
