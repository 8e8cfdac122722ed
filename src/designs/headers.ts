import { CostingError, found } from "../exact/errors";
import type { Quotient } from "../exact/quotient";
import { type Doubled, doublesOf } from "../reading/doubles";
import { isBlank, readNumber } from "../reading/number";
import { LINKS_PER_UNITS, ORDER_LENGTH_UNITS } from "../reading/orderwords";
import { type Currency, parseCurrency } from "../units/currency";
import { inLengthUnit, type LengthUnit, lengthIn, MILLIMETRES_PER } from "../units/length";
import { GRAMS_PER, type WeightUnit, weightIn } from "../units/weight";
import { keyOfHeader, ROW_FIELDS, ROW_LABELS, type RowKey, unitNamedFor } from "./headerwords";

/** A column of a sheet that is one of the fields. */
export interface FieldColumn {
  readonly key: RowKey;
  readonly header: string;
  /** Counted from the first cell of the header row. */
  readonly place: number;
  /** The unit written in the header; undefined for the field's own. */
  readonly unit: string | undefined;
}

/** The columns of a header row that are fields; of two that name one field the first. See doubledHeaders. */
export function readHeaders(cells: readonly unknown[]): readonly FieldColumn[] {
  const columns = columnsOf(cells);
  return columns.filter(({ key }, index) => columns.findIndex((other) => other.key === key) === index);
}

/** The fields that two columns of a header row name. @param placeOf how a person finds a column, counted from 0 */
export function doubledHeaders(cells: readonly unknown[], placeOf = nthColumn): readonly Doubled[] {
  return doublesOf(columnsOf(cells).map(({ key, place }) => ({ key, what: ROW_LABELS[key], place: placeOf(place) })));
}

/** A column of a range whose address is not known. */
export function nthColumn(place: number): string {
  return `column ${place + 1}`;
}

function columnsOf(cells: readonly unknown[]): readonly FieldColumn[] {
  return cells.flatMap((cell, place): FieldColumn[] => {
    const key = keyOfHeader(cell);
    return key ? [{ key, header: String(cell).trim(), place, unit: unitNamedFor(String(cell), key) }] : [];
  });
}

/**
 * A row under its headers as the record that parseOrder reads, amounts changed to the fields' own units.
 * Errors: unknownWord for a unit that a column cannot be counted in; notANumber for an amount that is to be changed and is none.
 * @param currency of Rates: money of another is refused
 */
export function recordOf(
  columns: readonly FieldColumn[],
  cells: readonly unknown[],
  currency: Currency,
): Readonly<Partial<Record<RowKey, unknown>>> {
  const lengthUnit = lengthUnitOf(columns, cells);
  const record: Partial<Record<RowKey, unknown>> = {};
  for (const column of columns) record[column.key] = inOwnUnit(column, cells[column.place], lengthUnit, currency);
  const linksPer = columns.find(({ key }) => key === "linksPer");
  const perUnit = linksPer && LINKS_PER_UNITS.find((unit) => unit === linksPer.unit);
  return {
    ...record,
    ...(lengthUnit && isBlank(record.lengthUnit) ? { lengthUnit } : {}),
    ...(perUnit && isBlank(record.linksPerUnit) ? { linksPerUnit: perUnit } : {}),
  };
}

/** Whether every row's cells go into its record as they stand, no amount changed to another unit. */
export function standAsTheyAre(columns: readonly FieldColumn[], currency: Currency): boolean {
  const inLengths = columns.filter(({ key, unit }) => unit !== undefined && ROW_FIELDS[key].counts === "length");
  if (inLengths.length > 0 && columns.some(({ key }) => key === "lengthUnit")) return false;
  const probe = 1;
  try {
    return columns.every((column) => inOwnUnit(column, probe, lengthUnitOf(columns, []), currency) === probe);
  } catch (error) {
    if (error instanceof CostingError) return false;
    throw error;
  }
}

/** The unit of the row's lengths: the one in a cell of its own, else that of the Length header. */
function lengthUnitOf(columns: readonly FieldColumn[], cells: readonly unknown[]) {
  const column = columns.find(({ key }) => key === "lengthUnit");
  const said = column && String(cells[column.place]).trim().toLowerCase();
  const header = columns.find(({ key }) => key === "length")?.unit;
  return ORDER_LENGTH_UNITS.find((unit) => unit === said) ?? ORDER_LENGTH_UNITS.find((unit) => unit === header);
}

