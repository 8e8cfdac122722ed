import { type CostingError, chainWeightOf, type OrderLine, type Rates, readDesigns, showMark } from "../../src/index";

/** What a list of weights says once for all of them; empty ones come from the order. */
export interface ListFields {
  readonly mark: string;
  readonly linkWeight: string;
  readonly quantity: string;
}

/** What the open line of the order says in their place. */
export function fieldsOfLine(line: OrderLine): ListFields {
  const link = chainWeightOf(line).grams.dividedBy(line.links);
  return {
    mark: showMark(line.mark),
    linkWeight: link.value().toSignificantDigits(12).toFixed(),
    quantity: line.quantity.value().toFixed(),
  };
}

/**
 * A line of one link, of which every weight of the list is so many: costed as any line of an order is. Without a weight of
 * its own a link weighs a gram, which counts only where labour goes by the link.
 */
export function lineOfList(
  typed: ListFields,
  ordered: ListFields | undefined,
  rates: Rates,
): { readonly ok: true; readonly line: OrderLine } | { readonly ok: false; readonly error: CostingError } {
  const given = (key: keyof ListFields) => (typed[key].trim() === "" ? (ordered?.[key] ?? "") : typed[key].trim());
  const needsLink = !rates.labourPerLink.amount.isZero();
  const linkWeight = given("linkWeight") === "" && !needsLink ? "1" : given("linkWeight");
  const [design] = readDesigns(
    [
      ["Design", "Mark", "Colour", "Plating", "Length (in)", "Links per in", "Weight of one link", "Quantity"],
      ["…", given("mark"), "yellow", "not plated", "1", "1", linkWeight, given("quantity")],
    ],
    rates,
  );
  if (design?.kind === "read") return { ok: true, line: design.line };
  if (design?.kind === "refused") return { ok: false, error: design.error };
  throw new Error("A list's line is never empty");
}
