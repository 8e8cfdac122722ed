import { type CostSheet, isHallmarkedInUk } from "../../../src/index";
import { type CautionKey, type CautionPlace, cautionsAt, LOCAL_LAW_FIRST } from "../../wording/cautions";
import { linesOf } from "../paper";

/** Letters of small type that surely fit across a sheet. */
const ACROSS = 105;

/** Some cautions of a sheet in short lines. */
export function cautionLines(place: CautionPlace, wanted: readonly CautionKey[]): readonly string[] {
  return cautionsAt(place, wanted).flatMap((sentence) => linesOf(sentence, ACROSS));
}

/** The cautions at the end of a sheet, each once, and last that local law comes first. */
export function lastCautions(place: CautionPlace, wanted: readonly CautionKey[]): readonly string[] {
  return [...cautionLines(place, wanted), LOCAL_LAW_FIRST];
}

/** Which of some cautions apply to the lines that a trade works at. */
export function cautionsFor(sheets: readonly CostSheet[], wanted: readonly CautionKey[]): readonly CautionKey[] {
  const isHallmarked = sheets.some(({ finishedWeight }) => isHallmarkedInUk(finishedWeight));
  const applies: Partial<Record<CautionKey, boolean>> = {
    nickel: sheets.some(hasNickel),
    mark: isHallmarked,
    lightMark: !isHallmarked,
    hollow: sheets.some(({ line }) => line.hollow),
  };
  return wanted.filter((caution) => applies[caution] ?? true);
}

/** White gold may hold nickel; an alloy of the workshop's own does where its composition says so. */
function hasNickel({ line }: CostSheet): boolean {
  return (
    line.linkGroups.some(({ colour }) => colour === "white") ||
    (line.composition?.parts.some(({ metal }) => metal === "Ni") ?? false)
  );
}
