import { expect, test } from "vitest";
import { constantRows, doubleRows, pairRows } from "../../../src/columns/buffers";
import { Quotient } from "../../../src/exact/quotient";

test("a step has its own rows, the same at every run", () => {
  expect(doubleRows(3)).toBe(doubleRows(3));
  expect(doubleRows(3)).not.toBe(doubleRows(4));
  expect(pairRows(3, true).high).toBe(pairRows(3, false).high);
  expect(pairRows(3, false).grains).toBeUndefined();
});

test("a constant's rows are made once, whichever object it is", () => {
  const rows = constantRows(Quotient.of("31.1034768"));
  expect(constantRows(Quotient.of("31.1034768"))).toBe(rows);
  expect([rows.high[0], rows.high.at(-1), rows.grains?.power[0]]).toEqual([31.1034768, 31.1034768, 7]);
});
