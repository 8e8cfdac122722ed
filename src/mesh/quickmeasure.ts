import { type Box, middleOf, type Point, sizeOf } from "./box";
import { CompensatedSum } from "./compensated";
import { FARTHEST } from "./coordinate";
import { formatOf } from "./stl";
import { BINARY_CORNERS, BINARY_HEADER, BINARY_TRIANGLE, soundCount, viewOf } from "./stlbinary";

/** The first figures of a model, in its own unit. */
export interface Measure {
  readonly triangles: number;
  readonly box: Box;
  /** Signed: below zero where the faces look inwards. It means something only where the surface is closed. */
  readonly volume: number;
  /** Whether every edge is met by as many triangles from one side as from the other; false may also be "nearly". */
  readonly closed: boolean;
}

/** Corners nearer than about this share of the model count as one here. */
const GRAIN = 2 ** -20;
/** This many triangles, spread over the file, show roughly where the model is and how large it is. */
const SAMPLE = 1024;
/** This many triangles are summed plainly before their sum is added with compensation. A power of two. */
const BLOCK = 256;
const FIRST = BINARY_HEADER + BINARY_CORNERS;

/**
 * Measures a binary file in one pass over its bytes, without keeping a triangle: a first answer, since `examineModel`
 * needs more memory and time. Undefined for a text, and for coordinates that reading will refuse.
 *
 * Volume: a sixth of the sum of the corners' determinants, about a point inside the model so that a model far from the
 * origin loses nothing (the divergence theorem). Closed: the directed edges, each weighed by a hash that changes its sign
 * with the edge's direction, cancel out; an open surface passes by a chance of about one in 2^60.
 * Errors: as readStl, for the file's form.
 */
export function measureStl(bytes: Uint8Array): Measure | undefined {
  if (formatOf(bytes) !== "binary") return undefined;
  const triangles = soundCount(bytes);
  const view = viewOf(bytes);
  const sample = boxOfSample(view, triangles);
  const side = Math.max(...sizeOf(sample));
  const measure = measured(view, triangles, middleOf(sample), side > 0 ? 1 / (GRAIN * side) : 1);
  const farthest = Math.max(...measure.box.most.map(Math.abs), ...measure.box.least.map(Math.abs));
  // Also false for NaN.
  return farthest <= FARTHEST ? measure : undefined;
}

function boxOfSample(view: DataView, triangles: number): Box {
  const step = Math.max(1, Math.floor(triangles / SAMPLE));
  const least: [number, number, number] = [Infinity, Infinity, Infinity];
  const most: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let triangle = 0; triangle < triangles; triangle += step) {
    for (const axis of [0, 1, 2] as const) {
      const value = view.getFloat32(FIRST + triangle * BINARY_TRIANGLE + 4 * axis, true);
      least[axis] = Math.min(least[axis], value);
      most[axis] = Math.max(most[axis], value);
    }
  }
  return { least, most };
}

/** One pass. Math.min and Math.max keep a NaN, comparisons would lose it; scalars, since this is what has to be fast. */
function measured(view: DataView, triangles: number, middle: Point, grains: number): Measure {
  const [midX, midY, midZ] = middle;
  let [lowX, lowY, lowZ] = [Infinity, Infinity, Infinity];
  let [highX, highY, highZ] = [-Infinity, -Infinity, -Infinity];
  const total = new CompensatedSum();
  let block = 0;
  let first = 0;
  let second = 0;
  for (let triangle = 0, at = FIRST; triangle < triangles; triangle += 1, at += BINARY_TRIANGLE) {
    const ax = view.getFloat32(at, true) - midX;
    const ay = view.getFloat32(at + 4, true) - midY;
    const az = view.getFloat32(at + 8, true) - midZ;
    const bx = view.getFloat32(at + 12, true) - midX;
    const by = view.getFloat32(at + 16, true) - midY;
    const bz = view.getFloat32(at + 20, true) - midZ;
    const cx = view.getFloat32(at + 24, true) - midX;
    const cy = view.getFloat32(at + 28, true) - midY;
    const cz = view.getFloat32(at + 32, true) - midZ;
    block += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    if ((triangle & (BLOCK - 1)) === 0) {
      total.add(block);
      block = 0;
    }
    lowX = Math.min(lowX, ax, bx, cx);
    lowY = Math.min(lowY, ay, by, cy);
    lowZ = Math.min(lowZ, az, bz, cz);
    highX = Math.max(highX, ax, bx, cx);
    highY = Math.max(highY, ay, by, cy);
    highZ = Math.max(highZ, az, bz, cz);
    const a = mixed((ax * grains) | 0, (ay * grains) | 0, (az * grains) | 0);
    const b = mixed((bx * grains) | 0, (by * grains) | 0, (bz * grains) | 0);
    const c = mixed((cx * grains) | 0, (cy * grains) | 0, (cz * grains) | 0);
    first = (first + turning(a, b) + turning(b, c) + turning(c, a)) | 0;
    const a2 = again(a);
    const b2 = again(b);
    const c2 = again(c);
    second = (second + turning(a2, b2) + turning(b2, c2) + turning(c2, a2)) | 0;
  }
  total.add(block);
  return {
    triangles,
    box: { least: [lowX + midX, lowY + midY, lowZ + midZ], most: [highX + midX, highY + midY, highZ + midZ] },
    volume: total.value() / 6,
    closed: first === 0 && second === 0,
  };
}

/**
 * Spreads a corner over 32 bits, so that corners which differ in few high bits differ in half of all.
 * Source: the multipliers are those of well-known integer finalizers; any odd ones of no pattern serve.
 */
function mixed(x: number, y: number, z: number): number {
  let sum = Math.imul(x, 0x9e3779b1);
  sum = Math.imul(sum ^ (sum >>> 16) ^ y, 0x85ebca6b);
  sum = Math.imul(sum ^ (sum >>> 15) ^ z, 0xc2b2ae35);
  return Math.imul(sum ^ (sum >>> 16), 0x2c1b3c6d);
}

/** Spreads the bits once more, for a second sum that is independent of the first. */
function again(spread: number): number {
  const sum = Math.imul(spread ^ (spread >>> 15), 0x297a2d39);
  return sum ^ (sum >>> 14);
}

/** A weight of a directed edge: the opposite direction weighs as much below zero. */
function turning(from: number, to: number): number {
  return (Math.imul(from, (to >>> 7) | 1) - Math.imul(to, (from >>> 7) | 1)) | 0;
}
