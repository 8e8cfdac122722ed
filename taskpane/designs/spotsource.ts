import { CostingError, isBlank, readNumber } from "../../src/index";
import { readCsv } from "../wording/csvtext";
import { TEXTS } from "../wording/texts";

const texts = TEXTS.catalogue.source;

/** Where a number can be read: an address, what its answer is, and the place of the number in it. */
export interface SpotSource {
  readonly url: string;
  readonly kind: "json" | "csv";
  /** JSON: keys and list places from the outside in, such as data.0.price. CSV: line/column, such as 2/price or last/3. */
  readonly place: string;
}

export type SourceReading =
  | { readonly ok: true; readonly amount: string; readonly host: string }
  | { readonly ok: false; readonly sentence: string };

/** What the outside world is to a reading; tests put a server of their own in its place. */
export interface Outside {
  readonly fetch: typeof fetch;
  readonly allows: (url: URL) => boolean;
  /** Milliseconds until an answer is given up. */
  readonly patience: number;
}

const OUTSIDE: Outside = {
  fetch: (...given) => fetch(...given),
  allows: ({ protocol }) => protocol === "https:",
  patience: 15_000,
};
/** Characters of an answer that are read; a spot needs few. */
const LONGEST = 2_000_000;

/** Reads one number from an address. Nothing is sent along but the request itself. Failures come as sentences. */
export async function readSource(source: SpotSource, outside: Outside = OUTSIDE): Promise<SourceReading> {
  const url = urlOf(source.url);
  if (!url || !outside.allows(url)) return failed(texts.notHttps);
  let text: string;
  try {
    const response = await outside.fetch(url, {
      signal: AbortSignal.timeout(outside.patience),
      credentials: "omit",
      referrerPolicy: "no-referrer",
      cache: "no-store",
    });
    // An answer may come from elsewhere than was asked.
    const from = urlOf(response.url);
    if (from && !outside.allows(from)) return failed(texts.redirected(from.host));
    if (!response.ok) return failed(texts.status(url.host, response.status));
    text = await response.text();
  } catch (error) {
    const late = error instanceof Error && error.name === "TimeoutError";
    return failed(late ? texts.late(url.host) : texts.noAnswer(url.host));
  }
  if (text.length > LONGEST) return failed(texts.tooLong);
  const found = source.kind === "json" ? inJson(text, source.place.trim()) : inCsv(text, source.place.trim());
  return found.ok ? numberIn(found.value, source.place, url.host) : found;
}

type Found = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly sentence: string };

function inJson(text: string, place: string): Found {
  let at: unknown;
  try {
    at = JSON.parse(text);
  } catch {
    return failed(texts.notJson);
  }
  const seen: string[] = [];
  for (const step of place === "" ? [] : place.split(".")) {
    const isPlace = !Array.isArray(at) || /^\d+$/.test(step);
    if (typeof at !== "object" || at === null || !isPlace || !Object.hasOwn(at, step)) {
      const keys = typeof at === "object" && at !== null ? Object.keys(at).slice(0, 8) : [];
      return failed(texts.wrongPlace(step, seen.join("."), keys.join(", ")));
    }
    at = Reflect.get(at, step);
    seen.push(step);
  }
  return { ok: true, value: at };
}

const CSV_PLACE = /^(\d+|last)\s*\/\s*(.+)$/i;

function inCsv(text: string, place: string): Found {
  const [, line = "", column = ""] = CSV_PLACE.exec(place) ?? [];
  if (line === "") return failed(texts.csvPlace);
  const rows = readCsv(text).rows.filter((row) => row.some((cell) => cell.trim() !== ""));
  const row = line.toLowerCase() === "last" ? rows.at(-1) : rows[Number(line) - 1];
  if (!row) return failed(texts.noLine(line, String(rows.length)));
  const heads = rows[0]?.map((head) => head.trim().toLowerCase()) ?? [];
  const at = /^\d+$/.test(column) ? Number(column) - 1 : heads.indexOf(column.trim().toLowerCase());
  const cell = at < 0 ? undefined : row[at];
  return cell === undefined ? failed(texts.noColumn(column, heads.slice(0, 8).join(", "))) : { ok: true, value: cell };
}

function numberIn(value: unknown, place: string, host: string): SourceReading {
  try {
    if (isBlank(value) || (typeof value !== "number" && typeof value !== "string"))
      return failed(texts.noNumber(place));
    const amount = readNumber(value, texts.found(place), { above: "0", most: "1000000000000", right: texts.right });
    return { ok: true, amount: amount.value().toFixed(), host };
  } catch (error) {
    if (!(error instanceof CostingError)) throw error;
    return failed(error.message);
  }
}

function urlOf(text: string): URL | undefined {
  return URL.canParse(text.trim()) ? new URL(text.trim()) : undefined;
}

function failed(sentence: string): { readonly ok: false; readonly sentence: string } {
  return { ok: false, sentence };
}
