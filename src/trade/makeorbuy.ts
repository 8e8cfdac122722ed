import { CostingError } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import { addRates, type MetalRate, type Rate, subtractRates } from "../gold/goldrate";
import type { Currency } from "../units/currency";
import { type Money, money } from "../units/money";
import { grams, type Weight } from "../units/weight";
import { landedCost, type Making, perGramOf } from "./landedcost";

export interface MakeOrBuy<C extends Currency = Currency> {
  readonly makePerGram: Rate<C>;
  readonly buyPerGram: Rate<C>;
  /** What making saves on the whole piece; below zero where buying is cheaper. */
  readonly saving: Money<C>;
  readonly verdict: "make" | "buy";
}

/** Ready-made chain of a mark, from a maker. */
export interface ReadyChain<C extends Currency = Currency> {
  readonly metalRate: MetalRate<"the mark", C>;
  readonly surcharge: Rate<NoInfer<C>>;
}

/**
 * Making at landed cost against buying ready-made chain of the same weight at metal rate + maker's surcharge. What is cast and
 * what is bought may hold different gold under one mark: each side counts its own.
 * At equal cost it says buy: the work is spared.
 */
export function makeOrBuy<C extends Currency>(making: Making<C>, ready: ReadyChain<NoInfer<C>>): MakeOrBuy<C> {
  return againstReady<C>(perGramOf(landedCost(making), making.weight), making.weight, ready as ReadyChain<C>);
}

/** The same where a gram made is costed already: one making against many makers. */
export function againstReady<C extends Currency>(
  make: Rate<C>,
  weight: Weight,
  { metalRate, surcharge }: ReadyChain<NoInfer<C>>,
): MakeOrBuy<C> {
  const buy: Rate<C> = addRates<C>(metalRate, surcharge);
  const apart = subtractRates(buy, make);
  return Object.freeze({
    makePerGram: make,
    buyPerGram: buy,
    saving: money(apart.perGram.times(weight.grams), apart.currency),
    verdict: apart.perGram.isPositive() ? "make" : "buy",
  });
}

/**
 * The weight above which making beats buying: flat cost / (surcharge - cost added per gram above the metal rate of what is bought).
 * @param addedPerGram above the metal rate of what is cast
 * @param metalDifference the metal rate of what is cast less that of what is bought
 * Errors: neverReached where the surcharge is not above what making adds.
 */
export function crossoverWeight(
  flatCost: Quotient,
  addedPerGram: Quotient,
  surcharge: Quotient,
  metalDifference = Quotient.zero,
): Weight {
  const added = addedPerGram.plus(metalDifference);
  const gained = surcharge.minus(added);
  if (!gained.isPositive()) {
    throw new CostingError(
      "neverReached",
      "surcharge",
      `found ${surcharge.value()}, not above the ${added.value()} a gram that making adds; making never wins at any weight`,
    );
  }
  return grams(flatCost.dividedBy(gained));
}
