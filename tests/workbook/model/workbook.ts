import type { Book } from "../book";
import { denied, gap, invalid } from "../failure";
import { type Calls, Entity, flag, oneOf, type Parts, type Reads, type Writes } from "./entity";
import type { Host } from "./host";
import { NamedItems } from "./names";
import { RangeEntity } from "./range";
import { SettingCollection } from "./settings";
import { TableCollection } from "./tables";
import { WorksheetCollection } from "./worksheets";

export class WorkbookEntity extends Entity {
  readonly type = "Workbook";

  constructor(
    book: Book,
    private readonly host: Host,
  ) {
    super(book);
  }

  override readonly reads: Reads = {
    name: () => "Workbook.xlsx",
    isDirty: () => true,
    readOnly: () => false,
  };

  override readonly parts: Parts = {
    worksheets: () => new WorksheetCollection(this.book, this.host),
    names: () => new NamedItems(this.book),
    tables: () => new TableCollection(this.book),
    application: () => new ApplicationEntity(this.book),
    protection: () => new WorkbookProtection(this.book),
    properties: () => new PropertiesEntity(this.book),
    settings: () => new SettingCollection(this.book),
    _Runtime: () => new RuntimeEntity(this.book, this.host),
  };

  override readonly calls: Calls = {
    getSelectedRange: () => selected(this.book),
    getActiveCell: () => {
      const range = selected(this.book);
      return new RangeEntity(this.book, range.sheetId, { ...range.rect, rows: 1, columns: 1 });
    },
    _RemoveReference: (given) => {
      this.host.release(given.text(0));
    },
    _GetObjectByReferenceId: (given) => this.host.kept(given.text(0)) ?? fail(),
    _GetRangeForEventByReferenceId: (given) => this.host.kept(given.text(0)) ?? fail(),
    _GetRangeOrNullObjectForEventByReferenceId: (given) => this.host.kept(given.text(0)) ?? fail(),
  };
}

function fail(): never {
  throw invalid();
}

function selected(book: Book): RangeEntity {
  const sheet = book.active();
  const range = sheet.getActiveRange()?.getRange();
  const rect = range
    ? {
        row: range.startRow,
        column: range.startColumn,
        rows: range.endRow - range.startRow + 1,
        columns: range.endColumn - range.startColumn + 1,
      }
    : { row: 0, column: 0, rows: 1, columns: 1 };
  return new RangeEntity(book, sheet.getSheetId(), rect);
}

class ApplicationEntity extends Entity {
  readonly type = "Application";

  override readonly reads: Reads = {
    calculationMode: () => "Automatic",
    calculationState: () => (this.book.calculation.isSettled() ? "Done" : "Pending"),
    calculationEngineVersion: () => 191029,
    decimalSeparator: () => ".",
    thousandsSeparator: () => ",",
    useSystemSeparators: () => true,
  };

  override readonly writes: Writes = {
    calculationMode: (value) => {
      const mode = oneOf(value, ["Automatic", "AutomaticExceptTables", "Manual"]);
      if (mode !== "Automatic") throw gap(`Application.calculationMode "${mode}"`);
    },
  };

  override readonly calls: Calls = {
    calculate: (given) => {
      oneOf(given.raw(0), ["Recalculate", "Full", "FullRebuild"]);
      this.book.calculation.recalculate();
    },
    // Both only delay what a person sees until the next sync, and here nothing is drawn or calculated within a batch.
    suspendApiCalculationUntilNextSync: () => undefined,
    suspendScreenUpdatingUntilNextSync: () => undefined,
  };
}

/** Excel's Review, Protect Workbook: protects the list of sheets, not their cells. */
class WorkbookProtection extends Entity {
  readonly type = "WorkbookProtection";

  override readonly reads: Reads = { protected: () => this.book.structure.isProtected };

  override readonly calls: Calls = {
    protect: (given) => {
      if (this.book.structure.isProtected) throw denied();
      const password = given.optionalText(0);
      this.book.structure = { isProtected: true, ...(password === undefined ? {} : { password }) };
    },
    unprotect: (given) => {
      const { isProtected, password } = this.book.structure;
      if (isProtected && password !== undefined && password !== given.optionalText(0)) throw denied();
      this.book.structure = { isProtected: false };
    },
  };
}

class RuntimeEntity extends Entity {
  readonly type = "Runtime";

  constructor(
    book: Book,
    private readonly host: Host,
  ) {
    super(book);
  }

  override readonly reads: Reads = { enableEvents: () => this.host.enableEvents };
  override readonly writes: Writes = {
    enableEvents: (value) => {
      this.host.enableEvents = flag(value);
    },
  };
}

const PROPERTIES = ["author", "category", "comments", "company", "keywords", "manager", "subject", "title"] as const;
const properties = new WeakMap<Book, Map<string, string>>();

class PropertiesEntity extends Entity {
  readonly type = "DocumentProperties";
  private readonly values = properties.get(this.book) ?? new Map<string, string>();

  constructor(book: Book) {
    super(book);
    properties.set(book, this.values);
  }

  override readonly reads: Reads = Object.fromEntries(
    PROPERTIES.map((name) => [name, () => this.values.get(name) ?? ""]),
  );
  override readonly writes: Writes = Object.fromEntries(
    PROPERTIES.map((name) => [name, (value: unknown) => void this.values.set(name, String(value))]),
  );
}
