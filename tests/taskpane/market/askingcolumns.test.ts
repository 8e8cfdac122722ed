import { describe, expect, test } from "vitest";
import { doubledOf, matchAskingHeaders, missingOf, usedColumns } from "../../../taskpane/market/askingcolumns";

const keys = (...headers: readonly string[]) =>
  matchAskingHeaders(headers).map(({ key, certainty }) => [key, certainty]);

describe("the columns of a list of asking prices", () => {
  test("are known by our words and by those of sellers, likely where they are near, and none otherwise", () => {
    expect(keys("Date", "Karat", "Wieght (dwt)", "Asking prise", "Stock no", "")).toEqual([
      ["date", "known"],
      ["mark", "known"],
      ["weight", "likely"],
      ["price", "likely"],
      [undefined, "none"],
      [undefined, "none"],
    ]);
  });

  test("of which two are known for one field are both kept, so that the person is asked; a near one gives way", () => {
    expect(keys("Wieght", "Weight", "Price", "Asked")).toEqual([
      [undefined, "none"],
      ["weight", "known"],
      ["price", "known"],
      ["price", "known"],
    ]);
  });

  test("carry unit and currency of their headers into the reading", () => {
    const [weight, price] = usedColumns(matchAskingHeaders(["Wieght (dwt)", "Price (EUR)", "Stock no"]));
    expect(weight).toMatchObject({ key: "weight", unit: "dwt", place: 0 });
    expect(price).toMatchObject({ key: "price", currency: "EUR", place: 1 });
  });

  test("price and mark are needed, and a weight where a price is for the piece", () => {
    const matches = matchAskingHeaders(["Price", "Shop"]);
    expect(missingOf(matches, true)).toEqual(["Weight", "Mark"]);
    expect(missingOf(matches, false)).toEqual(["Mark"]);
    const twice = matches.map((match) => ({ ...match, key: "price" as const }));
    expect(doubledOf(twice)).toEqual(["Asked price in column 1 and in column 2; keep one of them"]);
  });
});
