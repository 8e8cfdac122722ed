import {
  ASKED_PER,
  ASKED_PIECE_LABELS,
  ASKING_LABELS,
  type AskedPieceKey,
  type AskingKey,
  COLOURS,
  currencyNamed,
  ORDER_LENGTH_UNITS,
  PIECE_KINDS,
  parseCurrency,
  SOLIDITIES,
} from "../../src/index";
import { type At, type PlannedGroup, planOf, shownWord } from "../order/formplan";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { locale } from "../wording/language";

const { check: texts } = ASKING_TEXTS;

/** What the price check asks; `link` is the kept link to hold it against, by its name. */
export type CheckKey = AskingKey | AskedPieceKey | "link";
export const CHECK_LABELS: Readonly<Record<CheckKey, string>> = {
  ...ASKING_LABELS,
  ...ASKED_PIECE_LABELS,
  link: texts.link,
};

const { words, figure, mark, choice, chosen, group } = planOf<CheckKey>(texts.help);

/** The fields from top to bottom. @param own the workbook's currency, now */
export function checkGroups(own: () => string): readonly PlannedGroup<CheckKey>[] {
  const isAbroad = (at: At<CheckKey>) => theirs(at, own()) !== own();
  return [
    group("offer", "", [
      figure("price", "half", { required: true, unit: (at) => theirs(at, own()) }),
      mark("weight", "half", { required: true }),
      mark("mark", "half", { required: true }),
      chosen(
        "per",
        "half",
        ASKED_PER.map((value) => ({ value, shown: texts.per[value] })),
      ),
      words("currency", "half"),
      figure("exchange", "half", {
        required: true,
        isAsked: isAbroad,
        unit: (at) => texts.exchangeUnit(own(), theirs(at, own())),
      }),
    ]),
    group(
      "piece",
      texts.more,
      [
        choice("solidity", "half", SOLIDITIES),
        choice("piece", "half", PIECE_KINDS),
        figure("length", "half"),
        choice("lengthUnit", "half", ORDER_LENGTH_UNITS, { start: locale() === "en-US" ? "in" : "cm" }),
        chosen("colour", "half", [
          { value: "", shown: texts.notSaid },
          ...COLOURS.filter((colour) => colour !== "own").map((value) => ({ value, shown: shownWord(value) })),
        ]),
        words("kind", "half"),
        chosen("link", "whole", [{ value: "", shown: texts.nearest }]),
      ],
      (at) =>
        [
          shownWord(at("solidity")).toLowerCase(),
          shownWord(at("piece")).toLowerCase(),
          ...(at("length").trim() === "" ? [] : [`${at("length").trim()} ${at("lengthUnit")}`]),
          ...(at("colour") === "" ? [] : [shownWord(at("colour")).toLowerCase()]),
          ...(at("kind").trim() === "" ? [] : [at("kind").trim()]),
        ].join(", "),
    ),
  ];
}

/** The currency that price and field name, as far as it can be read by now. */
function theirs(at: At<CheckKey>, own: string): string {
  return own === "" ? "" : currencyNamed(at("price"), at("currency"), parseCurrency(own));
}
