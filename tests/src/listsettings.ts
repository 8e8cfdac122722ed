import type { ListSettings } from "../../src/market/askingcells";

/** A list that tells everything itself, at a workbook in USD. */
export const LIST_SETTINGS: ListSettings = {
  own: "USD",
  today: "2026-05-01",
  decimalSign: undefined,
  dateOrder: undefined,
  ounce: undefined,
  gr: undefined,
  per: "piece",
  currency: "USD",
  exchanges: {},
  date: "",
  source: "",
};
