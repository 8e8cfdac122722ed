import { Quotient } from "../exact/quotient";
import { LINE_FIELDS } from "../order/fields";
import { lineOfLinks } from "../order/linksalone";
import type { OrderLine } from "../order/orderline";
import type { Rates } from "../rates/rates";
import { isBlank } from "../reading/number";
import { attempt, faultsOf, type Parsed, refused } from "../reading/parse";
import { grams, type Weight } from "../units/weight";
import { chainWeightOf } from "./crossover";

/** What a list of weights says once for all of them. */
export type ListedKey = "mark" | "linkWeight" | "quantity";

/**
 * Reads a line of one link, of which every weight of a list is so many: costed as any line of an order is. Without a weight of
 * its own a link weighs a gram, which counts only where labour goes by the link.
 * @param ordered the open line of an order: it says what is left empty
 */
export function parseListedChain(
  typed: Readonly<Record<ListedKey, string>>,
  ordered: OrderLine | undefined,
  rates: Rates,
): Parsed<OrderLine> {
  const oneGram = rates.labourPerLink.amount.isZero() ? grams(Quotient.one) : undefined;
  const usual = ordered
    ? { mark: ordered.mark, linkWeight: linkWeightOf(ordered), quantity: ordered.quantity }
    : { mark: undefined, linkWeight: oneGram, quantity: Quotient.one };
  const read = <T>(key: ListedKey, otherwise: T | undefined, reader: (text: string) => T) =>
    attempt(key, () => (isBlank(typed[key]) && otherwise !== undefined ? otherwise : reader(typed[key])));
  const mark = read("mark", usual.mark, LINE_FIELDS.mark.read);
  const quantity = read("quantity", usual.quantity, LINE_FIELDS.quantity.read);
  const linkWeight = read("linkWeight", usual.linkWeight, (text) => grams(LINE_FIELDS.linkWeight.read(text)));
  if (!mark.ok || !quantity.ok || !linkWeight.ok) return refused(faultsOf(mark, quantity, linkWeight));
  const links = { mark: mark.value, quantity: quantity.value, linkWeight: linkWeight.value };
  return lineOfLinks(
    { ...links, design: "", kind: "chain", colour: "yellow", hollow: false, plated: "not plated" },
    rates,
  );
}

/** What one link of a line weighs; where they differ, the mean of them. */
export function linkWeightOf(line: OrderLine): Weight {
  return grams(chainWeightOf(line).grams.dividedBy(line.links));
}
