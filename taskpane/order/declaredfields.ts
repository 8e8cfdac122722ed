import { type OrderField, type Quotient, type Rates, standInFor } from "../../src/index";
import { formPlan, type More, type PlannedField, type Width } from "../controls/formplan";
import { PLATING_TEXTS } from "../wording/platingtexts";
import { TEXTS } from "../wording/texts";
import { shownWord } from "./choices";

const { form } = TEXTS;

/** What the place of a field says beside its declaration. */
type Placed<K extends string> = Omit<More<K>, "required" | "usual" | "help">;

/**
 * Places fields of a declared table in a form: what each is, what it counts, whether it is needed and what stands in for it follow
 * from its declaration.
 * @param helps a quiet word under a field
 */
export function declaredFields<K extends string>(
  fields: Readonly<Record<K, OrderField<unknown>>>,
  helps: Readonly<Partial<Record<K, string>>>,
) {
  const { words, figure, figures, mark, choice, group } = formPlan<K>(helps);
  const isKey = (key: string | undefined): key is K => key !== undefined && Object.hasOwn(fields, key);

  function place(key: K, width: Width, placed: Placed<K> = {}): PlannedField<K> {
    const field = fields[key];
    const saidBy = isKey(field.saidBy) ? field.saidBy : undefined;
    const more: More<K> = {
      required: field.needed,
      unit: (at, currency) => unitOf(field, saidBy ? at(saidBy) : "", currency),
      ...(field.usual ? { usual: (rates) => standIn(field, rates) } : {}),
      ...placed,
    };
    switch (field.is) {
      case "text":
      case "pattern":
        return words(key, width, more);
      case "mark":
        return mark(key, width, more);
      case "composition":
        return figures(key, width, more);
      case "figure":
        return figure(key, width, more);
      case "choice":
        return choice(
          key,
          width,
          field.words.map((word) => ({ value: word, shown: shownWord(word) })),
          more,
        );
    }
  }
  return { place, group };
}

/** What Rates give for a field left empty, in its place; a word that they lack is said to be lacking. */
function standIn(field: OrderField<unknown>, rates: Rates): Quotient | string | undefined {
  const given = standInFor(field, rates);
  return given === "" ? PLATING_TEXTS.noneOnRates : given;
}

/** @param said what the field says that tells its unit */
function unitOf({ counts }: OrderField<unknown>, said: string, currency: string): string {
  switch (counts) {
    case "length":
      return said;
    case "size":
      return form.millimetres;
    case "weight":
      return form.grams;
    case "carats":
      return form.carats;
    case "money":
      return currency;
    case "money a gram":
      return form.aGram(currency);
    case "money an ounce":
      return form.anOunce(currency);
    case "price":
      return priceUnit(said, currency);
    case "links per length":
    case undefined:
      return "";
  }
}

/** The unit of a way of pricing's figure; a share has none. */
function priceUnit(by: string, currency: string): string {
  if (by === "premium") return form.aGram(currency);
  return by === "own price" ? currency : "";
}

/** What there is of these, or that there is none. */
export function listed(...parts: readonly string[]): string {
  const there = parts.filter((part) => part.trim() !== "");
  return there.length > 0 ? there.join(", ") : form.holds.none;
}

/** For a figure whose unit is chosen in the field beside it. */
export const UNIT_BESIDE = { unit: (): string => "" };
