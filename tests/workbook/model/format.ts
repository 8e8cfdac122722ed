import { BooleanNumber, HorizontalAlign, type IStyleData, VerticalAlign, WrapStrategy } from "@univerjs/core";
import { SetWorksheetColWidthMutation, SetWorksheetRowHeightMutation } from "@univerjs/preset-sheets-core";
import { DEFAULT_HEIGHT, DEFAULT_WIDTH } from "../book";
import { checkUnlocked, clamp, growTo, isLocked, mapCells } from "../cells";
import { toRange } from "../extent";
import { denied, gap } from "../failure";
import { fitColumns, fitRows } from "../fit";
import { asHex, changeStyle, color, styleAt } from "../styles";
import { Borders } from "./borders";
import { type Calls, Entity, flag, number, oneOf, type Parts, type Reads, text, type Writes } from "./entity";
import type { RangeEntity } from "./range";

const POINT = 4 / 3;
const ALIGN: Record<string, HorizontalAlign> = {
  General: HorizontalAlign.UNSPECIFIED,
  Left: HorizontalAlign.LEFT,
  Center: HorizontalAlign.CENTER,
  Right: HorizontalAlign.RIGHT,
  Justify: HorizontalAlign.JUSTIFIED,
  Distributed: HorizontalAlign.DISTRIBUTED,
};
const VERTICAL: Record<string, VerticalAlign> = {
  Top: VerticalAlign.TOP,
  Center: VerticalAlign.MIDDLE,
  Bottom: VerticalAlign.BOTTOM,
};
/** One step of indent, in pixels of the grid, beyond the two that the grid always has. */
const INDENT = 9;
const PADDING = 2;

/** One part of a range's look: reads what all its cells share, null where they differ. */
abstract class Look extends Entity {
  constructor(protected readonly range: RangeEntity) {
    super(range.book);
  }

  protected shared<T>(look: (style: IStyleData) => T): T | null {
    const sheet = this.book.worksheet(this.range.sheetId);
    const { row, column, rows, columns } = clamp(sheet, this.range.rect);
    const first = look(styleAt(sheet, row, column));
    for (let i = 0; i < rows; i += 1)
      for (let j = 0; j < columns; j += 1) if (look(styleAt(sheet, row + i, column + j)) !== first) return null;
    return first;
  }

  protected change(style: IStyleData): void {
    changeStyle(this.book, this.range.sheetId, this.range.rect, style);
  }
}

export class RangeFormat extends Look {
  readonly type = "RangeFormat";

  override readonly reads: Reads = {
    horizontalAlignment: () => this.shared(({ ht }) => nameOf(ALIGN, ht ?? HorizontalAlign.UNSPECIFIED)),
    verticalAlignment: () => this.shared(({ vt }) => nameOf(VERTICAL, vt || VerticalAlign.BOTTOM)),
    wrapText: () => this.shared(({ tb }) => tb === WrapStrategy.WRAP),
    indentLevel: () => this.shared(({ pd }) => Math.max(0, Math.round(((pd?.l ?? PADDING) - PADDING) / INDENT))),
    columnWidth: () => this.sameSize("column"),
    rowHeight: () => this.sameSize("row"),
    shrinkToFit: () => false,
    textOrientation: () => 0,
  };

  override readonly writes: Writes = {
    horizontalAlignment: (value) => this.change({ ht: ALIGN[oneOf(value, Object.keys(ALIGN))] ?? null }),
    verticalAlignment: (value) => this.change({ vt: VERTICAL[oneOf(value, Object.keys(VERTICAL))] ?? null }),
    wrapText: (value) => this.change({ tb: flag(value) ? WrapStrategy.WRAP : WrapStrategy.OVERFLOW }),
    indentLevel: (value) => this.change({ pd: { l: PADDING + INDENT * number(value) } }),
    columnWidth: (value) => this.size("column", number(value)),
    rowHeight: (value) => this.size("row", number(value)),
    shrinkToFit: (value) => {
      if (flag(value)) throw gap("RangeFormat.shrinkToFit");
    },
  };

  override readonly parts: Parts = {
    fill: () => new RangeFill(this.range),
    font: () => new RangeFont(this.range),
    borders: () => new Borders(this.range),
    protection: () => new FormatProtection(this.range),
  };

  override readonly settledCalls = ["autofitColumns", "autofitRows"];

  override readonly calls: Calls = {
    autofitColumns: () => fitColumns(this.book, this.range.sheetId, this.range.rect),
    autofitRows: () => fitRows(this.book, this.range.sheetId, this.range.rect),
  };

