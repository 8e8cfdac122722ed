import { expect, test } from "vitest";
import { refuseCoordinate } from "../../../src/mesh/coordinate";
import { expectFault } from "../reference";

test("a coordinate too far away and one that is no number are told apart", () => {
  expectFault(() => refuseCoordinate(3e7, "STL file", "line 4"), "outOfRange", "30000000 at line 4", "1,000,000");
  expectFault(() => refuseCoordinate(Number.NaN, "STL file", "line 4"), "notANumber", "NaN", "line 4");
  expect(() => refuseCoordinate(Number.POSITIVE_INFINITY, "STL file", "x")).toThrow("Infinity");
});
