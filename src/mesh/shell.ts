import type { Box, Point } from "./box";
import { endOf, type Mesh } from "./mesh";
import type { EdgeFault, Surfaces } from "./surface";

/** One connected surface: the outside of a solid, the inside of a hollow one, or a piece that does not close. */
export interface Shell {
  readonly triangles: number;
  readonly box: Box;
  /** Signed: below zero where the triangles look inwards. Without meaning where the shell does not close. */
  readonly volume: number;
  /** How many edges do not close, by what is wrong, each with the middle of the first. */
  readonly faults: ReadonlyMap<EdgeFault, EdgeFaults>;
}

export interface EdgeFaults {
  readonly count: number;
  readonly place: Point;
}

/**
 * The shells of a mesh. Volumes are summed about the middle of each shell's own box and with compensation, so that neither
 * a shell's distance from the origin nor its number of triangles costs digits.
 */
export function shellsOf(mesh: Mesh, surfaces: Surfaces): readonly Shell[] {
  const boxes = boxesOf(mesh, surfaces);
  const volumes = volumesOf(mesh, surfaces, boxes);
  const triangles = new Uint32Array(surfaces.count);
  for (const surface of surfaces.surfaceOf) if (surface >= 0) triangles[surface] = (triangles[surface] ?? 0) + 1;
  const faults = faultsOf(mesh, surfaces);
  return Array.from({ length: surfaces.count }, (_, shell) => ({
    triangles: triangles[shell] ?? 0,
    box: boxAt(boxes, shell),
    volume: volumes[shell] ?? 0,
    faults: faults.get(shell) ?? new Map(),
  }));
}

function boxAt(boxes: Float64Array, shell: number): Box {
  const at = (side: number) => boxes[6 * shell + side] ?? 0;
  return { least: [at(0), at(1), at(2)], most: [at(3), at(4), at(5)] };
}

/** Six numbers a shell: least x, y, z, most x, y, z. */
function boxesOf({ corners, index }: Mesh, { surfaceOf, count }: Surfaces): Float64Array {
  const boxes = new Float64Array(6 * count);
  for (let side = 0; side < boxes.length; side += 1) boxes[side] = side % 6 < 3 ? Infinity : -Infinity;
  for (let place = 0; place < index.length; place += 1) {
    const surface = surfaceOf[Math.floor(place / 3)] ?? -1;
    if (surface < 0) continue;
    const from = 3 * (index[place] ?? 0);
    for (let axis = 0; axis < 3; axis += 1) {
      const value = corners[from + axis] ?? 0;
      const least = 6 * surface + axis;
      if (value < (boxes[least] ?? 0)) boxes[least] = value;
      if (value > (boxes[least + 3] ?? 0)) boxes[least + 3] = value;
    }
  }
  return boxes;
}

/** Sums as CompensatedSum does, for all shells at once. */
function volumesOf({ corners, index }: Mesh, { surfaceOf, count }: Surfaces, boxes: Float64Array): Float64Array {
  const sums = new Float64Array(count);
  const lost = new Float64Array(count);
  for (let triangle = 0; triangle < surfaceOf.length; triangle += 1) {
    const shell = surfaceOf[triangle] ?? -1;
    if (shell < 0) continue;
    const midX = ((boxes[6 * shell] ?? 0) + (boxes[6 * shell + 3] ?? 0)) / 2;
    const midY = ((boxes[6 * shell + 1] ?? 0) + (boxes[6 * shell + 4] ?? 0)) / 2;
    const midZ = ((boxes[6 * shell + 2] ?? 0) + (boxes[6 * shell + 5] ?? 0)) / 2;
    const a = 3 * (index[3 * triangle] ?? 0);
    const b = 3 * (index[3 * triangle + 1] ?? 0);
    const c = 3 * (index[3 * triangle + 2] ?? 0);
    const ax = (corners[a] ?? 0) - midX;
    const ay = (corners[a + 1] ?? 0) - midY;
    const az = (corners[a + 2] ?? 0) - midZ;
    const bx = (corners[b] ?? 0) - midX;
    const by = (corners[b + 1] ?? 0) - midY;
    const bz = (corners[b + 2] ?? 0) - midZ;
    const cx = (corners[c] ?? 0) - midX;
    const cy = (corners[c + 1] ?? 0) - midY;
    const cz = (corners[c + 2] ?? 0) - midZ;
    const six = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    const sum = sums[shell] ?? 0;
    const next = sum + six;
    lost[shell] = (lost[shell] ?? 0) + (Math.abs(sum) >= Math.abs(six) ? sum - next + six : six - next + sum);
    sums[shell] = next;
  }
  return sums.map((sum, shell) => (sum + (lost[shell] ?? 0)) / 6);
}

function faultsOf({ corners, index }: Mesh, { surfaceOf, faulty }: Surfaces): Map<number, Map<EdgeFault, EdgeFaults>> {
  const faults = new Map<number, Map<EdgeFault, EdgeFaults>>();
  const middle = (place: number): Point => {
    const from = 3 * (index[place] ?? 0);
    const to = 3 * (index[endOf(place)] ?? 0);
    const of = (axis: number) => ((corners[from + axis] ?? 0) + (corners[to + axis] ?? 0)) / 2;
    return [of(0), of(1), of(2)];
  };
  for (const { fault, at } of faulty) {
    const shell = surfaceOf[Math.floor(at / 3)] ?? -1;
    const own = faults.get(shell) ?? new Map<EdgeFault, EdgeFaults>();
    const before = own.get(fault);
    own.set(fault, { count: (before?.count ?? 0) + 1, place: before?.place ?? middle(at) });
    faults.set(shell, own);
  }
  return faults;
}
