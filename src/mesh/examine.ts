import { CostingError } from "../exact/errors";
import { type Box, boxAround, diagonalOf, type Point } from "./box";
import { BoxTree } from "./boxtree";
import { joinNear, toleranceOf } from "./joincorners";
import { endOf, type Mesh } from "./mesh";
import type { Progress } from "./meshprogress";
import { type Nest, nestsOf } from "./nesting";
import { type Overlap, overlapsOf } from "./overlap";
import { Rays } from "./ray";
import { type Shell, shellsOf } from "./shell";
import { STL_FIELD } from "./stl";
import { type EdgeFault, EdgesByCorner, type Surfaces, surfacesOf } from "./surface";

/**
 * What may be wrong with a solid. Edges: as EdgeFault. `insideOut`: closed, but its triangles look inwards; its volume is
 * right. `flat`: closed, but without a volume. `throughItself`: parts of it count twice.
 */
export type SolidFaultKind = EdgeFault | "insideOut" | "flat" | "throughItself";

export interface SolidFault {
  readonly kind: SolidFaultKind;
  /** Edges for faults of edges; otherwise 1. */
  readonly count: number;
  /** Where the first is. */
  readonly place: Point;
}

/** One piece of a model, in the model's unit. */
export interface Solid {
  readonly triangles: number;
  readonly box: Box;
  /** Volume of its material, hollows taken off; undefined where it does not close or has no volume. */
  readonly volume: number | undefined;
  /** Closed hollows within it. */
  readonly hollows: number;
  readonly faults: readonly SolidFault[];
}

/** A model file, examined. Everything is in the file's own unit. */
export interface Model {
  readonly mesh: Mesh;
  readonly triangles: number;
  readonly box: Box;
  /** The largest first; those without a volume last. */
  readonly solids: readonly Solid[];
  /** Which solid each triangle belongs to, by its place in `solids`; -1 for triangles folded to nothing. */
  readonly solidOf: Int32Array;
  /** Solids that share room. Their volumes count it twice. */
  readonly overlaps: readonly Overlap[];
  /** False where the model was too entangled to be looked at completely. */
  readonly overlapsComplete: boolean;
  /** Triangles folded to a line or a point, which were left out. */
  readonly folded: number;
  /** Corners that met only within the tolerance and were taken as one. */
  readonly joined: number;
  readonly tolerance: number;
}

/** Below this share of its box's diagonal cubed a closed shell holds nothing but rounding. */
const FLAT = 1e-12;
/** This many triangles of each shell are kept for tests, spread over it. */
const KEPT = 64;

/**
 * Examines a model: surfaces closed or not, hollows within solids, overlaps, volumes.
 * Where edges do not close, their corners join within the tolerance, in the mesh itself.
 * Errors: blank where no triangle has three corners.
 */
export function examineModel(mesh: Mesh, progress: Progress = () => {}): Model {
  const { surfaces, joined } = closedAsFarAsMeant(mesh, stage(progress, 0, 2));
  const tolerance = toleranceOf(mesh);
  const box = boxAround(mesh.corners);
  if (!box || surfaces.count === 0) {
    throw new CostingError(
      "blank",
      STL_FIELD,
      "found only triangles folded to lines or points; export the model again",
    );
  }
  const shells = shellsOf(mesh, surfaces);
  const isClosed = shells.map((shell) => shell.faults.size === 0 && !isFlat(shell));
  const closed = shells.map((_, shell) => shell).filter((shell) => isClosed[shell]);
  const tree = new BoxTree(mesh, trianglesOf(surfaces, isClosed));
  const rays = new Rays(mesh, tree, surfaces.surfaceOf);
  const some = someTriangles(surfaces, shells);
  const nests = nestsOf(closed, shells, some, mesh, rays);
  progress(stageAt(3));
  const { found, complete } = overlapsOf(
    nests,
    shells,
    some,
    mesh,
    tree,
    rays,
    surfaces.surfaceOf,
    tolerance,
    stage(progress, 3, STAGES),
  );
  const through = new Map(found.filter(({ between: [a, b] }) => a === b).map(({ between: [a], place }) => [a, place]));
  const parts: Part[] = [
    ...nests.map((nest, number) => ({
      shells: [nest.outer, ...nest.voids],
      solid: closedSolid(nest, shells, through.get(number)),
      nest: number,
    })),
    ...shells.flatMap((shell, number) =>
      isClosed[number] ? [] : [{ shells: [number], solid: openSolid(shell), nest: -1 }],
    ),
  ];
  parts.sort((a, b) => (b.solid.volume ?? -1) - (a.solid.volume ?? -1) || b.solid.triangles - a.solid.triangles);
  const places = new Map(parts.flatMap(({ nest }, place) => (nest < 0 ? [] : [[nest, place] as const])));
  const renumbered = (nest: number) => places.get(nest) ?? -1;
  return {
    mesh,
    triangles: surfaces.surfaceOf.length,
    box,
    solids: parts.map(({ solid }) => solid),
    solidOf: solidsOfTriangles(surfaces, parts),
    overlaps: found
      .filter(({ between: [a, b] }) => a !== b)
      .map(({ between: [a, b], place }) => ({ between: inOrder(renumbered(a), renumbered(b)), place })),
    overlapsComplete: complete,
    folded: surfaces.surfaceOf.reduce((sum, surface) => (surface < 0 ? sum + 1 : sum), 0),
    joined,
    tolerance,
  };
}

