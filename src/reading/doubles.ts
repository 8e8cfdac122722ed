import { CostingError } from "../exact/errors";

/** Something that must stand once: what it is, by key and in words, and where it was found. */
export interface Placed {
  readonly key: string;
  readonly what: string;
  /** As a person finds it, such as "row 5", "column 2" or "B4". */
  readonly place: string;
}

/** Something that stands more than once, with every place. */
export interface Doubled {
  readonly key: string;
  readonly what: string;
  readonly places: readonly string[];
}

/** What stands more than once, in the order of its first place. Which of them counts nobody can know: it is a fault. */
export function doublesOf(all: readonly Placed[]): readonly Doubled[] {
  const groups = new Map<string, Doubled>();
  for (const { key, what, place } of all) {
    const group = groups.get(key);
    groups.set(key, group ? { ...group, places: [...group.places, place] } : { key, what, places: [place] });
  }
  return [...groups.values()].filter(({ places }) => places.length > 1);
}

/** "Mark in B4 and in F4; keep one of them": the same words wherever something stands twice. */
export function doubledWords({ what, places }: Doubled): string {
  const listed = [places.slice(0, -1).join(", in "), ...places.slice(-1)].join(" and in ");
  return `${what} in ${listed}; keep one of them`;
}

/** Errors: wrongShape where anything stands twice, with all its places. @param field what was read, such as "rates" */
export function refuseDoubles(all: readonly Placed[], field: string): void {
  const [first] = doublesOf(all);
  if (first) throw new CostingError("wrongShape", field, `found ${doubledWords(first)}`);
}
