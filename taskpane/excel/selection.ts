import {
  isBlank,
  LINE_KEYS,
  LINE_LABELS,
  LINKS_PER_UNITS,
  type LineKey,
  ORDER_KEYS,
  ORDER_LABELS,
  ORDER_LENGTH_UNITS,
  type OrderKey,
} from "../../src/index";
import { run, WorkbookFault } from "./run";

/** A row says what an order says once, and one line of it. */
export type RowKey = OrderKey | LineKey;
const ROW_KEYS: readonly RowKey[] = [...ORDER_KEYS, ...LINE_KEYS];
const ROW_LABELS = { ...ORDER_LABELS, ...LINE_LABELS };

/** A header is taken for one when it names at least so many fields of an order. */
const FEWEST_WORDS = 3;

/**
 * The row under the cursor as an order's texts: the nearest row above it that holds the words of the form is its header.
 * Units may stand in the header, as in "Length (in)" or "Links per in". Keys that the header does not name are left out.
 */
export async function readSelectedOrder(): Promise<Partial<Record<RowKey, string>>> {
  return run(async (context) => {
    const selected = context.workbook.getSelectedRange();
    selected.load("rowIndex");
    const used = selected.worksheet.getUsedRangeOrNullObject(true);
    used.load("values,rowIndex");
    await context.sync();
    if (used.isNullObject)
      throw new WorkbookFault(
        "This sheet is empty. Select a row of orders whose headers are the words of this form, such as Customer, Design, Mark, Length.",
      );
    const at = selected.rowIndex - used.rowIndex;
    const row = used.values[at];
    const header = used.values
      .slice(0, Math.max(0, at))
      .findLast((cells) => cells.filter((cell) => keyOf(cell)).length >= FEWEST_WORDS);
    if (!row || !header || row.every(isBlank)) {
      throw new WorkbookFault(
        "The selected row is no order. Select a filled row under headers that are the words of this form, such as Customer, Design, Mark, Length.",
      );
    }
    return orderOf(header, row);
  });
}

function orderOf(header: readonly unknown[], row: readonly unknown[]): Partial<Record<RowKey, string>> {
  const order: Partial<Record<RowKey, string>> = {};
  header.forEach((word, column) => {
    const key = keyOf(word);
    const cell: unknown = row[column];
    if (!key) return;
    // A blank cell says that this order has none of it, which is more than having no column for it.
    order[key] = isBlank(cell) ? "" : textOf(cell);
    if (key === "length") Object.assign(order, unitIn(word, "lengthUnit", ORDER_LENGTH_UNITS));
    if (key === "linksPer") Object.assign(order, unitIn(word, "linksPerUnit", LINKS_PER_UNITS));
  });
  return order;
}

/** A number as its 15 significant digits say, which is what a person sees in the cell. */
function textOf(cell: unknown): string {
  return typeof cell === "number" ? String(Number(cell.toPrecision(15))) : String(cell).trim();
}

function keyOf(header: unknown): RowKey | undefined {
  if (typeof header !== "string") return undefined;
  const words = plain(header);
  if (/^links per (in|inch|cm|length)$/.test(words)) return "linksPer";
  if (words === "stones") return "stoneCount";
  return ROW_KEYS.find((key) => plain(ROW_LABELS[key]) === words || key.toLowerCase() === words.replaceAll(" ", ""));
}

/** A header without its unit: "Length (in)" is "length". */
function plain(header: string): string {
  return header
    .replace(/\(.*?\)/g, " ")
    .replace(/,\s*(in|cm|mm|g)\s*$/i, " ")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()
    .toLowerCase();
}

function unitIn<U extends string>(header: unknown, key: RowKey, units: readonly U[]): Partial<Record<RowKey, string>> {
  const words: readonly string[] =
    String(header)
      .toLowerCase()
      .replace("inch", "in")
      .match(/[a-z]+/g) ?? [];
  const unit = units.find((candidate) => words.includes(candidate));
  return unit ? { [key]: unit } : {};
}
