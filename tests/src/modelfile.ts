import { BoxGeometry, type BufferGeometry, Matrix4, Mesh, Scene } from "three";
import { STLExporter } from "three/examples/jsm/exporters/STLExporter.js";
import type { Mesh as TriangleMesh } from "../../src/mesh/mesh";

/** three's own exporter as the outside source of STL files: binary. */
export function binaryStl(...geometries: readonly BufferGeometry[]): Uint8Array {
  const { buffer, byteOffset, byteLength } = new STLExporter().parse(sceneOf(geometries), { binary: true });
  return new Uint8Array(buffer, byteOffset, byteLength);
}

/** The same as text. */
export function textStl(...geometries: readonly BufferGeometry[]): Uint8Array {
  return new TextEncoder().encode(new STLExporter().parse(sceneOf(geometries)));
}

function sceneOf(geometries: readonly BufferGeometry[]): Scene {
  const scene = new Scene();
  for (const geometry of geometries) scene.add(new Mesh(geometry));
  return scene;
}

/** A box with its middle at a place. */
export function boxAt(
  sides: readonly [number, number, number],
  place: readonly [number, number, number],
): BufferGeometry {
  return new BoxGeometry(...sides).translate(...place);
}

/** The same surface looking the other way: two corners of each triangle change places. */
export function turned(geometry: BufferGeometry): BufferGeometry {
  const soup = geometry.index ? geometry.toNonIndexed() : geometry.clone();
  const position = soup.getAttribute("position");
  for (let corner = 0; corner < position.count; corner += 3) {
    const [x, y, z] = [position.getX(corner), position.getY(corner), position.getZ(corner)];
    position.setXYZ(corner, position.getX(corner + 1), position.getY(corner + 1), position.getZ(corner + 1));
    position.setXYZ(corner + 1, x, y, z);
  }
  return soup;
}

/** A matrix that turns about a slanted axis and then moves. */
export function placing(angles: readonly [number, number, number], move: readonly [number, number, number]): Matrix4 {
  return new Matrix4()
    .makeTranslation(...move)
    .multiply(new Matrix4().makeRotationX(angles[0]))
    .multiply(new Matrix4().makeRotationY(angles[1]))
    .multiply(new Matrix4().makeRotationZ(angles[2]));
}

/** Text of an STL by its facets, each three corners, each three coordinates as written. */
export function stlText(facets: readonly (readonly string[])[], name = "link"): string {
  const body = facets.map(
    (corners) =>
      `facet normal 0 0 0\n outer loop\n${corners.map((corner) => `  vertex ${corner}\n`).join("")} endloop\nendfacet\n`,
  );
  return `solid ${name}\n${body.join("")}endsolid ${name}\n`;
}

export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** A corner of a box 1 x 1 x 1 cut off through three of its corners: right-angled, of volume 1/6. */
export const TETRAHEDRON: readonly (readonly string[])[] = [
  ["0 0 0", "0 1 0", "1 0 0"],
  ["0 0 0", "1 0 0", "0 0 1"],
  ["0 0 0", "0 0 1", "0 1 0"],
  ["1 0 0", "0 1 0", "0 0 1"],
];

/** Nine coordinates a triangle. */
export function soupOf({ corners, index }: TriangleMesh): number[] {
  return [...index].flatMap((corner) => [...corners.subarray(3 * corner, 3 * corner + 3)]);
}

/** Every number of single precision is a whole multiple of 2^-149 (IEEE 754). */
const FINEST = 149;

/** The volume of the polyhedron that a binary file's numbers describe, from sums in whole numbers: exact to 16 digits after the point. */
export function exactVolume(stl: Uint8Array): number {
  const view = new DataView(stl.buffer, stl.byteOffset, stl.byteLength);
  const count = view.getUint32(80, true);
  let six = 0n;
  for (let triangle = 0; triangle < count; triangle += 1) {
    const at = (place: number) => BigInt(view.getFloat32(84 + 50 * triangle + 12 + 4 * place, true) * 2 ** FINEST);
    const [ax, ay, az] = [at(0), at(1), at(2)];
    const [bx, by, bz] = [at(3), at(4), at(5)];
    const [cx, cy, cz] = [at(6), at(7), at(8)];
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return Number((six * 10n ** 16n) / 2n ** BigInt(3 * FINEST)) / 6e16;
}
