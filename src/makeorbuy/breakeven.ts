import { Quotient } from "../exact/quotient";
import { type ChainChoice, compareSources } from "./chainchoice";
import { chainWeightOf, roundedDifference, straightRates } from "./crossover";
import { type Lever, leverValue, moved } from "./figures";
import { winningRanges } from "./winningranges";

/** The value of one figure at which making and buying cost the same, while all other figures stay. */
export interface BreakEven {
  /** In the figure's own unit. */
  readonly value: Quotient;
  /** How far that is from the current value, as a share of it: -0.08 is 8 % less. */
  readonly change: Quotient;
}

/** A figure more than this many times as large is not realistic, so it is no answer. */
const FARTHEST = Quotient.of(100);

/**
 * The value of one figure at which the answer changes; undefined where no value up to a hundred times as large changes it.
 * No search is needed: at rates without a minimum the saving is a straight line over every figure (over 1 / (1 - loss) where loss
 * is a share of the cast weight), and the saving at rates with minimums is the least of four such lines.
 */
export function breakEven(choice: ChainChoice, lever: Lever): BreakEven | undefined {
  const current = leverValue(choice, lever);
  if (!current || current.isZero() || !compareSources(choice).best) return undefined;
  const factor =
    lever === "surcharge"
      ? surchargeFactor(choice)
      : lever === "linkWeight"
        ? linkFactor(choice)
        : fallingFactor(choice, lever, current);
  if (!factor?.isPositive() || factor.isGreaterThan(FARTHEST)) return undefined;
  const value = current.times(factor);
  // At another price of gold the pieces may not reach a minimum in money: then the maker does not sell them.
  const maker = compareSources(choice).best?.seller.maker;
  if (!compareSources(moved(choice, lever, factor)).bids.some(({ seller }) => seller.maker === maker)) return undefined;
  // A loss of all that was cast, or more, is impossible.
  if (lever === "loss" && choice.rates.loss.basis === "cast" && !value.isLessThan(Quotient.one)) return undefined;
  return Object.freeze({ value, change: factor.minus(Quotient.one) });
}

/** For the surcharge of the cheapest maker: what making costs above the metal, as long as no other maker asks less than that. */
function surchargeFactor(choice: ChainChoice): Quotient | undefined {
  const { best, bids, makePerGram } = compareSources(choice);
  if (!best) return undefined;
  const others = bids.filter((bid) => bid !== best);
  if (others.some(({ saving }) => !saving.amount.isPositive())) return undefined;
  const { perGram: now } = best.offer.surcharge;
  const metal = best.perGram.perGram.minus(now);
  return roundedDifference(makePerGram.perGram.minus(metal)).dividedBy(now);
}

/** For the weight of one link: the nearest one at which the answer changes, with the number of links unchanged. */
function linkFactor(choice: ChainChoice): Quotient | undefined {
  const own = chainWeightOf(choice.line).grams;
  const ranges = winningRanges(choice, "heavier links");
  const turns = ranges.flatMap(({ from, winner }, at) => {
    const before = ranges[at - 1];
    return before && (before.winner.kind === "buy") !== (winner.kind === "buy") ? [from.grams] : [];
  });
  const near = turns.reduce<Quotient | undefined>((nearest, turn) => {
    return nearest && !size(turn.minus(own)).isLessThan(size(nearest.minus(own))) ? nearest : turn;
  }, undefined);
  return near?.dividedBy(own);
}

/** For a cost of making: the higher it is, the less making saves. Each of the four lines falls. */
function fallingFactor(given: ChainChoice, lever: Lever, current: Quotient): Quotient | undefined {
  const choice = againstBestAlone(given);
  const isCurved = lever === "loss" && choice.rates.loss.basis === "cast" && choice.rates.costBasis === "finished";
  let least: Quotient | undefined;
  const none = moved(choice, lever, Quotient.zero);
  const lines = straightRates(none.rates).map((rates, at) => {
    const full = straightRates(choice.rates)[at] ?? choice.rates;
    return { atNone: savingAt({ ...none, rates }), atFull: savingAt({ ...choice, rates: full }) };
  });
  for (const { atNone, atFull } of lines) {
    const fall = roundedDifference(atNone.minus(atFull));
    if (!fall.isPositive()) {
      if (!roundedDifference(atNone).isPositive()) return undefined;
      continue;
    }
    const turn = roundedDifference(atNone).dividedBy(fall);
    least = least && !turn.isLessThan(least) ? least : turn;
  }
  // Where buying is cheaper even at zero, no loss changes the answer.
  return isCurved && least?.isPositive() ? uncurved(least, current) : least;
}

/** The choice against its cheapest offer alone, whatever that maker's minimum is: no cost of making changes who is cheapest. */
function againstBestAlone(choice: ChainChoice): ChainChoice {
  const { best } = compareSources(choice);
  if (!best) return choice;
  return { ...choice, sellers: [{ ...best.seller, classes: [{ ...best.offer, minimum: undefined }] }] };
}

/** Turns a share of the way that 1 / (1 - loss) goes from no loss to this one into a factor of this loss. */
function uncurved(way: Quotient, loss: Quotient): Quotient {
  // u = 1 + way x (1 / (1 - loss) - 1); the loss is 1 - 1 / u.
  const over = way.times(loss).dividedBy(Quotient.one.minus(loss));
  const turned = over.dividedBy(Quotient.one.plus(over));
  return turned.dividedBy(loss);
}

function savingAt(choice: ChainChoice): Quotient {
  return compareSources(choice).best?.saving.amount ?? Quotient.zero;
}

function size(value: Quotient): Quotient {
  return value.isNegative() ? Quotient.zero.minus(value) : value;
}
