import { describe, expect, test } from "vitest";
import { readStlText } from "../../../src/mesh/stltext";
import { boxAt, bytesOf, soupOf, stlText, TETRAHEDRON, textStl } from "../modelfile";
import { expectFault } from "../reference";

const read = (text: string) => soupOf(readStlText(bytesOf(text), () => {}));
const TEXT = stlText(TETRAHEDRON);
const NUMBERS = TETRAHEDRON.flatMap((corners) => corners.flatMap((corner) => corner.split(" ").map(Number)));

test("corners come as they are written", () => {
  expect(read(TEXT)).toEqual(NUMBERS);
  expect(readStlText(textStl(boxAt([2, 3, 4], [0, 0, 0])), () => {}).index.length).toBe(36);
});

test.each([
  ["in capitals", TEXT.toUpperCase()],
  ["with Windows' ends of lines", TEXT.replaceAll("\n", "\r\n")],
  ["with old Mac ends of lines", TEXT.replaceAll("\n", "\r")],
  ["all on one line", TEXT.replaceAll("\n", " ")],
  ["with a byte order mark", `\ufeff${TEXT}`],
  ["without a name", TEXT.replaceAll(" link", "")],
  ["with a name of many words, one of them facet", TEXT.replace("solid link", "solid my facet link, one side")],
  ["with an end of file mark and zeros behind", `${TEXT}\x1a\0\0`],
  ["with tabs, and normals that are no numbers", TEXT.replaceAll("normal 0 0 0", "normal\tnan -nan(ind) 0,5")],
  ["with exponents", TEXT.replaceAll("1", "+1.000000e+00")],
])("%s", (_, text) => {
  expect(read(text)).toEqual(NUMBERS);
});

test("several solids follow each other", () => {
  expect(read(TEXT + TEXT.replaceAll("link", "second"))).toEqual([...NUMBERS, ...NUMBERS]);
});

test("many triangles: room grows", () => {
  const many = Array.from({ length: 70_000 }, (_, i) => [`${i} 0 0`, `${i} 1 0`, `${i} 0 1`]);
  const { corners, index } = readStlText(bytesOf(stlText(many)), () => {});
  expect([index.length, corners.length, corners[9 * 69_999]]).toEqual([210_000, 630_000, 69_999]);
});

describe("what is wrong is named with its line", () => {
  test.each([
    ["a comma", TEXT.replace("vertex 0 1 0", "vertex 0 1,5 0"), "notANumber", ['"1,5"', "line 5", "comma", "point"]],
    ["a word", TEXT.replace("vertex 0 1 0", "vertex 0 abc 0"), "notANumber", ['"abc"', "line 5"]],
    ["nan", TEXT.replace("vertex 0 1 0", "vertex 0 nan 0"), "notANumber", ['"nan"', "line 5"]],
    ["too far", TEXT.replace("vertex 0 1 0", "vertex 0 1e30 0"), "outOfRange", ["1e+30", "line 5"]],
    ["a corner too few", TEXT.replace("  vertex 0 1 0\n", ""), "wrongShape", ['"endloop" on line 6', '"vertex"']],
    ["a corner too many", TEXT.replace("endloop", "vertex 1 2 3"), "wrongShape", ['"vertex" on line 7', '"endloop"']],
    ["a coordinate too few", TEXT.replace("vertex 0 1 0", "vertex 0 1"), "notANumber", ['"vertex"', "line 6"]],
    ["another word", TEXT.replace("outer loop", "outer hoop"), "wrongShape", ['"hoop" on line 3', '"loop"']],
    ["something behind", `${TEXT}created by nobody\n`, "wrongShape", ['"created"', "end of the file"]],
    ["cut off between facets", TEXT.slice(0, TEXT.indexOf("endsolid")), "wrongShape", ["its end", "cut off"]],
    ["cut off in a corner", TEXT.slice(0, TEXT.indexOf("1 0\n") + 1), "wrongShape", ["its end", "cut off"]],
    ["no facets", "solid link\nendsolid link\n", "blank", ["no triangles"]],
  ] as const)("%s", (_, text, code, said) => {
    expectFault(() => read(text), code, "STL file", ...said);
  });

  test("a word as long as a file is cut short", () => {
    expectFault(() => read(TEXT.replace("outer loop", `outer ${"x".repeat(3_000_000)}`)), "wrongShape", "xxx…");
  });
});
