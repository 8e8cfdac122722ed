import type { Book } from "../book";
import { notFound } from "../failure";
import { type Arguments, type Calls, Entity, NOTHING, type Reads, type Writes } from "./entity";

/** What add-ins save in the workbook, hidden from the person. */
export class SettingCollection extends Entity {
  readonly type = "SettingCollection";

  override readonly calls: Calls = {
    add: (given) => {
      this.book.settings.set(given.text(0), given.raw(1));
      return new Setting(this.book, given.text(0));
    },
    getCount: () => this.book.settings.size,
    getItemOrNullObject: (given) =>
      this.book.settings.has(given.text(0)) ? new Setting(this.book, given.text(0)) : NOTHING,
  };

  override item(given: Arguments): Entity {
    if (!this.book.settings.has(given.text(0))) throw notFound();
    return new Setting(this.book, given.text(0));
  }

  override items(): Entity[] {
    return [...this.book.settings.keys()].map((key) => new Setting(this.book, key));
  }
}

class Setting extends Entity {
  readonly type = "Setting";

  constructor(
    book: Book,
    private readonly key: string,
  ) {
    super(book);
  }

  override get id(): string {
    return this.key;
  }

  override readonly reads: Reads = {
    key: () => this.key,
    value: () => this.book.settings.get(this.key),
  };
  override readonly writes: Writes = { value: (value) => void this.book.settings.set(this.key, value) };
  override readonly calls: Calls = { delete: () => void this.book.settings.delete(this.key) };
}
