import { Quotient } from "../exact/quotient";
import type { Currency } from "../units/currency";
import { type Money, money, sameCurrency } from "../units/money";
import { GRAMS_PER, grams, type Weight } from "../units/weight";
import { fineShare, type Mark } from "./mark";

/** Money per gram. */
export interface Rate<C extends Currency = Currency> {
  readonly kind: "rate";
  readonly perGram: Quotient;
  readonly currency: C;
}

export function perGram<C extends Currency>(amount: Quotient, currency: C): Rate<C> {
  return Object.freeze({ kind: "rate", perGram: amount, currency });
}

/** The sum of rates of one currency. Errors: currencyMismatch. */
export function addRates<C extends Currency>(first: Rate<C>, ...others: readonly Rate<NoInfer<C>>[]): Rate<C> {
  return others.reduce<Rate<C>>((total, other) => {
    sameCurrency(total, other);
    return perGram(total.perGram.plus(other.perGram), total.currency);
  }, first);
}

/** Errors: currencyMismatch. */
export function subtractRates<C extends Currency>(from: Rate<C>, other: Rate<NoInfer<C>>): Rate<C> {
  sameCurrency(from, other);
  return perGram(from.perGram.minus(other.perGram), from.currency);
}

/**
 * The metal rate of an alloy: spot x fineness / 1000 / 31.1034768.
 * @param spot money per troy ounce of fine gold
 * Source: definition of the metal rate; troy ounce from UCUM 1.9 [oz_tr].
 */
export function metalRate<C extends Currency>(spot: Money<C>, mark: Mark): Rate<C> {
  return perGram(spot.amount.times(fineShare(mark)).dividedBy(Quotient.of(GRAMS_PER.ozt)), spot.currency);
}

/**
 * A piece has two metals: the one in the pot, which is cast and paid for, and the one its mark states, which ready-made chain
 * of it holds and sellers count from. An alloy of one's own (Au 600) stamped 585 has two rates.
 */
export type MetalOf = "the pot" | "the mark";

/** A metal rate that says which of a piece's two metals it is for: one cannot stand where the other is asked. */
export interface MetalRate<Of extends MetalOf, C extends Currency = Currency> extends Rate<C> {
  readonly metal: Of;
}

/** A metal rate, named for one of the two. */
export function metalRateOf<Of extends MetalOf, C extends Currency>(
  metal: Of,
  { perGram: amount, currency }: Rate<C>,
): MetalRate<Of, C> {
  return Object.freeze({ ...perGram(amount, currency), metal });
}

/** What a gram of the alloy that is cast holds in gold. @param piece its gold, by composition where the alloy is one's own */
export function potRate<C extends Currency>(
  spot: Money<C>,
  { gold }: { readonly gold: Mark },
): MetalRate<"the pot", C> {
  return metalRateOf("the pot", metalRate(spot, gold));
}

/** What a gram of chain of a piece's mark holds in gold, where it is bought or sold by that mark. */
export function markRate<C extends Currency>(
  spot: Money<C>,
  { mark }: { readonly mark: Mark },
): MetalRate<"the mark", C> {
  return metalRateOf("the mark", metalRate(spot, mark));
}

/**
 * The spot at which a gram of an alloy is worth a given rate: metal rate x 31.1034768 / fineness x 1000.
 * Source: the definition of the metal rate, solved for spot.
 */
export function spotOf<C extends Currency>(rate: Rate<C>, mark: Mark): Money<C> {
  return money(rate.perGram.times(Quotient.of(GRAMS_PER.ozt)).dividedBy(fineShare(mark)), rate.currency);
}

/** What a weight costs at a rate. */
export function costOf<C extends Currency>(weight: Weight, rate: Rate<C>): Money<C> {
  return money(weight.grams.times(rate.perGram), rate.currency);
}

/** What the gold of a weight is worth at spot: weight x metal rate. */
export function meltValue<C extends Currency>(weight: Weight, mark: Mark, spot: Money<C>): Money<C> {
  return costOf(weight, metalRate(spot, mark));
}

/** The fine gold in a weight of an alloy. */
export function fineGold(weight: Weight, mark: Mark): Weight {
  return grams(weight.grams.times(fineShare(mark)));
}
