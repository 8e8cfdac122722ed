import {
  InsertSheetMutation,
  RemoveSheetMutation,
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
} from "@univerjs/preset-sheets-core";
import { parseReference } from "./address";
import type { Book } from "./book";
import type { Change } from "./changes";
import { RangeEntity } from "./model/range";
import { EVENTS } from "./model/worksheets";

/** The category by which office.js knows an event among the host's messages. */
const CATEGORY = 65536;
const WORKBOOK = "Workbook";

/** Excel's words for the direction in which cells were moved. */
const SHIFTS: Record<Change["changeType"], string> = {
  RangeEdited: "None",
  RowInserted: "ShiftCellDown",
  RowDeleted: "ShiftCellUp",
  ColumnInserted: "ShiftCellRight",
  ColumnDeleted: "ShiftCellLeft",
};

/** Sends the events that the pane has asked for, after the batch or the edit that caused them. */
export class Events {
  private readonly registered = new Set<string>();
  private pending: { type: number; sheetId: string; message: Record<string, unknown> }[] = [];
  private scheduled = false;
  private lastActive: string | undefined;

  constructor(
    private readonly book: Book,
    private readonly host: {
      enableEvents: boolean;
      keep(entity: RangeEntity): string;
      notify(entries: readonly unknown[]): void;
    },
  ) {
    book.changes.onChanged(({ sheetId, address, changeType, byAddin }) => {
      const triggerSource = byAddin ? "ThisLocalAddin" : "Unknown";
      const shiftDirection = SHIFTS[changeType];
      this.send("DataChangedEvent", sheetId, { address, changeType, source: "Local", triggerSource, shiftDirection });
    });
    book.calculation.onCalculated((sheetIds) => {
      for (const sheetId of sheetIds) this.send("CalculatedEvent", sheetId, { address: "" });
    });
    book.engine.commands.onCommandExecuted((command) => {
      const sheetId = sheetOf(command.params);
      if (sheetId === undefined) return;
      if (command.id === SetWorksheetActiveOperation.id) setTimeout(() => this.activate());
      if (command.id === SetSelectionsOperation.id) this.select(sheetId);
      if (command.id === InsertSheetMutation.id) this.send("AddedEvent", sheetId, { source: "Local" });
      if (command.id === RemoveSheetMutation.id) this.send("DeletedEvent", sheetId, { source: "Local" });
    });
  }

  register(type: number, target: string, on: boolean): void {
    const key = `${type}:${target}`;
    if (on) this.registered.add(key);
    else this.registered.delete(key);
  }

  clear(): void {
    this.registered.clear();
    this.pending = [];
  }

  send(event: string, sheetId: string, message: Record<string, unknown>): void {
    const type = EVENTS[event];
    if (type === undefined || !this.host.enableEvents) return;
    if (!this.registered.has(`${type}:${WORKBOOK}`) && !this.registered.has(`${type}:${sheetId}`)) return;
    this.pending.push({ type, sheetId, message: { ...message, worksheetId: sheetId } });
    if (this.scheduled) return;
    this.scheduled = true;
    setTimeout(() => this.flush());
  }

  /** Sends the events collected so far; called after each batch, so that the events of a batch follow its answer. */
  flush(): void {
    this.scheduled = false;
    const gathered = this.pending;
    this.pending = [];
    if (gathered.length === 0) return;
    // After the answer, which is sent when this turn ends.
    setTimeout(() => this.host.notify(gathered.flatMap((event) => this.entries(event))));
  }

  private entries({ type, sheetId, message }: (typeof this.pending)[number]): unknown[] {
    const rect = typeof message.address === "string" ? parseReference(message.address)?.rect : undefined;
    const referenceId = rect ? this.host.keep(new RangeEntity(this.book, sheetId, rect)) : undefined;
    const body = JSON.stringify({ ...message, referenceId });
    return [WORKBOOK, sheetId]
      .filter((targetId) => this.registered.has(`${type}:${targetId}`))
      .map((targetId) => ({ messageCategory: CATEGORY, messageType: type, targetId, message: body }));
  }

  /** Reports a new active sheet once, when it stays active: the grid shows a new sheet for a moment, and Excel does not. */
  private activate(): void {
    const active = this.book.active().getSheetId();
    if (active === this.lastActive) return;
    if (this.lastActive !== undefined) this.send("DeactivatedEvent", this.lastActive, {});
    this.lastActive = active;
    this.send("ActivatedEvent", active, {});
  }

  private select(sheetId: string): void {
    const range = this.book.find(sheetId)?.getActiveRange()?.getA1Notation();
    if (range) this.send("SelectionChangedEvent", sheetId, { address: range });
  }
}

function sheetOf(params: unknown): string | undefined {
  if (typeof params !== "object" || params === null) return undefined;
  if ("subUnitId" in params && typeof params.subUnitId === "string") return params.subUnitId;
  const sheet = "sheet" in params ? params.sheet : undefined;
  if (typeof sheet !== "object" || sheet === null || !("id" in sheet)) return undefined;
  return typeof sheet.id === "string" ? sheet.id : undefined;
}