function inOwnUnit(
  column: FieldColumn,
  cell: unknown,
  lengthUnit: (typeof ORDER_LENGTH_UNITS)[number] | undefined,
  currency: Currency,
): unknown {
  const { unit, key } = column;
  const { counts } = ROW_FIELDS[key];
  if (unit === undefined || isBlank(cell)) return cell;
  if (counts === "links per length") {
    if (LINKS_PER_UNITS.some((known) => known === unit)) return cell;
    throw unknownUnit(column, LINKS_PER_UNITS.join(" or "));
  }
  if (counts === "weight") {
    if (unit === "g") return cell;
    if (!isWeightUnit(unit)) throw unknownUnit(column, "g, dwt, ozt (a troy ounce), gr, mg, kg or ct");
    return shown(weightIn(amountIn(column, cell), unit).grams);
  }
  if (counts === "length" || counts === "size") {
    const own = counts === "size" ? "mm" : lengthUnit;
    if (key === "length" && ORDER_LENGTH_UNITS.some((known) => known === unit) && own === unit) return cell;
    if (!isLengthUnit(unit) || own === undefined) throw unknownUnit(column, ORDER_LENGTH_UNITS.join(", "));
    return unit === own ? cell : shown(inLengthUnit(lengthIn(amountIn(column, cell), unit), own));
  }
  if (counts === "money" || counts === "money an ounce" || counts === "money a gram") {
    return inCurrency(column, cell, currency);
  }
  // A remark in brackets, such as "Design (yours)".
  return cell;
}

/** Signs of money that say which it is. The dollar and the pound are many; so they refuse nothing of theirs. */
const SIGNS: Readonly<Record<string, readonly string[]>> = {
  "€": ["EUR"],
  "¥": ["JPY", "CNY"],
  "₹": ["INR"],
  "₺": ["TRY"],
};

/** The weight that an amount of money is for, at the end of a unit such as "USD/dwt" or "per gram". */
const PER_WEIGHT = /(?:^|\W)(g|gram|grams|dwt|ozt?|ounces?|gr|mg|kg)$/i;

function inCurrency(column: FieldColumn, cell: unknown, currency: Currency): unknown {
  const { counts } = ROW_FIELDS[column.key];
  const per = PER_WEIGHT.exec(column.unit ?? "")?.[1]?.toLowerCase();
  if (counts === "money an ounce" && per?.startsWith("g") && per !== "gr") {
    throw unknownUnit(column, "money for one troy ounce of fine gold");
  }
  if (counts === "money a gram" && per && !["g", "gram", "grams"].includes(per)) {
    throw unknownUnit(column, "money for one gram");
  }
  const sign = Object.entries(SIGNS).find(([each]) => column.unit?.includes(each))?.[1];
  if (sign && !sign.includes(currency)) {
    throw new CostingError(
      "currencyMismatch",
      column.header,
      `${found(column.unit)}, and Rates are in ${currency}; give the amounts in ${currency}`,
    );
  }
  const code = /\b[A-Za-z]{3}\b/.exec(column.unit ?? "")?.[0];
  if (code === undefined) return cell;
  const said = attemptCurrency(code);
  if (said === undefined || said === currency) return cell;
  throw new CostingError(
    "currencyMismatch",
    column.header,
    `found ${said}, and Rates are in ${currency}; give the amounts in ${currency}`,
  );
}

function attemptCurrency(code: string): Currency | undefined {
  try {
    return parseCurrency(code.toUpperCase());
  } catch (error) {
    if (error instanceof CostingError) return undefined;
    throw error;
  }
}

function amountIn(column: FieldColumn, cell: unknown): Quotient {
  return readNumber(cell, column.header, { right: "a plain number" });
}

/** As a text of at most 15 significant digits, which is what a cell would show. */
function shown(amount: Quotient): string {
  return amount.value().toSignificantDigits(15).toFixed();
}

function unknownUnit(column: FieldColumn, right: string): CostingError {
  return new CostingError("unknownWord", column.header, `${found(column.unit)} as its unit; give ${right}`);
}

/** An ounce of gold is a troy one, and of anything else not: without saying which it is no unit here. */
function isWeightUnit(unit: string): unit is WeightUnit {
  return unit !== "oz" && Object.hasOwn(GRAMS_PER, unit);
}

function isLengthUnit(unit: string): unit is LengthUnit {
  return Object.hasOwn(MILLIMETRES_PER, unit);
}
