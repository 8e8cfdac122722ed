import { minimum, Quotient } from "../exact/quotient";
import { fineGold } from "../gold/goldrate";
import type { Mark } from "../gold/mark";
import { isBlank } from "../reading/number";
import type { OWN_GOLD_USES } from "../reading/orderwords";
import { accepted, type Parsed, parseForm } from "../reading/parse";
import type { Currency } from "../units/currency";
import { type Money, money, roundToCurrency } from "../units/money";
import { GRAMS_PER, grams, type Weight } from "../units/weight";
import { formOf } from "./fieldkinds";
import { ORDER_FIELDS } from "./fields";

/**
 * Gold that a customer brings. `credited`: the workshop takes it in and pays for it. `used`: it goes into this work, and what is
 * not needed goes back.
 */
export interface OwnGold {
  readonly weight: Weight;
  readonly mark: Mark;
  readonly use: (typeof OWN_GOLD_USES)[number];
  /** Share of its value at spot that counts for the customer. */
  readonly share: Quotient;
}

/** What becomes of the customer's fine gold, in grams of fine gold. */
export interface GoldBalance {
  readonly brought: Weight;
  /** What is cast for this order holds so much. */
  readonly needed: Weight;
  /** Of what was brought: put into this work, where it is used. */
  readonly used: Weight;
  /** Goes back to the customer; none where it is credited. */
  readonly returned: Weight;
  /** Still to be bought for this work. */
  readonly bought: Weight;
  /** Off what the customer pays. Rounded once to the currency. */
  readonly credit: Money;
}

const FIELDS = formOf(ORDER_FIELDS, "ownGoldWeight", "ownGoldMark", "ownGoldUse", "ownGoldShare");

/** Reads the customer's own gold; undefined where none is brought. @param usual the share where none is given */
export function parseOwnGold(record: Readonly<Record<string, unknown>>, usual: Quotient): Parsed<OwnGold | undefined> {
  if (isBlank(record.ownGoldWeight) && isBlank(record.ownGoldMark)) return accepted(undefined);
  const read = parseForm(FIELDS, record);
  if (!read.ok) return read;
  const { ownGoldWeight, ownGoldMark, ownGoldUse, ownGoldShare } = read.value;
  return accepted({
    weight: grams(ownGoldWeight),
    mark: ownGoldMark,
    use: ownGoldUse,
    share: ownGoldShare ?? usual,
  });
}

/** The fine-gold balance of an order. @param needed fine gold in all that is cast for it @param spot money per troy ounce */
export function goldBalance(own: OwnGold, needed: Weight, spot: Money): GoldBalance {
  const brought = fineGold(own.weight, own.mark);
  const used = own.use === "used" ? goldUsed(brought, needed).grams : Quotient.zero;
  const counted = own.use === "used" ? used : brought.grams;
  return Object.freeze({
    brought,
    needed,
    used: grams(used),
    returned: grams(own.use === "used" ? brought.grams.minus(used) : Quotient.zero),
    bought: grams(needed.grams.minus(used)),
    credit: roundToCurrency(goldCredit(grams(counted), spot, own.share)),
  });
}

/** Of a customer's fine gold: what goes into the work, not more than it needs. */
export function goldUsed(brought: Weight, needed: Weight): Weight {
  return grams(minimum(brought.grams, needed.grams));
}

/** What fine gold is paid for: a share of its value at spot. Not rounded. */
export function goldCredit<C extends Currency>(fine: Weight, spot: Money<C>, share: Quotient): Money<C> {
  const worth = fine.grams.times(spot.amount).times(share).dividedBy(Quotient.of(GRAMS_PER.ozt));
  return money(worth, spot.currency);
}
