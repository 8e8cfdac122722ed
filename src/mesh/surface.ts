import { pairsAround } from "./edgering";
import { endOf, isFolded, type Mesh } from "./mesh";
import type { Progress } from "./meshprogress";
import { Groups } from "./unionfind";

/**
 * What is wrong with an edge. `open`: one triangle only. `turned`: two triangles that look to opposite sides. `crowded`: more
 * triangles than two, not as many from one side as from the other.
 */
export type EdgeFault = "open" | "turned" | "crowded";

/** An edge that is not met by one triangle from each side, by one of its corners in the mesh's index. */
export interface FaultyEdge {
  readonly fault: EdgeFault;
  /** Where in the mesh's index the edge begins; it goes to the next corner of the same triangle. */
  readonly at: number;
}

export interface Surfaces {
  /**
   * Which surface each triangle belongs to, numbered from 0 in the order they first come; -1 for a triangle without area between
   * two equal corners.
   */
  readonly surfaceOf: Int32Array;
  readonly count: number;
  readonly faulty: readonly FaultyEdge[];
}

const STRIDE = 65536;
/** Below this many, sorting by insertion is the quickest. */
const FEW = 24;

/** Sorts triangles into surfaces connected by their edges, and finds the edges that do not close. */
export function surfacesOf(
  mesh: Mesh,
  progress: Progress = () => {},
  edges: EdgesByCorner = new EdgesByCorner(mesh),
): Surfaces {
  const { index } = mesh;
  const triangles = index.length / 3;
  const groups = new Groups(triangles);
  const faulty: FaultyEdge[] = [];
  const balanced: number[][] = [];
  edges.fill();
  edges.eachEdge((list, from, to) => {
    let forwards = 0;
    for (let i = from; i < to; i += 1) if (edges.goesUp(list[i] ?? 0)) forwards += 1;
    const all = to - from;
    const first = list[from] ?? 0;
    if (all === 2 && forwards === 1) {
      groups.join(triangleOf(first), triangleOf(list[from + 1] ?? 0));
    } else if (2 * forwards === all) {
      balanced.push([...list.subarray(from, to)]);
    } else {
      faulty.push({ fault: all === 1 ? "open" : all === 2 ? "turned" : "crowded", at: first });
      for (let i = from + 1; i < to; i += 1) groups.join(triangleOf(first), triangleOf(list[i] ?? 0));
    }
  }, progress);
  for (const list of balanced) joinAround(list, mesh, groups);
  return { ...numbered(index, groups), faulty };
}

function triangleOf(place: number): number {
  return Math.floor(place / 3);
}

/** Solids that only touch along an edge, or face to face, stay two. */
function joinAround(places: readonly number[], mesh: Mesh, groups: Groups): void {
  const sums = new Map<number, number>();
  for (const place of places) {
    const group = groups.of(triangleOf(place));
    const isUp = (mesh.index[place] ?? 0) < (mesh.index[endOf(place)] ?? 0);
    sums.set(group, (sums.get(group) ?? 0) + (isUp ? 1 : -1));
  }
  // Each surface is already connected elsewhere and closes at this edge alone: nothing is to be joined.
  if ([...sums.values()].every((sum) => sum === 0)) return;
  for (const [one, other] of pairsAround(places, mesh)) groups.join(triangleOf(one), triangleOf(other));
}

function numbered(index: Uint32Array, groups: Groups): Pick<Surfaces, "surfaceOf" | "count"> {
  const triangles = index.length / 3;
  const surfaceOf = new Int32Array(triangles).fill(-1);
  const numbers = new Map<number, number>();
  for (let triangle = 0; triangle < triangles; triangle += 1) {
    if (isFolded(index, triangle)) continue;
    const group = groups.of(triangle);
    const number = numbers.get(group) ?? numbers.size;
    numbers.set(group, number);
    surfaceOf[triangle] = number;
  }
  return { surfaceOf, count: numbers.size };
}

/**
 * All edges, listed at the lower-numbered of their corners. The lists can be filled again for the same mesh after corners were
 * joined.
 */
export class EdgesByCorner {
  private readonly index: Uint32Array;
  private readonly starts: Uint32Array;
  private readonly list: Uint32Array;

  constructor({ index, corners }: Mesh) {
    this.index = index;
    this.starts = new Uint32Array(corners.length / 3 + 1);
    this.list = new Uint32Array(index.length);
  }

  /** Lists the edges as the mesh now has them. */
  fill(): void {
    const { index, starts, list } = this;
    starts.fill(0);
    this.eachLower((_, lower) => {
      starts[lower] = (starts[lower] ?? 0) + 1;
    });
    let sum = 0;
    for (let corner = 0; corner < starts.length; corner += 1) {
      sum += starts[corner] ?? 0;
      starts[corner] = sum;
    }
    // Each slice is filled from its end backwards, so that `starts` holds its start when all are listed.
    this.eachLower((place, lower) => {
      const slot = (starts[lower] ?? 0) - 1;
      list[slot] = place;
      starts[lower] = slot;
    }, index.length - 1);
  }

  goesUp(place: number): boolean {
    return (this.index[place] ?? 0) < (this.index[endOf(place)] ?? 0);
  }

  /** Visits each edge once, as the part of a list that holds where its triangles begin it. */
  eachEdge(visit: (list: Uint32Array, from: number, to: number) => void, progress: Progress): void {
    const { starts, list } = this;
    for (let corner = 0; corner + 1 < starts.length; corner += 1) {
      const end = starts[corner + 1] ?? 0;
      let from = starts[corner] ?? 0;
      this.sortByUpper(from, end);
      while (from < end) {
        const upper = this.upper(list[from] ?? 0);
        let to = from + 1;
        while (to < end && this.upper(list[to] ?? 0) === upper) to += 1;
        visit(list, from, to);
        from = to;
      }
      if (corner % STRIDE === 0) progress(corner / starts.length);
    }
  }

  /** Forwards from the first place, or backwards from the one given. */
  private eachLower(visit: (place: number, lower: number) => void, backwardsFrom?: number): void {
    const { index } = this;
    for (let step = 0; step < index.length; step += 1) {
      const place = backwardsFrom === undefined ? step : backwardsFrom - step;
      if (isFolded(index, triangleOf(place))) continue;
      visit(place, Math.min(index[place] ?? 0, index[endOf(place)] ?? 0));
    }
  }

  private upper(place: number): number {
    return Math.max(this.index[place] ?? 0, this.index[endOf(place)] ?? 0);
  }

  private sortByUpper(from: number, end: number): void {
    const { list } = this;
    if (end - from > FEW) {
      list.subarray(from, end).sort((a, b) => this.upper(a) - this.upper(b));
      return;
    }
    for (let i = from + 1; i < end; i += 1) {
      const place = list[i] ?? 0;
      const upper = this.upper(place);
      let slot = i;
      while (slot > from && this.upper(list[slot - 1] ?? 0) > upper) {
        list[slot] = list[slot - 1] ?? 0;
        slot -= 1;
      }
      list[slot] = place;
    }
  }
}
