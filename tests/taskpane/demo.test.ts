import Fraction from "fraction.js";
import { expect, test } from "vitest";
import { LINE_LABELS, ORDER_LABELS, parseRates, RATE_KEYS, RATE_ROWS } from "../../src/index";
import { nameOf } from "../../taskpane/excel/rates/rates";
import { ageRemark } from "../../taskpane/excel/rates/ratespaper";
import { publishedText } from "../src/published";
import demo from "../workbook/demo.json";

const rates = demo.sheets.find(({ name }) => name === "Rates");
const rows: readonly (readonly unknown[])[] = rates?.blocks.A1 ?? [];

test("the demo's Rates sheet is the one the pane lays out: every rate by its name, beside its words", () => {
  expect(demo.names.map(({ name }) => name)).toEqual(RATE_KEYS.map(nameOf));
  for (const [index, key] of RATE_KEYS.entries()) {
    const row = Number(demo.names[index]?.refersTo.split("$").at(-1));
    expect([rows[row - 1]?.[0], rows[row - 1]?.[2], rows[row - 1]?.[3]]).toEqual([
      RATE_ROWS[key].label,
      RATE_ROWS[key].unit,
      key === "spotAge" ? ageRemark() : RATE_ROWS[key].note,
    ]);
  }
});

test("the demo's rates can be read without a fault", () => {
  const values = Object.fromEntries(
    RATE_KEYS.map((key) => [key, rows.find(([label]) => label === RATE_ROWS[key].label)?.[1]]),
  );
  expect(parseRates(values)).toMatchObject({ ok: true });
});

const rate = (key: (typeof RATE_KEYS)[number]) => rows.find(([label]) => label === RATE_ROWS[key].label)?.[1];

test("the demo's spot is the last month's average that was published, and says which", () => {
  const [month = "", price = ""] = publishedText("gold-monthly.csv").trim().split("\n").at(-1)?.split(",") ?? [];
  const [year, number] = month.split("-").map(Number);
  const last = new Date(Date.UTC(year ?? 0, number ?? 0, 0));
  // Excel counts days from 30 December 1899.
  const day = (last.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000;
  const name = new Intl.DateTimeFormat("en-US", { month: "long", year: "numeric", timeZone: "UTC" }).format(last);
  expect([rate("spot"), rate("spotTime"), rate("spotSource")]).toEqual([
    Number(price),
    day,
    `World Bank monthly average, ${name}`,
  ]);
});

/** Grams in a troy ounce (UCUM), and fine parts in a thousand of the marks that the demo has. */
const OUNCE = new Fraction("31.1034768");
const FINENESS: Readonly<Record<string, Fraction>> = {
  "10K": new Fraction(10000, 24),
  "14K": new Fraction(14000, 24),
  "18K": new Fraction(18000, 24),
  "22K": new Fraction(22000, 24),
  "585": new Fraction(585),
  "750": new Fraction(750),
};

test("a bought clasp of the demo costs its gold at the demo's spot, and up to a third more for the work in it", () => {
  const tables = demo.sheets.flatMap(({ blocks }) => ("A4" in blocks ? [blocks.A4 as unknown[][]] : []));
  const clasps = tables.flatMap(([headers = [], ...lines]) => {
    const at = (row: unknown[], title: string) => row[headers.findIndex((header) => String(header).startsWith(title))];
    return lines.map((row) => ["Mark", "Clasp weight", "Clasp cost"].map((title) => String(at(row, title))));
  });
  expect(clasps).toHaveLength(14);
  for (const [mark = "", weight = "", cost = ""] of clasps) {
    const melt = new Fraction(Number(rate("spot")))
      .div(OUNCE)
      .mul(FINENESS[mark] ?? 0)
      .div(1000)
      .mul(weight);
    const share = new Fraction(cost).div(melt).valueOf();
    expect(share, `${mark}, ${weight} g`).toBeGreaterThan(1);
    expect(share, `${mark}, ${weight} g`).toBeLessThan(4 / 3);
  }
});

test("the demo holds a dozen designs and two orders in the words of the form", () => {
  const blockOf = (sheet: string) =>
    demo.sheets.find(({ name }) => name === sheet)?.blocks as Record<string, unknown[][]>;
  expect(blockOf("Designs").A4?.length).toBe(13);
  const [headers = [], ...orders] = blockOf("Orders").A4 ?? [];
  expect(orders).toHaveLength(2);
  expect(headers).toEqual(
    expect.arrayContaining([ORDER_LABELS.customer, LINE_LABELS.design, LINE_LABELS.mark, LINE_LABELS.linkWeight]),
  );
  const kind = headers.indexOf(LINE_LABELS.kind);
  expect(orders.map((order) => order[kind])).toEqual(["chain", "bracelet"]);
});
