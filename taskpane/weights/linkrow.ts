import {
  atStage,
  COLOURS,
  grams,
  isBlank,
  isGuess,
  LINKS_PER_UNITS,
  Quotient,
  type StagedWeight,
  sameText,
  type Weight,
} from "../../src/index";
import { LEFT_OUT } from "../excel/weights/linktable";
import type { LinkRow } from "../excel/weights/scalebook";
import type { LinkForOrder } from "../order/linkoffer";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { linkName, showScale } from "../wording/shownweight";

const { links: texts } = SCALE_TEXTS;

/** A link of the table as an order takes it. */
export interface ChosenLink {
  readonly name: string;
  readonly texts: LinkForOrder["texts"];
  /** The mean of its finished weighings, or its estimate; undefined where there is neither. */
  readonly weight: StagedWeight<"finished"> | undefined;
  /** Which weight it used, and how good that is. */
  readonly said: string;
}

/** Reads a row of the Links table; undefined for one without a model: a person's own. */
export function chosenLink(row: LinkRow): ChosenLink | undefined {
  if (isBlank(row.model)) return undefined;
  const name = linkName(row);
  const weight = weightOf(row.weight);
  const isWeighed = sameText(row.basis, "weighed");
  return {
    name,
    texts: { ...alloyOf(row), ...pitchOf(row) },
    weight: weight && atStage("finished", weight),
    said: weight ? (isWeighed ? saidOfMean(row, weight) : texts.usedEstimate(showScale(weight))) : texts.unusable(name),
  };
}

function saidOfMean(row: LinkRow, weight: Weight): string {
  const within = weightOf(row.within);
  const estimate = weightOf(row.estimate);
  const leftOut = String(row.remark).includes(LEFT_OUT);
  return [
    texts.usedMean(showScale(weight), String(row.weighings), String(row.pieces), within && showScale(within)),
    ...(isGuess({ weighings: Number(row.weighings), within, mean: weight }) ? [texts.stillGuess] : []),
    ...(leftOut ? [texts.leftOut] : []),
    ...(estimate ? [texts.wasEstimated(showScale(estimate))] : []),
  ].join(" ");
}

function alloyOf({ mark, colour }: LinkRow): LinkForOrder["texts"] {
  const known = COLOURS.find((word) => sameText(word, colour));
  return { ...(isBlank(mark) ? {} : { mark: String(mark).trim() }), ...(known ? { colour: known } : {}) };
}

function pitchOf({ linksPer, linksPerUnit }: LinkRow): LinkForOrder["texts"] {
  const unit = LINKS_PER_UNITS.find((word) => sameText(word, linksPerUnit));
  // Links in a length say nothing without the length.
  if (!unit || typeof linksPer !== "number" || linksPer <= 0) return {};
  return { linksPer: Quotient.of(linksPer.toPrecision(15)).value().toFixed(), linksPerUnit: unit };
}

function weightOf(cell: unknown): Weight | undefined {
  return typeof cell === "number" && cell > 0 ? grams(Quotient.of(cell.toPrecision(15))) : undefined;
}
