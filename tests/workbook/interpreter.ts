import type { Book } from "./book";
import { Failure, gap, invalid } from "./failure";
import { Arguments, Entity, lowerFirst, NOTHING } from "./model/entity";
import type { WantedFailure } from "./mood";
import { query } from "./query";
import { ACTION, type Action, type Answer, type ArgumentInfo, type Batch, PATH, type Path } from "./wire";

type Found = Entity | typeof NOTHING;

/** What the interpreter needs from outside. */
export interface Surroundings {
  readonly book: Book;
  root(): Entity;
  /** An object of the host, such as the one that custom functions report to. */
  service(name: string): Entity | undefined;
  kept(reference: string): Entity | undefined;
  keep(entity: Entity): string;
  settled(): Promise<void>;
  /** Whether office.js itself knows a member of a class, to distinguish what the stand-in lacks from a mistake of the caller. */
  isKnown(type: string, member: string): boolean;
}

/**
 * Runs one batch of office.js against the model: in order, and up to the first failure, keeping what came before.
 * @param wanted a failure that a test asks for: at one of the actions, or after all of them
 */
export async function interpret(batch: Batch, around: Surroundings, wanted?: WantedFailure): Promise<Answer> {
  const run = new Run(batch, around);
  const answer: Answer = { Results: [], TraceIds: [] };
  for (const [index, action] of batch.Actions.entries()) {
    try {
      if (index === wanted?.at) throw wanted.failure;
      if (action.ActionType === ACTION.trace) {
        // Both are needed: the ids name the statement in errors, the result confirms that event handlers are registered.
        answer.TraceIds?.push(action.Id);
        answer.Results.push({ ActionId: action.Id, Value: null });
        continue;
      }
      if (run.needsValues(action)) await around.settled();
      else if (run.movesCells(action)) await around.book.calculation.idle();
      answer.Results.push({ ActionId: action.Id, Value: around.book.changes.asAddin(() => run.act(action)) });
    } catch (thrown) {
      const failure = thrown instanceof Failure ? thrown : unexpected(thrown);
      answer.Error = errorOf(failure, index, `path ${action.ObjectPathId}`);
      return answer;
    }
  }
  if (wanted?.at === "end") answer.Error = errorOf(wanted.failure, batch.Actions.length - 1, "");
  return answer;
}

function errorOf(
  { code, message, location, status }: Failure,
  index: number,
  place: string,
): NonNullable<Answer["Error"]> {
  return { Code: code, Message: message, Location: location ?? place, ActionIndex: index, HttpStatusCode: status };
}

function unexpected(thrown: unknown): Failure {
  console.error(thrown);
  return new Failure(
    "GeneralException",
    `The workbook page failed: ${thrown instanceof Error ? thrown.message : thrown}`,
    500,
  );
}

class Run {
  private readonly found = new Map<number, Found>();
  private readonly references = new Map<Entity, string>();

  constructor(
    private readonly batch: Batch,
    private readonly around: Surroundings,
  ) {}

  /** Whether the action's answer depends on calculated values. */
  needsValues(action: Action): boolean {
    return action.ActionType === ACTION.query || this.isCall(action, "settledCalls");
  }

  /** Whether the action moves cells. */
  movesCells(action: Action): boolean {
    return this.isCall(action, "movingCalls");
  }

  private isCall(action: Action, kind: "settledCalls" | "movingCalls"): boolean {
    const path = this.path(action.ObjectPathId);
    if (action.ActionType === ACTION.method) return this.isOne(action.ObjectPathId, action.Name, kind);
    if (action.ActionType !== ACTION.instantiate || path.ObjectPathType !== PATH.method) return false;
    return path.ParentObjectPathId !== undefined && this.isOne(path.ParentObjectPathId, path.Name, kind);
  }

  private isOne(pathId: number, method: string, kind: "settledCalls" | "movingCalls"): boolean {
    const entity = this.resolve(pathId);
    return entity !== NOTHING && entity[kind].includes(memberName(method));
  }

  act(action: Action): unknown {
    const entity = this.resolve(action.ObjectPathId);
    if (action.ActionType === ACTION.instantiate) return this.identity(entity);
    if (entity === NOTHING) return null;
    if (action.ActionType === ACTION.query)
      return query(entity, action.QueryInfo ?? {}, {
        identity: (each) => this.identity(each),
        isKnown: this.around.isKnown,
      });
    if (action.ActionType === ACTION.set) return this.set(entity, action);
    if (action.ActionType === ACTION.method) return this.call(entity, action);
    throw gap(`ActionType ${action.ActionType}`);
  }

