import { printReference, type Rect } from "../address";
import type { Book } from "../book";
import { invalid } from "../failure";
import { type Calls, Entity, type Parts, type Reads } from "./entity";
import { RangeEntity } from "./range";
import { WorksheetEntity } from "./worksheet";

/** Several rectangles of one sheet, read only: merged areas and print areas. */
export class RangeAreas extends Entity {
  readonly type = "RangeAreas";

  constructor(
    book: Book,
    private readonly sheetId: string,
    private readonly rects: readonly Rect[],
  ) {
    super(book);
  }

  override get isKept(): boolean {
    return true;
  }

  override readonly reads: Reads = {
    address: () => this.rects.map((rect) => printReference(this.sheetName, rect)).join(","),
    areaCount: () => this.rects.length,
    cellCount: () => this.rects.reduce((sum, rect) => sum + rect.rows * rect.columns, 0),
  };

  override readonly parts: Parts = {
    areas: () => new RangeCollection(this.book, this.sheetId, this.rects),
    worksheet: () => WorksheetEntity.of(this.book, this.sheetId),
  };

  private get sheetName(): string {
    return this.book.sheet(this.sheetId).getSheetName();
  }
}

class RangeCollection extends Entity {
  readonly type = "RangeCollection";

  constructor(
    book: Book,
    private readonly sheetId: string,
    private readonly rects: readonly Rect[],
  ) {
    super(book);
  }

  override readonly calls: Calls = {
    getCount: () => this.rects.length,
    getItemAt: (given) => this.items()[given.whole(0)] ?? fail(),
  };

  override items(): Entity[] {
    return this.rects.map((rect) => new RangeEntity(this.book, this.sheetId, rect));
  }
}

function fail(): never {
  throw invalid();
}
