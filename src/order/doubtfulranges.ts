import { Quotient } from "../exact/quotient";
import { COLOURS } from "../gold/alloy";
import type { Rates } from "../rates/rates";
import type { Pricing } from "../trade/pricemethod";
import { inLengthUnit, lengthIn } from "../units/length";
import { WEIGHT_KEYS } from "./chain";
import type { Order } from "./order";
import type { OrderLine } from "./orderline";
import { goTo, keep, type Place, type Question, question } from "./question";

/** A figure that may be outside of a range, and where it is typed. */
interface Figure {
  readonly place: Place;
  /** In the unit of the range. */
  readonly value: Quotient;
  /** As it is typed, with its unit. */
  readonly shown: string;
}

/** What a figure usually is. Outside of it a decimal point has often slipped; it may still be right. */
interface DoubtfulRange {
  /** Of a line; of the whole order, with what is typed once and what Rates say. */
  readonly inLine?: (line: OrderLine) => readonly Figure[];
  readonly inOrder?: (order: Order, rates: Rates, typed: Readonly<Record<string, unknown>>) => readonly Figure[];
  readonly least?: string;
  readonly most?: string;
  /** What was found, and what is asked. */
  readonly asks: (shown: string) => string;
}

/** Bounds of common practice: what lies outside is made, too, and then the answer is yes. */
export const DOUBTFUL_RANGES: readonly DoubtfulRange[] = [
  {
    inLine: linkWeightsOf,
    least: "0.05",
    most: "60",
    asks: (shown) => `One link of ${shown} is unusual. Is the decimal point in its place?`,
  },
  {
    inLine: ({ length, lengthUnit }) => [
      {
        place: { on: "line", field: "length" },
        value: inLengthUnit(length, "in"),
        shown: `${inWords(inLengthUnit(length, lengthUnit))} ${lengthUnit}`,
      },
    ],
    most: "40",
    asks: (shown) => `A piece of ${shown} is longer than 40 in. Is the length right?`,
  },
  {
    inLine: ({ linksPer, linksPerUnit }) => [
      {
        place: { on: "line", field: "linksPer" },
        value: linksPer.dividedBy(inLengthUnit(lengthIn(Quotient.one, linksPerUnit), "in")),
        shown: `${inWords(linksPer)} links per ${linksPerUnit}`,
      },
    ],
    least: "1",
    most: "40",
    asks: (shown) => `${shown} are unusual. Is the number right?`,
  },
  {
    inLine: ({ pricing }) => markupsOf(pricing, { on: "line", field: "linePriceFigure" }),
    inOrder: ({ pricing }, _rates, typed) =>
      markupsOf(
        pricing,
        [undefined, "", "as rates"].includes(lowerCase(typed.priceBy))
          ? { on: "Rates", field: "markup" }
          : { on: "order", field: "priceFigure" },
      ),
    most: "3",
    asks: (shown) => `A markup of ${shown} is more than 300%. Is it right?`,
  },
  {
    inOrder: (_order, { loss }) =>
      loss.basis === "grams"
        ? []
        : [{ place: { on: "Rates", field: "loss" }, value: loss.share, shown: perCent(loss.share) }],
    most: "0.2",
    asks: (shown) => `A polishing loss of ${shown} is more than 20%. Is it right?`,
  },
];

/** What is asked about the figures of a line that are far from the usual. */
export function lineRangeQuestions(line: OrderLine): readonly Question[] {
  return DOUBTFUL_RANGES.flatMap((range) => questionsOn(range, range.inLine?.(line) ?? []));
}

/** What is asked about such figures of the whole order. @param typed what the order says once */
export function orderRangeQuestions(
  order: Order,
  rates: Rates,
  typed: Readonly<Record<string, unknown>>,
): readonly Question[] {
  return DOUBTFUL_RANGES.flatMap((range) => questionsOn(range, range.inOrder?.(order, rates, typed) ?? []));
}

function questionsOn({ least, most, asks }: DoubtfulRange, figures: readonly Figure[]): readonly Question[] {
  return figures
    .filter(
      ({ value }) =>
        (least !== undefined && value.isLessThan(Quotient.of(least))) ||
        (most !== undefined && value.isGreaterThan(Quotient.of(most))),
    )
    .map(({ place, value, shown }) =>
      question(
        [place.field, value.inWords()],
        asks(shown),
        goTo(place.on === "Rates" ? "Correct it on the Rates sheet" : "Correct it", place),
        keep(`Yes, ${shown}`),
      ),
    );
}

function linkWeightsOf({ colour, linkWeights }: OrderLine): readonly Figure[] {
  return COLOURS.flatMap((each): Figure[] => {
    const weight = linkWeights[each];
    const field = each === colour || each === "own" ? "linkWeight" : WEIGHT_KEYS[each];
    if (!weight) return [];
    return [{ place: { on: "line", field }, value: weight.grams, shown: `${inWords(weight.grams)} g` }];
  });
}

function markupsOf(pricing: Pricing | undefined, place: Place): readonly Figure[] {
  return pricing?.by === "markup" ? [{ place, value: pricing.share, shown: perCent(pricing.share) }] : [];
}

function perCent(share: Quotient): string {
  return `${inWords(share.times(Quotient.of(100)))}%`;
}

/** To four decimals; nothing is computed from it. */
function inWords(figure: Quotient): string {
  return figure.rounded(4).toString();
}

function lowerCase(value: unknown): string | undefined {
  return typeof value === "string" ? value.trim().toLowerCase() : undefined;
}
