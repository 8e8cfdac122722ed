import { gap, invalid } from "./failure";
import { type Entity, lowerFirst, upperFirst } from "./model/entity";
import type { Action } from "./wire";

/** What a query needs besides the object it reads. */
export interface Reading {
  /** An object's id and reference, as messages carry them. */
  identity(entity: Entity): unknown;
  /** Whether office.js itself knows a member of a class, to distinguish what the stand-in lacks from a mistake of the caller. */
  isKnown(type: string, member: string): boolean;
}

/** What an object, or each object of a collection, reads as: the selected properties, or all plain ones. */
export function query(entity: Entity, info: NonNullable<Action["QueryInfo"]>, around: Reading): unknown {
  const items = entity.items();
  const select = [...(info.Select ?? []), ...(info.Expand ?? [])].filter((each) => each !== "" && each !== "*");
  if (!items) return values(entity, select, around);
  const own = select.filter((each) => entity.reads[lowerFirst(each)]);
  const ofItems = select
    .filter((each) => !own.includes(each) && each.toLowerCase() !== "items")
    .map((each) => each.replace(/^items\//i, ""));
  const page = items.slice(info.Skip ?? 0, info.Top ? (info.Skip ?? 0) + info.Top : undefined);
  return {
    ...(own.length > 0 ? values(entity, own, around) : {}),
    _Items: page.map((item) => values(item, ofItems, around)),
  };
}

/** The selected properties with office.js's capitals; all plain ones where none is named. */
function values(entity: Entity, select: readonly string[], around: Reading): Record<string, unknown> {
  const answer: Record<string, unknown> = { ...(around.identity(entity) as Record<string, unknown>) };
  const names = select.length > 0 ? select : Object.keys(entity.reads);
  const nested = new Map<string, string[]>();
  for (const name of names) {
    const [head = "", ...rest] = name.split("/");
    const member = lowerFirst(head.trim());
    const read = entity.reads[member];
    if (rest.length === 0 && read) answer[upperFirst(member)] = read();
    else if (entity.parts[member])
      nested.set(member, [...(nested.get(member) ?? []), ...(rest.length > 0 ? [rest.join("/")] : [])]);
    else unknown(entity, member, around);
  }
  for (const [member, inner] of nested) {
    const part = entity.parts[member]?.();
    if (part) answer[upperFirst(member)] = query(part, { Select: inner }, around);
  }
  return answer;
}

function unknown(entity: Entity, member: string, around: Reading): never {
  if (around.isKnown(entity.type, member)) throw gap(`${entity.type}.${member}`);
  throw invalid(`The property '${member}' does not exist on ${entity.type}`);
}
