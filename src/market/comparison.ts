import { Quotient } from "../exact/quotient";
import type { Colour } from "../gold/alloy";
import { costOf, type Rate } from "../gold/goldrate";
import type { Mark } from "../gold/mark";
import { priceCurve } from "../makeorbuy/curve";
import { lineOfLinks } from "../order/linksalone";
import type { OrderLine } from "../order/orderline";
import { type CostSheet, salesTax } from "../quote/costsheet";
import type { Rates } from "../rates/rates";
import type { PIECE_KINDS } from "../reading/orderwords";
import type { Parsed } from "../reading/parse";
import { perGramOf } from "../trade/landedcost";
import { margin, premiumOverMark } from "../trade/price";
import { withoutTax } from "../trade/salestax";
import { type Money, subtractMoney } from "../units/money";
import type { Weight } from "../units/weight";
import type { OwnLink } from "../weights/ownlink";
import { type Asking, checkAsking } from "./asking";

/** What the workshop's own piece of the same weight would cost and bring, compared with another seller's price. */
export interface OwnComparison {
  /** Costed and priced as a line of an order is. */
  readonly sheet: CostSheet;
  /** What it costs landed over the metal of its mark, per gram. */
  readonly landedPremium: Rate;
  /** Its price, per gram, as the customer reads it. */
  readonly pricePerGram: Rate;
  /** Asked for the whole piece; and what is left of it without the tax, where Rates say that prices hold it. */
  readonly asked: Money;
  readonly netAsked: Money;
  /** The asked price minus our price; below zero where ours is higher. */
  readonly abovePrice: Money;
  /** What would be left if we asked the same; below zero for a loss. */
  readonly left: Money;
  readonly marginLeft: Quotient;
  readonly keepsLeastMargin: boolean;
}

/** A line of an order made of one of the workshop's own links alone: no clasp, stones or engraving. */
export function ownLine(
  link: OwnLink,
  piece: {
    readonly mark: Mark;
    readonly hollow: boolean;
    readonly colour: Colour | undefined;
    readonly kind: (typeof PIECE_KINDS)[number];
  },
  rates: Rates,
): Parsed<OrderLine> {
  const colour = piece.colour ?? (link.colour === "own" ? undefined : link.colour) ?? "yellow";
  return lineOfLinks(
    {
      design: String(link.name.model),
      kind: piece.kind,
      mark: piece.mark,
      colour,
      hollow: piece.hollow,
      plated: "as usual",
      quantity: Quotient.one,
      linkWeight: link.weight.weight,
    },
    rates,
  );
}

/**
 * Compares an asking price with the workshop's own piece of the same weight. Exact; our price is rounded as on a quote.
 * @param weight of the piece @param line of links alone, from ownLine
 */
export function compareAsking(asking: Asking, weight: Weight, line: OrderLine, rates: Rates): OwnComparison {
  const [point] = priceCurve(line, rates, rates, [weight]);
  if (!point) throw new Error("A weight was given and no point came back");
  const { sheet } = point;
  const asked = costOf(weight, checkAsking(asking, rates.spot).asked);
  const netAsked = withoutTax(asked, salesTax(rates));
  const marginLeft = margin(sheet.landed.amount, netAsked.amount);
  return Object.freeze({
    sheet,
    landedPremium: premiumOverMark(sheet.landedPerGram, sheet.markRate),
    pricePerGram: perGramOf(sheet.price, weight),
    asked,
    netAsked,
    abovePrice: subtractMoney(asked, sheet.price),
    left: subtractMoney(netAsked, sheet.landed),
    marginLeft,
    keepsLeastMargin: !marginLeft.isLessThan(rates.leastMargin),
  });
}
