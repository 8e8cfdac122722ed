import {
  minorDigits,
  type Order,
  QUOTE_STATUSES,
  type Quote,
  type QuotedTerms,
  type QuoteStatus,
  showQuoteNumber,
  type TypedOrder,
  writeOrderText,
} from "../../../src/index";
import { asText, dressAs, type Look, type PaperCell, type PaperSize, paperTypeOf, putContents } from "../paper";
import { dateSerial, numberFormat } from "../template/fields";
import { QUOTE_COLUMN_KEYS, QUOTE_COLUMNS, QUOTES_TABLE, type QuoteColumn, type QuoteTable } from "./quotebook";

/** A row of the quotes table before it is written. */
export type QuoteRow = Readonly<Record<QuoteColumn, PaperCell>>;

const FIRST_STATUS: QuoteStatus = "quoted";
const DATE_FORMAT = "yyyy-mm-dd";
/** Shows two words in place of any text in the cell: only the pane reads the order, and it is too long to show. */
const ORDER_FORMAT = '0;-0;0;"as typed"';
const HEADER_ROW = 3;

/** A title is aligned as its column is. */
const HEAD_LOOKS: Partial<Record<Look, Look>> = { number: "headRight", startAfterNumber: "headAfterNumber" };

const WIDTHS: Readonly<Record<QuoteColumn, number>> = {
  number: 58,
  date: 72,
  customer: 125,
  design: 100,
  total: 72,
  currency: 66,
  spot: 66,
  validUntil: 78,
  status: 98,
  order: 54,
};

/** A quote as a row: what the customer reads, the spot it was made at, the order as typed and its terms. Holds no cost. */
export function quoteRow(quote: Quote, order: Order, typed: TypedOrder, terms: QuotedTerms): QuoteRow {
  const designs = [...new Set(quote.lines.map((line) => line.design))].join(", ");
  return {
    number: { content: asText(showQuoteNumber(quote.number)), look: "start" },
    date: { content: dateSerial(quote.date), format: DATE_FORMAT, look: "start" },
    customer: { content: asText(quote.customer), look: "body" },
    design: { content: asText(designs), look: "body" },
    total: {
      content: quote.total.amount.toNumber(),
      format: numberFormat(minorDigits(quote.total.currency)),
      look: "number",
    },
    currency: { content: quote.total.currency, look: "startAfterNumber" },
    spot: { content: order.spot.amount.toNumber(), format: "#,##0.00##", look: "number" },
    validUntil: { content: dateSerial(quote.validUntil), format: DATE_FORMAT, look: "startAfterNumber" },
    status: { content: FIRST_STATUS, look: "input" },
    order: { content: asText(writeOrderText(typed, terms)), format: ORDER_FORMAT, look: "quiet" },
  };
}

/** Adds the table on its own empty sheet, with its first row. */
export function beginQuotes(sheet: Excel.Worksheet, row: QuoteRow, size: PaperSize): void {
  const widths = QUOTE_COLUMN_KEYS.map((key) => WIDTHS[key]);
  const headLook = (key: QuoteColumn): Look => HEAD_LOOKS[row[key].look ?? "plain"] ?? "head";
  putContents(sheet, {
    widths,
    rows: [
      [{ content: "Quotes", look: "title" }],
      [
        {
          content:
            "One row a quote. Where it stands is yours to change, here or in the pane; sort, filter, add columns.",
          look: "small",
        },
      ],
      [
        {
          content: "The last column keeps each order as it was typed: the pane opens it again from there.",
          look: "small",
        },
      ],
      QUOTE_COLUMN_KEYS.map((key) => ({ content: QUOTE_COLUMNS[key], look: headLook(key) })),
      QUOTE_COLUMN_KEYS.map((key) => row[key]),
    ],
  });
  const table = sheet.tables.add(sheet.getRangeByIndexes(HEADER_ROW, 0, 2, widths.length), true);
  table.name = QUOTES_TABLE;
  table.style = "TableStyleLight1";
  table.showBandedRows = false;
  ruleStatus(sheet.getRangeByIndexes(HEADER_ROW + 1, QUOTE_COLUMN_KEYS.indexOf("status"), 1, 1));
  sheet.freezePanes.freezeRows(HEADER_ROW + 1);
  sheet.pageLayout.paperSize = paperTypeOf(size);
  sheet.pageLayout.orientation = Excel.PageOrientation.landscape;
  sheet.pageLayout.zoom = { horizontalFitToPages: 1 };
  // No print area: it would not grow with the table.
  sheet.pageLayout.setPrintTitleRows(`$${HEADER_ROW + 1}:$${HEADER_ROW + 1}`);
}

/** Adds the row at the table's end, cell by cell: columns of the person's own stay as Excel makes them. */
export function addQuote(context: Excel.RequestContext, { places }: QuoteTable, row: QuoteRow): void {
  const added = context.workbook.tables.getItem(QUOTES_TABLE).rows.add().getRange();
  for (const key of QUOTE_COLUMN_KEYS) {
    const cell = added.getCell(0, places[key]);
    const { content, format = "General", look = "plain" } = row[key];
    cell.numberFormat = [[format]];
    cell.values = [[content]];
    dressAs(cell, look);
    if (key === "status") ruleStatus(cell);
  }
  added.format.autofitRows();
}

function ruleStatus(cell: Excel.Range): void {
  cell.dataValidation.rule = { list: { inCellDropDown: true, source: QUOTE_STATUSES.join(",") } };
}
