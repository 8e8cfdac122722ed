import type { Book } from "./book";
import { Events } from "./events";
import { shifted } from "./extras";
import type { Failure } from "./failure";
import { interpret, type Surroundings } from "./interpreter";
import { type Calls, Entity } from "./model/entity";
import { setHost } from "./model/host";
import { RangeEntity } from "./model/range";
import { WorkbookEntity } from "./model/workbook";
import { Mood, type Turn } from "./mood";
import { type Action, type Answer, type Batch, WAITS_FOR_CELL_EDIT } from "./wire";

/** One request of the pane, for tests that count requests. */
export interface LogEntry {
  readonly id: number;
  /** "sync": of the add-in; "release": office.js releasing ranges; "internal": other requests that office.js makes for itself. */
  readonly kind: "sync" | "release" | "internal";
  readonly actions: number;
  readonly failed?: string;
}

interface PaneWindow {
  _richApiNativeBridge?: { sendMessageToHost(text: string): void; onMessageFromHost?: (text: string) => void };
  curbwrightWaitingMessages?: string[];
  Excel?: Record<string, { prototype?: object } | undefined>;
}

/** Takes the pane's messages one after the other and answers them, as Excel does. */
export class PaneHost {
  readonly log: LogEntry[] = [];
  readonly events: Events;
  readonly mood: Mood;
  enableEvents = true;
  private readonly references = new Map<string, Entity>();
  private queue: Promise<void> = Promise.resolve();
  private waiting = 0;
  private counter = 0;
  private pane: PaneWindow | undefined;
  private bridge: PaneWindow["_richApiNativeBridge"];

  constructor(private readonly book: Book) {
    setHost(book, this);
    this.events = new Events(book, this);
    this.mood = new Mood(book);
    book.changes.onShifted((sheetId, shift) => {
      for (const [reference, entity] of this.references) {
        if (!(entity instanceof RangeEntity) || entity.sheetId !== sheetId) continue;
        const rect = shifted(entity.rect, shift);
        if (rect) entity.rect = rect;
        else this.references.delete(reference);
      }
    });
  }

  /** Connects the bridge that runs in the pane's page; a pane that was reloaded is connected again. */
  connect(window: Window): void {
    const pane = window as unknown as PaneWindow;
    const bridge = pane._richApiNativeBridge;
    // The window stays the same object when its page is reloaded; the bridge does not.
    if (!bridge || this.bridge === bridge) return;
    this.pane = pane;
    this.bridge = bridge;
    this.references.clear();
    this.events.clear();
    bridge.sendMessageToHost = (text) => this.receive(text);
    for (const text of pane.curbwrightWaitingMessages?.splice(0) ?? []) this.receive(text);
  }

  /** Forgets the pane, its event handlers and its references. */
  forget(): void {
    this.bridge = undefined;
    this.pane = undefined;
    this.references.clear();
    this.events.clear();
    this.mood.forget();
    this.log.length = 0;
    this.enableEvents = true;
  }

  /** Whether every message has been answered. */
  isIdle(): boolean {
    return this.waiting === 0;
  }

  /** Resolves when the messages that have arrived are answered. */
  idle(): Promise<void> {
    return this.queue;
  }

  get syncCount(): number {
    return this.log.filter((entry) => entry.kind === "sync").length;
  }

  kept(reference: string): Entity | undefined {
    return this.references.get(reference);
  }

  keep(entity: Entity): string {
    this.counter += 1;
    const reference = `ref${this.counter}`;
    this.references.set(reference, entity);
    return reference;
  }

  release(reference: string): void {
    this.references.delete(reference);
  }

  registerEvent(eventType: number, targetId: string, on: boolean): void {
    this.events.register(eventType, targetId, on);
  }

  /** Sends a message that is not an answer, type 3: events are sent so. */
  notify(entries: readonly unknown[]): void {
    this.bridge?.onMessageFromHost?.(JSON.stringify({ type: 3, message: { entries } }));
  }

