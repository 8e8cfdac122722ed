import type { Quotient } from "../exact/quotient";
import { sum } from "../exact/quotient";
import { STAGES, type Stage } from "../trade/stagedweight";
import { grams, timesWeight, type Weight } from "../units/weight";
import { finestDigit, isBeyondDigits } from "./lastdigit";
import { type LinkName, textKey } from "./linkname";
import type { Weighing } from "./weighingmean";

/** One weighing with its job, its link and its stage. */
export interface Weighed extends Weighing {
  readonly job: string;
  readonly link: LinkName;
  readonly stage: Stage;
  /** Links that went to whom they came back from; undefined where nobody wrote it down. */
  readonly sent?: Quotient | undefined;
  /** The person says that it is right as it stands. */
  readonly isConfirmed?: boolean;
}

/** Why a weighing cannot be: one piece weighs ten times another or a tenth, or more metal came back than went out. */
export type Doubt = "ten times" | "more back";

/** The mean weight of one piece at the stages before, in a job. */
export interface StagesBefore {
  readonly cast: Weight | undefined;
  readonly polished: Weight | undefined;
}

/** All weighings of a link, without those that cannot be and that nobody confirmed. */
export interface CountedWeighings {
  readonly counted: readonly Weighed[];
  readonly doubts: ReadonlyMap<Weighed, Doubt>;
  /** What one in the last digit of the scale is. */
  readonly digit: Weight | undefined;
  before(weighed: Weighed): StagesBefore;
}

/** A piece that weighs so many times another is another piece, or a slip of the point. Common practice. */
const TIMES = 10;

/** Parts the weighings of one link into those that count and those that cannot be. A stage is judged by those before it that count. */
export function countedWeighings(weighings: readonly Weighed[]): CountedWeighings {
  const doubts = new Map<Weighed, Doubt>();
  const counted: Weighed[] = [];
  const byJob = new Map<string, Weighed[]>();
  const before = (weighed: Weighed): StagesBefore => {
    const ofJob = byJob.get(textKey(weighed.job)) ?? [];
    const isAfter = (stage: Stage) => STAGES.indexOf(stage) < STAGES.indexOf(weighed.stage);
    return {
      cast: isAfter("cast") ? meanAt("cast", ofJob) : undefined,
      polished: isAfter("polished") ? meanAt("polished", ofJob) : undefined,
    };
  };
  const [first, ...others] = weighings.map(({ weight }) => weight);
  const digit = first && finestDigit([first, ...others]);
  for (const stage of STAGES) {
    const atStage = weighings.filter((each) => each.stage === stage);
    const kept = atStage.filter((weighed) => {
      const doubt = doubtOf(weighed, atStage, before(weighed), digit);
      if (doubt) doubts.set(weighed, doubt);
      return !doubt || weighed.isConfirmed;
    });
    counted.push(...kept);
    for (const weighed of kept) {
      const job = textKey(weighed.job);
      if (job !== "") byJob.set(job, [...(byJob.get(job) ?? []), weighed]);
    }
  }
  return { counted, doubts, digit, before };
}

function doubtOf(
  weighed: Weighed,
  alike: readonly Weighed[],
  { cast, polished }: StagesBefore,
  digit: Weight | undefined,
): Doubt | undefined {
  if (isTenTimes(weighed, alike)) return "ten times";
  const one = polished ?? cast;
  const out = one && timesWeight(one, weighed.pieces);
  const isMore = out && weighed.weight.grams.isGreaterThan(out.grams);
  return isMore && digit && isBeyondDigits(weighed.weight, out, digit) ? "more back" : undefined;
}

/** Whether more of the other weighings are ten times away than near. Of two that are, either may be the right one: both are. */
function isTenTimes(weighed: Weighed, alike: readonly Weighed[]): boolean {
  const one = pieceOf(weighed);
  const near = alike.filter((each) => pieceOf(each) > one / TIMES && pieceOf(each) < one * TIMES).length - 1;
  return alike.length - 1 - near > near;
}

/** As a cell holds it: the table's own formulas compare doubles. */
function pieceOf({ weight, pieces }: Weighing): number {
  return weight.grams.dividedBy(pieces).toNumber();
}

function meanAt(stage: Stage, weighings: readonly Weighed[]): Weight | undefined {
  const found = weighings.filter((each) => each.stage === stage);
  if (found.length === 0) return undefined;
  return grams(sum(found.map((each) => each.weight.grams)).dividedBy(sum(found.map((each) => each.pieces))));
}
