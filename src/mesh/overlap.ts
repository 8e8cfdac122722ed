import type { Point } from "./box";
import { meetingBoxes } from "./boxoverlaps";
import type { BoxTree } from "./boxtree";
import { centreOf, cornersOf, type Mesh } from "./mesh";
import type { Progress } from "./meshprogress";
import { type Nest, type SomeTriangles, spread } from "./nesting";
import type { Rays } from "./ray";
import type { Shell } from "./shell";
import { crossingOf } from "./trianglecrossing";
import { cross, minus } from "./vector";

/** Two solids, by their numbers, that share space; the same number twice is a solid that passes through itself. */
export interface Overlap {
  readonly between: readonly [number, number];
  readonly place: Point;
}

export interface Overlaps {
  readonly found: readonly Overlap[];
  /** False where there was too much to look at; `found` then has what was found so far. */
  readonly complete: boolean;
}

/** After this many crossings of triangles there is no need for more. */
const MOST_CROSSINGS = 2000;
/** After this many pairs of triangles a mesh is too entangled to go on. */
const MOST_PAIRS = 60_000_000;
const RAYS_A_SOLID = 12;

/**
 * Finds where solids share space, which their volumes count twice: by triangles that pass through each other, and, for solids
 * that lie in each other or face to face, by points just under the surface.
 */
export function overlapsOf(
  nests: readonly Nest[],
  shells: readonly Shell[],
  some: SomeTriangles,
  mesh: Mesh,
  tree: BoxTree,
  rays: Rays,
  surfaceOf: Int32Array,
  tolerance: number,
  progress: Progress = () => {},
): Overlaps {
  const solidOf = new Map<number, number>();
  nests.forEach(({ outer, voids }, solid) => {
    for (const shell of [outer, ...voids]) solidOf.set(shell, solid);
  });
  const finds = new Finds();
  const complete = crossings(finds, solidOf, mesh, tree, surfaceOf, tolerance, progress);
  sharedRoom(finds, nests, shells, some, solidOf, mesh, rays);
  return { found: finds.all(), complete: complete && !rays.exhausted };
}

class Finds {
  private readonly places = new Map<string, Overlap>();

  add(a: number, b: number, place: Point): void {
    const between = a < b ? ([a, b] as const) : ([b, a] as const);
    const key = between.join();
    if (!this.places.has(key)) this.places.set(key, { between, place });
  }

  all(): readonly Overlap[] {
    return [...this.places.values()];
  }
}

function crossings(
  finds: Finds,
  solidOf: ReadonlyMap<number, number>,
  mesh: Mesh,
  tree: BoxTree,
  surfaceOf: Int32Array,
  tolerance: number,
  progress: Progress,
): boolean {
  let pairs = 0;
  let crossed = 0;
  tree.eachPair((one, other) => {
    pairs += 1;
    const point = crossingOf(mesh, one, other, tolerance);
    if (point) {
      crossed += 1;
      finds.add(solidOf.get(surfaceOf[one] ?? -1) ?? -1, solidOf.get(surfaceOf[other] ?? -1) ?? -1, point);
    }
    return crossed < MOST_CROSSINGS && pairs < MOST_PAIRS;
  }, progress);
  return crossed < MOST_CROSSINGS && pairs < MOST_PAIRS;
}

function sharedRoom(
  finds: Finds,
  nests: readonly Nest[],
  shells: readonly Shell[],
  some: SomeTriangles,
  solidOf: ReadonlyMap<number, number>,
  mesh: Mesh,
  rays: Rays,
): void {
  const looksOf = (solid: number) => Math.sign(shells[nests[solid]?.outer ?? -1]?.volume ?? 0);
  for (const solid of meetingBoxes(nests.flatMap(({ outer }) => shells[outer]?.box ?? []))) {
    for (const triangle of spread(some[nests[solid]?.outer ?? -1] ?? [], RAYS_A_SOLID)) {
      const point = justUnder(mesh, triangle, looksOf(solid));
      const sums = new Map<number, number>();
      for (const [shell, winding] of rays.windingsAt(point)) {
        const of = solidOf.get(shell) ?? -1;
        sums.set(of, (sums.get(of) ?? 0) + winding * looksOf(of));
      }
      // Where the wall is thinner than the point is deep, the point proves nothing.
      if ((sums.get(solid) ?? 0) < 1) continue;
      for (const [other, sum] of sums) if (other !== solid && sum > 0) finds.add(solid, other, point);
    }
  }
}

/** A point under the middle of a triangle, a thousandth of its size deep. */
function justUnder(mesh: Mesh, triangle: number, looks: number): Point {
  const centre = centreOf(mesh, triangle);
  const [a, b, c] = cornersOf(mesh, triangle);
  const normal = cross(minus(b, a), minus(c, a));
  // The normal is as long as twice the area: its root is a length.
  const size = Math.hypot(...normal);
  const depth = size > 0 ? looks / (1000 * Math.sqrt(size)) : 0;
  return minus(centre, [depth * normal[0], depth * normal[1], depth * normal[2]]);
}
