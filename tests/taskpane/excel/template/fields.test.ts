import { describe, expect, test } from "vitest";
import { parseOrder } from "../../../../src/order/order";
import { costOrder } from "../../../../src/quote/costsheet";
import { makeQuote } from "../../../../src/quote/quote";
import { parseRates } from "../../../../src/rates/rates";
import { dateFormat, type Fields, lineFields, quoteFields } from "../../../../taskpane/excel/template/fields";
import { ORDER, RATES, type Record_, read } from "../../../src/orders";

const { customer: _customer, spot: _spot, discount: _discount, ...LINE } = ORDER;

/** A quote of one line; changes to the line, what the order says once, and the rates. */
function quoteOf(line: Record_ = {}, terms: Record_ = {}, changes: Record_ = {}) {
  const rates = read(parseRates({ ...RATES, ...changes }));
  const order = read(
    parseOrder({ order: { customer: "A. Customer", ...terms }, lines: [{ ...LINE, ...line }], extras: [] }, rates),
  );
  return makeQuote(order, costOrder(order, rates), rates, "2026-03-04").quote;
}
const said = (fields: Fields, ...names: string[]) => names.map((name) => fields.get(name)?.text);
const firstLine = (locale: string, line: Record_ = {}, terms: Record_ = {}) => {
  const [first] = quoteOf(line, terms).lines;
  if (!first) throw new Error("no line");
  return lineFields(first, locale);
};

describe("the fields of a line", () => {
  test("say its kind, mark, colours, solid or hollow, measure, links, weight, clasp, stones and work", () => {
    const fields = firstLine("en-US", {
      kind: "bracelet",
      mark: "14K",
      pattern: "YW",
      linkWeightWhite: "2.5",
      plated: "not plated",
      solidity: "hollow",
      length: "8.25",
      clasp: "cast hidden clasp",
      claspWeight: "2",
      stonesOn: "all links",
      stoneKind: "diamond",
      stoneDiameter: "2",
      findings: "a safety chain",
      engraving: "For Ada",
    });
    expect(
      said(fields, "line.kind", "line.mark", "line.colour", "line.solid", "line.plated", "line.length", "line.unit"),
    ).toEqual(["bracelet", "14K", "yellow, white", "hollow", "", "8.25", "in"]);
    // 8.25 in at 4 an inch: 33 links, 17 yellow of 2 g and 16 white of 2.5 g, and 2 g of clasp: 76 g.
    // 2 mm round, 1.2 mm deep: 4 x 1.2 x 0.0061 = 0.02928 ct; 33 of them 0.97 ct.
    expect(
      said(fields, "line.links", "line.weight", "line.clasp", "line.stones", "line.stoneSizes", "line.stoneSets"),
    ).toEqual(["33", "76.0", "hidden clasp", "33", "2 mm round", "33 diamond (2 mm round)"]);
    expect(said(fields, "line.carats", "line.caratsAbout")).toEqual(["", "0.97"]);
    expect(said(fields, "line.findings", "line.engraving", "line.quantity", "line.perGram")).toEqual([
      "a safety chain",
      "For Ada",
      "1",
      "",
    ]);
  });

  test("say the length that whole links reach where it is another", () => {
    // 17 cm and 1.5 of ease at 1.7 links a centimetre: 31.45, so 31 links: 18.235 cm.
    const wrist = {
      lengthGiven: "wrist",
      length: "17",
      ease: "1.5",
      lengthUnit: "cm",
      linksPer: "1.7",
      linksPerUnit: "cm",
    };
    expect(said(firstLine("de-DE", wrist), "line.length", "line.reached", "line.unit")).toEqual(["18,5", "18,2", "cm"]);
    expect(said(firstLine("de-DE"), "line.reached")).toEqual([""]);
  });

  test("are empty where there is nothing to say", () => {
    const empty = ["line.plated", "line.clasp", "line.stones", "line.carats", "line.caratsAbout", "line.findings"];
    expect(said(firstLine("en-US", { clasp: "none" }), "line.stoneSets")).toEqual([""]);
    expect(said(firstLine("en-US", { clasp: "none" }), ...empty, "line.engraving", "line.perGram")).toEqual(
      [...empty, "", ""].map(() => ""),
    );
  });

  test("say carats that were weighed as they are", () => {
    const fields = firstLine("en-US", { stoneCount: "4", stoneKind: "ruby", stoneCarat: "0.25" });
    expect(said(fields, "line.stoneSets", "line.carats", "line.caratsAbout")).toEqual(["4 ruby", "1.00", ""]);
  });

  test("write figures as the workbook's language does, and keep them figures in a cell of their own", () => {
    const fields = firstLine("de-DE", { length: "24.5", stoneCount: "1", stoneDiameter: "2.5" });
    expect(said(fields, "line.length", "line.weight", "line.stoneSizes")).toEqual(["24,5", "196,0", "2,5 mm round"]);
    expect(fields.get("line.length")?.value).toBe(24.5);
    expect(fields.get("line.weight")).toMatchObject({ value: 196, format: "#,##0.0" });
  });
});

