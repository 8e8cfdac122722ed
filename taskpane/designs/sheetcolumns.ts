import {
  type CostSheet,
  colourName,
  figureOf,
  inLengthUnit,
  minorDigits,
  PRICE_COLUMNS,
  type PricedLine,
  platingOf,
  type Quotient,
  quotedPiece,
  type Rates,
  showMark,
} from "../../src/index";
import { pieceWords, platingSentence, withoutGold } from "../wording/description";
import { platingWords } from "../wording/platingtexts";
import { CUSTOMER_COLUMNS, type CustomerColumn, type SheetColumn } from "../wording/pricesheetcolumns";
import { TEXTS } from "../wording/texts";

const texts = TEXTS.catalogue.sheet;

/** A cell of a price sheet: a text, or a figure rounded once to so many decimals; undefined figures are blank. */
export type SheetCell =
  | { readonly text: string }
  | { readonly figure: Quotient | undefined; readonly decimals: number; readonly share?: boolean };

type Priced = Extract<PricedLine, { kind: "priced" }>;

/** A column's words, with what it is counted in. */
export function headOf(column: SheetColumn, rates: Rates): string {
  if (isCustomerColumn(column)) return texts.heads[column](rates.currency);
  if (column === "cast" || column === "fineGold") return `${PRICE_COLUMNS[column]}, g`;
  return column === "margin" ? PRICE_COLUMNS.margin : `${PRICE_COLUMNS[column]}, ${rates.currency}`;
}

/** What stands in a column for a design. */
export function cellOf(line: Priced, column: SheetColumn, rates: Rates): SheetCell {
  if (isCustomerColumn(column)) return customerCell(line, column, rates);
  const value = figureOf(line, column);
  const figure = typeof value === "object" ? value : undefined;
  if (column === "margin") return { figure, decimals: 3, share: true };
  return { figure, decimals: column === "cast" || column === "fineGold" ? 2 : minorDigits(rates.currency) };
}

/** A cell as CSV holds it: figures with a point and without separators. */
export function csvText(cell: SheetCell): string {
  if ("text" in cell) return cell.text;
  return cell.figure === undefined ? "" : cell.figure.rounded(cell.decimals).toFixed(cell.decimals);
}

export function isCustomerColumn(column: SheetColumn): column is CustomerColumn {
  return CUSTOMER_COLUMNS.some((each) => each === column);
}

function customerCell({ design, sheet }: Priced, column: CustomerColumn, rates: Rates): SheetCell {
  const { line } = sheet;
  switch (column) {
    case "design":
      // What is hollow must be said to be (16 CFR 23.1).
      return { text: line.hollow ? `${design}, ${texts.hollow}` : design };
    case "description":
      return { text: [`${pieceWords(quotedPiece(line))}.`, platingSentence(quotedPiece(line))].join(" ").trim() };
    case "mark":
      return { text: showMark(line.mark) };
    case "colour":
      return { text: coloursOf(sheet) };
    case "length":
      return { text: `${inLengthUnit(line.length, line.lengthUnit).rounded(2)} ${line.lengthUnit}` };
    case "links":
      return { figure: line.links, decimals: 0 };
    case "weight":
      return { figure: sheet.finishedWeight.grams, decimals: 1 };
    case "price":
      return { figure: sheet.price.amount, decimals: minorDigits(rates.currency) };
  }
}

function coloursOf({ line }: CostSheet): string {
  const colours = line.linkGroups.map(({ colour }) => withoutGold(colourName(colour, line))).join(", ");
  const plating = platingOf(line);
  if (!plating) return colours;
  return `${colours}${plating.part === "piece" ? "," : ";"} ${platingWords(plating)}`;
}
