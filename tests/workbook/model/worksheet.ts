import { BooleanNumber } from "@univerjs/core";
import { SetWorksheetHideMutation } from "@univerjs/preset-sheets-core";
import { MAX_COLUMNS, MAX_ROWS, parseReference, type Rect } from "../address";
import { type Book, DEFAULT_HEIGHT, DEFAULT_WIDTH } from "../book";
import { usedRect } from "../extent";
import { invalid, notFound } from "../failure";
import { color } from "../styles";
import {
  type Arguments,
  type Calls,
  Entity,
  flag,
  NOTHING,
  number,
  oneOf,
  type Parts,
  type Reads,
  text,
  type Writes,
} from "./entity";
import { type Host, hostOf } from "./host";
import { NamedItems } from "./names";
import { HorizontalPageBreaks } from "./pagebreaks";
import { PageLayoutEntity } from "./pagelayout";
import { FreezePanes, Protection } from "./panes";
import { RangeEntity } from "./range";
import { ShapeCollection } from "./shapes";
import { TableCollection } from "./tables";
import { eventCalls } from "./worksheets";

const VISIBILITIES = ["Visible", "Hidden", "VeryHidden"] as const;

export class WorksheetEntity extends Entity {
  readonly type = "Worksheet";

  constructor(
    book: Book,
    private readonly host: Host,
    readonly sheetId: string,
  ) {
    super(book);
  }

  /** The worksheet of a range, which knows the book but not its host. */
  static of(book: Book, sheetId: string): WorksheetEntity {
    return new WorksheetEntity(book, hostOf(book), sheetId);
  }

  /** The cells an address or a defined name means on a sheet. */
  static rectOf(book: Book, sheetId: string, address: string): Rect {
    const reference = parseReference(address);
    if (reference) {
      if (reference.sheet !== undefined && book.find(reference.sheet)?.getSheetId() !== sheetId) throw invalid();
      return reference.rect;
    }
    const name = book.names.find(address, sheetId) ?? book.names.find(address);
    const target = name && book.names.targetOf(name);
    if (target?.sheetId !== sheetId) throw invalid();
    return target.rect;
  }

  override get id(): string {
    return this.sheetId;
  }

  override readonly reads: Reads = {
    id: () => this.sheetId,
    name: () => this.sheet.getSheetName(),
    position: () => this.sheet.getIndex(),
    visibility: () => {
      if (!this.sheet.isSheetHidden()) return "Visible";
      return this.book.extrasOf(this.sheetId).veryHidden ? "VeryHidden" : "Hidden";
    },
    tabColor: () => this.sheet.getTabColor() ?? "",
    showGridlines: () => !this.sheet.hasHiddenGridLines(),
    showHeadings: () => true,
    standardWidth: () => this.book.extrasOf(this.sheetId).standardWidth ?? (DEFAULT_WIDTH - 5) / 7,
    standardHeight: () => DEFAULT_HEIGHT * 0.75,
    enableCalculation: () => true,
  };

  override readonly writes: Writes = {
    name: (value) => this.book.rename(this.sheetId, text(value)),
    position: (value) => this.book.move(this.sheetId, number(value)),
    visibility: (value) => this.show(oneOf(value, VISIBILITIES)),
    tabColor: (value) => {
      this.sheet.setTabColor(value === "" ? "" : color(value));
    },
    // office.js reads ShowGridlines but writes Gridlines.
    gridlines: (value) => {
      this.sheet.setHiddenGridlines(!flag(value));
    },
    // Excel's standard width counts characters of the usual font: seven pixels each and five around them.
    standardWidth: (value) => {
      this.book.extrasOf(this.sheetId).standardWidth = number(value);
      this.sheet.getSheet().getConfig().defaultColumnWidth = Math.round(number(value) * 7 + 5);
      this.sheet.refreshCanvas();
    },
  };

  override readonly parts: Parts = {
    names: () => new NamedItems(this.book, this.sheetId),
    tables: () => new TableCollection(this.book, this.sheetId),
    freezePanes: () => new FreezePanes(this.book, this.sheetId),
    horizontalPageBreaks: () => new HorizontalPageBreaks(this.book, this.sheetId),
    pageLayout: () => new PageLayoutEntity(this.book, this.sheetId),
    protection: () => new Protection(this.book, this.sheetId),
    shapes: () => new ShapeCollection(this.book, this.sheetId),
  };

  override readonly settledCalls = ["getUsedRange", "getUsedRangeOrNullObject"];

