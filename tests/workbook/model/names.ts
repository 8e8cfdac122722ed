import type { Book } from "../book";
import { gap, invalid, notFound } from "../failure";
import type { DefinedName } from "../names";
import { type Arguments, type Calls, Entity, flag, NOTHING, type Parts, type Reads, text, type Writes } from "./entity";
import { RangeEntity } from "./range";
import { WorksheetEntity } from "./worksheet";

export class NamedItems extends Entity {
  readonly type = "NamedItemCollection";

  constructor(
    book: Book,
    private readonly sheetId?: string,
  ) {
    super(book);
  }

  override readonly calls: Calls = {
    add: (given) => {
      const target = given.raw(1);
      const formula = target instanceof RangeEntity ? this.formula(target) : given.text(1);
      const name = this.book.names.add(given.text(0), formula, given.optionalText(2) ?? "", this.sheetId);
      return new NamedItem(this.book, name.name, this.sheetId);
    },
    getItemOrNullObject: (given) => {
      const name = this.book.names.find(given.text(0), this.sheetId);
      return name ? new NamedItem(this.book, name.name, this.sheetId) : NOTHING;
    },
    getCount: () => this.items().length,
  };

  override item(given: Arguments): Entity {
    const name = this.book.names.find(given.text(0), this.sheetId);
    if (!name) throw notFound();
    return new NamedItem(this.book, name.name, this.sheetId);
  }

  override items(): Entity[] {
    const names = this.book.names.all().filter((name) => name.sheetId === this.sheetId);
    return names.map((name) => new NamedItem(this.book, name.name, this.sheetId));
  }

  private formula(range: RangeEntity): string {
    return `=${this.book.names.print(range.sheetId, range.rect)}`;
  }
}

class NamedItem extends Entity {
  readonly type = "NamedItem";

  constructor(
    book: Book,
    private readonly name: string,
    private readonly sheetId: string | undefined,
  ) {
    super(book);
  }

  override get id(): string {
    return this.name;
  }

  override readonly reads: Reads = {
    name: () => this.found.name,
    formula: () => this.found.formula,
    comment: () => this.found.comment,
    visible: () => this.found.visible,
    scope: () => (this.sheetId === undefined ? "Workbook" : "Worksheet"),
    type: () => (this.target ? "Range" : typeof this.value),
    value: () => this.value,
  };

  override readonly writes: Writes = {
    comment: (value) => void this.book.names.change(this.found, { comment: text(value) }),
    visible: (value) => void this.book.names.change(this.found, { visible: flag(value) }),
    formula: (value) => {
      const formula = text(value);
      if (!formula.startsWith("=")) throw invalid();
      this.book.names.change(this.found, { formula });
    },
  };

  override readonly parts: Parts = {
    worksheet: () => {
      if (this.sheetId === undefined) throw notFound();
      return WorksheetEntity.of(this.book, this.sheetId);
    },
  };

  override readonly calls: Calls = {
    delete: () => this.book.names.delete(this.found),
    getRange: () => {
      if (!this.target) throw notFound();
      return new RangeEntity(this.book, this.target.sheetId, this.target.rect);
    },
    getRangeOrNullObject: () =>
      this.target ? new RangeEntity(this.book, this.target.sheetId, this.target.rect) : NOTHING,
  };

  private get found(): DefinedName {
    const found = this.book.names.find(this.name, this.sheetId);
    if (!found) throw notFound();
    return found;
  }

  private get target() {
    return this.book.names.targetOf(this.found);
  }

  /** A range's address, or the constant that a name means. */
  private get value(): unknown {
    const formula = this.found.formula.slice(1);
    if (this.target) return formula;
    if (formula === "#REF!") return formula;
    if (/^(TRUE|FALSE)$/i.test(formula)) return formula.toUpperCase() === "TRUE";
    if (/^".*"$/s.test(formula)) return formula.slice(1, -1).replaceAll('""', '"');
    if (formula.trim() !== "" && Number.isFinite(Number(formula))) return Number(formula);
    throw gap("NamedItem.value of a formula");
  }
}
