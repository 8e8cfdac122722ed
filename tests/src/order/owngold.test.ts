import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { goldBalance, parseOwnGold } from "../../../src/order/owngold";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { type Record_, read } from "../orders";

/** Fine gold at exactly 100 a gram: 100 x 31.1034768. */
const SPOT = money(Quotient.of("3110.34768"), "USD");
const parse = (record: Record_) => parseOwnGold(record, Quotient.of("0.95"));
function balanceOf(record: Record_, needed: string) {
  const own = read(parse(record));
  if (!own) throw new Error("no gold was brought");
  const { brought, used, returned, bought, credit } = goldBalance(own, grams(Quotient.of(needed)), SPOT);
  return {
    ...Object.fromEntries(
      Object.entries({ brought, used, returned, bought }).map(([key, weight]) => [
        key,
        weight.grams.value().toString(),
      ]),
    ),
    credit: credit.amount.value().toString(),
  };
}

describe("20 g of 750, 15 g fine, at 100 a gram of fine gold (hand arithmetic)", () => {
  const GOLD = { ownGoldWeight: "20", ownGoldMark: "750" };

  test("credited at 95 %: 1,425 off; all the work's gold is bought", () => {
    expect(balanceOf({ ...GOLD, ownGoldUse: "credited" }, "40")).toEqual({
      brought: "15",
      used: "0",
      returned: "0",
      bought: "40",
      credit: "1425",
    });
  });

  test("used in full in work of 40 g fine: 25 g are bought", () => {
    expect(balanceOf({ ...GOLD, ownGoldUse: "used" }, "40")).toMatchObject({
      used: "15",
      returned: "0",
      bought: "25",
      credit: "1425",
    });
  });

  test("work of 10 g fine uses 10 g, and 5 g go back; only what is used counts", () => {
    expect(balanceOf({ ...GOLD, ownGoldUse: "used" }, "10")).toMatchObject({
      used: "10",
      returned: "5",
      bought: "0",
      credit: "950",
    });
  });

  test("a share of its own for one customer", () => {
    expect(balanceOf({ ...GOLD, ownGoldShare: "100 %" }, "40").credit).toBe("1500");
  });
});

test("without weight and mark there is none", () => {
  expect(read(parse({ ownGoldUse: "credited", ownGoldShare: "0.9" }))).toBeUndefined();
});

describe("bad input: one sentence that names the field, what was found and what would be right", () => {
  test.each<[Record_, string, RegExp]>([
    [{ ownGoldWeight: "20" }, "ownGoldMark", /^Mark of the customer's gold: found nothing; give a mark such as "14K"/],
    [{ ownGoldMark: "750" }, "ownGoldWeight", /^Customer's gold: found nothing; give the grams the customer brings/],
    [{ ownGoldWeight: "0", ownGoldMark: "750" }, "ownGoldWeight", /^Customer's gold: found "0"/],
    [{ ownGoldWeight: "20", ownGoldMark: "750", ownGoldUse: "kept" }, "ownGoldUse", /give one of "credited", "used"$/],
    [
      { ownGoldWeight: "20", ownGoldMark: "750", ownGoldShare: "1.2" },
      "ownGoldShare",
      /^Share of its melt value: found "1.2"; give a share from 0 to 1/,
    ],
  ])("%j", (record, field, sentence) => {
    const parsed = parse(record);
    expect(parsed.ok ? [] : parsed.faults).toMatchObject([{ field, sentence: expect.stringMatching(sentence) }]);
  });
});
