import { isPlatingUnnamed } from "../trade/plating";
import { rangeQuestions } from "./doubtfulranges";
import type { Order } from "./order";
import type { OrderLine } from "./orderline";
import { goTo, keep, type Question, question } from "./question";

/** A question of an order, and the lines it is asked of, counted from 0; of none for the whole order. */
export interface OrderQuestion extends Question {
  readonly lines: readonly number[];
}

/** Every question about one line, each where it has something to ask: a new one is a function here. */
const OF_A_LINE: readonly ((line: OrderLine) => readonly Question[])[] = [platingQuestions, rangeQuestions];

/** What is only doubtful in an order, in the order in which it is asked. Lines with the same figures are asked about together. */
export function orderQuestions(order: Order): readonly OrderQuestion[] {
  const asked = new Map<string, OrderQuestion>();
  for (const [at, line] of order.lines.entries()) {
    for (const each of lineQuestions(line)) {
      asked.set(each.key, { ...each, lines: [...(asked.get(each.key)?.lines ?? []), at] });
    }
  }
  return [...asked.values()];
}

/** What is only doubtful in one line. */
export function lineQuestions(line: OrderLine): readonly Question[] {
  return OF_A_LINE.flatMap((of) => of(line));
}

function platingQuestions(line: OrderLine): readonly Question[] {
  if (!isPlatingUnnamed(line)) return [];
  return [
    question(
      ["platingMetal", line.design],
      "Plated with which metal? Until the metal is named, the quote says nothing of plating.",
      goTo("Name the metal in the order", { on: "line", field: "platingMetal" }),
      goTo("Name the metal on the Rates sheet", { on: "Rates", field: "platingMetal" }),
      keep("Leave plating out of the quote"),
    ),
  ];
}
