import { CostingError } from "../exact/errors";
import type { Quotient } from "../exact/quotient";
import { grams, type Weight } from "../units/weight";

/** Links of one alloy that were cast, and what came back of them from polishing. */
export interface LinksPolished {
  /** Of all that were cast. */
  readonly cast: Weight;
  /** Of all that came back. */
  readonly back: Weight;
  /** 0 where they were not counted: then all that was cast counts as having come back. */
  readonly castLinks: Quotient;
  readonly backLinks: Quotient;
  /** How many went to the polisher; undefined where nobody wrote it down. */
  readonly sentLinks: Quotient | undefined;
}

/** Some of the links, with what they weigh as cast. */
export interface SomeLinks {
  readonly links: Quotient;
  readonly weight: Weight;
}

export interface PolishingOutcome {
  /** What the links that came back weighed as cast. */
  readonly out: Weight;
  /** The share of it that polishing took; below zero where more metal came back. */
  readonly share: Quotient;
  /** Cast, and not sent on: stock, no loss. Undefined where nobody wrote down how many were sent. */
  readonly spare: SomeLinks | undefined;
  /** Sent, and not returned. */
  readonly missing: SomeLinks | undefined;
}

/**
 * What polishing took, by the piece: of 95 links cast and 91 back, what came back is held against 91/95 of the cast weight. Links
 * that were not sent on are spare, links that were sent and did not return are missing: neither is polish loss.
 * Source: definition. Errors: blank, outOfRange where the counts contradict each other.
 */
export function polishingOutcome(polished: LinksPolished): PolishingOutcome {
  const { cast, back, castLinks, backLinks, sentLinks } = polished;
  if (castLinks.isZero() && backLinks.isZero()) {
    if (sentLinks) throw uncounted("castLinks");
    return outcome(cast, back, undefined, undefined);
  }
  if (castLinks.isZero()) throw uncounted("castLinks");
  if (backLinks.isZero()) throw uncounted("backLinks");
  if (castLinks.isLessThan(backLinks)) throw tooMany("backLinks", backLinks, castLinks, "links that were cast");
  const weighing = (links: Quotient): SomeLinks => ({
    links,
    weight: grams(cast.grams.times(links).dividedBy(castLinks)),
  });
  const { weight: out } = weighing(backLinks);
  if (!sentLinks) return outcome(out, back, undefined, undefined);
  if (castLinks.isLessThan(sentLinks)) throw tooMany("sentLinks", sentLinks, castLinks, "links that were cast");
  if (sentLinks.isLessThan(backLinks)) throw tooMany("backLinks", backLinks, sentLinks, "links that were sent");
  return outcome(out, back, weighing(castLinks.minus(sentLinks)), weighing(sentLinks.minus(backLinks)));
}

function outcome(
  out: Weight,
  back: Weight,
  spare: SomeLinks | undefined,
  missing: SomeLinks | undefined,
): PolishingOutcome {
  return { out, share: out.grams.minus(back.grams).dividedBy(out.grams), spare, missing };
}

function uncounted(argument: string): CostingError {
  return new CostingError(
    "blank",
    argument,
    "found nothing beside another count; count the links that were cast and those that came back",
  );
}

function tooMany(argument: string, found: Quotient, most: Quotient, of: string): CostingError {
  return new CostingError(
    "outOfRange",
    argument,
    `found ${found.inWords()}, more than the ${most.inWords()} ${of}; count again`,
  );
}
