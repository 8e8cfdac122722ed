import { describe, expect, test } from "vitest";
import {
  type AskingColumn,
  askingRecord,
  type ListSettings,
  mayMean,
  misreadIn,
  namesCurrency,
} from "../../../src/market/askingcells";
import { readAskingHeader } from "../../../src/market/askingheaders";
import { LIST_SETTINGS } from "../listsettings";

const SETTINGS: ListSettings = {
  ...LIST_SETTINGS,
  exchanges: { EUR: "1.08" },
  date: "2026-05-01",
  source: "this list",
};

function columnsOf(...headers: readonly string[]): readonly AskingColumn[] {
  return headers.flatMap((header, place) => {
    const { key, ...said } = readAskingHeader(header);
    return key ? [{ ...said, key, header, place }] : [];
  });
}
const record = (headers: readonly string[], cells: readonly unknown[], changes: Partial<ListSettings> = {}) =>
  askingRecord(columnsOf(...headers), cells, { ...SETTINGS, ...changes }, ",");

describe("a row of a list becomes a record", () => {
  test("with a point in its figures, its units and its currency beside them", () => {
    const { weight, price, per, currency, exchange } = record(["Weight (dwt)", "Price, EUR/g"], ["1.234,5", "80,50"]);
    expect([weight, price, per, currency, exchange]).toEqual(["1234.5 dwt", "80.50", "g", "EUR", "1.08"]);
  });

  test("and a cell's own unit and currency before those of its header", () => {
    const { weight, price, currency } = record(["Weight (dwt)", "Price (EUR)"], ["12,5 g", "668 CHF"]);
    expect([weight, price, currency]).toEqual(["12.5 g", "668 CHF", ""]);
  });

  test("what no cell says is what the person says of the list", () => {
    const { date, source, currency, per, exchange } = record(["Weight", "Price"], [12.5, 668], {
      currency: "EUR",
      per: "g",
    });
    expect([date, source, currency, per, exchange]).toEqual(["2026-05-01", "this list", "EUR", "g", "1.08"]);
  });

  test("an ounce is the one that the person has said, wherever it stands", () => {
    const headers = ["Weight (oz)", "Price per oz"];
    expect(record(headers, ["0,5", "2.000"])).toMatchObject({ weight: "0.5 oz", per: "oz" });
    expect(record(headers, ["0,5", "2.000"], { ounce: "oz av" })).toMatchObject({
      weight: "0.5 oz av",
      per: "oz av",
      price: "2000",
    });
    expect(record(["Weight"], ["12 gr"], { gr: "g" })).toMatchObject({ weight: "12 g" });
  });

  test("yes and no under Hollow or Solid are those words; others stay", () => {
    const under = (header: string, cell: unknown) => record([header], [cell]).solidity;
    expect([under("Hollow", "Yes"), under("Hollow", "no"), under("Solid", "x"), under("Solid", false)]).toEqual([
      "hollow",
      "solid",
      "solid",
      "hollow",
    ]);
    expect([under("Hollow", ""), under("Solidity", "hollow"), under("Hollow", "semi")]).toEqual(["", "hollow", "semi"]);
  });

  test("dates in the order told; what cannot be read stays for its fault to name", () => {
    expect(record(["Date"], ["03/04/2026"], { dateOrder: "day first" }).date).toBe("2026-04-03");
    expect(record(["Date"], ["03/04/2026"]).date).toBe("03/04/2026");
    expect(record(["Price", "Weight", "Mark"], ["about 600", "heavy", "58,5%"])).toMatchObject({
      price: "about 600",
      weight: "heavy",
      mark: "58.5%",
    });
  });
});

test("figures that the list's decimal sign does not read", () => {
  const of = (cells: readonly unknown[], sign: "." | "," | undefined) =>
    misreadIn(columnsOf("Price", "Weight", "Spot"), cells, sign).map(({ key, figure }) => `${key} ${figure}`);
  expect(of(["€12.5", "1.500 g", "2.650,00"], ",")).toEqual(["price 12.5"]);
  expect(of(["1.500", "12", "heavy"], undefined)).toEqual(["price 1.500"]);
  expect(of([1.5, "", "1,234.5"], ".")).toEqual([]);
});

test("whether a row names its currency", () => {
  expect(namesCurrency(columnsOf("Price"), ["668"])).toBe(false);
  expect([["668 EUR"], ["$668"]].map((cells) => namesCurrency(columnsOf("Price"), cells))).toEqual([true, true]);
  expect(namesCurrency(columnsOf("Price (EUR)"), [668])).toBe(true);
  expect(namesCurrency(columnsOf("Price", "Currency"), [668, ""])).toBe(false);
});

test("oz may be two units, ozt only one", () => {
  expect([mayMean("oz", "oz av"), mayMean("ozt", "oz av"), mayMean("gr", "grain"), mayMean("g", "grain")]).toEqual([
    true,
    false,
    true,
    false,
  ]);
});
