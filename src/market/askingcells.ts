import { decimalOfCell } from "../exact/decimal";
import { type DateOrder, readListDate } from "../reading/listdate";
import { type DecimalSign, readListFigure } from "../reading/listfigure";
import { isBlank } from "../reading/number";
import { SOLIDITIES } from "../reading/orderwords";
import type { Currency } from "../units/currency";
import { splitMoney } from "../units/moneytext";
import { type AskedUnit, splitWeight, unitsOfWord } from "./askedunit";
import { type AskedPer, currencyNamed } from "./asking";
import type { AskingHeader } from "./askingheaders";
import type { SeenKey } from "./seenasking";

/** A column of a list that holds one of the fields. */
export interface AskingColumn extends Omit<AskingHeader, "key" | "words"> {
  readonly key: SeenKey;
  readonly header: string;
  /** Counted from the first cell of a row. */
  readonly place: number;
}

/** What the person says of a whole list, where its rows do not. */
export interface ListSettings {
  /** The workbook's currency. */
  readonly own: Currency;
  /** ISO 8601. */
  readonly today: string;
  readonly decimalSign: DecimalSign | undefined;
  readonly dateOrder: DateOrder | undefined;
  /** What "oz" is; undefined while nobody has said. */
  readonly ounce: "ozt" | "oz av" | undefined;
  /** What "gr" is; undefined while nobody has said. */
  readonly gr: "g" | "grain" | undefined;
  /** What prices are for where no cell and no header says. */
  readonly per: AskedPer;
  /** The currency where nothing names one. */
  readonly currency: Currency;
  /** How much of the workbook's currency one unit of another costs, as typed. */
  readonly exchanges: Readonly<Partial<Record<Currency, string>>>;
  /** For rows without a date; "" for none. */
  readonly date: string;
  /** For rows without a source. */
  readonly source: string;
}

export type ListRow = readonly unknown[];

/** A row's cell for a field; undefined where the list has no such column. */
export function listCell(columns: readonly AskingColumn[], key: SeenKey, cells: ListRow): unknown {
  const column = columns.find((each) => each.key === key);
  return column && cells[column.place];
}

/**
 * A row as the record that parseSeenAsking reads: figures with a point, with their units and currencies, and what the person said
 * of the whole list. What cannot be read stays as it is, so that its fault quotes it.
 * @param sign the decimal sign of the list's figures, undefined while it is not known
 */
export function askingRecord(
  columns: readonly AskingColumn[],
  cells: ListRow,
  settings: ListSettings,
  sign: DecimalSign | undefined,
): Readonly<Record<SeenKey, unknown>> {
  const column = (key: SeenKey) => columns.find((each) => each.key === key);
  const cell = (key: SeenKey) => listCell(columns, key, cells);
  const price = moneyOf(cell("price"), column("price"), sign);
  const currency = currencyOf(columns, cells, price) ?? (saysMoney(price) ? "" : settings.currency);
  const exchange = figureOf(cell("exchange"), sign);
  const theirs = currencyNamed(price, currency, settings.own);
  return {
    date: isBlank(cell("date")) ? settings.date : dateOf(cell("date"), settings.dateOrder),
    source: isBlank(cell("source")) ? settings.source : cell("source"),
    kind: cell("kind"),
    mark: markOf(cell("mark"), sign),
    solidity: solidityOf(cell("solidity"), column("solidity")),
    weight: weightOf(cell("weight"), column("weight"), settings, sign),
    price,
    per: chosenUnit(isBlank(cell("per")) ? (column("price")?.per ?? settings.per) : String(cell("per")), settings),
    currency,
    exchange: isBlank(exchange) && theirs !== settings.own ? (settings.exchanges[theirs] ?? "") : exchange,
    spot: moneyOf(cell("spot"), column("spot"), sign),
  };
}

/** Whether a row's price or its currency column or header says in which currency it is. */
export function namesCurrency(columns: readonly AskingColumn[], cells: ListRow): boolean {
  const price = moneyOf(
    listCell(columns, "price", cells),
    columns.find(({ key }) => key === "price"),
    undefined,
  );
  return saysMoney(price) || currencyOf(columns, cells, price) !== undefined;
}

/**
 * The fields of a row whose figures cannot be read with the list's decimal sign, each with what was found: "12.5" where a comma
 * is the sign, "1.500" where the sign is not known.
 */
