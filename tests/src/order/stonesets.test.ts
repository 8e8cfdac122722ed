import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { makeStoneSets, readStoneSets } from "../../../src/order/stonesets";
import { type Record_, ratesOf, read } from "../orders";

const RATES = ratesOf({ breakage: "0.1" });
const parsedOf = (record: Record_, links = 95) =>
  makeStoneSets(readStoneSets(record, RATES.currency), Quotient.of(links), RATES);
const counts = (record: Record_, links = 95) =>
  read(parsedOf(record, links)).map(({ where, count }) => [where, count.toNumber()]);

describe("the stones of a piece of 95 links (hand arithmetic)", () => {
  test.each<[Record_, (string | number)[][]]>([
    [{}, []],
    [{ stonesOn: "all links" }, [["links", 95]]],
    [{ stonesOn: "all links", stonesPerLink: "3" }, [["links", 285]]],
    [{ stonesOn: "every n-th link", stoneEvery: "10" }, [["links", 9]]],
    [{ stonesOn: "every n-th link", stoneEvery: "96" }, []],
    [{ stonesOn: "a number of links", stoneCount: "7", stonesPerLink: "2" }, [["links", 14]]],
    [
      { stoneCount: 7, claspStoneCount: 3 },
      [
        ["links", 7],
        ["clasp", 3],
      ],
    ],
    [{ stonesOn: "no links", claspStoneCount: "1" }, [["clasp", 1]]],
  ])("%j", (record, expected) => {
    expect(counts(record)).toEqual(expected);
  });

  test("wrong figures are told also where there are no stones, missing ones only where there are", () => {
    expect(parsedOf({ stonePrice: "free" })).toMatchObject({ ok: false, faults: [{ field: "stonePrice" }] });
    expect(parsedOf({ stonePrice: "400", stonePriced: "a carat" }).ok).toBe(true);
    expect(parsedOf({ stonePrice: "400", stonePriced: "a carat", stoneCount: "1" })).toMatchObject({
      ok: false,
      faults: [{ field: "stoneCarat", code: "blank" }],
    });
  });

  test("one share of stones is broken in the links and on the clasp, and its fault is told once", () => {
    const record = { stonesOn: "all links", claspStoneCount: "1" };
    const broken = (each: Record_) => read(parsedOf({ ...record, ...each })).map((set) => set.breakage.toNumber());
    expect(broken({ breakage: "2 %" })).toEqual([0.02, 0.02]);
    expect(broken({})).toEqual([0.1, 0.1]);
    const wrong = parsedOf({ ...record, breakage: "1", stonePrice: "free" });
    expect(wrong.ok ? [] : wrong.faults.map(({ field }) => field)).toEqual(["stonePrice", "breakage"]);
    expect(wrong.ok ? "" : wrong.faults[1]?.sentence).toContain(
      'Stone breakage: found "1"; give a share from 0 to below 1',
    );
  });

  test("all links and every n-th are counted anew where the links change; a number stands", () => {
    const follows = (record: Record_) =>
      read(parsedOf({ ...record, claspStoneCount: "1" })).map(
        (set) => set.follows && [set.follows.every.toNumber(), set.follows.each.toNumber()],
      );
    expect(follows({ stonesOn: "all links", stonesPerLink: "3" })).toEqual([[1, 3], undefined]);
    expect(follows({ stonesOn: "every n-th link", stoneEvery: "10" })).toEqual([[10, 1], undefined]);
    expect(follows({ stoneCount: "7" })).toEqual([undefined, undefined]);
  });

  test.each<[Record_, string]>([
    [{ stonesOn: "all links", stonesPerLink: "3" }, "all links, 3 each"],
    [{ stonesOn: "every n-th link", stoneEvery: "10" }, "every 10th link"],
    [{ stonesOn: "every n-th link", stoneEvery: "1", stonesPerLink: "2" }, "all links, 2 each"],
    [{ stonesOn: "every n-th link", stoneEvery: "2" }, "every 2nd link"],
    [{ stonesOn: "every n-th link", stoneEvery: "3" }, "every 3rd link"],
    [{ stonesOn: "every n-th link", stoneEvery: "13" }, "every 13th link"],
    [{ stonesOn: "every n-th link", stoneEvery: "21" }, "every 21st link"],
    [{ stoneCount: 7 }, "7 links"],
    [{ claspStoneCount: 1 }, ""],
  ])("the setter reads which links: %j", (record, which) => {
    expect(read(parsedOf(record)).map((set) => set.which)).toEqual([which]);
  });
});
