import { meetingBoxes } from "./boxoverlaps";
import { centreOf, type Mesh } from "./mesh";
import type { Rays } from "./ray";
import type { Shell } from "./shell";

/** A solid's outer shell with the hollows in it. */
export interface Nest {
  /** Number of the shell that is its outside. */
  readonly outer: number;
  /** Numbers of the shells that bound hollows in it. */
  readonly voids: readonly number[];
}

/** A few triangles of each shell, by the shell's number. */
export type SomeTriangles = readonly (readonly number[])[];

/** This many triangles of a shell are tested for being within another shell; the majority decides. */
const ASKED = 5;

/**
 * Groups closed shells into solids. A shell inside a solid that looks the other way than the solid's outside bounds a
 * hollow; one that looks the same way is another solid, and so is a shell inside a hollow.
 */
export function nestsOf(
  closed: readonly number[],
  shells: readonly Shell[],
  some: SomeTriangles,
  mesh: Mesh,
  rays: Rays,
): readonly Nest[] {
  // A shell whose box overlaps no other box is in no shell and has none in it.
  const meeting = meetingBoxes(closed.flatMap((shell) => shells[shell]?.box ?? []));
  const parents = new Map(
    closed.map((shell, place) => [shell, meeting.has(place) ? parentOf(shell, shells, some, mesh, rays) : undefined]),
  );
  const looks = (shell: number) => Math.sign(shells[shell]?.volume ?? 0);
  const hollows = new Map<number, boolean>();
  const isHollow = (shell: number): boolean => {
    const known = hollows.get(shell);
    if (known !== undefined) return known;
    const parent = parents.get(shell);
    const hollow = parent !== undefined && !isHollow(parent) && looks(shell) === -looks(parent);
    hollows.set(shell, hollow);
    return hollow;
  };
  const voids = new Map<number, number[]>();
  for (const shell of closed) {
    const parent = parents.get(shell);
    if (parent === undefined || !isHollow(shell)) continue;
    const list = voids.get(parent) ?? [];
    list.push(shell);
    voids.set(parent, list);
  }
  return closed.filter((shell) => !isHollow(shell)).map((outer) => ({ outer, voids: voids.get(outer) ?? [] }));
}

/** The smallest larger shell that holds a shell. */
function parentOf(
  shell: number,
  shells: readonly Shell[],
  some: SomeTriangles,
  mesh: Mesh,
  rays: Rays,
): number | undefined {
  const own = shells[shell];
  if (!own) return undefined;
  const asked = spread(some[shell] ?? [], ASKED);
  const votes = new Map<number, number>();
  for (const triangle of asked) {
    for (const [other] of rays.windingsAt(centreOf(mesh, triangle), shell)) {
      votes.set(other, (votes.get(other) ?? 0) + 1);
    }
  }
  const size = (number: number) => Math.abs(shells[number]?.volume ?? 0);
  return [...votes]
    .filter(([other, count]) => 2 * count > asked.length && size(other) > size(shell) && holds(shells[other], own))
    .map(([other]) => other)
    .sort((a, b) => size(a) - size(b))[0];
}

function holds(outer: Shell | undefined, inner: Shell): boolean {
  if (!outer) return false;
  return ([0, 1, 2] as const).every(
    (axis) => outer.box.least[axis] <= inner.box.least[axis] && outer.box.most[axis] >= inner.box.most[axis],
  );
}

/** At most `most` of a list, spread evenly over it. */
export function spread(list: readonly number[], most: number): readonly number[] {
  const step = Math.max(1, list.length / most);
  return Array.from({ length: Math.min(most, list.length) }, (_, i) => list[Math.floor(i * step)] ?? 0);
}