export function misreadIn(
  columns: readonly AskingColumn[],
  cells: ListRow,
  sign: DecimalSign | undefined,
): readonly { readonly key: SeenKey; readonly figure: string }[] {
  return FIGURE_KEYS.flatMap((key) => {
    const cell = listCell(columns, key, cells);
    if (typeof cell !== "string") return [];
    const figure = key === "weight" ? splitWeight(cell).figure : String(splitMoney(cell).figure).trim();
    const isFigure = /^[+-]?\d[\d.,]*$|^[+-]?[.,]\d+$/.test(figure);
    return isFigure && readListFigure(figure, sign) === undefined ? [{ key, figure }] : [];
  });
}

/** The fields that hold figures in the way the list writes them. */
export const FIGURE_KEYS = ["price", "weight", "exchange", "spot"] as const satisfies readonly SeenKey[];

function saysMoney(price: unknown): boolean {
  const { currency, sign } = splitMoney(price);
  return currency !== undefined || sign !== undefined;
}

/** The row's own currency cell; where that is blank and the price names no currency, the one in the header of the price. */
function currencyOf(columns: readonly AskingColumn[], cells: ListRow, price: unknown): unknown {
  const own = listCell(columns, "currency", cells);
  if (!isBlank(own)) return own;
  return saysMoney(price) ? undefined : columns.find(({ key }) => key === "price")?.currency;
}

/** An amount with the currency that its cell names, else the one in its header. */
function moneyOf(cell: unknown, column: AskingColumn | undefined, sign: DecimalSign | undefined): unknown {
  if (isBlank(cell)) return cell;
  const said = splitMoney(cell);
  const figure = figureOf(said.figure, sign);
  if (said.currency) return `${plain(figure)} ${said.currency}`;
  const money = said.sign ?? (column?.currency ? undefined : column?.sign);
  if (money !== undefined) return `${money}${plain(figure)}`;
  return column?.key === "spot" && column.currency ? `${plain(figure)} ${column.currency}` : figure;
}

function figureOf(cell: unknown, sign: DecimalSign | undefined): unknown {
  return typeof cell === "string" ? (readListFigure(cell, sign) ?? cell) : cell;
}

function weightOf(
  cell: unknown,
  column: AskingColumn | undefined,
  settings: ListSettings,
  sign: DecimalSign | undefined,
): unknown {
  if (isBlank(cell)) return cell;
  const { figure, word } = typeof cell === "string" ? splitWeight(cell) : { figure: cell, word: "" };
  // A text without a figure stays as it is, so that its fault quotes it.
  if (typeof figure === "string" && !/\d/.test(figure)) return cell;
  const unit = word === "" ? (column?.unit ?? "g") : word;
  return `${plain(figureOf(figure, sign))} ${chosenUnit(unit, settings)}`;
}

/** The unit that the person chose for a word that may mean two; any other word as it is. */
function chosenUnit(word: string, { ounce, gr }: ListSettings): string {
  const bare = word.replace(/^(?:a|an|per)\s+/i, "");
  if (mayMean(bare, "oz av")) return ounce ?? word;
  return mayMean(bare, "grain") ? (gr ?? word) : word;
}

/** Whether a word may mean this unit or another one. */
export function mayMean(word: string, unit: AskedUnit): boolean {
  const units = unitsOfWord(word);
  return units.length > 1 && units.includes(unit);
}

function markOf(cell: unknown, sign: DecimalSign | undefined): unknown {
  return typeof cell === "string" && sign === "," ? cell.replace(/(\d),(?=\d)/g, "$1.") : cell;
}

const YES: readonly unknown[] = ["yes", "y", "true", "x", "1"];
const NO: readonly unknown[] = ["no", "n", "false", "0", "-"];

/** "yes" under a header that says Hollow, or Solid, is that word. */
function solidityOf(cell: unknown, column: AskingColumn | undefined): unknown {
  if (isBlank(cell) || !column) return "";
  const said = String(cell).trim().toLowerCase();
  const asked = SOLIDITIES.find((word) => word === column.header.trim().toLowerCase());
  const other = SOLIDITIES.find((word) => word !== asked);
  if (asked && YES.includes(said)) return asked;
  return asked && NO.includes(said) ? other : cell;
}

function dateOf(cell: unknown, order: DateOrder | undefined): unknown {
  return readListDate(cell, order) ?? cell;
}

/** A number cell as the decimal that its 15 digits say. */
function plain(figure: unknown): string {
  return typeof figure === "number" && Number.isFinite(figure) ? decimalOfCell(figure).toFixed() : String(figure);
}