function inOrder(a: number, b: number): readonly [number, number] {
  return a < b ? [a, b] : [b, a];
}

interface Part {
  readonly shells: readonly number[];
  readonly solid: Solid;
  readonly nest: number;
}

/** The steps of the work, of about equal length for a large model. */
const STAGES = 8;

function stageAt(step: number): number {
  return step / STAGES;
}

function stage(progress: Progress, from: number, to: number): Progress {
  return (share) => progress(stageAt(from + share * (to - from)));
}

function closedAsFarAsMeant(mesh: Mesh, progress: Progress): { surfaces: Surfaces; joined: number } {
  const edges = new EdgesByCorner(mesh);
  const surfaces = surfacesOf(mesh, progress, edges);
  if (surfaces.faulty.length === 0) return { surfaces, joined: 0 };
  const { index } = mesh;
  const loose = new Set(surfaces.faulty.flatMap(({ at }) => [index[at] ?? 0, index[endOf(at)] ?? 0]));
  const joined = joinNear(mesh, loose, toleranceOf(mesh));
  return { surfaces: joined === 0 ? surfaces : surfacesOf(mesh, () => {}, edges), joined };
}

function isFlat(shell: Shell): boolean {
  return Math.abs(shell.volume) <= FLAT * diagonalOf(shell.box) ** 3;
}

function trianglesOf({ surfaceOf }: Surfaces, isWanted: readonly boolean[]): Uint32Array {
  let count = 0;
  for (const surface of surfaceOf) if (isWanted[surface]) count += 1;
  const wanted = new Uint32Array(count);
  let next = 0;
  surfaceOf.forEach((surface, triangle) => {
    if (isWanted[surface]) wanted[next++] = triangle;
  });
  return wanted;
}

function someTriangles({ surfaceOf }: Surfaces, shells: readonly Shell[]): number[][] {
  const some: number[][] = shells.map(() => []);
  const seen = new Uint32Array(shells.length);
  surfaceOf.forEach((surface, triangle) => {
    const shell = shells[surface];
    if (!shell) return;
    const number = seen[surface] ?? 0;
    seen[surface] = number + 1;
    if (number % Math.ceil(shell.triangles / KEPT) === 0) some[surface]?.push(triangle);
  });
  return some;
}

function closedSolid({ outer, voids }: Nest, shells: readonly Shell[], through: Point | undefined): Solid {
  const of = (shell: number) => shells[shell];
  const own = of(outer);
  if (!own) throw new Error("a nest without an outer shell");
  const hollow = voids.reduce((sum, shell) => sum + Math.abs(of(shell)?.volume ?? 0), 0);
  const faults: SolidFault[] = [];
  if (own.volume < 0) faults.push({ kind: "insideOut", count: 1, place: own.box.least });
  if (through) faults.push({ kind: "throughItself", count: 1, place: through });
  return {
    triangles: own.triangles + voids.reduce((sum, shell) => sum + (of(shell)?.triangles ?? 0), 0),
    box: own.box,
    volume: Math.abs(own.volume) - hollow,
    hollows: voids.length,
    faults,
  };
}

function openSolid(shell: Shell): Solid {
  const faults: readonly SolidFault[] =
    shell.faults.size === 0
      ? [{ kind: "flat", count: 1, place: shell.box.least }]
      : [...shell.faults].map(([kind, { count, place }]) => ({ kind, count, place }));
  return { triangles: shell.triangles, box: shell.box, volume: undefined, hollows: 0, faults };
}

function solidsOfTriangles({ surfaceOf, count }: Surfaces, parts: readonly Part[]): Int32Array {
  const solidOfShell = new Int32Array(count).fill(-1);
  parts.forEach(({ shells }, place) => {
    for (const shell of shells) solidOfShell[shell] = place;
  });
  return surfaceOf.map((surface) => solidOfShell[surface] ?? -1);
}
