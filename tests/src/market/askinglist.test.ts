import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { checkAsking } from "../../../src/market/asking";
import type { AskingColumn, ListSettings } from "../../../src/market/askingcells";
import { readAskingHeader } from "../../../src/market/askingheaders";
import { questionsOf, readAskingList } from "../../../src/market/askinglist";
import { seenKey } from "../../../src/market/seenasking";
import { money } from "../../../src/units/money";
import { LIST_SETTINGS } from "../listsettings";
import { expectExact } from "../reference";

type Cells = readonly (readonly unknown[])[];

const columnsOf = (headers: readonly unknown[]): readonly AskingColumn[] =>
  headers.flatMap((header, place) => {
    const { key, ...said } = readAskingHeader(header);
    return key ? [{ ...said, key, header: String(header), place }] : [];
  });
const read = ([headers = [], ...rows]: Cells, changes: Partial<ListSettings> = {}, kept = new Set<string>()) =>
  readAskingList(columnsOf(headers), rows, { ...LIST_SETTINGS, ...changes }, kept);
const questions = ([headers = [], ...rows]: Cells, changes: Partial<ListSettings> = {}) =>
  questionsOf(columnsOf(headers), rows, { ...LIST_SETTINGS, ...changes });

/** A European list: decimal commas, day first, a currency of its own, pennyweights in a header. */
const ABROAD: Cells = [
  ["Date", "Shop", "Karat", "Weight (dwt)", "Price (EUR)", "Hollow"],
  ["25.04.2026", "Fair", "250", "10", "1.080,50", "no"],
  ["03.04.2026", "Fair", "250", "20,5", "999,00", "yes"],
];

describe("a list of asking prices", () => {
  test("is read row by row: 1,080.50 at 1.08 for 10 dwt is 75.035… a gram, 50.035… over 25.00 (hand arithmetic)", () => {
    const { ready, refused, doubles } = read(ABROAD, { exchanges: { EUR: "1.08" } });
    expect([refused, doubles]).toEqual([[], []]);
    expect(ready.map(({ seen }) => [seen.date, seen.hollow])).toEqual([
      ["2026-04-25", false],
      ["2026-04-03", true],
    ]);
    const spot = money(Quotient.of("3110.34768"), "USD");
    const [first] = ready;
    if (!first) throw new Error("nothing was read");
    // 1080.50 x 1.08 / 15.5517384 - 25.
    expectExact(
      checkAsking(first.seen, spot).premium.perGram,
      new Fraction("1080.5").mul("1.08").div("15.5517384").sub(25),
    );
  });

  test("keeps faulty rows out, each with all its sentences, and no other row with them", () => {
    const list: Cells = [
      ["Mark", "Weight", "Price"],
      ["14K", 20, 668],
      ["25K", 0, 668],
      ["", "", ""],
      ["14K", "heavy", 668],
      ["14K", 21, 668],
    ];
    const { ready, refused } = read(list);
    expect(ready.map(({ row }) => row)).toEqual([0, 4]);
    expect(refused.map(({ row, sentences }) => [row, sentences.length])).toEqual([
      [1, 2],
      [3, 1],
    ]);
    expect(refused[1]?.sentences[0]).toContain('Weight: found "heavy"');
  });

  test("tells doubles within it and of those that are kept already", () => {
    const list: Cells = [
      ["Mark", "Weight", "Price"],
      ["14K", 20, 668],
      ["14 kt", "20 g", "USD 668"],
      ["14K", 30, 900],
    ];
    const once = read(list);
    expect(once.ready.map(({ row, mark }) => [row, mark])).toEqual([
      [0, "14K"],
      [2, "14K"],
    ]);
    expect(once.doubles).toEqual([{ row: 1, as: 0 }]);
    const again = read(list, {}, new Set(once.ready.map(({ seen }) => seenKey(seen))));
    expect(again.ready).toEqual([]);
    expect(again.doubles.map(({ row, as }) => [row, as])).toEqual([
      [0, undefined],
      [1, undefined],
      [2, undefined],
    ]);
  });
});

