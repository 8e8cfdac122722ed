import { CostingError, found } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import { isBlank, readNumber } from "../reading/number";
import { GRAMS_PER, type Weight, type WeightUnit, weightIn } from "../units/weight";

/** Units in which sellers give weights; an ounce says which one it is. */
const ASKED_UNITS = {
  g: "g",
  kg: "kg",
  dwt: "dwt",
  ozt: "ozt",
  "oz av": "oz",
  grain: "gr",
  tola: "tola",
  ct: "ct",
} as const satisfies Record<string, WeightUnit>;
export type AskedUnit = keyof typeof ASKED_UNITS;

/** Other ways to write them. Common practice. */
const OTHER_WORDS: Readonly<Record<string, AskedUnit>> = {
  gm: "g",
  gms: "g",
  gram: "g",
  gramm: "g",
  gramme: "g",
  grams: "g",
  grammes: "g",
  pennyweight: "dwt",
  pennyweights: "dwt",
  "oz t": "ozt",
  "oz tr": "ozt",
  "oz troy": "ozt",
  "troy oz": "ozt",
  "troy ounce": "ozt",
  "troy ounces": "ozt",
  "oz avdp": "oz av",
  "avoirdupois ounce": "oz av",
  "avoirdupois ounces": "oz av",
  grains: "grain",
  carat: "ct",
  carats: "ct",
};

/** Words that may mean two units: an ounce is troy for gold and avoirdupois for all else, "gr" a grain or a gram. */
const TWO_UNITS: Readonly<Record<string, readonly [AskedUnit, AskedUnit]>> = {
  oz: ["ozt", "oz av"],
  ounce: ["ozt", "oz av"],
  ounces: ["ozt", "oz av"],
  gr: ["g", "grain"],
};

/** The units that a word may mean: none where the word is unknown, one, or two where only the person can choose. */
export function unitsOfWord(word: string): readonly AskedUnit[] {
  const said = word.trim().toLowerCase().replaceAll(".", "").replace(/\s+/g, " ");
  if (Object.hasOwn(TWO_UNITS, said)) return TWO_UNITS[said] ?? [];
  if (Object.hasOwn(ASKED_UNITS, said)) return [said as AskedUnit];
  const other = Object.hasOwn(OTHER_WORDS, said) ? OTHER_WORDS[said] : undefined;
  return other ? [other] : [];
}

/** The weight of one unit. */
export function unitWeight(unit: AskedUnit): Weight {
  return weightIn(Quotient.one, ASKED_UNITS[unit]);
}

/** Splits a weight as typed into its figure and the word behind it, "" where there is none. */
export function splitWeight(text: string): { readonly figure: string; readonly word: string } {
  const [, figure = text, word = ""] = /^(.*?\d[\s.,]*?)\s*(\p{L}[\p{L}. ]*)?$/u.exec(text.trim()) ?? [];
  return { figure: figure.trim(), word: word.trim() };
}

const RIGHT = "a weight above 0, in grams or with its unit, such as 12.5, 8 dwt or 0.4 ozt";

/**
 * A weight as an offer states it: a plain number is grams, "8 dwt", "0.4 ozt", "0.4 oz av" are turned into grams exactly.
 * Errors: blank, notANumber, outOfRange, tooLarge; unknownWord for a unit that is not known, or that may be two: "0.4 oz".
 */
export function readAskedWeight(value: unknown, field: string): Weight {
  if (isBlank(value)) throw new CostingError("blank", field, `found nothing; give ${RIGHT}`);
  const { figure, word } = typeof value === "string" ? splitWeight(value) : { figure: value, word: "" };
  const rule = { above: "0", most: "100000", right: RIGHT };
  if (word === "") return weightIn(readNumber(value, field, rule), "g");
  const [unit, other] = unitsOfWord(word);
  if (!unit)
    throw new CostingError("unknownWord", field, `${found(value)}, in a unit that is not known here; give ${RIGHT}`);
  const amount = readNumber(figure, field, rule);
  if (other)
    throw new CostingError(
      "unknownWord",
      field,
      `${found(value)}, ${twoUnitsSentence(word, String(figure), unit, other)}`,
    );
  return weightIn(amount, ASKED_UNITS[unit]);
}

/** The sentence about a word that may mean two units. @param figure before it, as typed; "" for the unit alone */
export function twoUnitsSentence(word: string, figure: string, unit: AskedUnit, other: AskedUnit): string {
  const named = (each: AskedUnit) =>
    `${NAMES[each] ?? each} (${GRAMS_PER[ASKED_UNITS[each]].toSignificantDigits(6)} g)`;
  const right = (each: AskedUnit) => `${figure} ${each}`.trim();
  return `and "${word}" may be ${named(unit)} or ${named(other)}; give ${right(unit)} or ${right(other)}`;
}

const NAMES: Readonly<Partial<Record<AskedUnit, string>>> = {
  ozt: "a troy ounce",
  "oz av": "an avoirdupois ounce",
  g: "a gram",
  grain: "a grain",
};
