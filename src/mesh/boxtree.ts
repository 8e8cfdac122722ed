import { boxAround } from "./box";
import type { Mesh } from "./mesh";
import type { Progress } from "./meshprogress";

/** Most triangles in one of the lowest boxes. */
const LEAF = 4;
const AXIS_BITS = 10;
const CELLS = 2 ** AXIS_BITS;
/** More levels than the tree over the largest file has. */
const DEEPEST = 32;

/**
 * A tree of boxes over triangles, to find near triangles without looking at all of them. The triangles are put in the order of a
 * curve that keeps neighbours together, and each box holds two boxes of the level below.
 * Source: G. M. Morton's order of interleaved coordinates (1966): from memory.
 */
export class BoxTree {
  /** The triangles in the tree's order. */
  readonly order: Uint32Array;
  private readonly leaves: number;
  /** Six numbers a box, the root at 1, the two boxes in box n at 2n and 2n + 1. */
  private readonly boxes: Float32Array | Float64Array;
  private readonly stack = new Uint32Array(8 * DEEPEST);
  private readonly first = new Float64Array(6 * LEAF);
  private readonly second = new Float64Array(6 * LEAF);

  constructor(
    private readonly mesh: Mesh,
    triangles: Uint32Array,
  ) {
    this.order = inMortonOrder(mesh, triangles);
    this.leaves = 2 ** Math.ceil(Math.log2(Math.max(1, Math.ceil(triangles.length / LEAF))));
    // In the corners' own precision, so that no box is smaller than what it holds.
    const length = 12 * this.leaves;
    this.boxes = mesh.corners instanceof Float32Array ? new Float32Array(length) : new Float64Array(length);
    this.fill();
  }

  /**
   * Visits every two triangles whose boxes touch, once; stops when the visitor answers false.
   * Goes down two boxes at a time, which in this tree are always of one level.
   */
  eachPair(visit: (one: number, other: number) => boolean, progress: Progress): void {
    const { stack, leaves } = this;
    let top = 0;
    stack[top++] = 1;
    stack[top++] = 1;
    while (top > 0) {
      const other = stack[--top] ?? 1;
      const one = stack[--top] ?? 1;
      if (one !== other && !this.touch(one, other)) continue;
      if (one >= leaves) {
        if (!this.eachPairOf(one - leaves, other - leaves, visit)) return;
        if (one === other) progress((one - leaves) / leaves);
        continue;
      }
      for (let half = 3; half >= 0; half -= 1) {
        // Of a box with itself, the halves with themselves and the one with the other.
        if (one === other && half === 2) continue;
        stack[top++] = 2 * one + (half >> 1);
        stack[top++] = 2 * other + (half & 1);
      }
    }
  }

  /** Visits every triangle whose lowest box a ray meets. Shape: no part of the direction is zero. */
  eachAlong(origin: readonly number[], direction: readonly number[], visit: (triangle: number) => void): void {
    const { boxes, stack, leaves, order } = this;
    let top = 0;
    stack[top++] = 1;
    while (top > 0) {
      const box = stack[--top] ?? 1;
      let enter = 0;
      let leave = Infinity;
      for (let axis = 0; axis < 3; axis += 1) {
        const from = origin[axis] ?? 0;
        const along = direction[axis] ?? 1;
        const one = ((boxes[6 * box + axis] ?? 0) - from) / along;
        const other = ((boxes[6 * box + axis + 3] ?? 0) - from) / along;
        enter = Math.max(enter, Math.min(one, other));
        leave = Math.min(leave, Math.max(one, other));
      }
      // A little wider, so that a ray through the edge of a box still looks into it.
      if (!(enter <= leave + 1e-9 * Math.abs(leave))) continue;
      if (box < leaves) {
        stack[top++] = 2 * box;
        stack[top++] = 2 * box + 1;
        continue;
      }
      const to = Math.min(order.length, (box - leaves + 1) * LEAF);
      for (let place = (box - leaves) * LEAF; place < to; place += 1) visit(order[place] ?? 0);
    }
  }

  private eachPairOf(leaf: number, other: number, visit: (one: number, other: number) => boolean): boolean {
    const { order, first, second } = this;
    const [from, next] = [LEAF * leaf, LEAF * other];
    const [to, end] = [Math.min(order.length, from + LEAF), Math.min(order.length, next + LEAF)];
    for (let place = from; place < to; place += 1) this.setBoxOf(order[place] ?? 0, first, 6 * (place - from));
    for (let place = next; place < end; place += 1) this.setBoxOf(order[place] ?? 0, second, 6 * (place - next));
    for (let place = from; place < to; place += 1) {
      for (let beside = Math.max(next, leaf === other ? place + 1 : 0); beside < end; beside += 1) {
        if (!touching(first, 6 * (place - from), second, 6 * (beside - next))) continue;
        if (!visit(order[place] ?? 0, order[beside] ?? 0)) return false;
      }
    }
    return true;
  }

  private touch(one: number, other: number): boolean {
    return touching(this.boxes, 6 * one, this.boxes, 6 * other);
  }

