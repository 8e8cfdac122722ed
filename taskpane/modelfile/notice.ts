import { type Point, Quotient, type SolidFault } from "../../src/index";
import { showNumber } from "../wording/display";
import { TEXTS } from "../wording/texts";
import type { Report } from "./message";

const { model: texts } = TEXTS;

/** This many overlaps are named; the others are counted. */
const NAMED = 3;

/** Sentences about a solid's faults: what is wrong, at how many edges, and where. */
export function faultSentences(faults: readonly SolidFault[]): readonly string[] {
  return faults.map(({ kind, count, place }) => texts.faultAt(texts.faults[kind](count), ...showPlace(place)));
}

/** Sentences about what may make the volumes wrong. */
export function modelWarnings(report: Report): readonly string[] {
  const { overlaps, overlapsComplete, folded, triangles } = report;
  return [
    ...overlaps
      .slice(0, NAMED)
      .map(({ between: [one, other], place }) => texts.overlap(one + 1, other + 1, ...showPlace(place))),
    ...(overlaps.length > NAMED ? [texts.moreOverlaps(overlaps.length - NAMED)] : []),
    ...(overlapsComplete ? [] : [texts.entangled]),
    ...(folded > 0 ? [texts.folded(folded, showNumber(Quotient.of(triangles)))] : []),
  ];
}

/** Sentences about what is good to know. */
export function modelNotes({ joined, tolerance }: Report): readonly string[] {
  return [...(joined > 0 ? [texts.joined(joined, showNumber(Quotient.of(Number(tolerance.toPrecision(2))), 9))] : [])];
}

/** Coordinates in the file's own numbers, as a modelling program shows them. */
function showPlace(place: Point): [x: string, y: string, z: string] {
  const [x, y, z] = place;
  return [shown(x), shown(y), shown(z)];
}

function shown(value: number): string {
  return showNumber(Quotient.of(value), 3);
}
