import type { Rates } from "../rates/rates";
import { isBlank } from "../reading/number";
import { isPlatingUnnamed } from "../trade/plating";
import type { Money } from "../units/money";
import { lineRangeQuestions, orderRangeQuestions } from "./doubtfulranges";
import type { Order, OrderForm } from "./order";
import { type AskedLine, goTo, goToField, keep, type Place, type Question, question } from "./question";
import { spotQuestions } from "./spotquestions";
import { uncostedQuestions } from "./uncosted";

/** A question of an order, and the lines it is asked of, counted from 0; of none for the whole order. */
export interface OrderQuestion extends Question {
  readonly lines: readonly number[];
}

/** Every question about one line, each where it has something to ask: a new one is a function here. */
const OF_A_LINE: readonly ((asked: AskedLine) => readonly Question[])[] = [
  uncostedQuestions,
  platingQuestions,
  ({ line }) => lineRangeQuestions(line),
];

/**
 * What is only doubtful in an order, in the order in which it is asked. Lines with the same figures are asked about together.
 * @param form what the order was read from @param quoted what the last quote was made at, where the quotes were read
 */
export function orderQuestions(
  order: Order,
  form: Pick<OrderForm, "order" | "lines">,
  rates: Rates,
  quoted?: { readonly lastSpot: Money | undefined },
): readonly OrderQuestion[] {
  const asked = new Map<string, OrderQuestion>();
  for (const [at, line] of order.lines.entries()) {
    for (const each of lineQuestions({ line, typed: form.lines[at] ?? {}, spot: order.spot })) {
      asked.set(each.key, { ...each, lines: [...(asked.get(each.key)?.lines ?? []), at] });
    }
  }
  const spotAt: Place = isBlank(form.order.spot) ? { on: "Rates", field: "spot" } : { on: "order", field: "spot" };
  const spot = quoted ? spotQuestions(order.spot, quoted.lastSpot, spotAt) : [];
  const whole = [...spot, ...orderRangeQuestions(order, rates, form.order)];
  return [...whole.map((each) => ({ ...each, lines: [] })), ...asked.values()];
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
