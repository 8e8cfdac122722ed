import { describe, expect, test } from "vitest";
import { MARKUP_RULE, MONEY_AT_LEAST_0, SHARE, SPOT_RULE, WHOLE_SHARE } from "../../../src/exact/numberrule";
import { readNumber } from "../../../src/reading/number";
import { expectFault } from "../reference";

const read = (value: unknown, rule: typeof SHARE) => readNumber(value, "Field", rule).value().toString();

describe("shares", () => {
  test.each([
    ["0.05", "0.05"],
    ["5 %", "0.05"],
    ["5%", "0.05"],
    ["12.5 %", "0.125"],
    [0.05, "0.05"],
  ])("%s is %s", (value, share) => {
    for (const rule of [SHARE, WHOLE_SHARE, MARKUP_RULE]) expect(read(value, rule)).toBe(share);
  });

  test("100 % is a whole share and a markup, not a loss; 130 % is a markup only", () => {
    expect([read("100 %", WHOLE_SHARE), read("130%", MARKUP_RULE)]).toEqual(["1", "1.3"]);
    expectFault(() => read("100%", SHARE), "outOfRange", 'Field: found "100%"; give a share from 0 to below 1');
    expectFault(() => read("130%", WHOLE_SHARE), "outOfRange");
  });

  test.each(["5 % off", "%", "5 %%", "% 5"])("%s is none", (value) => {
    expectFault(() => read(value, SHARE), "notANumber");
  });
});

test("money takes no per cent, and a spot is above nothing", () => {
  expectFault(() => read("5 %", MONEY_AT_LEAST_0), "notANumber");
  expectFault(() => read("0", SPOT_RULE), "outOfRange");
});
