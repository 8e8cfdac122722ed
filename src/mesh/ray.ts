import type { Point } from "./box";
import type { BoxTree } from "./boxtree";
import type { Mesh } from "./mesh";

/** Not parallel to any axis or to each other, so that a ray rarely runs along a face of a model. */
const DIRECTIONS: readonly Point[] = [
  [Math.SQRT2, Math.LN2, Math.PI / 4],
  [-Math.LN2, Math.E / 3, -Math.SQRT1_2],
  [Math.PI / 5, -Math.SQRT2 / 3, -Math.LOG10E],
  [-Math.LOG10E, -Math.SQRT1_2, Math.E / 2],
];
/** A crossing nearer than this share to a triangle's border, or to the ray's own start, is not trusted. */
const CLEAR = 1e-9;

/** After this many triangles a model is too entangled to go on. */
const MOST_LOOKS = 40_000_000;

/** Finds by rays which surfaces are around a point, until too many triangles were looked at. */
export class Rays {
  private looks = 0;

  constructor(
    private readonly mesh: Mesh,
    private readonly tree: BoxTree,
    private readonly surfaceOf: Int32Array,
  ) {}

  /** Whether too many triangles were looked at: from then on nothing is found. */
  get exhausted(): boolean {
    return this.looks >= MOST_LOOKS;
  }

  /**
   * How often each surface winds around a point, by surface: 1 inside a shell that looks outwards, -1 inside one that looks
   * inwards, 0 (left out) outside. Counts which way a ray from the point crosses the triangles; where a ray meets an edge,
   * another direction is tried.
   */
  windingsAt(point: Point, except = -1): Map<number, number> {
    const windings = new Map<number, number>();
    if (this.exhausted) return windings;
    for (const direction of DIRECTIONS) {
      windings.clear();
      let clear = true;
      this.tree.eachAlong(point, direction, (triangle) => {
        this.looks += 1;
        const surface = this.surfaceOf[triangle] ?? -1;
        if (surface === except) return;
        const crossing = crossingOf(point, direction, this.mesh, triangle);
        if (crossing === undefined) clear = false;
        else if (crossing !== 0) windings.set(surface, (windings.get(surface) ?? 0) + crossing);
      });
      if (clear) break;
    }
    for (const [surface, winding] of windings) if (winding === 0) windings.delete(surface);
    return windings;
  }
}

/**
 * 1 where the ray leaves through the triangle's outer side, -1 where it enters, 0 where it misses, undefined where it is too
 * close to tell.
 * Source: T. Möller and B. Trumbore, Fast, minimum storage ray/triangle intersection (1997): from memory.
 */
function crossingOf(origin: Point, direction: Point, { corners, index }: Mesh, triangle: number): number | undefined {
  const a = 3 * (index[3 * triangle] ?? 0);
  const b = 3 * (index[3 * triangle + 1] ?? 0);
  const c = 3 * (index[3 * triangle + 2] ?? 0);
  const [dx, dy, dz] = direction;
  const ax = corners[a] ?? 0;
  const ay = corners[a + 1] ?? 0;
  const az = corners[a + 2] ?? 0;
  const ux = (corners[b] ?? 0) - ax;
  const uy = (corners[b + 1] ?? 0) - ay;
  const uz = (corners[b + 2] ?? 0) - az;
  const vx = (corners[c] ?? 0) - ax;
  const vy = (corners[c + 1] ?? 0) - ay;
  const vz = (corners[c + 2] ?? 0) - az;
  const px = dy * vz - dz * vy;
  const py = dz * vx - dx * vz;
  const pz = dx * vy - dy * vx;
  const determinant = ux * px + uy * py + uz * pz;
  const scale = Math.hypot(ux, uy, uz) * Math.hypot(vx, vy, vz);
  // Without area, or seen from its edge: its neighbours decide.
  if (Math.abs(determinant) <= 1e-12 * scale) return 0;
  const sx = origin[0] - ax;
  const sy = origin[1] - ay;
  const sz = origin[2] - az;
  const u = (sx * px + sy * py + sz * pz) / determinant;
  const qx = sy * uz - sz * uy;
  const qy = sz * ux - sx * uz;
  const qz = sx * uy - sy * ux;
  const v = (dx * qx + dy * qy + dz * qz) / determinant;
  const inner = Math.min(u, v, 1 - u - v);
  if (inner < -CLEAR) return 0;
  const along = (vx * qx + vy * qy + vz * qz) / determinant;
  const room = CLEAR * (Math.abs(sx) + Math.abs(sy) + Math.abs(sz));
  if (along < -room) return 0;
  if (inner < CLEAR || along <= room) return undefined;
  return determinant < 0 ? 1 : -1;
}
