import {
  castToFinished,
  LINK_FIGURES,
  type LineKey,
  parseLoss,
  Quotient,
  type StagedWeight,
  type Weight,
} from "../../src/index";
import type { RatesReading } from "../excel/rates/rates";
import { showGrams, showShare } from "../wording/display";
import { LINK_OFFER_TEXTS as texts } from "../wording/linkoffertexts";

type LinkWeightKey = Extract<LineKey, `linkWeight${string}`>;

/** A link for the order. Its weight is the finished one: an order counts finished links and says itself what to cast. */
export interface LinkForOrder {
  readonly weight: StagedWeight<"finished">;
  /** What else is known of it. */
  readonly texts: Readonly<Partial<Record<Exclude<LineKey, LinkWeightKey>, string>>>;
}

/** Puts a link into the open line of the order, as if typed. */
export type TakeLink = (link: LinkForOrder) => void;

/** A link as the fields of a line take it; the weight is rounded here, once. */
export function lineTextsOf({ weight, texts: others }: LinkForOrder): Readonly<Partial<Record<LineKey, string>>> {
  const { grams } = weight.weight;
  return { ...others, linkWeight: grams.value().toSignificantDigits(LINK_FIGURES).toFixed() };
}

/** A link's weight in metal, as it may be offered. */
export type MetalLink = StagedWeight<"cast"> | StagedWeight<"finished">;

/** The finished weight that an order can take of a link, in words with what it was made from; or why there is none. */
export type Offer =
  | { readonly finished: StagedWeight<"finished">; readonly words: string }
  | { readonly finished: undefined; readonly sentence: string };

export function offerOf(link: MetalLink, rates: RatesReading | undefined): Offer {
  if (link.stage === "finished") return { finished: link, words: texts.finished(shownOf(link.weight)) };
  if (!rates?.found) return { finished: undefined, sentence: texts.noRates };
  const loss = parseLoss(rates.values);
  if (!loss.ok) {
    return { finished: undefined, sentence: texts.noLoss(loss.faults.map(({ sentence }) => `${sentence}.`).join(" ")) };
  }
  if (loss.value.basis === "grams") return { finished: undefined, sentence: texts.inGrams };
  const finished = castToFinished(link, loss.value);
  const words = loss.value.basis === "cast" ? texts.cast : texts.castOfFinished;
  return { finished, words: words(shownOf(finished.weight), shownOf(link.weight), showShare(loss.value.share, 2)) };
}

const TENTH = Quotient.of("0.1");

/** To the centigram; a light link to three figures all the same. */
function shownOf(weight: Weight): string {
  const decimals = !weight.grams.isLessThan(Quotient.one) ? 2 : weight.grams.isLessThan(TENTH) ? 4 : 3;
  return showGrams(weight, decimals);
}
