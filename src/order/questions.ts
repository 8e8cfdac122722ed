import { isPlatingUnnamed } from "../trade/plating";
import { rangeQuestions } from "./doubtfulranges";
import type { Order, OrderForm } from "./order";
import { type AskedLine, goTo, goToField, keep, type Question, question } from "./question";
import { uncostedQuestions } from "./uncosted";

/** A question of an order, and the lines it is asked of, counted from 0; of none for the whole order. */
export interface OrderQuestion extends Question {
  readonly lines: readonly number[];
}

/** Every question about one line, each where it has something to ask: a new one is a function here. */
const OF_A_LINE: readonly ((asked: AskedLine) => readonly Question[])[] = [
  uncostedQuestions,
  platingQuestions,
  rangeQuestions,
];

/**
 * What is only doubtful in an order, in the order in which it is asked. Lines with the same figures are asked about together.
 * @param form what the order was read from
 */
export function orderQuestions(order: Order, form: Pick<OrderForm, "lines">): readonly OrderQuestion[] {
  const asked = new Map<string, OrderQuestion>();
  for (const [at, line] of order.lines.entries()) {
    for (const each of lineQuestions({ line, typed: form.lines[at] ?? {}, spot: order.spot })) {
      asked.set(each.key, { ...each, lines: [...(asked.get(each.key)?.lines ?? []), at] });
    }
  }
  return [...asked.values()];
}

/** What is only doubtful in one line. */
export function lineQuestions(asked: AskedLine): readonly Question[] {
  return OF_A_LINE.flatMap((of) => of(asked));
}

function platingQuestions({ line }: AskedLine): readonly Question[] {
  if (!isPlatingUnnamed(line)) return [];
  return [
    question(
      ["platingMetal", line.design],
      "Plated with which metal? Until the metal is named, the quote says nothing of plating.",
      goToField("Name the metal in the order", "platingMetal"),
      goTo("Name the metal on the Rates sheet", { on: "Rates", field: "platingMetal" }),
      keep("Leave plating out of the quote"),
    ),
  ];
}
