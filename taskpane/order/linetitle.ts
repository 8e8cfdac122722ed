import type { CostSheet, Fault, TypedLine } from "../../src/index";
import { withLocalMark } from "../wording/decimalmark";
import { showMoney, showNumber } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { shownWord } from "./choices";

const { form } = TEXTS;

/** A line in a few words: "1 Curb 8 mm, 14K yellow, 24 in". @param number counted from 1 */
export function lineTitle(number: number, line: TypedLine): string {
  const length = line.length.trim() === "" ? "" : `${withLocalMark(line.length.trim(), "figure")} ${line.lengthUnit}`;
  const alloy = [line.mark.trim(), colourOf(line)].filter((word) => word !== "").join(" ");
  const hollow = line.solidity === "hollow" ? shownWord("hollow").toLowerCase() : "";
  const parts = [line.design.trim() || form.noDesign, alloy, hollow, length].filter((part) => part !== "");
  return `${number} ${parts.join(", ")}`;
}

/** What it comes to: "2 × USD 3,575.00"; what is wrong with it, or that there is more to fill. */
export function lineStanding(
  sheet: CostSheet | undefined,
  faults: readonly Fault[],
  isMissing: (fault: Fault) => boolean,
): { readonly said: string; readonly faulty: boolean } {
  if (faults.some((fault) => !isMissing(fault))) return { said: form.needsLook, faulty: true };
  if (sheet) return { said: form.each(showNumber(sheet.line.quantity), showMoney(sheet.price)), faulty: false };
  return { said: faults.length > 0 ? form.toFill : "", faulty: false };
}

function colourOf({ colour, colourName, pattern }: TypedLine): string {
  if (pattern.trim() !== "") return pattern.trim().toUpperCase();
  return colour === "own" ? colourName.trim() || shownWord("own").toLowerCase() : shownWord(colour).toLowerCase();
}
