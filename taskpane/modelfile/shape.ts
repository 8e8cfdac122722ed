import type { Model } from "../../src/index";

/** What a picture draws: corners relative to the model's middle, triangles sorted by solid. */
export interface Shape {
  readonly corners: Float32Array<ArrayBuffer>;
  readonly index: Uint32Array<ArrayBuffer>;
  /** How many triangles each solid has, in the order of the model's solids. */
  readonly counts: readonly number[];
  /** How far the model goes along each axis, in its own unit. */
  readonly size: readonly [number, number, number];
}

/** The shape of a model. Single precision is enough for a picture once the middle is the origin. */
export function shapeOf({ mesh, solids, solidOf, box }: Model): Shape {
  const middle = [0, 1, 2].map((axis) => ((box.least[axis] ?? 0) + (box.most[axis] ?? 0)) / 2);
  const corners = new Float32Array(mesh.corners.length);
  for (let at = 0; at < corners.length; at += 1) corners[at] = (mesh.corners[at] ?? 0) - (middle[at % 3] ?? 0);
  const counts = solids.map(() => 0);
  for (const solid of solidOf) if (solid >= 0) counts[solid] = (counts[solid] ?? 0) + 1;
  let sum = 0;
  const next = counts.map((count) => {
    const start = sum;
    sum += count;
    return start;
  });
  const index = new Uint32Array(3 * sum);
  solidOf.forEach((solid, triangle) => {
    if (solid < 0) return;
    const slot = next[solid] ?? 0;
    next[solid] = slot + 1;
    for (let corner = 0; corner < 3; corner += 1) index[3 * slot + corner] = mesh.index[3 * triangle + corner] ?? 0;
  });
  const side = (axis: 0 | 1 | 2) => box.most[axis] - box.least[axis];
  return { corners, index, counts, size: [side(0), side(1), side(2)] };
}
