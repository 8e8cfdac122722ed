import { CostingError } from "../exact/errors";
import type { Quotient } from "../exact/quotient";
import { addRates, type Rate, subtractRates } from "../gold/goldrate";
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

/**
 * Making at landed cost against buying ready chain of the same weight at metal rate + maker's surcharge.
 * At equal cost it says buy: the work is spared.
 */
export function makeOrBuy<C extends Currency>(making: Making<C>, surcharge: Rate<NoInfer<C>>): MakeOrBuy<C> {
  return againstSurcharge(perGramOf(landedCost(making), making.weight), making, surcharge);
}

/** The same where a gram made is costed already: one making against many makers. */
export function againstSurcharge<C extends Currency>(
  make: Rate<C>,
  { weight, metalRate }: Pick<Making<C>, "weight" | "metalRate">,
  surcharge: Rate<NoInfer<C>>,
): MakeOrBuy<C> {
  const buy = addRates(metalRate, surcharge);
  const apart = subtractRates(buy, make);
  return Object.freeze({
    makePerGram: make,
    buyPerGram: buy,
    saving: money(apart.perGram.times(weight.grams), apart.currency),
    verdict: apart.perGram.isPositive() ? "make" : "buy",
  });
}

/**
 * The weight above which making beats buying: flat cost / (surcharge - cost added per gram above the metal rate).
 * Errors: neverReached where the surcharge is not above what making adds.
 */
export function crossoverWeight(flatCost: Quotient, addedPerGram: Quotient, surcharge: Quotient): Weight {
  const gained = surcharge.minus(addedPerGram);
  if (!gained.isPositive()) {
    throw new CostingError(
      "neverReached",
      "surcharge",
      `found ${surcharge.value()}, not above the ${addedPerGram.value()} a gram that making adds; making never wins at any weight`,
    );
  }
  return grams(flatCost.dividedBy(gained));
}
