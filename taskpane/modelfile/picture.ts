import { OrthographicCamera, Spherical, Vector3, WebGLRenderer } from "three";
import { element, setText } from "../controls/element";
import { type Look, looksOf, middleOfEdge, sceneOf } from "./scene";
import type { Shape } from "./shape";

export interface ModelPicture {
  /** @param sides lengths to write at the box, along x, y and z @param description the picture in words */
  show(ticked: ReadonlySet<number>, sides: readonly [string, string, string] | undefined, description: string): void;
  /** Frees what drawing uses; a browser can draw only a few such pictures at a time. */
  close(): void;
}

const STEP = Math.PI / 12;
/** By how much an arrow key turns the model: across and down. */
const TURNS: ReadonlyMap<string, readonly [number, number]> = new Map([
  ["ArrowLeft", [-STEP, 0]],
  ["ArrowRight", [STEP, 0]],
  ["ArrowUp", [0, -STEP]],
  ["ArrowDown", [0, STEP]],
]);
const NEARER: ReadonlyMap<string, number> = new Map([
  ["+", 1.2],
  ["=", 1.2],
  ["-", 1 / 1.2],
]);
const START = new Spherical(1, Math.PI / 3, Math.PI / 5);
/** In radians from the pole: near enough for a view from above, far enough that up and down stay defined. */
const POLE = 0.01;
const GLIDE = 160;

/**
 * Draws a model that can be turned with mouse, finger or arrow keys; undefined where the browser cannot draw in three
 * dimensions. It is drawn only when something changes.
 */
export function drawModel(place: HTMLElement, shape: Shape, isFaulty: readonly boolean[]): ModelPicture | undefined {
  const renderer = rendererOrNone();
  if (!renderer) return undefined;
  const canvas = renderer.domElement;
  canvas.tabIndex = 0;
  canvas.setAttribute("role", "img");
  const tags = [0, 1, 2].map(() => element("span", { class: "dimension", "aria-hidden": "true" }));
  place.replaceChildren(canvas, ...tags);

  const [x, y, z] = shape.size;
  const radius = Math.hypot(x, y, z) / 2 || 1;
  const looks = looksOf(place);
  const { scene, frame, parts } = sceneOf(shape, radius, looks);
  const camera = new OrthographicCamera();
  let view = START.clone();
  let zoom = 1;
  let gliding = 0;

  const render = () => {
    const width = place.clientWidth;
    const height = place.clientHeight;
    if (width === 0 || height === 0) return;
    renderer.setSize(width, height, false);
    renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
    const reach = (1.05 * radius) / zoom;
    const wide = width > height ? width / height : 1;
    const tall = width > height ? 1 : height / width;
    camera.left = -reach * wide;
    camera.right = reach * wide;
    camera.top = reach * tall;
    camera.bottom = -reach * tall;
    camera.near = 0;
    camera.far = 6 * radius;
    camera.up.set(0, 0, 1);
    camera.position.copy(upright(view).multiplyScalar(3 * radius));
    camera.lookAt(0, 0, 0);
    camera.updateProjectionMatrix();
    renderer.render(scene, camera);
    for (const [axis, tag] of tags.entries()) placeTag(tag, middleOfEdge(shape.size, axis), camera, width, height);
  };
  const turn = (across: number, down: number) => {
    view.theta -= across;
    view.phi = Math.min(Math.PI - POLE, Math.max(POLE, view.phi - down));
    render();
  };
  const glide = (across: number, down: number) => {
    cancelAnimationFrame(gliding);
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) return turn(across, down);
    const begun = performance.now();
    let done = 0;
    const step = (now: number) => {
      const share = Math.min(1, (now - begun) / GLIDE);
      turn(across * (share - done), down * (share - done));
      done = share;
      if (share < 1) gliding = requestAnimationFrame(step);
    };
    gliding = requestAnimationFrame(step);
  };
  const nearer = (factor: number) => {
    zoom = Math.min(8, Math.max(0.5, zoom * factor));
    render();
  };
  const startAgain = () => {
    view = START.clone();
    zoom = 1;
    render();
  };
  canvas.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const turning = TURNS.get(event.key);
    const coming = NEARER.get(event.key);
    if (turning) glide(...turning);
    else if (coming) nearer(coming);
    else if (event.key === "Home") startAgain();
    else return;
    event.preventDefault();
  });
  canvas.addEventListener("pointerdown", (event) => {
    canvas.setPointerCapture(event.pointerId);
    canvas.focus({ preventScroll: true });
  });
  canvas.addEventListener("pointermove", (event) => {
    if (!canvas.hasPointerCapture(event.pointerId)) return;
    turn((Math.PI * event.movementX) / place.clientWidth, (Math.PI * event.movementY) / place.clientHeight);
  });
  const watch = new ResizeObserver(render);
  watch.observe(place);

  return {
    show(ticked, sides, description) {
      canvas.setAttribute("aria-label", description);
      for (const [axis, tag] of tags.entries()) setText(tag, sides?.[axis] === undefined ? "" : `${sides[axis]} mm`);
      frame.visible = sides !== undefined;
      parts.forEach((part, solid) => {
        const look: Look = isFaulty[solid] ? "faulty" : ticked.has(solid) ? "metal" : "sprue";
        part.material = looks[look];
      });
      render();
    },
    close() {
      cancelAnimationFrame(gliding);
      watch.disconnect();
      renderer.dispose();
      renderer.forceContextLoss();
      place.replaceChildren();
    },
  };
}

function rendererOrNone(): WebGLRenderer | undefined {
  // Asked for before three.js asks: where it is missing, three.js would write an error to the console.
  const canvas = document.createElement("canvas");
  const context = canvas.getContext("webgl2", { antialias: true, alpha: true });
  return context ? new WebGLRenderer({ canvas, context, antialias: true, alpha: true }) : undefined;
}

function placeTag(tag: HTMLElement, point: Vector3, camera: OrthographicCamera, width: number, height: number): void {
  const seen = point.project(camera);
  const half = tag.offsetWidth / 2;
  const left = Math.min(width - half - 4, Math.max(half + 4, ((seen.x + 1) / 2) * width));
  const top = Math.min(height - 10, Math.max(10, ((1 - seen.y) / 2) * height));
  tag.style.transform = `translate(-50%, -50%) translate(${left}px, ${top}px)`;
}

/** The direction to the eye, with z upwards as modelling programs have it. */
function upright({ phi, theta }: Spherical): Vector3 {
  return new Vector3(Math.sin(phi) * Math.sin(theta), -Math.sin(phi) * Math.cos(theta), Math.cos(phi));
}
