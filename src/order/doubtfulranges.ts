import { Quotient } from "../exact/quotient";
import { COLOURS } from "../gold/alloy";
import { WEIGHT_KEYS } from "./chain";
import type { LineKey } from "./fields";
import type { OrderLine } from "./orderline";
import { type AskedLine, goToField, keep, type Question, question } from "./question";

/** What a figure of a line usually is. Outside of it a decimal point has often slipped; it may still be right. */
interface DoubtfulRange {
  /** The figures of a line that it is about, in the unit of the range, each with its field. */
  readonly of: (line: OrderLine) => readonly (readonly [field: LineKey, figure: Quotient])[];
  readonly least?: string;
  readonly most?: string;
  /** What is asked of a figure outside. @param shown the figure in digits */
  readonly asks: (shown: string) => string;
  /** The answer that it is right. */
  readonly yes: (shown: string) => string;
}

/** Bounds of common practice: heavier and finer chain is made, and then the answer is yes. */
export const DOUBTFUL_RANGES: readonly DoubtfulRange[] = [
  {
    of: linkWeightsOf,
    least: "0.05",
    most: "60",
    asks: (shown) => `One link of ${shown} g is unusual. Is the decimal point in its place?`,
    yes: (shown) => `Yes, ${shown} g`,
  },
];

/** What is asked about the figures of a line that are far from the usual. */
export function rangeQuestions({ line }: AskedLine): readonly Question[] {
  return DOUBTFUL_RANGES.flatMap((range) =>
    range
      .of(line)
      .filter(([, figure]) => isOutside(figure, range))
      .map(([field, figure]) => askOf(field, figure, range)),
  );
}

function linkWeightsOf({ colour, linkWeights }: OrderLine): readonly (readonly [LineKey, Quotient])[] {
  return COLOURS.flatMap((each) => {
    const weight = linkWeights[each];
    const field = each === colour || each === "own" ? "linkWeight" : WEIGHT_KEYS[each];
    return weight ? [[field, weight.grams] as const] : [];
  });
}

function askOf(field: LineKey, figure: Quotient, { asks, yes }: DoubtfulRange): Question {
  const shown = Quotient.of(figure.rounded(4)).inWords();
  return question([field, figure.inWords()], asks(shown), goToField("Correct it", field), keep(yes(shown)));
}

function isOutside(figure: Quotient, { least, most }: DoubtfulRange): boolean {
  if (least !== undefined && figure.isLessThan(Quotient.of(least))) return true;
  return most !== undefined && figure.isGreaterThan(Quotient.of(most));
}
