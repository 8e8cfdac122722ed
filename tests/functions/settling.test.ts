import { expect, test } from "vitest";
import { cell } from "./built";

test("stones are taken off what the scale shows, 0.2 g a carat, rounded where decimals are given (hand arithmetic)", () => {
  expect(cell("GOLDONSCALE", 20.5, 2.5)).toBe(20);
  expect(cell("GOLDONSCALE", 20.5, "")).toBe(20.5);
  expect(cell("GOLDONSCALE", 84.01, 5.32896, 2)).toBe(82.94);
  expect(cell("GOLDONSCALE", 1, 5)).toEqual({
    code: "#VALUE!",
    message: expect.stringContaining("carats: found stones"),
  });
});

test("a settled price moves by the gram, and beyond the tolerance says that it is to be agreed (hand arithmetic)", () => {
  expect(cell("SETTLEDPRICE", 3579, 25, 100, 100.4, 0.05, 2)).toBe(3589);
  expect(cell("SETTLEDPRICE", 3579, 25, 100, 100, "", 2)).toBe(3579);
  expect(cell("SETTLEDPRICE", 3579, 25, 100, 105.01, "5 %", 2)).toEqual({
    code: "#N/A",
    message: expect.stringContaining("agree the price"),
  });
});