  override readonly calls: Calls = {
    activate: () => {
      if (this.sheet.isSheetHidden()) throw invalid();
      this.book.activate(this.sheetId);
    },
    delete: () => this.book.delete(this.sheetId),
    copy: (given) => this.copy(given),
    calculate: () => this.book.calculation.recalculate(),
    getRange: (given) => this.range(given),
    getCell: (given) => this.rect({ row: given.whole(0), column: given.whole(1), rows: 1, columns: 1 }),
    getRangeByIndexes: (given) =>
      this.rect({ row: given.whole(0), column: given.whole(1), rows: given.whole(2), columns: given.whole(3) }),
    getUsedRange: (given) =>
      this.rect(usedRect(this.book, this.sheetId, given.flag(0)) ?? { row: 0, column: 0, rows: 1, columns: 1 }),
    getUsedRangeOrNullObject: (given) => {
      const used = usedRect(this.book, this.sheetId, given.flag(0));
      return used ? this.rect(used) : NOTHING;
    },
    getNext: (given) => this.neighbour(1, given.flag(0)) ?? fail(),
    getNextOrNullObject: (given) => this.neighbour(1, given.flag(0)) ?? NOTHING,
    getPrevious: (given) => this.neighbour(-1, given.flag(0)) ?? fail(),
    getPreviousOrNullObject: (given) => this.neighbour(-1, given.flag(0)) ?? NOTHING,
    _GetSheetById: (given) => this.other(given.text(0)),
    _GetAnotherWorksheetById: (given) => this.other(given.text(0)),
    ...eventCalls(
      () => this.host,
      () => this.sheetId,
    ),
  };

  private get sheet() {
    return this.book.sheet(this.sheetId);
  }

  private neighbour(step: 1 | -1, visibleOnly: boolean): WorksheetEntity | undefined {
    const sheets = this.book
      .sheets()
      .filter((sheet) => !visibleOnly || !sheet.isSheetHidden() || sheet.getSheetId() === this.sheetId);
    const found = sheets[sheets.findIndex((sheet) => sheet.getSheetId() === this.sheetId) + step];
    return found && this.other(found.getSheetId());
  }

  private other(id: string): WorksheetEntity {
    return new WorksheetEntity(this.book, this.host, this.book.sheet(id).getSheetId());
  }

  private rect(rect: Rect): RangeEntity {
    const { row, column, rows, columns } = rect;
    const fits = row >= 0 && column >= 0 && rows > 0 && columns > 0;
    if (!fits || row + rows > MAX_ROWS || column + columns > MAX_COLUMNS) throw invalid();
    return new RangeEntity(this.book, this.sheetId, rect);
  }

  private range(given: Arguments): RangeEntity {
    const address = given.optionalText(0);
    if (address === undefined || address === "")
      return this.rect({ row: 0, column: 0, rows: MAX_ROWS, columns: MAX_COLUMNS });
    return this.rect(WorksheetEntity.rectOf(this.book, this.sheetId, address));
  }

  private copy(given: Arguments): WorksheetEntity {
    const where = oneOf(given.raw(0) ?? "None", ["None", "Before", "After", "Beginning", "End"]);
    const count = this.book.sheets().length;
    if (where === "Before" || where === "After") {
      const relative = given.raw(1);
      if (!(relative instanceof WorksheetEntity)) throw invalid();
      const index = this.book.sheet(relative.sheetId).getIndex();
      return this.other(this.book.copy(this.sheetId, where === "Before" ? index : index + 1).getSheetId());
    }
    return this.other(this.book.copy(this.sheetId, where === "Beginning" ? 0 : count).getSheetId());
  }

  private show(visibility: (typeof VISIBILITIES)[number]): void {
    const hide = visibility !== "Visible";
    const others = this.book.sheets().filter((sheet) => sheet.getSheetId() !== this.sheetId && !sheet.isSheetHidden());
    if (hide && others.length === 0) throw invalid();
    if (hide && this.book.active().getSheetId() === this.sheetId) this.book.activate(others[0]?.getSheetId() ?? "");
    this.book.extrasOf(this.sheetId).veryHidden = visibility === "VeryHidden";
    const hidden = hide ? BooleanNumber.TRUE : BooleanNumber.FALSE;
    const params = { unitId: this.book.id, subUnitId: this.sheetId, hidden };
    this.book.engine.commands.syncExecuteCommand(SetWorksheetHideMutation.id, params);
  }
}

function fail(): never {
  throw notFound();
}