describe("the fields of a quote", () => {
  test("say the tax on top by one name and the tax in the amounts by another", () => {
    const names = ["taxName", "tax", "taxIncludedName", "taxIncluded"];
    const line = { linePriceBy: "own price", linePriceFigure: "108" };
    // 8 % of 108; 108 x 8 / 108.
    expect(said(quoteFields(quoteOf(line, {}, { tax: "0.08", taxIs: "on top" }), "en-US"), ...names)).toEqual([
      "Sales tax",
      "8.64",
      "",
      "",
    ]);
    expect(said(quoteFields(quoteOf(line, {}, { tax: "0.08", taxIs: "in the price" }), "en-US"), ...names)).toEqual([
      "",
      "",
      "Sales tax",
      "8.00",
    ]);
    expect(said(quoteFields(quoteOf(line), "en-US"), ...names)).toEqual(["", "", "", ""]);
  });

  test("say how the price is settled, the spot only where it is shown, and the tolerance as a percentage", () => {
    const names = ["tolerance", "fixedTolerance", "settledTolerance", "spot"];
    const at = { tolerance: "0.025" };
    expect(said(quoteFields(quoteOf({}, at), "en-US"), ...names)).toEqual(["2.5%", "2.5%", "", ""]);
    const settled = quoteOf({}, { ...at, settled: "by final weight", spotShown: "yes" });
    expect(said(quoteFields(settled, "en-US"), ...names)).toEqual(["2.5%", "", "2.5%", "3,110.35"]);
    expect(quoteFields(settled, "en-US").get("tolerance")).toMatchObject({ value: 0.025, format: "0.0#%" });
    expect(quoteFields(quoteOf({}, { tolerance: "0.05" }), "en-US").get("tolerance")?.format).toBe("0%");
  });

  test("say the customer's own gold, what is credited for it and what is left to pay", () => {
    const names = ["ownGoldWeight", "ownGoldMark", "ownGoldUse", "ownGoldCredit", "ownGoldReturned", "toPay"];
    const own = { ownGoldWeight: "10", ownGoldMark: "750", ownGoldUse: "credited", ownGoldShare: "0.9" };
    const priced = { linePriceBy: "own price", linePriceFigure: "1000" };
    // 3,110.34768 an ounce is 100 a gram: 7.5 g of fine gold at 90 % are 675.
    expect(said(quoteFields(quoteOf(priced, own), "en-US"), ...names)).toEqual([
      "10.00",
      "750",
      "credited",
      "675.00",
      "",
      "325.00",
    ]);
    expect(said(quoteFields(quoteOf(priced), "en-US"), ...names)).toEqual(names.map(() => ""));
  });

  test.each([
    ["JPY", "1,235", "#,##0"],
    ["USD", "1,234.50", "#,##0.00"],
    ["KWD", "1,234.500", "#,##0.000"],
  ])("write money in %s with its decimals", (currency, text, format) => {
    const line = { linePriceBy: "own price", linePriceFigure: "1234.5" };
    const total = quoteFields(quoteOf(line, {}, { currency }), "en-US").get("total");
    expect(total).toMatchObject({ text, format });
  });

  test.each([
    ["en-US", "mmm d, yyyy"],
    ["en-GB", "d mmm yyyy"],
    ["de-DE", "dd.mm.yyyy"],
    ["ja-JP", "yyyy/mm/dd"],
    ["pt-BR", 'd" de "mmm" de "yyyy'],
    ["th-TH", "d mmm yyyy"],
  ])("write a date in %s as %s", (locale, format) => {
    expect(dateFormat(locale)).toBe(format);
    expect(quoteFields(quoteOf(), locale).get("date")).toMatchObject({ value: 46_085, format });
  });
});
