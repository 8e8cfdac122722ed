import { around, parseReference, type Rect } from "./address";
import type { Book } from "./book";
import { writeCells } from "./cells";
import { enter } from "./entry";
import type { KeptBook, KeptCell, KeptSheet } from "./kept";
import { Arguments } from "./model/entity";
import { RangeEntity } from "./model/range";
import { WorksheetEntity } from "./model/worksheet";

/** Opens a kept workbook in place of the one that is open. Its formulas are still to be calculated. */
export function reopen(book: Book, kept: KeptBook): void {
  const [first, ...others] = kept.sheets;
  if (!first) throw new Error("The kept workbook has no sheets");
  book.open(first.name, first.id);
  for (const { name, id } of others) book.add(name, id);
  for (const { name, refersTo, comment, hidden, sheet } of kept.names) {
    const scope = sheet === undefined ? undefined : book.sheet(sheet).getSheetId();
    const added = book.names.add(name, refersTo, comment ?? "", scope);
    if (hidden) book.names.change(added, { visible: false });
  }
  for (const sheet of kept.sheets) fill(book, sheet);
  for (const [key, value] of Object.entries(kept.settings)) book.settings.set(key, value);
  const start = parseReference(kept.start);
  if (!start) throw new Error(`"${kept.start}" is no cell`);
  const sheet = book.sheet(start.sheet ?? first.name);
  book.activate(sheet.getSheetId());
  sheet.getRange(start.rect.row, start.rect.column).activate();
}

function fill(book: Book, kept: KeptSheet): void {
  const { id } = kept;
  const range = (address: string) => new RangeEntity(book, id, rectOf(address));
  // Formats first: what is written into a cell with the text format stays a text.
  for (const [format, addresses] of Object.entries(kept.formats))
    for (const address of addresses.split(" ")) range(address).writes.numberFormat?.(format);
  fillRows(book, kept);
  for (const address of kept.merged ?? []) merge(range(address));
  for (const address of kept.hidden ?? [])
    range(address).writes[/\d/.test(address) ? "rowHidden" : "columnHidden"]?.(true);
  const extras = book.extrasOf(id);
  extras.validations = (kept.rules ?? []).map(({ range: address, ...rule }) => ({ ...rule, rect: rectOf(address) }));
  if (kept.printArea) extras.page.area = rectOf(kept.printArea);
  if (kept.titleRows) extras.page.titleRows = rectOf(kept.titleRows);
  for (const [name, address] of Object.entries(kept.tables ?? {}))
    book.tables.rename(book.tables.add(id, rectOf(address), true), name);
  if (kept.visibility) WorksheetEntity.of(book, id).writes.visibility?.(kept.visibility);
}

/** In one step, blanks between the rows included. */
function fillRows(book: Book, { id, rows }: KeptSheet): void {
  let all: Rect | undefined;
  for (const [first, ...cells] of rows) all = around(all, { ...rectOf(first), columns: cells.length });
  if (!all) return;
  const { row, column } = all;
  const contents = Array.from({ length: all.rows }, () => Array<unknown>(all.columns).fill(null));
  for (const [first, ...cells] of rows) {
    const rect = rectOf(first);
    const line = contents[rect.row - row];
    cells.forEach((cell, right) => {
      if (line) line[rect.column - column + right] = contentOf(cell);
    });
  }
  writeCells(book, id, all, contents, "Formulas");
}

/** What is written into the cell: a formula without its value, or nothing where a formula of another cell fills it. */
function contentOf(cell: KeptCell): unknown {
  if (cell !== null && typeof cell === "object") return cell[0];
  if (typeof cell !== "string") return cell;
  // A text that looks like a formula, a number or a date was kept as a text, and must stay one.
  return enter(cell, "General")?.cell.v === cell && !cell.startsWith("'") ? cell : `'${cell}`;
}

function merge(range: RangeEntity): void {
  range.calls.merge?.(new Arguments([false]));
}

function rectOf(address: string): Rect {
  const reference = parseReference(address);
  if (!reference) throw new Error(`"${address}" is no address`);
  return reference.rect;
}
