import { SetCellEditVisibleOperation } from "@univerjs/preset-sheets-core";
import type { Book } from "./book";
import { Failure } from "./failure";

/** Where one request is refused: counted from 1 among the requests that follow. */
export interface PlannedFailure {
  readonly code: string;
  readonly request: number;
  /** The action that is refused, counted from 1; those before it have been done. The whole request where it is missing. */
  readonly action?: number;
  /** All is done, and only the answer is lost. */
  readonly isAnswerLost?: boolean;
}

/** Reads "AccessDenied@2", "AccessDenied@2.5" (the second request, at its fifth action) or "AccessDenied@2!" (its answer is lost). */
export function readFailure(text: string): PlannedFailure {
  const [, code, request, action, lost] = /^(\w+)@(\d+)(?:\.(\d+)|(!))?$/.exec(text) ?? [];
  if (!code || !request)
    throw new Error(`fail: found "${text}"; give CODE@request, CODE@request.action or CODE@request!`);
  return {
    code,
    request: Number(request),
    ...(action ? { action: Number(action) } : {}),
    ...(lost ? { isAnswerLost: true } : {}),
  };
}

/** Fails at this action, counted from 0, or once all are done. */
export interface WantedFailure {
  readonly at: number | "end";
  readonly failure: Failure;
}

/** What happens to a request that is let in. */
export interface Turn {
  /** Refused at once. */
  readonly refusal?: Failure;
  readonly failure?: WantedFailure;
}

/**
 * What Excel refuses, and when: requests while a cell is being edited, and requests that a test wants refused.
 * Source: "Delay execution while cell is being edited" and "Error handling with the application-specific JavaScript APIs"
 * of the Office Add-ins documentation.
 */
export class Mood {
  private editing = false;
  private refused: string | undefined;
  private planned: PlannedFailure | undefined;
  /** Requests since the failure was planned. */
  private seen = 0;
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

  /** Whether a cell is being edited. */
  get isEditing(): boolean {
    return this.editing;
  }

  /** Refuses every request with this code of Excel's, until it is called without one. */
  refuse(code: string | undefined): void {
    this.refused = code;
  }

  /** Refuses one of the requests that follow; what was planned before is forgotten. */
  fail(planned: PlannedFailure): void {
    this.planned = planned;
    this.seen = 0;
  }

  /** What happens to the request whose turn it is. */
  turnOf(waits: boolean): Turn {
    if (this.refused !== undefined) return { refusal: refusalBy(this.refused) };
    if (this.editing && !waits)
      return {
        refusal: new Failure(
          "InvalidOperationInCellEditMode",
          "Excel is in cell-editing mode. Please exit the edit mode.",
        ),
      };
    this.seen += 1;
    const { planned } = this;
    if (planned?.request !== this.seen) return {};
    this.planned = undefined;
    const failure = refusalBy(planned.code);
    if (planned.isAnswerLost) return { failure: { at: "end", failure } };
    return planned.action === undefined ? { refusal: failure } : { failure: { at: planned.action - 1, failure } };
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
    this.planned = undefined;
    this.editing = false;
    this.held.length = 0;
  }

  private release(): void {
    if (this.editing) return;
    for (const take of this.held.splice(0)) take();
  }
}

function refusalBy(code: string): Failure {
  return new Failure(code, `The request was refused: ${code}.`);
}

function isOpening(params: unknown): boolean {
  return typeof params === "object" && params !== null && "visible" in params && params.visible === true;
}
