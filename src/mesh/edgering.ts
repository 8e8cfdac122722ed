import type { Point } from "./box";
import { endOf, type Mesh } from "./mesh";
import { cross, dot, minus, unit } from "./vector";

/** Angles nearer than this count as one, so that faces in one plane do not change places by rounding. */
const SAME_ANGLE = 1e-7;
const TURN = 2 * Math.PI;

/**
 * Around an edge that several solids share: which triangles bound the same piece of material. Going round the edge, material
 * begins at one triangle and ends at the next that looks out of it; where one ends and another begins at the same angle,
 * solids lie face to face. Triangles at one angle are taken in the order of the file, so that a solid saved twice stays two.
 * Shape: places of the mesh's index where triangles begin the edge, as many upwards (towards the higher corner) as downwards.
 */
export function pairsAround(places: readonly number[], mesh: Mesh): readonly (readonly [number, number])[] {
  const { index } = mesh;
  const isUp = (place: number) => (index[place] ?? 0) < (index[endOf(place)] ?? 0);
  const angleOf = angles(places, mesh);
  const ring = places
    .map((place) => ({ place, ends: isUp(place), angle: angleOf(place) }))
    .sort((a, b) => a.angle - b.angle || Number(b.ends) - Number(a.ends) || a.place - b.place);
  const waiting: number[] = [];
  const pairs: [number, number][] = [];
  for (const { place, ends } of fromFirstBeginning(ring)) {
    if (!ends) waiting.push(place);
    else {
      const begun = waiting.shift();
      if (begun !== undefined) pairs.push([begun, place]);
    }
  }
  return pairs;
}

/** The same ring, begun where no material is open: after the member at which the most ends had no beginning. */
function fromFirstBeginning<Member extends { readonly ends: boolean }>(ring: readonly Member[]): readonly Member[] {
  let depth = 0;
  let least = 0;
  let start = 0;
  ring.forEach(({ ends }, at) => {
    depth += ends ? -1 : 1;
    if (depth < least) {
      least = depth;
      start = at + 1;
    }
  });
  return [...ring.slice(start), ...ring.slice(0, start)];
}

/** The angle of each triangle's third corner about the edge, from the first triangle on, from 0 to below a turn. */
function angles(places: readonly number[], { corners, index }: Mesh): (place: number) => number {
  const at = (corner: number): Point => [
    corners[3 * corner] ?? 0,
    corners[3 * corner + 1] ?? 0,
    corners[3 * corner + 2] ?? 0,
  ];
  const [first = 0] = places;
  const begin = index[first] ?? 0;
  const end = index[endOf(first)] ?? 0;
  const from = at(Math.min(begin, end));
  const along = unit(minus(at(Math.max(begin, end)), from));
  const radial = (place: number): Point => {
    const third = minus(at(index[endOf(endOf(place))] ?? 0), from);
    const share = dot(third, along);
    return minus(third, [share * along[0], share * along[1], share * along[2]]);
  };
  const zero = unit(radial(first));
  const quarter = cross(along, zero);
  return (place: number): number => {
    const way = radial(place);
    const angle = Math.atan2(dot(way, quarter), dot(way, zero));
    const turned = angle < -SAME_ANGLE ? angle + TURN : angle;
    return Math.round(turned / SAME_ANGLE);
  };
}
