import { type DateEvidence, dateEvidence } from "../reading/listdate";
import { type DecimalEvidence, type DecimalSign, decimalEvidence } from "../reading/listfigure";
import { isBlank } from "../reading/number";
import type { Currency } from "../units/currency";
import { splitMoney } from "../units/moneytext";
import { markAsWritten } from "../weights/linkname";
import { splitWeight } from "./askedunit";
import { currencyNamed } from "./asking";
import {
  type AskingColumn,
  askingRecord,
  type ListRow,
  type ListSettings,
  listCell,
  mayMean,
  misreadIn,
  namesCurrency,
} from "./askingcells";
import { parseSeenAsking, SEEN_LABELS, type SeenAsking, type SeenKey, seenKey } from "./seenasking";

/** What a list leaves open for the person to say. */
export interface ListQuestions {
  readonly decimals: DecimalEvidence;
  readonly dates: DateEvidence;
  /** A cell or header that says "oz", or "gr", as it is written; undefined for none. */
  readonly ounce: string | undefined;
  readonly gr: string | undefined;
  /** Whether no cell and no header of some row says what its price is for. */
  readonly per: boolean;
  /** Whether some row names no currency. */
  readonly currency: boolean;
  /** Currencies other than the workbook's that have no rate of exchange in their rows. */
  readonly currencies: readonly Currency[];
  /** Whether some row has no date, or no source. */
  readonly date: boolean;
  readonly source: boolean;
}

/** The result of reading a list, row by row; rows are counted from 0 under the headers. */
export interface ListReading {
  /** `mark`: as written in the list, or in its usual form where that is exactly the same. */
  readonly ready: readonly { readonly row: number; readonly seen: SeenAsking; readonly mark: string }[];
  readonly refused: readonly { readonly row: number; readonly sentences: readonly string[] }[];
  /** Rows that say the same as an earlier row of the list, `as`, or as a row of the workbook: then `as` is undefined. */
  readonly doubles: readonly { readonly row: number; readonly as: number | undefined }[];
}

/** What a list leaves open. */
export function questionsOf(
  columns: readonly AskingColumn[],
  rows: readonly ListRow[],
  settings: ListSettings,
): ListQuestions {
  const filled = rows.filter((row) => !row.every(isBlank));
  const texts = (key: SeenKey) =>
    filled.flatMap((row) => {
      const cell = listCell(columns, key, row);
      return typeof cell === "string" && !isBlank(cell) ? [cell] : [];
    });
  const missing = (key: SeenKey) => filled.some((row) => isBlank(listCell(columns, key, row)));
  const price = columns.find(({ key }) => key === "price");
  const weightWords = missingUnit(texts("weight")) ? [columns.find(({ key }) => key === "weight")?.unit] : [];
  const numericWeights = filled.some((row) => typeof listCell(columns, "weight", row) === "number");
  const words = [
    ...weightWords,
    ...(numericWeights ? [columns.find(({ key }) => key === "weight")?.unit] : []),
    ...(missing("per") ? [price?.per] : []),
    ...texts("weight").map((text) => splitWeight(text).word),
    ...texts("per"),
  ].filter((word) => word !== undefined);
  const foreign = filled.flatMap((row): readonly Currency[] => {
    const record = askingRecord(columns, row, settings, undefined);
    const currency = currencyNamed(record.price, record.currency, settings.own);
    return currency !== settings.own && isBlank(listCell(columns, "exchange", row)) ? [currency] : [];
  });
  return {
    decimals: decimalEvidence([
      ...[...texts("price"), ...texts("spot")].map((text) => String(splitMoney(text).figure)),
      ...texts("weight").map((text) => splitWeight(text).figure),
      ...texts("exchange"),
    ]),
    dates: dateEvidence(texts("date")),
    ounce: words.find((word) => mayMean(word, "oz av")),
    gr: words.find((word) => mayMean(word, "grain")),
    per: price?.per === undefined && missing("per"),
    currency: filled.some((row) => !namesCurrency(columns, row)),
    currencies: [...new Set(foreign)],
    date: missing("date"),
    source: missing("source"),
  };
}

/**
 * Reads a list of asking prices, each row alone; empty rows are skipped.
 * @param kept keys, by seenKey, of the asking prices already in the workbook
 */
export function readAskingList(
  columns: readonly AskingColumn[],
  rows: readonly ListRow[],
  settings: ListSettings,
  kept: ReadonlySet<string>,
): ListReading {
  const { decimals, dates } = questionsOf(columns, rows, settings);
  const sign = settings.decimalSign ?? decimals.sign;
  const knownSettings = { ...settings, dateOrder: settings.dateOrder ?? dates.order };
  const ready: ListReading["ready"][number][] = [];
  const refused: ListReading["refused"][number][] = [];
  const doubles: ListReading["doubles"][number][] = [];
  const seenAt = new Map<string, number>();
  rows.forEach((cells, row) => {
    if (cells.every(isBlank)) return;
    const record = askingRecord(columns, cells, knownSettings, sign);
    const parsed = parseSeenAsking(record, settings.own, settings.today);
    const misread = misreadIn(columns, cells, sign);
    if (!parsed.ok || misread.length > 0) {
      const others = parsed.ok ? [] : parsed.faults.filter(({ field }) => misread.every(({ key }) => key !== field));
      refused.push({
        row,
        sentences: [
          ...misread.map(({ key, figure }) => `${SEEN_LABELS[key]}: ${misreading(figure, sign)}`),
          ...others.map(({ sentence }) => sentence),
        ],
      });
      return;
    }
    const key = seenKey(parsed.value);
    if (kept.has(key) || seenAt.has(key)) doubles.push({ row, as: seenAt.get(key) });
    else {
      seenAt.set(key, row);
      ready.push({ row, seen: parsed.value, mark: markAsWritten(record.mark, SEEN_LABELS.mark) });
    }
  });
  return { ready, refused, doubles };
}

function misreading(figure: string, sign: DecimalSign | undefined): string {
  if (sign === undefined) return `found "${figure}", which may be two numbers; say what the decimal sign is`;
  const other = sign === "," ? "point" : "comma";
  return `found "${figure}" with a ${other} in a list whose decimal sign is another; give it as the others are written`;
}

function missingUnit(weights: readonly string[]): boolean {
  return weights.some((text) => splitWeight(text).word === "");
}