  private identity(entity: Found): unknown {
    if (entity === NOTHING) return null;
    return {
      ...(entity.id === undefined ? {} : { Id: entity.id }),
      ...(entity.isKept ? { _ReferenceId: this.keep(entity) } : {}),
    };
  }

  private keep(entity: Entity): string {
    const known = this.references.get(entity);
    if (known !== undefined) return known;
    const reference = this.around.keep(entity);
    this.references.set(entity, reference);
    return reference;
  }

  private resolve(pathId: number): Found {
    const known = this.found.get(pathId);
    if (known !== undefined) return known;
    const found = this.find(this.path(pathId));
    this.found.set(pathId, found);
    return found;
  }

  private path(pathId: number): Path {
    const path = this.batch.ObjectPaths[String(pathId)];
    if (!path) throw invalid();
    return path;
  }

  private find(path: Path): Found {
    if (path.ObjectPathType === PATH.global) return this.around.root();
    if (path.ObjectPathType === PATH.nothing) return NOTHING;
    if (path.ObjectPathType === PATH.newObject) return this.around.service(path.Name) ?? missing(path.Name);
    if (path.ObjectPathType === PATH.reference) {
      const entity = this.around.kept(path.Name);
      if (!entity) throw new Failure("InvalidReference", "This reference is not valid for the current operation.");
      this.references.set(entity, path.Name);
      return entity;
    }
    const parent = this.resolve(path.ParentObjectPathId ?? 0);
    if (parent === NOTHING) return NOTHING;
    if (path.ObjectPathType === PATH.indexer) return parent.item(this.given(path.ArgumentInfo));
    if (path.ObjectPathType === PATH.property) {
      const part = parent.parts[memberName(path.Name)];
      return part ? part() : missing(`${parent.type}.${memberName(path.Name)}`);
    }
    const call = parent.calls[memberName(path.Name)] ?? missing(`${parent.type}.${memberName(path.Name)}`);
    const answer = call(this.given(path.ArgumentInfo));
    if (answer === NOTHING || answer instanceof Entity) return answer;
    throw gap(`${parent.type}.${memberName(path.Name)} as an object`);
  }

  private given(info: ArgumentInfo | undefined): Arguments {
    const paths = info?.ReferencedObjectPathIds ?? [];
    return new Arguments((info?.Arguments ?? []).map((value, index) => this.argument(value, paths[index])));
  }

  /** A proxy travels as its path's number, with the same number beside it; inside a plain object as _ObjectPathId. */
  private argument(value: unknown, path: unknown): unknown {
    if (typeof path === "number" && path > 0) return this.entity(path);
    if (Array.isArray(value)) {
      const inner = Array.isArray(path) ? path : [];
      return value.map((item, index) => this.argument(item, inner[index]));
    }
    if (typeof value !== "object" || value === null) return value;
    if ("_ObjectPathId" in value && typeof value._ObjectPathId === "number") return this.entity(value._ObjectPathId);
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, this.argument(item, undefined)]));
  }

  private entity(pathId: number): Entity {
    const entity = this.resolve(pathId);
    if (entity === NOTHING) throw invalid();
    return entity;
  }

  private set(entity: Entity, action: Action): null {
    const name = memberName(action.Name);
    const write = entity.writes[name];
    if (!write) throw gap(`${entity.type}.${name}`);
    const info = action.ArgumentInfo;
    write(this.argument(info?.Arguments?.[0], info?.ReferencedObjectPathIds?.[0]));
    return null;
  }

  private call(entity: Entity, action: Action): unknown {
    if (action.Name === "_KeepReference") return { _ReferenceId: this.keep(entity) };
    const name = memberName(action.Name);
    const call = entity.calls[name] ?? missing(`${entity.type}.${name}`);
    const answer = call(this.given(action.ArgumentInfo));
    if (answer === undefined || answer === NOTHING) return null;
    return answer instanceof Entity ? this.identity(answer) : answer;
  }
}

/** "GetRange" to "getRange"; private names such as "_Runtime" stay. */
function memberName(name: string): string {
  return name.startsWith("_") ? name : lowerFirst(name);
}

function missing(member: string): never {
  throw gap(member);
}
