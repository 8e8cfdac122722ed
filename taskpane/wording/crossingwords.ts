import { crossingWeight, type HeavierBy, type Money, type OrderLine, type Rates, type Weight } from "../../src/index";
import { plots } from "./plottexts";

const texts = plots.sourcing;

/**
 * Above which weight of a plain chain making costs less: with heavier links first, the usual question, then with more of them.
 * The two are named, since the weights differ; where they do not, they are told once.
 */
export function crossingSentences(
  line: OrderLine,
  spot: Money,
  rates: Rates,
  shown: (weight: Weight) => string,
): readonly string[] {
  const told = (heavier: HeavierBy, by: string) => {
    const crossing = crossingWeight(line, spot, rates, heavier);
    if (crossing === undefined) return texts.never(by);
    return crossing.grams.isZero() ? texts.always(by) : texts.above(by, shown(crossing));
  };
  const either = told("heavier links", texts.by.either);
  if (either === told("more links", texts.by.either)) return [either];
  return [told("heavier links", texts.by["heavier links"]), told("more links", texts.by["more links"])];
}
