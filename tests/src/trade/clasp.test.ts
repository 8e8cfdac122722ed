import { expect, test } from "vitest";
import { CLASP_PARTS, CLASPS, isCast } from "../../../src/trade/clasp";

test("box and tongue, and the two halves of a hidden clasp, are cast; a bought one and none are not (common practice)", () => {
  expect(CLASPS.map((clasp) => [clasp, isCast(clasp), CLASP_PARTS[clasp]])).toEqual([
    ["bought lobster clasp", false, 0],
    ["cast box clasp", true, 2],
    ["cast hidden clasp", true, 2],
    ["none", false, 0],
  ]);
});
