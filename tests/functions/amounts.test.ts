import { expect, test } from "vitest";
import { cell } from "./built";

test("amount, discount and overhead are rounded once, where decimals say so (hand arithmetic)", () => {
  expect(cell("LINEAMOUNT", 12.345, 3, 2)).toBe(37.04);
  expect(cell("LINEAMOUNT", 12.345)).toBe(12.345);
  // 7,150 x 0.05 = 357.50; 0.10 at 5 % is half a cent, which goes up.
  expect(cell("DISCOUNT", 7150, "5 %", 2)).toBe(357.5);
  expect(cell("DISCOUNT", 0.1, 0.05, 2)).toBe(0.01);
  expect(cell("DISCOUNT", 7150, "")).toBe(0);
  expect(cell("OVERHEAD", 2753, 0.06)).toBe(165.18);
  expect(cell("OVERHEAD", 2753, " ")).toBe(0);
});

test("every 7th of 50 links are 7 links (hand arithmetic)", () => {
  expect(cell("LINKSWITHSTONES", 50, 7)).toBe(7);
  expect(cell("LINKSWITHSTONES", 50)).toBe(50);
  expect(cell("LINKSWITHSTONES", 6, 7)).toBe(0);
});

test("of a customer's gold no more is used than the work needs, and it is paid at a share of its value (hand arithmetic)", () => {
  expect(cell("GOLDUSED", 10, 42.5)).toBe(10);
  expect(cell("GOLDUSED", 50, 42.5)).toBe(42.5);
  // One troy ounce at 2,650, and 95 % of it.
  expect(cell("GOLDCREDIT", 31.1034768, 2650)).toBe(2650);
  expect(cell("GOLDCREDIT", 31.1034768, 2650, 0.95, 2)).toBe(2517.5);
});
