import { describe, expect, test } from "vitest";
import { readAskingHeader, SEEN_WORDS } from "../../../src/market/askingheaders";
import { SEEN_KEYS, SEEN_LABELS } from "../../../src/market/seenasking";

const said = (header: unknown) => {
  const { key, unit, per, currency, sign } = readAskingHeader(header);
  return [key, unit ?? per ?? "", currency ?? sign ?? ""];
};

describe("a header of a list of asking prices", () => {
  test.each([
    ["Date seen", "date", "", ""],
    ["Shop", "source", "", ""],
    ["KARAT", "mark", "", ""],
    ["Hollow?", "solidity", "", ""],
    ["Weight (dwt)", "weight", "dwt", ""],
    ["weight, g", "weight", "g", ""],
    ["Weight oz", "weight", "oz", ""],
    ["Grams", "weight", "", ""],
    ["Price", "price", "", ""],
    ["Asking price (EUR)", "price", "", "EUR"],
    ["Price per gram", "price", "gram", ""],
    ["Asked, EUR/g", "price", "g", "EUR"],
    ["Price $/dwt", "price", "dwt", "$"],
    ["Price per piece CHF", "price", "piece", "CHF"],
    ["Price/oz", "price", "oz", ""],
    ["Per", "per", "", ""],
    ["Exchange rate", "exchange", "", ""],
    ["Spot (USD)", "spot", "", "USD"],
    ["Stock number", undefined, "", ""],
    ["", undefined, "", ""],
    [7, undefined, "", ""],
  ])("%s", (header, ...expected) => {
    expect(said(header)).toEqual(expected);
  });

  test("our own labels are known, each as its own field, and every word is in plain letters", () => {
    expect(SEEN_KEYS.map((key) => readAskingHeader(SEEN_LABELS[key]).key)).toEqual(SEEN_KEYS);
    expect(SEEN_WORDS.filter(({ words, key }) => readAskingHeader(words).key !== key)).toEqual([]);
  });
});
