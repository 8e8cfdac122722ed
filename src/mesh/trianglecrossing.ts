import type { Point } from "./box";
import { cornersOf, type Mesh } from "./mesh";
import { cross, dot, minus } from "./vector";

const EDGES = [
  [0, 1],
  [1, 2],
  [2, 0],
] as const;

/**
 * Where two triangles pass through each other by more than the tolerance; undefined where they miss, only touch, lie in one
 * plane or share an edge.
 */
export function crossingOf(mesh: Mesh, one: number, other: number, tolerance: number): Point | undefined {
  const { index } = mesh;
  let common = -1;
  for (let i = 3 * one; i < 3 * one + 3; i += 1) {
    for (let j = 3 * other; j < 3 * other + 3; j += 1) {
      if (index[i] !== index[j]) continue;
      if (common >= 0) return undefined;
      common = index[i] ?? 0;
    }
  }
  // Nearly all pairs end here, so this comes before anything that takes memory.
  if (liesBeside(mesh, one, other, tolerance) || liesBeside(mesh, other, one, tolerance)) return undefined;
  return pierced(mesh, one, other, common, tolerance) ?? pierced(mesh, other, one, common, tolerance);
}

/** Whether the first triangle lies to one side of the second's plane, or touches it no deeper than the tolerance. */
function liesBeside({ corners, index }: Mesh, first: number, second: number, tolerance: number): boolean {
  const a = 3 * (index[3 * second] ?? 0);
  const b = 3 * (index[3 * second + 1] ?? 0);
  const c = 3 * (index[3 * second + 2] ?? 0);
  const ax = corners[a] ?? 0;
  const ay = corners[a + 1] ?? 0;
  const az = corners[a + 2] ?? 0;
  const ux = (corners[b] ?? 0) - ax;
  const uy = (corners[b + 1] ?? 0) - ay;
  const uz = (corners[b + 2] ?? 0) - az;
  const vx = (corners[c] ?? 0) - ax;
  const vy = (corners[c + 1] ?? 0) - ay;
  const vz = (corners[c + 2] ?? 0) - az;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const room = tolerance * Math.sqrt(nx * nx + ny * ny + nz * nz);
  let below = false;
  let above = false;
  for (let place = 3 * first; place < 3 * first + 3; place += 1) {
    const at = 3 * (index[place] ?? 0);
    const height =
      ((corners[at] ?? 0) - ax) * nx + ((corners[at + 1] ?? 0) - ay) * ny + ((corners[at + 2] ?? 0) - az) * nz;
    if (height > room) above = true;
    else if (height < -room) below = true;
  }
  return !(below && above);
}

/** Where an edge of the first triangle goes through the second. Edges at a common corner do not count: they only touch. */
function pierced(mesh: Mesh, first: number, second: number, common: number, tolerance: number): Point | undefined {
  const own = cornersOf(mesh, first);
  const [a, b, c] = cornersOf(mesh, second);
  const normal = cross(minus(b, a), minus(c, a));
  const size = Math.hypot(...normal);
  for (const [from, to] of EDGES) {
    if (mesh.index[3 * first + from] === common || mesh.index[3 * first + to] === common) continue;
    const start = own[from];
    const end = own[to];
    const low = dot(minus(start, a), normal) / size;
    const high = dot(minus(end, a), normal) / size;
    if (Math.min(low, high) > -tolerance || Math.max(low, high) < tolerance) continue;
    const way = minus(end, start);
    const share = low / (low - high);
    const point: Point = [start[0] + share * way[0], start[1] + share * way[1], start[2] + share * way[2]];
    const isWithin = (p: Point, q: Point) => {
      const edge = minus(q, p);
      return dot(cross(edge, minus(point, p)), normal) > tolerance * size * Math.hypot(...edge);
    };
    if (isWithin(a, b) && isWithin(b, c) && isWithin(c, a)) return point;
  }
  return undefined;
}
