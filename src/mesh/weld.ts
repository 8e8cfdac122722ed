import type { Mesh } from "./mesh";

/**
 * Gathers triangles corner by corner into a mesh, in which corners equal in every coordinate are one. Corners are numbered in
 * the order in which they first come. An open-addressing hash table over their coordinates' bits finds corners that are there
 * already; it is doubled when half full.
 */
export class Welding {
  private corners: Float32Array<ArrayBuffer> | Float64Array<ArrayBuffer>;
  private index: Uint32Array<ArrayBuffer>;
  private slots = new Int32Array(4096).fill(-1);
  private size = 0;
  private length = 0;
  /** One corner, and the same bytes as whole numbers of 32 bits. */
  private readonly one: Float32Array<ArrayBuffer> | Float64Array<ArrayBuffer>;
  private readonly bits: Int32Array<ArrayBuffer>;

  /** @param triangles how many are expected; more may come */
  constructor(
    private readonly precision: "single" | "double",
    triangles: number,
  ) {
    this.index = new Uint32Array(3 * triangles);
    this.corners = this.numbers(3 * 1024);
    this.one = this.numbers(3);
    this.bits = new Int32Array(this.one.buffer);
  }

  /** Adds the next corner of a triangle. */
  add(x: number, y: number, z: number): void {
    if (this.length === this.index.length) this.index = copied(this.index, new Uint32Array(2 * this.length));
    this.index[this.length] = this.numberOf(x, y, z);
    this.length += 1;
  }

  mesh(): Mesh {
    const { index, length } = this;
    const corners = this.numbers(3 * this.size);
    corners.set(this.corners.subarray(0, 3 * this.size));
    return { corners, index: length === index.length ? index : index.slice(0, length) };
  }

  private numberOf(x: number, y: number, z: number): number {
    const { one, slots, corners } = this;
    // Adding zero makes minus zero zero, so that equal corners have equal bits.
    one[0] = x + 0;
    one[1] = y + 0;
    one[2] = z + 0;
    const mask = slots.length - 1;
    let slot = this.hash() & mask;
    for (let number = slots[slot] ?? -1; number !== -1; number = slots[slot] ?? -1) {
      const at = 3 * number;
      if (corners[at] === one[0] && corners[at + 1] === one[1] && corners[at + 2] === one[2]) return number;
      slot = (slot + 1) & mask;
    }
    const number = this.size;
    slots[slot] = number;
    if (3 * number === corners.length) this.corners = copied(corners, this.numbers(2 * corners.length));
    this.corners.set(one, 3 * number);
    this.size += 1;
    if (2 * this.size > slots.length) this.spread();
    return number;
  }

  private hash(): number {
    const { bits } = this;
    let sum = 0;
    for (let word = 0; word < bits.length; word += 1) {
      sum = Math.imul(sum ^ (bits[word] ?? 0), 0x9e3779b1);
      sum ^= sum >>> 15;
    }
    sum = Math.imul(sum, 0x85ebca6b);
    return sum ^ (sum >>> 13);
  }

  private spread(): void {
    const { one, corners } = this;
    const slots = new Int32Array(2 * this.slots.length).fill(-1);
    const mask = slots.length - 1;
    for (let number = 0; number < this.size; number += 1) {
      for (let axis = 0; axis < 3; axis += 1) one[axis] = corners[3 * number + axis] ?? 0;
      let slot = this.hash() & mask;
      while (slots[slot] !== -1) slot = (slot + 1) & mask;
      slots[slot] = number;
    }
    this.slots = slots;
  }

  private numbers(length: number): Float32Array<ArrayBuffer> | Float64Array<ArrayBuffer> {
    return this.precision === "single" ? new Float32Array(length) : new Float64Array(length);
  }
}

function copied<Numbers extends { set(from: Numbers): void }>(from: Numbers, to: Numbers): Numbers {
  to.set(from);
  return to;
}
