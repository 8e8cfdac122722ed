import { type CostSheet, costOrder, makeQuote, type Order, parseOrder, type Quote, type Rates } from "../../src/index";
import { cellOf } from "../../taskpane/designs/sheetcolumns";
import { extraFields, lineFields, quoteFields } from "../../taskpane/excel/template/fields";
import { type Block, planFill } from "../../taskpane/excel/template/fill";
import { builtInTemplates, templateContents } from "../../taskpane/excel/template/template";
import { CUSTOMER_COLUMNS } from "../../taskpane/wording/pricesheetcolumns";
import { ORDER, type Record_, ratesOf, read } from "../src/orders";

const { customer: _customer, spot: _spot, discount: _discount, ...LINE } = ORDER;

/** An order with all that follows from it, as its papers are made from it. */
export interface Work {
  readonly rates: Rates;
  readonly order: Order;
  readonly sheets: readonly CostSheet[];
  readonly quote: Quote;
}

export function workOf(lines: readonly Record_[], terms: Record_ = {}, changes: Record_ = {}): Work {
  const rates = ratesOf({ plating: "40", platingMetal: "rhodium", tolerance: "0.05", ...changes });
  const form = { order: { customer: "Ada", ...terms }, lines: lines.map((line) => ({ ...LINE, ...line })), extras: [] };
  const order = read(parseOrder(form, rates));
  const sheets = costOrder(order, rates);
  return { rates, order, sheets, quote: makeQuote(order, sheets, rates, "2026-11-30").quote };
}

/** The rows of a filled template that are shown, each in words. */
export function filled(template: Block, { quote }: Work, locale = "en-US"): readonly string[] {
  const plan = planFill(
    template,
    [],
    quoteFields(quote, locale),
    quote.lines.map((line) => lineFields(line, locale)),
    quote.extras.map((extra) => extraFields(extra, locale)),
  );
  if (plan.unknown.length > 0) throw new Error(`Fields that nobody knows: ${plan.unknown.join(", ")}`);
  const rows = new Map<number, string[]>();
  for (const { row, content } of plan.writes) {
    const written = typeof content === "number" ? content.toLocaleString(locale) : content.replace(/^'/, "");
    rows.set(row, [...(rows.get(row) ?? []), written]);
  }
  return [...rows].filter(([row]) => !plan.hidden.includes(row)).map(([, cells]) => cells.join(" ").trim());
}

/** Every paper that a customer reads a line on: its rows, or cells, in words. */
export const CUSTOMER_PAPERS: Readonly<Record<string, (work: Work) => readonly string[]>> = {
  ...Object.fromEntries(
    (["Letter", "A4"] as const).flatMap((size) =>
      builtInTemplates(size).map((name) => [
        `${name}, ${size}`,
        (work: Work) => filled(templateContents(name, size), work),
      ]),
    ),
  ),
  "a price sheet or a CSV": ({ sheets, rates }) =>
    sheets.flatMap((sheet) =>
      CUSTOMER_COLUMNS.map((column) => {
        const cell = cellOf({ kind: "priced", row: 1, design: sheet.line.design, sheet } as never, column, rates);
        return "text" in cell ? cell.text : "";
      }),
    ),
};
