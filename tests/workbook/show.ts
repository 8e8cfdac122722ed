import { CellValueType, InterceptorEffectEnum } from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { isGeneral } from "./entry";
import type { Engine } from "./univer";

/** Pixels a digit takes with the usual font. */
const DIGIT = 8.6;
const MARGIN = 6;

/**
 * Draws a number without a format as Excel does: with as many decimals as its column has room for. Without this the
 * grid would draw all of them over the cell's edge.
 */
export function fitNumbers(engine: Engine): void {
  engine.injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    priority: 12,
    effect: InterceptorEffectEnum.Value,
    handler: (cell, location, next) => {
      if (!cell || cell.t !== CellValueType.NUMBER || typeof cell.v !== "number" || Number.isInteger(cell.v))
        return next(cell);
      const style = location.workbook.getStyles().getStyleByCell(cell);
      if (!isGeneral(style?.n?.pattern ?? "")) return next(cell);
      const room = Math.floor((location.worksheet.getColumnWidth(location.col) - MARGIN) / DIGIT);
      const shown = shorten(cell.v, room);
      return next(shown === cell.v ? cell : { ...cell, v: shown });
    },
  });
}

/** A number with just enough decimals left out to fit a number of characters; unchanged where it cannot fit. */
export function shorten(value: number, room: number): number {
  if (String(value).length <= room) return value;
  const whole = String(Math.trunc(value)).length + (value < 0 && value > -1 ? 1 : 0);
  const decimals = Math.max(0, Math.min(room - whole - 1, 10));
  return Number(value.toFixed(decimals));
}
