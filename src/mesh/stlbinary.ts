import { CostingError } from "../exact/errors";
import { FARTHEST, refuseCoordinate } from "./coordinate";
import type { Mesh } from "./mesh";
import type { Progress } from "./meshprogress";
import { Welding } from "./weld";

/** In bytes: 80 of free content, then the count of triangles. */
export const BINARY_HEADER = 84;
/** In bytes: a normal, three corners and two spare bytes. */
export const BINARY_TRIANGLE = 50;
/** Where a triangle's corners begin, after its normal. */
export const BINARY_CORNERS = 12;

const FIELD = "STL file";
/** Triangles between two reports of progress. */
const STRIDE = 65536;

/** How many triangles the header says; undefined where the file is too short to say. */
export function countedTriangles(bytes: Uint8Array): number | undefined {
  return bytes.length < BINARY_HEADER ? undefined : viewOf(bytes).getUint32(BINARY_HEADER - 4, true);
}

export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/**
 * How many triangles there are to read: as many as are counted, and they fill the file.
 * Zeros and line ends after the last triangle are accepted: some programs add them.
 * Errors: blank, wrongShape.
 */
export function soundCount(bytes: Uint8Array): number {
  const counted = countedTriangles(bytes) ?? 0;
  const room = bytes.length - BINARY_HEADER;
  const held = Math.floor(room / BINARY_TRIANGLE);
  const rest = room - counted * BINARY_TRIANGLE;
  const behind = bytes.subarray(bytes.length - Math.max(0, rest));
  if (rest < 0) {
    throw new CostingError(
      "wrongShape",
      FIELD,
      `found ${shownCount(held)} of the ${shownCount(counted)} triangles that its header counts, so it is cut off or no STL; export or copy it again`,
    );
  }
  if (!isPadding(behind)) {
    const what =
      held > counted ? `room for ${shownCount(held)} triangles` : `${shownCount(rest)} bytes after the last triangle`;
    throw new CostingError(
      "wrongShape",
      FIELD,
      `found ${what} where its header counts ${shownCount(counted)}; export it again`,
    );
  }
  if (counted === 0) throw new CostingError("blank", FIELD, "found no triangles; export the model again");
  return counted;
}

/** The mesh of a binary file. Errors: blank, wrongShape, notANumber, outOfRange. */
export function readBinary(bytes: Uint8Array, progress: Progress): Mesh {
  const count = soundCount(bytes);
  const view = viewOf(bytes);
  const welding = new Welding("single", count);
  for (let triangle = 0; triangle < count; triangle += 1) {
    const start = BINARY_HEADER + triangle * BINARY_TRIANGLE + BINARY_CORNERS;
    for (let at = start; at < start + 36; at += 12) {
      const x = view.getFloat32(at, true);
      const y = view.getFloat32(at + 4, true);
      const z = view.getFloat32(at + 8, true);
      // Also for NaN, which Math.max keeps.
      if (!(Math.max(Math.abs(x), Math.abs(y), Math.abs(z)) <= FARTHEST)) {
        const wrong = [x, y, z].find((value) => !(Math.abs(value) <= FARTHEST)) ?? Number.NaN;
        refuseCoordinate(wrong, FIELD, `corner ${1 + (at - start) / 12} of triangle ${shownCount(triangle + 1)}`);
      }
      welding.add(x, y, z);
    }
    if (triangle % STRIDE === 0) progress(triangle / count);
  }
  return welding.mesh();
}

function isPadding(bytes: Uint8Array): boolean {
  return bytes.every((byte) => byte === 0 || byte === 10 || byte === 13);
}

function shownCount(count: number): string {
  return count.toLocaleString("en-US");
}