describe("what a list leaves open is asked, not guessed", () => {
  test("a rate for each other currency, and until it is there none of those rows is taken", () => {
    expect(questions(ABROAD)).toMatchObject({
      currencies: ["EUR"],
      currency: false,
      per: true,
      date: false,
      source: false,
    });
    expect(read(ABROAD).refused).toHaveLength(2);
    const withRates: Cells = [
      ["Mark", "Weight", "Price", "Rate of exchange"],
      ["14K", 20, "668 EUR", 1.08],
    ];
    expect(questions(withRates).currencies).toEqual([]);
    expect(read(withRates).ready).toHaveLength(1);
  });

  test("the decimal sign where figures do not tell; whole figures beside them are read", () => {
    const list: Cells = [
      ["Mark", "Weight", "Price"],
      ["14K", "20", "1.500"],
      ["14K", "20", "668"],
    ];
    expect(questions(list).decimals).toEqual({ sign: undefined, doubtful: "1.500" });
    expect(read(list).ready.map(({ row }) => row)).toEqual([1]);
    expect(read(list).refused[0]?.sentences).toEqual([
      'Asked price: found "1.500", which may be two numbers; say what the decimal sign is',
    ]);
    const prices = (decimalSign: "." | ",") =>
      read(list, { decimalSign }).ready.map(({ seen }) => seen.price.value().toString());
    expect([prices("."), prices(",")]).toEqual([
      ["1.5", "668"],
      ["1500", "668"],
    ]);
  });

  test("a figure with the other sign is kept out, never read as something else", () => {
    const list: Cells = [
      ["Mark", "Weight", "Price"],
      ["14K", "12.5 g", "668"],
      ["14K", "12,5", "668"],
    ];
    const { ready, refused } = read(list, { decimalSign: "," });
    expect(ready.map(({ seen }) => seen.weight?.grams.value().toString())).toEqual(["12.5"]);
    expect(refused).toEqual([{ row: 0, sentences: [expect.stringContaining('Weight: found "12.5" with a point')] }]);
  });

  test("the order of dates that may be two days", () => {
    const list: Cells = [
      ["Date", "Mark", "Weight", "Price"],
      ["03/04/2026", "14K", 20, 668],
    ];
    expect(questions(list).dates.doubtful).toBe("03/04/2026");
    expect(read(list).refused[0]?.sentences).toEqual([expect.stringContaining("which may be two days")]);
    expect(read(list, { dateOrder: "month first" }).ready[0]?.seen.date).toBe("2026-03-04");
  });

  test("which ounce, whether it stands in a header, in a cell or under Per", () => {
    const inHeader: Cells = [
      ["Mark", "Weight (oz)", "Price"],
      ["14K", "0.5", 668],
    ];
    const inCell: Cells = [
      ["Mark", "Weight", "Price"],
      ["14K", "0.5 oz", 668],
      ["14K", 12, 668],
    ];
    const underPer: Cells = [
      ["Mark", "Price", "Per"],
      ["14K", 2000, "oz"],
    ];
    for (const list of [inHeader, inCell, underPer]) {
      expect(questions(list).ounce).toContain("oz");
      expect(read(list).refused).toHaveLength(1);
      expect(read(list, { ounce: "ozt" }).refused).toEqual([]);
    }
    expect(
      questions([
        ["Mark", "Weight (ozt)", "Price"],
        ["14K", 1, 668],
      ]).ounce,
    ).toBeUndefined();
    expect(
      questions([
        ["Mark", "Weight", "Price"],
        ["14K", "12 gr", 668],
      ]).gr,
    ).toBe("gr");
  });

  test("what prices are for, where no header and no cell says", () => {
    expect(
      questions([
        ["Mark", "Weight", "Price per g"],
        ["14K", 20, 33],
      ]).per,
    ).toBe(false);
    expect(
      questions([
        ["Mark", "Weight", "Price", "Per"],
        ["14K", 20, 33, "g"],
      ]).per,
    ).toBe(false);
    expect(
      questions([
        ["Mark", "Weight", "Price"],
        ["14K", 20, 33],
      ]),
    ).toMatchObject({ per: true, currency: true, date: true, source: true });
  });
});