  /** Points, as Excel counts; null where they differ. */
  private sameSize(axis: "row" | "column"): number | null {
    const sheet = this.book.worksheet(this.range.sheetId);
    const { row, column, rows, columns } = clamp(sheet, this.range.rect);
    const sizes =
      axis === "row"
        ? Array.from({ length: rows }, (_, i) =>
            row + i < sheet.getRowCount() ? sheet.getRowHeight(row + i) : DEFAULT_HEIGHT,
          )
        : Array.from({ length: columns }, (_, i) =>
            column + i < sheet.getColumnCount() ? sheet.getColumnWidth(column + i) : DEFAULT_WIDTH,
          );
    const first = sizes[0] ?? 0;
    return sizes.every((size) => size === first) ? first / POINT : null;
  }

  private size(axis: "row" | "column", points: number): void {
    const { sheetId, rect } = this.range;
    checkUnlocked(this.book, sheetId, rect);
    const within = clamp(this.book.worksheet(sheetId), rect);
    growTo(this.book, sheetId, within);
    const params = { unitId: this.book.id, subUnitId: sheetId, ranges: [toRange(within)] };
    const pixels = Math.round(points * POINT);
    const { commands } = this.book.engine;
    if (axis === "column")
      commands.syncExecuteCommand(SetWorksheetColWidthMutation.id, { ...params, colWidth: pixels });
    else commands.syncExecuteCommand(SetWorksheetRowHeightMutation.id, { ...params, rowHeight: pixels });
  }
}

class RangeFill extends Look {
  readonly type = "RangeFill";

  override readonly reads: Reads = { color: () => this.shared(({ bg }) => asHex(bg?.rgb, "#FFFFFF")) ?? "" };
  override readonly writes: Writes = { color: (value) => this.change({ bg: { rgb: color(value) } }) };
  override readonly calls: Calls = { clear: () => this.change({ bg: null }) };
}

class RangeFont extends Look {
  readonly type = "RangeFont";

  override readonly reads: Reads = {
    name: () => this.shared(({ ff }) => ff ?? "Segoe UI"),
    size: () => this.shared(({ fs }) => fs ?? 11),
    bold: () => this.shared(({ bl }) => bl === BooleanNumber.TRUE),
    italic: () => this.shared(({ it }) => it === BooleanNumber.TRUE),
    underline: () => this.shared(({ ul }) => (ul?.s === BooleanNumber.TRUE ? "Single" : "None")),
    strikethrough: () => this.shared(({ st }) => st?.s === BooleanNumber.TRUE),
    color: () => this.shared(({ cl }) => asHex(cl?.rgb, "#000000")) ?? "",
  };

  override readonly writes: Writes = {
    name: (value) => this.change({ ff: text(value) }),
    size: (value) => this.change({ fs: number(value) }),
    bold: (value) => this.change({ bl: flag(value) ? BooleanNumber.TRUE : BooleanNumber.FALSE }),
    italic: (value) => this.change({ it: flag(value) ? BooleanNumber.TRUE : BooleanNumber.FALSE }),
    underline: (value) =>
      this.change({
        ul: { s: oneOf(value, ["None", "Single"]) === "Single" ? BooleanNumber.TRUE : BooleanNumber.FALSE },
      }),
    strikethrough: (value) => this.change({ st: { s: flag(value) ? BooleanNumber.TRUE : BooleanNumber.FALSE } }),
    color: (value) => this.change({ cl: { rgb: color(value) } }),
  };
}

class FormatProtection extends Look {
  readonly type = "FormatProtection";

  override readonly reads: Reads = {
    locked: () => {
      const sheet = this.book.worksheet(this.range.sheetId);
      const { row, column, rows, columns } = clamp(sheet, this.range.rect);
      const first = isLocked(sheet, row, column);
      for (let i = 0; i < rows; i += 1)
        for (let j = 0; j < columns; j += 1) if (isLocked(sheet, row + i, column + j) !== first) return null;
      return first;
    },
  };

  override readonly writes: Writes = {
    locked: (value) => {
      const locked = flag(value);
      if (this.book.extrasOf(this.range.sheetId).protection.on) throw denied();
      mapCells(this.book, this.range.sheetId, this.range.rect, () => ({ custom: locked ? null : { locked: false } }));
    },
  };
}

function nameOf<T>(names: Record<string, T>, value: T): string | undefined {
  return Object.entries(names).find(([, item]) => item === value)?.[0];
}
