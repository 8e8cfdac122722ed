import {
  AmbientLight,
  Box3,
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshStandardMaterial,
  Scene,
  Vector3,
} from "three";
import type { Shape } from "./shape";

export type Look = "metal" | "sprue" | "faulty";

const COLOURS: Record<Look, string> = { metal: "--modelMetal", sprue: "--modelSprue", faulty: "--danger" };

/** Materials in the pane's own colours. */
export function looksOf(place: HTMLElement): Record<Look, MeshStandardMaterial> {
  const style = getComputedStyle(place);
  const look = (name: Look) =>
    new MeshStandardMaterial({
      color: new Color(style.getPropertyValue(COLOURS[name]).trim() || "gray"),
      metalness: name === "metal" ? 0.35 : 0,
      roughness: name === "metal" ? 0.42 : 0.9,
      flatShading: true,
      transparent: name === "sprue",
      opacity: name === "sprue" ? 0.55 : 1,
    });
  return { metal: look("metal"), sprue: look("sprue"), faulty: look("faulty") };
}

/** The model with lights, one part for each solid, and the edges at which its lengths are written. */
export function sceneOf(shape: Shape, radius: number, looks: Record<Look, MeshStandardMaterial>) {
  const scene = new Scene();
  const corners = new BufferAttribute(shape.corners, 3);
  let start = 0;
  const parts = shape.counts.map((count) => {
    const geometry = new BufferGeometry();
    geometry.setAttribute("position", corners);
    geometry.setIndex(new BufferAttribute(shape.index.subarray(start, start + 3 * count), 1));
    start += 3 * count;
    const part = new Mesh(geometry, looks.metal);
    // Computing the part's own sphere would need a pass over all corners; everything is in view anyway.
    part.frustumCulled = false;
    scene.add(part);
    return part;
  });
  scene.add(new AmbientLight(0xffffff, 1.1));
  for (const [at, strength] of [
    [new Vector3(2, -3, 4), 2.2],
    [new Vector3(-4, 2, 1), 0.9],
    [new Vector3(0, 3, -3), 0.5],
  ] as const) {
    const light = new DirectionalLight(0xffffff, strength);
    light.position.copy(at).multiplyScalar(radius);
    scene.add(light);
  }
  const frame = new LineSegments(frameOf(shape.size), new LineBasicMaterial({ color: looks.sprue.color }));
  scene.add(frame);
  return { scene, frame, parts };
}

/** The three edges of the box at which its lengths are written. */
function frameOf(size: Shape["size"]): BufferGeometry {
  const box = new Box3(new Vector3(...size).multiplyScalar(-0.5), new Vector3(...size).multiplyScalar(0.5));
  const { min, max } = box;
  const points = [
    [min.x, min.y, min.z],
    [max.x, min.y, min.z],
    [max.x, min.y, min.z],
    [max.x, max.y, min.z],
    [max.x, max.y, min.z],
    [max.x, max.y, max.z],
  ];
  return new BufferGeometry().setAttribute("position", new BufferAttribute(new Float32Array(points.flat()), 3));
}

/** Where the length along an axis is written. */
export function middleOfEdge([x, y, z]: Shape["size"], axis: number): Vector3 {
  if (axis === 0) return new Vector3(0, -y / 2, -z / 2);
  return axis === 1 ? new Vector3(x / 2, 0, -z / 2) : new Vector3(x / 2, y / 2, 0);
}
