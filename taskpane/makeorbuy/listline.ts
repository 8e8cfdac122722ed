import { type ListedKey, linkWeightOf, nameMark, type OrderLine } from "../../src/index";

/** What the open line of the order says where the fields of a list of weights are left empty. */
export function shownOfLine(line: OrderLine): Readonly<Record<ListedKey, string>> {
  return {
    mark: nameMark(line.mark),
    linkWeight: linkWeightOf(line).grams.value().toSignificantDigits(12).toFixed(),
    quantity: line.quantity.value().toFixed(),
  };
}
