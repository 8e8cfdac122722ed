import { SetCellEditVisibleOperation } from "@univerjs/preset-sheets-core";
import type { Book } from "./book";
import { Failure } from "./failure";

/**
 * What Excel refuses, and when: requests while a cell is being edited, and requests that a test wants refused.
 * Source: "Delay execution while cell is being edited" and "Error handling with the application-specific JavaScript APIs"
 * of the Office Add-ins documentation.
 */
export class Mood {
  private editing = false;
  private refused: string | undefined;
  private readonly held: (() => void)[] = [];
  /** Requests that still pass before one is held. */
  private passing = Number.POSITIVE_INFINITY;
  private readonly stopped: (() => void)[] = [];

  constructor(book: Book) {
    book.engine.commands.onCommandExecuted((command) => {
      if (command.id !== SetCellEditVisibleOperation.id) return;
      this.editing = isOpening(command.params);
      // Once what was typed is in its cell.
      if (!this.editing) setTimeout(() => this.release());
    });
  }

  /** Refuses every request with this code of Excel's, until it is called without one. */
  refuse(code: string | undefined): void {
    this.refused = code;
  }

  /** Why a request is refused at once; undefined where it is accepted. */
  refusal(waits: boolean): Failure | undefined {
    if (this.refused !== undefined) return new Failure(this.refused, `The request was refused: ${this.refused}.`);
    if (!this.editing || waits) return undefined;
    return new Failure("InvalidOperationInCellEditMode", "Excel is in cell-editing mode. Please exit the edit mode.");
  }

  /** Calls `take` when a request that may wait can run: at once, or when no cell is being edited any more. */
  whenEdited(take: () => void): void {
    if (this.editing) this.held.push(take);
    else take();
  }

  /** Lets so many requests pass, and holds those that follow until `letGo`: long work then stands still where a test wants it. */
  hold(after: number): void {
    this.passing = after;
  }

  letGo(): void {
    this.passing = Number.POSITIVE_INFINITY;
    for (const go of this.stopped.splice(0)) go();
  }

  /** Settles when the next request may run. */
  async turn(): Promise<void> {
    if (this.passing > 0) this.passing -= 1;
    else await new Promise<void>((go) => this.stopped.push(go));
  }

  /** As when the workbook was opened. */
  forget(): void {
    this.letGo();
    this.refused = undefined;
    this.editing = false;
    this.held.length = 0;
  }

  private release(): void {
    if (this.editing) return;
    for (const take of this.held.splice(0)) take();
  }
}

function isOpening(params: unknown): boolean {
  return typeof params === "object" && params !== null && "visible" in params && params.visible === true;
}
