import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { parseMark } from "../../../src/gold/mark";
import { classAt, classStarts, faultsAbout, readPriceLists, sellersOf } from "../../../src/makeorbuy/makers";
import { grams } from "../../../src/units/weight";
import { type Cells, rowsOf } from "../pricelists";

const listsOf = (...rows: readonly Cells[]) => readPriceLists(rowsOf(...rows), "USD");
const sellers = (lists: ReturnType<typeof listsOf>, mark: unknown = "14K") =>
  sellersOf(lists, parseMark(mark)).map(({ maker, classes }) => [
    maker,
    ...classes.map(({ from, surcharge }) => `${from.grams.value()}: ${surcharge.perGram.value()}`),
  ]);
const weight = (text: string) => grams(Quotient.of(text));

describe("who sells a mark", () => {
  test("makers in the order of their first rows, each with its classes from the lightest on", () => {
    const lists = listsOf(["Fennick", "14K", 20, 3.5], ["Orrin", "14K", "", 4], ["fennick ", "14 kt", 5, 5]);
    expect(lists.faults).toEqual([]);
    expect(sellers(lists)).toEqual([
      ["Fennick", "5: 5", "20: 3.5"],
      ["Orrin", "0: 4"],
    ]);
  });

  test("14K and 585 are two marks; a maker's rows for the very mark go before its rows for all", () => {
    const lists = listsOf(["Fennick", "all", 0, 5], ["Fennick", 585, 10, 4], ["Orrin", "14K", 0, 6]);
    expect(sellers(lists, "14K")).toEqual([
      ["Fennick", "0: 5"],
      ["Orrin", "0: 6"],
    ]);
    expect(sellers(lists, "585")).toEqual([["Fennick", "10: 4"]]);
    expect(sellers(lists, "18K")).toEqual([["Fennick", "0: 5"]]);
  });

  test("blank rows are passed over", () => {
    expect(listsOf(["", "", "", ""], [null, null, undefined, " "])).toEqual({ offers: [], faults: [] });
  });

  test("a weight falls into the last class that begins at or below it, and into none below the first", () => {
    const [seller] = sellersOf(listsOf(["Fennick", "14K", 5, 5], ["Fennick", "14K", 20, 3.5]), parseMark("14K"));
    if (!seller) throw new Error("nobody sells");
    const at = (text: string) => classAt(seller, weight(text))?.surcharge.perGram.value().toString();
    expect([at("4.99"), at("5"), at("19.999"), at("20"), at("900")]).toEqual([undefined, "5", "5", "3.5", "3.5"]);
  });

  test("the weights at which classes begin, each once", () => {
    const lists = listsOf(["A", "14K", 20, 1], ["A", "14K", "", 2], ["B", "14K", "20.0", 3], ["B", "14K", 7, 3]);
    const starts = classStarts(sellersOf(lists, parseMark("14K")));
    expect(starts.map((start) => start.value().toString())).toEqual(["0", "7", "20"]);
  });
});

describe("rows at fault", () => {
  test("name their row and maker, and leave that maker out of what the row is about", () => {
    const lists = listsOf(
      ["Fennick", "14K", 0, 5],
      ["Fennick", "14K", 20, ""],
      ["Fennick", "18K", 0, 5],
      ["Orrin", "14K", 0, 6],
    );
    expect(lists.faults.map(({ sentence }) => sentence)).toEqual([
      expect.stringMatching(/^Row 6, Fennick: Surcharge per g: found nothing; give .*such as 3\.25$/),
    ]);
    // At 20 g Fennick's price is not known: its 5.00 from 0 g on must not stand in for it.
    expect(sellers(lists, "14K")).toEqual([["Orrin", "0: 6"]]);
    expect(sellers(lists, "18K")).toEqual([["Fennick", "0: 5"]]);
  });

  test("a mark that cannot be read may be any; so it is about all", () => {
    const lists = listsOf(["Fennick", "", 0, 5], ["Fennick", "18K", 0, 5]);
    expect(faultsAbout(lists.faults, parseMark("18K"))).toHaveLength(1);
    expect(sellers(lists, "18K")).toEqual([]);
  });

  test("two classes that begin at the same weight are both at fault, with both rows", () => {
    const lists = listsOf(["Fennick", "14K", 20, 5], ["Orrin", "14K", 20, 4], ["FENNICK", "14 ct", "20.0", 4.5]);
    expect(lists.faults.map(({ sentence }) => sentence)).toEqual([
      "Row 5, Fennick: From g: found the class from 20 g for 14K in row 5 and in row 7; keep one of them",
      "Row 7, FENNICK: From g: found the class from 20 g for 14K in row 5 and in row 7; keep one of them",
    ]);
    expect(sellers(lists)).toEqual([["Orrin", "20: 4"]]);
  });

  test("of three alike each names all; a class for all is not one for the mark", () => {
    const lists = listsOf(["F", "14K", 0, 5], ["F", "14K", 0, 5], ["F", "14K", 0, 6], ["F", "all", 0, 7]);
    expect(lists.faults.map(({ row, sentence }) => [row, /in row .*;/.exec(sentence)?.[0]])).toEqual(
      [5, 6, 7].map((row) => [row, "in row 5, in row 6 and in row 7;"]),
    );
    expect(lists.offers).toHaveLength(1);
  });
});
