import { Quotient } from "../exact/quotient";
import type { SomeLinks } from "../trade/polishedlinks";
import type { Loss } from "../trade/polishloss";
import { timesWeight, type Weight } from "../units/weight";
import { type CountedWeighings, countedWeighings, type Doubt, type Weighed } from "./doubt";
import { sameLink } from "./linkname";
import { isFarOff, type MeanWeight, meanLossShare, meanWeight } from "./weighingmean";

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
  /** Sent, and not returned; undefined where nobody wrote down how many were sent. */
  readonly missing: SomeLinks | undefined;
  readonly judgement: "within" | "above" | "more back" | "no limit";
}

/** What a new weighing shows; the figures include it, unless it cannot be. */
export interface WeighedVerdict {
  /** Of all weighings of this link at this stage that count; undefined where none does. */
  readonly mean: MeanWeight | undefined;
  readonly isGuess: boolean;
  /** Further from the others than chance explains. */
  readonly isFarOff: boolean;
  /** Why it cannot be. It is left out of means until the person confirms it. */
  readonly doubt: Doubt | undefined;
  /** Undefined where nothing was weighed before it in the job. */
  readonly loss: WeighedLoss | undefined;
}

/** A mean from fewer weighings, or known less closely than this share of it, is still a guess. Common practice. */
const FEWEST_WEIGHINGS = 3;
const CLOSE_ENOUGH = Quotient.of("0.02");

/** Whether a mean rests on too few weighings, or on weighings too far apart, to be relied on. */
export function isGuess({ weighings, within, mean }: Pick<MeanWeight, "weighings" | "within" | "mean">): boolean {
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
  const known = countedWeighings([...others.filter(({ link }) => sameLink(link, weighed.link)), weighed]);
  const alike = known.counted.filter((each) => each !== weighed && each.stage === weighed.stage);
  const counting = known.counted.includes(weighed) ? [...alike, weighed] : alike;
  const mean = counting.length > 0 ? meanWeight(counting) : undefined;
  return Object.freeze({
    mean,
    isGuess: !mean || isGuess(mean),
    isFarOff: known.digit !== undefined && isFarOff(weighed, alike, known.digit),
    doubt: known.doubts.get(weighed),
    loss: lossOf(weighed, known, allowed),
  });
}

function lossOf(weighed: Weighed, known: CountedWeighings, allowed: Quotient | undefined): WeighedLoss | undefined {
  const { pieces, sent, weight } = weighed;
  const { cast, polished } = known.before(weighed);
  const before = polished ?? cast;
  if (!before) return undefined;
  const shareOf = (one: Weight) => meanLossShare([{ out: timesWeight(one, pieces), back: weight }]);
  const share = shareOf(before);
  const sinceCast = cast && shareOf(cast);
  const missing = sent?.minus(pieces);
  return Object.freeze({
    from: polished ? "polished" : "cast",
    out: timesWeight(before, pieces),
    share,
    sinceCast,
    missing: missing && { links: missing, weight: timesWeight(before, missing) },
    judgement: known.doubts.get(weighed) === "more back" ? "more back" : judgementOf(sinceCast, allowed),
  });
}

function judgementOf(sinceCast: Quotient | undefined, allowed: Quotient | undefined): WeighedLoss["judgement"] {
  if (!allowed || !sinceCast) return "no limit";
  return sinceCast.isGreaterThan(allowed) ? "above" : "within";
}
