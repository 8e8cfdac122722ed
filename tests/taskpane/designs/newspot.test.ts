import { expect, test } from "vitest";
import { Quotient } from "../../../src/index";
import { readSpot, typedNow } from "../../../taskpane/designs/newspot";
import { spotAgeSentence } from "../../../taskpane/quote/spotage";
import { ratesOf } from "../../src/orders";

const TYPED = { amount: "2650", per: "ounce", mark: "", time: "2026-05-31T14:30" } as const;

test("an ounce is taken as typed; a gram of 14K at 50 is 50 x 24 / 14 x 31.1034768, to the 15 digits a cell holds", () => {
  const ounce = readSpot(TYPED, "USD");
  expect(ounce.ok && ounce.spot.amount.value().toString()).toBe("2650");
  const gram = readSpot({ ...TYPED, amount: "50", per: "gram", mark: "14K" }, "USD");
  // 50 x 31.1034768 x 24 / 14 = 2,666.01229714285714…
  expect(gram.ok && gram.spot.amount.value().toString()).toBe("2666.01229714286");
});

test("date and time are days since 30 December 1899: 31 May 2026 is 46173", () => {
  const read = readSpot(TYPED, "USD");
  expect(read.ok && read.time).toBeCloseTo(46173 + 14.5 / 24, 9);
  for (const time of ["", "2026-02-30T10:00", "2026-05-31T24:10", "yesterday"]) {
    expect(readSpot({ ...TYPED, time }, "USD")).toMatchObject({ ok: false, field: "time" });
  }
  expect(typedNow(new Date(2026, 0, 5, 7, 3))).toBe("2026-01-05T07:03");
});

test("what is wrong is told at its field", () => {
  expect(readSpot({ ...TYPED, amount: "-1" }, "USD")).toMatchObject({ ok: false, field: "amount" });
  expect(readSpot({ ...TYPED, per: "gram", mark: "25K" }, "USD")).toMatchObject({ ok: false, field: "mark" });
});

test("the age of spot is told beyond the limit, in hours, then in days; never without a limit", () => {
  const values = (time: number | undefined) => ({ time, timeWords: "", source: "", ofAnother: undefined });
  const limited = { ...ratesOf(), spotAge: Quotient.of("24") };
  expect(spotAgeSentence(values(46000), ratesOf(), 46900)).toBe("");
  expect(spotAgeSentence(values(46000), limited, 46001)).toBe("");
  expect(spotAgeSentence(values(46000), limited, 46001.25)).toBe("Spot is 30 hours old; your limit is 24 hours.");
  expect(spotAgeSentence(values(46000), limited, 46003)).toBe("Spot is 3 days old; your limit is 24 hours.");
  expect(spotAgeSentence(values(46000), limited, 45999)).toContain("lies in the future");
  expect(spotAgeSentence(values(undefined), limited, 46000)).toContain("no date and time");
  const other = { spot: "4200", time: "46000", source: "" };
  expect(spotAgeSentence({ ...values(undefined), ofAnother: other }, limited, 46000)).toContain("its age is not known");
});
