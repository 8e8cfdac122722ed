import { around, contains, intersect, MAX_COLUMNS, MAX_ROWS, type Rect } from "../address";
import { usedRect } from "../extent";
import { invalid, notFound } from "../failure";
import { type Calls, NOTHING } from "./entity";
import type { RangeEntity } from "./range";

/** The methods of a range that give another range. */
export function placesOf(range: RangeEntity): Calls {
  return {
    getCell: (given) => {
      const { row, column } = range.rect;
      return range.at({ row: row + given.whole(0), column: column + given.whole(1), rows: 1, columns: 1 });
    },
    getRow: (given) => within(range, { ...range.rect, row: range.rect.row + given.whole(0), rows: 1 }),
    getColumn: (given) => within(range, { ...range.rect, column: range.rect.column + given.whole(0), columns: 1 }),
    getLastRow: () => range.at({ ...range.rect, row: range.rect.row + range.rect.rows - 1, rows: 1 }),
    getLastColumn: () => range.at({ ...range.rect, column: range.rect.column + range.rect.columns - 1, columns: 1 }),
    getLastCell: () => {
      const { row, column, rows, columns } = range.rect;
      return range.at({ row: row + rows - 1, column: column + columns - 1, rows: 1, columns: 1 });
    },
    getOffsetRange: (given) => {
      const { row, column } = range.rect;
      return range.at({ ...range.rect, row: row + given.whole(0), column: column + given.whole(1) });
    },
    getResizedRange: (given) => {
      const { rows, columns } = range.rect;
      return range.at({ ...range.rect, rows: rows + given.whole(0), columns: columns + given.whole(1) });
    },
    getAbsoluteResizedRange: (given) => range.at({ ...range.rect, rows: given.whole(0), columns: given.whole(1) }),
    getEntireRow: () => range.at({ ...range.rect, column: 0, columns: MAX_COLUMNS }),
    getEntireColumn: () => range.at({ ...range.rect, row: 0, rows: MAX_ROWS }),
    getBoundingRect: (given) => range.at(around(range.rect, range.other(given).rect)),
    getIntersection: (given) => {
      const shared = intersect(range.rect, range.other(given).rect);
      if (!shared) throw notFound();
      return range.at(shared);
    },
    getIntersectionOrNullObject: (given) => {
      const other = range.other(given);
      const shared = other.sheetId === range.sheetId ? intersect(range.rect, other.rect) : undefined;
      return shared ? range.at(shared) : NOTHING;
    },
    getUsedRange: (given) => range.at(used(range, given.flag(0)) ?? { ...range.rect, rows: 1, columns: 1 }),
    getUsedRangeOrNullObject: (given) => {
      const rect = used(range, given.flag(0));
      return rect ? range.at(rect) : NOTHING;
    },
  };
}

function within(range: RangeEntity, rect: Rect): RangeEntity {
  if (!contains(range.rect, rect)) throw invalid();
  return range.at(rect);
}

function used(range: RangeEntity, valuesOnly: boolean): Rect | undefined {
  const rect = usedRect(range.book, range.sheetId, valuesOnly);
  return rect && intersect(rect, range.rect);
}
