import type { Book } from "../book";
import { notFound } from "../failure";
import { type Arguments, type Calls, Entity, NOTHING } from "./entity";
import type { Host } from "./host";
import { WorksheetEntity } from "./worksheet";

/** Excel's numbers of the events this page sends, with the names office.js registers them by. */
export const EVENTS: Record<string, number> = {
  DataChangedEvent: 10,
  ActivatedEvent: 11,
  DeactivatedEvent: 12,
  AddedEvent: 13,
  SelectionChangedEvent: 14,
  DeletedEvent: 15,
  CalculatedEvent: 16,
};

/** The calls by which office.js turns events on and off, for one target: "Workbook" or a sheet's id. */
export function eventCalls(host: () => Host, target: () => string): Calls {
  return Object.fromEntries(
    Object.entries(EVENTS).flatMap(([name, number]) => [
      [`_Register${name}`, () => host().registerEvent(number, target(), true)],
      [`_Unregister${name}`, () => host().registerEvent(number, target(), false)],
    ]),
  );
}

export class WorksheetCollection extends Entity {
  readonly type = "WorksheetCollection";

  constructor(
    book: Book,
    private readonly host: Host,
  ) {
    super(book);
  }

  override readonly calls: Calls = {
    add: (given) => this.entity(this.book.add(given.optionalText(0)).getSheetId()),
    getActiveWorksheet: () => this.entity(this.book.active().getSheetId()),
    getItemOrNullObject: (given) => {
      const sheet = this.book.find(given.text(0));
      return sheet ? this.entity(sheet.getSheetId()) : NOTHING;
    },
    getFirst: (given) => this.entity(this.ids(given.flag(0))[0] ?? ""),
    getLast: (given) => this.entity(this.ids(given.flag(0)).at(-1) ?? ""),
    getCount: (given) => this.ids(given.flag(0)).length,
    ...eventCalls(
      () => this.host,
      () => "Workbook",
    ),
  };

  override item(given: Arguments): Entity {
    const sheet = this.book.find(given.text(0));
    if (!sheet) throw notFound();
    return this.entity(sheet.getSheetId());
  }

  override items(): Entity[] {
    return this.ids(false).map((id) => this.entity(id));
  }

  private ids(visibleOnly: boolean): string[] {
    const sheets = this.book.sheets().filter((sheet) => !visibleOnly || !sheet.isSheetHidden());
    return sheets.map((sheet) => sheet.getSheetId());
  }

  private entity(id: string): WorksheetEntity {
    return new WorksheetEntity(this.book, this.host, id);
  }
}
