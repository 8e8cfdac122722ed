import { Quotient } from "../exact/quotient";
import { STONE_KEYS } from "./fields";
import type { OrderLine } from "./orderline";
import { goToField, keep, put, type Question, question } from "./question";
import type { StoneSet } from "./stones";

/** What is only doubtful about the stones of a line: what they are, where they come from, whether their carat fits their size. */
export function stoneQuestions({ design, stones }: OrderLine): readonly Question[] {
  return stones.flatMap((set) => [...kindQuestion(set, design), ...originQuestion(set, design), ...caratQuestion(set)]);
}

const PLACES = { links: "in the links", clasp: "on the clasp" } as const;

function kindQuestion({ where, kind }: StoneSet, design: string): readonly Question[] {
  if (kind !== "") return [];
  const field = STONE_KEYS[where].kind;
  return [
    question(
      [field, design],
      `What kind of stones are ${PLACES[where]}? Until the kind is named, the quote says that it is still to be agreed.`,
      put("Diamonds", { [field]: "diamond" }),
      goToField("Name the kind", field),
      keep("Still to be agreed with the customer"),
    ),
  ];
}

/** Stones of which a customer must know whether they are natural. Common practice of the trade's descriptions. */
const NATURAL_OR_GROWN = /\b(diamonds?|diamants?|rub(?:y|ies)|sapphires?|saphirs?|emeralds?)\b/i;
const SAYS_ORIGIN = /\b(natural|lab\w*|synthetic|grown|created|imitation|simulated)\b/i;

function originQuestion({ where, kind, origin }: StoneSet, design: string): readonly Question[] {
  if (origin !== "not said" || !NATURAL_OR_GROWN.test(kind) || SAYS_ORIGIN.test(kind)) return [];
  const field = STONE_KEYS[where].origin;
  return [
    question(
      [field, design, kind],
      `Are the stones ${PLACES[where]} natural or laboratory-grown? The quote says which.`,
      put("Natural", { [field]: "natural" }),
      put("Laboratory-grown", { [field]: "laboratory-grown" }),
    ),
  ];
}

/** A real stone's carat is this share of what its size says, at least and at most. Common practice: cuts are deeper and shallower. */
const LEAST = Quotient.of("0.7");
const MOST = Quotient.of("1.4");

function caratQuestion({ where, kind, carat, caratBySize, caratFrom, cut, size }: StoneSet): readonly Question[] {
  if (caratFrom !== "scale" || !carat || !caratBySize) return [];
  const share = carat.dividedBy(caratBySize);
  if (!share.isLessThan(LEAST) && !share.isGreaterThan(MOST)) return [];
  const keys = STONE_KEYS[where];
  const typed = carat.inWords();
  const about = Quotient.of(caratBySize.rounded(3)).inWords();
  return [
    question(
      [keys.carat, typed, size, kind],
      `One stone of ${size} is about ${about} ct, and ${typed} ct is typed. Is that right?`,
      goToField("Correct the carat", keys.carat),
      goToField("Correct the size", cut === "round" ? keys.diameter : keys.length),
      keep(`Yes, ${typed} ct`),
    ),
  ];
}
