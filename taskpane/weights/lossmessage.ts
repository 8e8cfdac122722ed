import { costOf, grams, type Quotient, type Rate, type Weighed, type WeighedVerdict } from "../../src/index";
import type { AnswerLine } from "../controls/answerbox";
import { showMoney, showNumber } from "../wording/display";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { linkName, showLoss, showScale } from "../wording/shownweight";

const { weighIn: texts } = SCALE_TEXTS;

/**
 * What a verdict is in sentences, warnings last.
 * @param allowed share of the cast weight that may be lost
 * @param rate of the metal that was cast; undefined where it is not known
 * @param leavesOut whether the table leaves out what cannot be; one that an earlier version began does not
 */
export function sayVerdict(
  weighed: Weighed,
  verdict: WeighedVerdict,
  allowed: Quotient | undefined,
  rate?: Rate,
  leavesOut = true,
): readonly AnswerLine[] {
  return [
    ...sayDoubt(weighed, verdict, leavesOut),
    ...sayLoss(weighed, verdict, allowed),
    ...sayMissing(verdict, rate),
    { text: sayMean(weighed, verdict), isWarning: false },
    ...sayFar(weighed, verdict),
  ];
}

function sayMean({ link, stage }: Weighed, { mean, isGuess }: WeighedVerdict): string {
  const name = `${linkName(link)}, ${texts.stages[stage]}`;
  if (!mean) return texts.none(name);
  const weight = showScale(mean.mean);
  if (!mean.within) return texts.guess.one(name, weight);
  const say = isGuess ? texts.guess.wide : texts.known;
  return say(name, weight, showScale(mean.within), String(mean.weighings));
}

function sayFar({ weight, pieces }: Weighed, { isFarOff }: WeighedVerdict): readonly AnswerLine[] {
  if (!isFarOff) return [];
  return [{ text: texts.farOff(showScale(grams(weight.grams.dividedBy(pieces)))), isWarning: true }];
}

function sayDoubt(
  { weight, pieces }: Weighed,
  { doubt, loss }: WeighedVerdict,
  leavesOut: boolean,
): readonly AnswerLine[] {
  if (!doubt) return [];
  const said =
    doubt === "more back" && loss
      ? texts.moreBack(showScale(weight), showScale(loss.out))
      : texts.tenTimes(showScale(grams(weight.grams.dividedBy(pieces))));
  return [{ text: `${said} ${leavesOut ? texts.leftOut : texts.stillCounted}`, isWarning: true }];
}

function sayMissing({ loss }: WeighedVerdict, rate: Rate | undefined): readonly AnswerLine[] {
  const { missing } = loss ?? {};
  if (!missing || missing.links.isZero()) return [];
  const worth = rate && showMoney(costOf(missing.weight, rate));
  return [{ text: texts.missing(showCount(missing.links), showScale(missing.weight), worth), isWarning: true }];
}

function sayLoss(
  { stage, job, weight }: Weighed,
  { loss }: WeighedVerdict,
  allowed: Quotient | undefined,
): readonly AnswerLine[] {
  const isPassage = (stage === "polished" || stage === "finished") && job !== "";
  if (!loss) return isPassage ? [{ text: texts.noCast(job), isWarning: false }] : [];
  if (loss.judgement === "more back") return [];
  const lost = grams(loss.out.grams.minus(weight.grams));
  const since = loss.from === "polished" && loss.sinceCast ? ` ${texts.sinceCast(showLoss(loss.sinceCast))}` : "";
  const sentence = texts.loss(showLoss(loss.share), showScale(lost), showScale(loss.out), texts.stages[loss.from]);
  if (loss.judgement === "above" && loss.sinceCast && allowed) {
    const above = texts.above(showLoss(loss.sinceCast), showLoss(allowed));
    return [
      { text: `${sentence}${since}`, isWarning: false },
      { text: above, isWarning: true },
    ];
  }
  const limit = allowed ? texts.allowed(showLoss(allowed)) : texts.noLimit;
  return [{ text: `${sentence}${since} ${limit}`, isWarning: false }];
}

/** A count as shown. */
export function showCount(count: Quotient): string {
  return showNumber(count, 3);
}