  private fill(): void {
    const { boxes, leaves, order } = this;
    for (let box = 2 * leaves - 1; box >= 1; box -= 1) {
      for (let axis = 0; axis < 3; axis += 1) {
        boxes[6 * box + axis] = Infinity;
        boxes[6 * box + axis + 3] = -Infinity;
      }
      if (box < leaves) {
        this.widen(box, boxes, 12 * box);
        this.widen(box, boxes, 12 * box + 6);
        continue;
      }
      const to = Math.min(order.length, (box - leaves + 1) * LEAF);
      for (let place = (box - leaves) * LEAF; place < to; place += 1) {
        this.setBoxOf(order[place] ?? 0, this.first, 0);
        this.widen(box, this.first, 0);
      }
    }
  }

  private widen(box: number, by: Float32Array | Float64Array, at: number): void {
    const { boxes } = this;
    for (let axis = 0; axis < 3; axis += 1) {
      boxes[6 * box + axis] = Math.min(boxes[6 * box + axis] ?? 0, by[at + axis] ?? 0);
      boxes[6 * box + axis + 3] = Math.max(boxes[6 * box + axis + 3] ?? 0, by[at + axis + 3] ?? 0);
    }
  }

  private setBoxOf(triangle: number, box: Float64Array, at: number): void {
    const { corners, index } = this.mesh;
    const a = 3 * (index[3 * triangle] ?? 0);
    const b = 3 * (index[3 * triangle + 1] ?? 0);
    const c = 3 * (index[3 * triangle + 2] ?? 0);
    for (let axis = 0; axis < 3; axis += 1) {
      const one = corners[a + axis] ?? 0;
      const two = corners[b + axis] ?? 0;
      const three = corners[c + axis] ?? 0;
      box[at + axis] = Math.min(one, two, three);
      box[at + axis + 3] = Math.max(one, two, three);
    }
  }
}

/** Whether two boxes, six numbers each from i and from j, have a point in common. */
function touching(a: Float32Array | Float64Array, i: number, b: Float32Array | Float64Array, j: number): boolean {
  return (
    (a[i] ?? 0) <= (b[j + 3] ?? 0) &&
    (b[j] ?? 0) <= (a[i + 3] ?? 0) &&
    (a[i + 1] ?? 0) <= (b[j + 4] ?? 0) &&
    (b[j + 1] ?? 0) <= (a[i + 4] ?? 0) &&
    (a[i + 2] ?? 0) <= (b[j + 5] ?? 0) &&
    (b[j + 2] ?? 0) <= (a[i + 5] ?? 0)
  );
}

function inMortonOrder(mesh: Mesh, triangles: Uint32Array): Uint32Array {
  const { corners, index } = mesh;
  const box = boxAround(corners);
  if (!box) return triangles.slice();
  const sides = [0, 1, 2].map((axis) => (box.most[axis] ?? 0) - (box.least[axis] ?? 0));
  const keys = triangles.map((triangle) => {
    let key = 0;
    for (let axis = 0; axis < 3; axis += 1) {
      let sum = 0;
      for (let corner = 0; corner < 3; corner += 1) sum += corners[3 * (index[3 * triangle + corner] ?? 0) + axis] ?? 0;
      const share = (sum / 3 - (box.least[axis] ?? 0)) / (sides[axis] || 1);
      key |= spaced(Math.min(CELLS - 1, Math.max(0, Math.floor(share * CELLS)))) << axis;
    }
    return key;
  });
  return sortedBy(triangles, keys);
}

/** Ten bits with two free bits between each. */
function spaced(bits: number): number {
  let wide = bits;
  wide = (wide | (wide << 16)) & 0x030000ff;
  wide = (wide | (wide << 8)) & 0x0300f00f;
  wide = (wide | (wide << 4)) & 0x030c30c3;
  return (wide | (wide << 2)) & 0x09249249;
}

/** Sorts numbers by their keys of 30 bits: a radix sort, ten bits at a time, the lowest first. */
function sortedBy(numbers: Uint32Array, keys: Uint32Array): Uint32Array {
  let [order, ordered] = [Uint32Array.from(numbers, (_, place) => place), new Uint32Array(numbers.length)];
  for (let shift = 0; shift < 3 * AXIS_BITS; shift += AXIS_BITS) {
    const starts = new Uint32Array(CELLS + 1);
    const digit = (place: number) => ((keys[place] ?? 0) >>> shift) & (CELLS - 1);
    for (const place of order) starts[digit(place) + 1] = (starts[digit(place) + 1] ?? 0) + 1;
    for (let cell = 0; cell < CELLS; cell += 1) starts[cell + 1] = (starts[cell + 1] ?? 0) + (starts[cell] ?? 0);
    for (const place of order) {
      const slot = starts[digit(place)] ?? 0;
      ordered[slot] = place;
      starts[digit(place)] = slot + 1;
    }
    [order, ordered] = [ordered, order];
  }
  for (let place = 0; place < order.length; place += 1) ordered[place] = numbers[order[place] ?? 0] ?? 0;
  return ordered;
}
