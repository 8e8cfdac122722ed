import type { Point } from "./box";

/**
 * Triangles with shared corners. `index` has three corner numbers for each triangle, `corners` three coordinates for each corner.
 */
export interface Mesh {
  readonly corners: Float32Array | Float64Array;
  readonly index: Uint32Array;
}

/** The corners of a triangle, in the order that looks outwards. */
export function cornersOf({ corners, index }: Mesh, triangle: number): readonly [Point, Point, Point] {
  const at = (corner: number): Point => {
    const from = 3 * (index[3 * triangle + corner] ?? 0);
    return [corners[from] ?? 0, corners[from + 1] ?? 0, corners[from + 2] ?? 0];
  };
  return [at(0), at(1), at(2)];
}

/** The middle of a triangle. */
export function centreOf(mesh: Mesh, triangle: number): Point {
  const [a, b, c] = cornersOf(mesh, triangle);
  return [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3];
}

/** The place in the index of the corner that ends the edge which begins at a place. */
export function endOf(place: number): number {
  return place % 3 === 2 ? place - 2 : place + 1;
}

/** Whether two of a triangle's corners are one: its edges cancel each other, and it has no area. */
export function isFolded(index: Uint32Array, triangle: number): boolean {
  const a = index[3 * triangle];
  const b = index[3 * triangle + 1];
  const c = index[3 * triangle + 2];
  return a === b || b === c || c === a;
}
