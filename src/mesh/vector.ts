import type { Point } from "./box";

export function minus(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** At right angles to both; its length is the area of the parallelogram between them. */
export function cross(a: Point, b: Point): Point {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** The same direction with length 1; a vector of length 0 stays as it is. */
export function unit(vector: Point): Point {
  const size = Math.hypot(...vector) || 1;
  return [vector[0] / size, vector[1] / size, vector[2] / size];
}