  private receive(text: string): void {
    const request = readRequest(text);
    // Internal requests of office.js go on while a cell is being edited.
    if (request.waits) this.mood.whenEdited(() => this.enqueue(request));
    else this.enqueue(request);
  }

  private enqueue(request: Request): void {
    const { bridge } = this;
    this.waiting += 1;
    this.queue = this.queue
      .then(() => this.answer(request))
      .then((reply) => bridge?.onMessageFromHost?.(reply))
      .catch((error: unknown) => console.error(error))
      .then(() => {
        this.waiting -= 1;
      });
  }

  private async answer({ id, batch, waits }: Request): Promise<string> {
    const kind = kindOf(batch);
    if (kind === "sync") await this.mood.turn();
    const { refusal, failure }: Turn = kind === "sync" ? this.mood.turnOf(waits) : {};
    const surroundings: Surroundings = {
      book: this.book,
      root: () => new WorkbookEntity(this.book, this),
      service: (name) => (SERVICES[name] ? new Service(this.book, name) : undefined),
      kept: (reference) => this.references.get(reference),
      keep: (entity) => this.keep(entity),
      settled: () => this.book.settled(),
      isKnown: (type, member) => member in (this.pane?.Excel?.[type]?.prototype ?? {}),
    };
    const answer = refusal ? refused(refusal) : await interpret(batch, surroundings, failure);
    const failed = answer.Error === undefined ? {} : { failed: `${answer.Error.Code}: ${answer.Error.Message}` };
    this.log.push({ id, kind, actions: batch.Actions.length, ...failed });
    this.events.flush();
    return reply(id, answer);
  }
}

interface Request {
  readonly id: number;
  readonly batch: Batch;
  /** Whether it is to wait while a cell is being edited. */
  readonly waits: boolean;
}

function readRequest(text: string): Request {
  const message: unknown = JSON.parse(text);
  if (typeof message !== "object" || message === null || !("id" in message) || !("message" in message))
    throw new Error("The pane sent something that is no request");
  const { body } = message.message as { body: Batch | string };
  const flags = "flags" in message ? Number(message.flags) : 0;
  return {
    id: Number(message.id),
    batch: typeof body === "string" ? (JSON.parse(body) as Batch) : body,
    waits: (flags & WAITS_FOR_CELL_EDIT) !== 0,
  };
}

/** The answer where the whole batch is refused and nothing of it was done. */
function refused({ code, message, status }: Failure): Answer {
  const error = { Code: code, Message: message, Location: "", ActionIndex: 0, HttpStatusCode: status };
  return { Results: [], TraceIds: [], Error: error };
}

function reply(id: number, answer: Answer): string {
  const body = JSON.stringify(answer);
  return JSON.stringify({ id, type: 2, message: { statusCode: 200, headers: {}, body } });
}

function kindOf(batch: Batch): LogEntry["kind"] {
  if (Object.values(batch.ObjectPaths).some((path) => path.ObjectPathType === 2)) return "internal";
  const isRelease = (action: Action) =>
    action.ActionType === 1
      ? batch.ObjectPaths[action.ObjectPathId]?.ObjectPathType === 1
      : action.Name === "_RemoveReference";
  return batch.Actions.every(isRelease) ? "release" : "sync";
}

/** Services of the host that office.js calls for itself, with their methods. Telemetry gets no answer. */
const SERVICES: Record<string, readonly string[]> = {
  "Microsoft.InternalService.AddinInternalService": ["notifyActionHandlerReady"],
  "Microsoft.ExcelServices.CustomFunctions": ["setInvocationArrayResults"],
};

class Service extends Entity {
  readonly type: string;

  constructor(book: Book, name: string) {
    super(book);
    this.type = name;
    this.calls = Object.fromEntries((SERVICES[name] ?? []).map((call) => [call, () => undefined]));
  }

  override readonly calls: Calls;
}
