import { MAX_COLUMNS, MAX_ROWS, parseReference, type Rect } from "../address";
import type { Book } from "../book";
import { HEADER_FOOTER } from "../extras";
import { invalid, notFound } from "../failure";
import { RangeAreas } from "./areas";
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
  record,
  text,
  type Writes,
} from "./entity";
import { RangeEntity } from "./range";

const POINTS_PER: Record<"Points" | "Inches" | "Centimeters", number> = {
  Points: 1,
  Inches: 72,
  Centimeters: 72 / 2.54,
};
const MARGINS = ["top", "bottom", "left", "right", "header", "footer"] as const;
/** The paper sizes the page can print, by Excel's names. */
const PAPERS = ["Letter", "Legal", "A3", "A4", "A5"] as const;

export class PageLayoutEntity extends Entity {
  readonly type = "PageLayout";

  constructor(
    book: Book,
    private readonly sheetId: string,
  ) {
    super(book);
  }

  override readonly reads: Reads = {
    orientation: () => this.page.orientation,
    paperSize: () => this.page.paperSize,
    zoom: () => this.page.zoom,
    centerHorizontally: () => this.page.centerHorizontally,
    centerVertically: () => this.page.centerVertically,
    printGridlines: () => this.page.printGridlines,
    printHeadings: () => this.page.printHeadings,
    blackAndWhite: () => this.page.blackAndWhite,
    ...Object.fromEntries(MARGINS.map((side) => [`${side}Margin`, () => this.page.margins[side]])),
  };

  override readonly writes: Writes = {
    orientation: (value) => {
      this.page.orientation = oneOf(value, ["Portrait", "Landscape"]);
    },
    paperSize: (value) => {
      this.page.paperSize = oneOf(value, PAPERS);
    },
    zoom: (value) => {
      const { scale, horizontalFitToPages, verticalFitToPages } = record(value);
      this.page.zoom = {
        ...(scale === undefined || scale === null ? {} : { scale: number(scale) }),
        ...(horizontalFitToPages ? { horizontalFitToPages: number(horizontalFitToPages) } : {}),
        ...(verticalFitToPages ? { verticalFitToPages: number(verticalFitToPages) } : {}),
      };
    },
    centerHorizontally: (value) => {
      this.page.centerHorizontally = flag(value);
    },
    centerVertically: (value) => {
      this.page.centerVertically = flag(value);
    },
    printGridlines: (value) => {
      this.page.printGridlines = flag(value);
    },
    printHeadings: (value) => {
      this.page.printHeadings = flag(value);
    },
    blackAndWhite: (value) => {
      this.page.blackAndWhite = flag(value);
    },
    ...Object.fromEntries(
      MARGINS.map((side) => [
        `${side}Margin`,
        (value: unknown) => {
          this.page.margins[side] = number(value);
        },
      ]),
    ),
  };

  override readonly parts: Parts = { headersFooters: () => new HeadersFooters(this.book, this.sheetId) };

  override readonly calls: Calls = {
    setPrintArea: (given) => {
      this.page.area = this.rect(given);
    },
    getPrintArea: () => this.areas(this.page.area ?? fail()),
    getPrintAreaOrNullObject: () => (this.page.area ? this.areas(this.page.area) : NOTHING),
    setPrintTitleRows: (given) => {
      const { row, rows } = this.rect(given);
      this.page.titleRows = { row, rows, column: 0, columns: MAX_COLUMNS };
    },
    getPrintTitleRows: () => this.range(this.page.titleRows ?? fail()),
    getPrintTitleRowsOrNullObject: () => (this.page.titleRows ? this.range(this.page.titleRows) : NOTHING),
    setPrintTitleColumns: (given) => {
      const { column, columns } = this.rect(given);
      this.page.titleColumns = { column, columns, row: 0, rows: MAX_ROWS };
    },
    getPrintTitleColumnsOrNullObject: () => (this.page.titleColumns ? this.range(this.page.titleColumns) : NOTHING),
    setPrintMargins: (given) => {
      const unit = POINTS_PER[oneOf(given.raw(0), ["Points", "Inches", "Centimeters"])];
      const margins = given.record(1);
      for (const side of MARGINS) {
        const margin = margins[side];
        if (margin !== undefined && margin !== null) this.page.margins[side] = number(margin) * unit;
      }
    },
  };

  private get page() {
    return this.book.extrasOf(this.book.sheet(this.sheetId).getSheetId()).page;
  }

  private rect(given: Arguments): Rect {
    const value = given.raw(0);
    if (value instanceof RangeEntity) return value.rect;
    const reference = parseReference(given.text(0));
    if (!reference) throw invalid();
    return reference.rect;
  }

  private range(rect: Rect): RangeEntity {
    return new RangeEntity(this.book, this.sheetId, rect);
  }

  private areas(rect: Rect): RangeAreas {
    return new RangeAreas(this.book, this.sheetId, [rect]);
  }
}

function fail(): never {
  throw notFound();
}

class HeadersFooters extends Entity {
  readonly type = "HeaderFooterGroup";

  constructor(
    book: Book,
    private readonly sheetId: string,
  ) {
    super(book);
  }

  override readonly reads: Reads = { state: () => "Default", useSheetMargins: () => true, useSheetScale: () => true };
  override readonly parts: Parts = { defaultForAllPages: () => new HeaderFooterEntity(this.book, this.sheetId) };
}

class HeaderFooterEntity extends Entity {
  readonly type = "HeaderFooter";

  constructor(
    book: Book,
    private readonly sheetId: string,
  ) {
    super(book);
  }

  override readonly reads: Reads = Object.fromEntries(HEADER_FOOTER.map((name) => [name, () => this.texts[name]]));
  override readonly writes: Writes = Object.fromEntries(
    HEADER_FOOTER.map((name) => [
      name,
      (value: unknown) => {
        this.texts[name] = text(value);
      },
    ]),
  );

  private get texts() {
    return this.book.extrasOf(this.sheetId).page.texts;
  }
}
