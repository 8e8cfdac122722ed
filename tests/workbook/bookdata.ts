import { parseReference, type Rect } from "./address";
import type { Book } from "./book";
import { writeCells } from "./cells";
import { Arguments, type Entity } from "./model/entity";
import { RangeEntity } from "./model/range";
import { WorksheetEntity } from "./model/worksheet";

/** A sheet as data: contents, and looks as properties of ranges in Excel's words. */
export interface SheetData {
  readonly name: string;
  readonly tabColor?: string;
  /** Points, by column letters: "A": 90, "C:F": 60. */
  readonly widths?: Readonly<Record<string, number>>;
  readonly freezeRows?: number;
  readonly showGridlines?: boolean;
  /** Blocks of rows by their first cell. */
  readonly blocks: Readonly<Record<string, readonly (readonly unknown[])[]>>;
  /** For a range: property paths of Excel.Range with their values, such as "format/font/bold": true. */
  readonly looks?: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
}

/** A workbook as data: the demo, or the workbook that tests work in, which does not change when the demo does. */
export interface BookData {
  readonly sheets: readonly SheetData[];
  readonly names?: readonly { readonly name: string; readonly refersTo: string; readonly comment?: string }[];
  /** The cell shown first, such as "Designs!A1". */
  readonly start: string;
}

/** Opens a workbook in place of the one that is open. */
export function openData(book: Book, data: BookData): void {
  const [first, ...others] = data.sheets;
  if (!first) throw new Error("The workbook's data has no sheets");
  book.open(first.name);
  for (const sheet of others) book.add(sheet.name);
  for (const { name, refersTo, comment } of data.names ?? []) book.names.add(name, refersTo, comment ?? "");
  for (const sheet of data.sheets) fill(book, sheet);
  const start = parseReference(data.start);
  if (!start) throw new Error(`"${data.start}" is no cell`);
  range(book, book.sheet(start.sheet ?? first.name).getSheetId(), start.rect).calls.select?.(new Arguments([]));
}

function fill(book: Book, sheet: SheetData): void {
  const sheetId = book.sheet(sheet.name).getSheetId();
  const entity = WorksheetEntity.of(book, sheetId);
  for (const [address, rows] of Object.entries(sheet.blocks)) {
    const { row, column } = rectOf(address);
    const columns = Math.max(...rows.map((line) => line.length));
    const values = rows.map((line) => Array.from({ length: columns }, (_, index) => line[index] ?? null));
    writeCells(book, sheetId, { row, column, rows: rows.length, columns }, values, "Formulas");
  }
  for (const [address, looks] of Object.entries(sheet.looks ?? {}))
    for (const [path, value] of Object.entries(looks))
      set(range(book, sheetId, rectOf(address)), path.split("/"), value);
  for (const [letters, points] of Object.entries(sheet.widths ?? {})) {
    const address = letters.includes(":") ? letters : `${letters}:${letters}`;
    set(range(book, sheetId, rectOf(address)), ["format", "columnWidth"], points);
  }
  if (sheet.tabColor) set(entity, ["tabColor"], sheet.tabColor);
  if (sheet.showGridlines === false) set(entity, ["gridlines"], false);
  if (sheet.freezeRows) book.sheet(sheetId).setFrozenRows(sheet.freezeRows);
}

/** Sets a property of the object model by its path; "borders:EdgeTop" names an item. */
function set(entity: Entity, path: readonly string[], value: unknown): void {
  const [head = "", ...rest] = path;
  if (rest.length === 0) {
    const write = entity.writes[head];
    if (!write) throw new Error(`The workbook's data sets ${entity.type}.${head}, which does not exist`);
    write(value);
    return;
  }
  const [name = "", item] = head.split(":");
  const part = entity.parts[name]?.();
  if (!part) throw new Error(`The workbook's data names ${entity.type}.${name}, which does not exist`);
  set(item === undefined ? part : part.item(new Arguments([item])), rest, value);
}

function range(book: Book, sheetId: string, rect: Rect): RangeEntity {
  return new RangeEntity(book, sheetId, rect);
}

function rectOf(address: string): Rect {
  const reference = parseReference(address);
  if (!reference) throw new Error(`"${address}" is no address`);
  return reference.rect;
}
