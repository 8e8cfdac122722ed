import { boxAround, diagonalOf } from "./box";
import type { Mesh } from "./mesh";

/**
 * How near two corners may be to count as one, in the file's unit: a millionth of the model, and no less than what single precision
 * can distinguish that far from the origin.
 */
export function toleranceOf({ corners }: Mesh): number {
  const box = boxAround(corners);
  if (!box) return 0;
  const farthest = Math.max(...box.most.map(Math.abs), ...box.least.map(Math.abs));
  return 2 ** -20 * diagonalOf(box) + 2 ** -22 * farthest;
}

/**
 * Joins those of the given corners that are within the tolerance of each other, directly or through others. Changes the mesh
 * itself, since a copy of a large index would cost as much memory again. Gives how many corners were removed.
 */
export function joinNear({ corners, index }: Mesh, which: ReadonlySet<number>, tolerance: number): number {
  const grid = new NearGrid(corners, tolerance, which.size);
  const goesTo = new Map<number, number>();
  const end = (corner: number): number => {
    let at = corner;
    for (let next = goesTo.get(at); next !== undefined; next = goesTo.get(at)) at = next;
    return at;
  };
  for (const corner of which) {
    grid.eachNear(corner, (near) => {
      const from = end(corner);
      const to = end(near);
      if (from !== to) goesTo.set(Math.max(from, to), Math.min(from, to));
    });
    grid.add(corner);
  }
  if (goesTo.size === 0) return 0;
  for (let place = 0; place < index.length; place += 1) index[place] = end(index[place] ?? 0);
  return goesTo.size;
}

/** Corners by the cell of a grid as wide as the tolerance: near ones lie in the same cell or beside it. */
class NearGrid {
  private readonly heads: Int32Array;
  private readonly entries: number[] = [];
  private readonly nexts: number[] = [];

  constructor(
    private readonly corners: Float32Array | Float64Array,
    private readonly tolerance: number,
    expected: number,
  ) {
    this.heads = new Int32Array(2 ** Math.ceil(Math.log2(4 * expected + 4))).fill(-1);
  }

  add(corner: number): void {
    const slot = this.slot(this.cell(corner, 0), this.cell(corner, 1), this.cell(corner, 2));
    this.nexts.push(this.heads[slot] ?? -1);
    this.heads[slot] = this.entries.push(corner) - 1;
  }

  eachNear(corner: number, visit: (near: number) => void): void {
    const x = this.cell(corner, 0);
    const y = this.cell(corner, 1);
    const z = this.cell(corner, 2);
    for (let dx = -1; dx <= 1; dx += 1) {
      for (let dy = -1; dy <= 1; dy += 1) {
        for (let dz = -1; dz <= 1; dz += 1) {
          let at = this.heads[this.slot(x + dx, y + dy, z + dz)] ?? -1;
          for (; at !== -1; at = this.nexts[at] ?? -1) {
            const other = this.entries[at] ?? 0;
            if (this.isNear(3 * corner, 3 * other)) visit(other);
          }
        }
      }
    }
  }

  private cell(corner: number, axis: number): number {
    return Math.floor((this.corners[3 * corner + axis] ?? 0) / this.tolerance);
  }

  private isNear(a: number, b: number): boolean {
    const { corners, tolerance } = this;
    const x = (corners[a] ?? 0) - (corners[b] ?? 0);
    const y = (corners[a + 1] ?? 0) - (corners[b + 1] ?? 0);
    const z = (corners[a + 2] ?? 0) - (corners[b + 2] ?? 0);
    return x * x + y * y + z * z <= tolerance * tolerance;
  }

  /** Math.imul takes the lowest 32 bits of cells that number past them. Two cells in one slot cost time only. */
  private slot(x: number, y: number, z: number): number {
    const sum = Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca6b) ^ Math.imul(z, 0xc2b2ae35);
    return (sum ^ (sum >>> 15)) & (this.heads.length - 1);
  }
}
