import { Quotient, sum } from "../exact/quotient";
import type { Loss } from "../trade/polishloss";
import type { Stage } from "../trade/stagedweight";
import { grams, type Weight } from "../units/weight";
import { type LinkName, sameLink, sameText } from "./linkname";
import { isFarOff, type MeanWeight, meanLossShare, meanWeight, type Weighing } from "./weighingmean";

/** One weighing with its job, its link and its stage. */
export interface Weighed extends Weighing {
  readonly job: string;
  readonly link: LinkName;
  readonly stage: Stage;
}

/** How much metal was lost, by a weighing of polished or finished pieces. */
export interface WeighedLoss {
  /** The stage they came from: polished where the job was weighed polished before it was finished, else cast. */
  readonly from: "cast" | "polished";
  /** What went out for these pieces, by the mean weight at the stage before. */
  readonly out: Weight;
  /** Share of it that did not come back; below zero where more came back. */
  readonly share: Quotient;
  /** Share of the cast weight; undefined where the job was not weighed cast. */
  readonly sinceCast: Quotient | undefined;
  readonly judgement: "within" | "above" | "more back" | "no limit";
}

/** What a new weighing shows; the figures include it. */
export interface WeighedVerdict {
  /** Of all weighings of this link at this stage. */
  readonly mean: MeanWeight;
  readonly isGuess: boolean;
  /** Further from the others than chance explains. */
  readonly isFarOff: boolean;
  /** Undefined where nothing was weighed before it in the job. */
  readonly loss: WeighedLoss | undefined;
}

/** A mean from fewer weighings, or known less closely than this share of it, is still a guess. Common practice. */
export const FEWEST_WEIGHINGS = 3;
const CLOSE_ENOUGH = Quotient.of("0.02");

/** Whether a mean rests on too few weighings, or on weighings too far apart, to be relied on. */
export function isGuess({ weighings, within, mean }: MeanWeight): boolean {
  if (weighings < FEWEST_WEIGHINGS || !within) return true;
  return within.grams.isGreaterThan(mean.grams.times(CLOSE_ENOUGH));
}

/** The polish loss that Rates allows, as a share of the cast weight; undefined where it is given in grams. */
export function allowedLossShare(loss: Loss): Quotient | undefined {
  if (loss.basis === "grams") return undefined;
  return loss.basis === "cast" ? loss.share : loss.share.dividedBy(Quotient.one.plus(loss.share));
}

/**
 * Judges a weighing by the others of its link and its job.
 * @param others all other weighings
 * @param allowed share of the cast weight that may be lost; undefined for no limit
 */
export function judgeWeighed(
  weighed: Weighed,
  others: readonly Weighed[],
  allowed: Quotient | undefined,
): WeighedVerdict {
  const alike = others.filter(({ stage, link }) => stage === weighed.stage && sameLink(link, weighed.link));
  const mean = meanWeight([...alike, weighed]);
  return Object.freeze({
    mean,
    isGuess: isGuess(mean),
    isFarOff: isFarOff(weighed, alike),
    loss: lossOf(weighed, others, allowed),
  });
}

function lossOf(weighed: Weighed, others: readonly Weighed[], allowed: Quotient | undefined): WeighedLoss | undefined {
  const { stage, job, pieces, weight } = weighed;
  if ((stage !== "polished" && stage !== "finished") || job.trim() === "") return undefined;
  const ofJob = others.filter((other) => sameText(other.job, job) && sameLink(other.link, weighed.link));
  const cast = meanAt("cast", ofJob);
  const polished = stage === "finished" ? meanAt("polished", ofJob) : undefined;
  const before = polished ?? cast;
  if (!before) return undefined;
  const lossFrom = (one: Weight) => {
    const out = grams(one.grams.times(pieces));
    return { out, share: meanLossShare([{ out, back: weight }]) };
  };
  const sinceCast = cast && lossFrom(cast).share;
  const { out, share } = lossFrom(before);
  return Object.freeze({
    from: polished ? "polished" : "cast",
    out,
    share,
    sinceCast,
    judgement: judgementOf(share, sinceCast, allowed),
  });
}

function judgementOf(
  share: Quotient,
  sinceCast: Quotient | undefined,
  allowed: Quotient | undefined,
): WeighedLoss["judgement"] {
  if (share.isNegative()) return "more back";
  if (!allowed || !sinceCast) return "no limit";
  return sinceCast.isGreaterThan(allowed) ? "above" : "within";
}

function meanAt(stage: Stage, weighings: readonly Weighed[]): Weight | undefined {
  const found = weighings.filter((each) => each.stage === stage);
  if (found.length === 0) return undefined;
  return grams(sum(found.map((each) => each.weight.grams)).dividedBy(sum(found.map((each) => each.pieces))));
}
