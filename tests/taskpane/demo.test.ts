import { expect, test } from "vitest";
import { LINE_LABELS, ORDER_LABELS, parseRates, RATE_KEYS, RATE_ROWS } from "../../src/index";
import { nameOf } from "../../taskpane/excel/rates/rates";
import { ageRemark } from "../../taskpane/excel/rates/ratespaper";
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
