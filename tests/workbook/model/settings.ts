import type { Book } from "../book";
import { notFound } from "../failure";
import { type Arguments, type Calls, Entity, NOTHING, type Reads, type Writes } from "./entity";

const kept = new WeakMap<Book, Map<string, unknown>>();

function settingsOf(book: Book): Map<string, unknown> {
  const settings = kept.get(book) ?? new Map<string, unknown>();
  kept.set(book, settings);
  return settings;
}

/** What add-ins keep in the workbook, unseen by the person. */
export class SettingCollection extends Entity {
  readonly type = "SettingCollection";

  override readonly calls: Calls = {
    add: (given) => {
      settingsOf(this.book).set(given.text(0), given.raw(1));
      return new Setting(this.book, given.text(0));
    },
    getCount: () => settingsOf(this.book).size,
    getItemOrNullObject: (given) =>
      settingsOf(this.book).has(given.text(0)) ? new Setting(this.book, given.text(0)) : NOTHING,
  };

  override item(given: Arguments): Entity {
    if (!settingsOf(this.book).has(given.text(0))) throw notFound();
    return new Setting(this.book, given.text(0));
  }

  override items(): Entity[] {
    return [...settingsOf(this.book).keys()].map((key) => new Setting(this.book, key));
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
    value: () => settingsOf(this.book).get(this.key),
  };
  override readonly writes: Writes = { value: (value) => void settingsOf(this.book).set(this.key, value) };
  override readonly calls: Calls = { delete: () => void settingsOf(this.book).delete(this.key) };
}
