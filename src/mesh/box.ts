/** A place in a model: x, y, z in the model's unit. */
export type Point = readonly [x: number, y: number, z: number];

/** The smallest box along the axes that holds something. */
export interface Box {
  readonly least: Point;
  readonly most: Point;
}

/** How far a box goes along each axis. */
export function sizeOf(box: Box): Point {
  return [box.most[0] - box.least[0], box.most[1] - box.least[1], box.most[2] - box.least[2]];
}

/** From corner to corner. */
export function diagonalOf(box: Box): number {
  return Math.hypot(...sizeOf(box));
}

export function middleOf(box: Box): Point {
  return [(box.least[0] + box.most[0]) / 2, (box.least[1] + box.most[1]) / 2, (box.least[2] + box.most[2]) / 2];
}

/** The box around points given as x, y, z, x, y, z, …; undefined around none. */
export function boxAround(coordinates: Float32Array | Float64Array): Box | undefined {
  let [lowX, lowY, lowZ] = [Infinity, Infinity, Infinity];
  let [highX, highY, highZ] = [-Infinity, -Infinity, -Infinity];
  for (let at = 0; at < coordinates.length; at += 3) {
    const x = coordinates[at] ?? 0;
    const y = coordinates[at + 1] ?? 0;
    const z = coordinates[at + 2] ?? 0;
    if (x < lowX) lowX = x;
    if (x > highX) highX = x;
    if (y < lowY) lowY = y;
    if (y > highY) highY = y;
    if (z < lowZ) lowZ = z;
    if (z > highZ) highZ = z;
  }
  return coordinates.length === 0 ? undefined : { least: [lowX, lowY, lowZ], most: [highX, highY, highZ] };
}

/** Whether two boxes share more than a face. */
export function boxesOverlap(a: Box, b: Box): boolean {
  for (const axis of [0, 1, 2] as const) {
    if (a.most[axis] <= b.least[axis] || b.most[axis] <= a.least[axis]) return false;
  }
  return true;
}
