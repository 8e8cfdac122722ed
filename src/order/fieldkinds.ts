import type { NumberRule } from "../exact/numberrule";
import type { Quotient } from "../exact/quotient";
import { type Composition, parseComposition } from "../gold/composition";
import { type Mark, parseMark } from "../gold/mark";
import { isBlank, readNumber } from "../reading/number";
import { field } from "../reading/parse";
import { readOptionalText, readText, readWord } from "../reading/words";
import { parsePattern } from "../trade/colourpattern";
import { readPlatingMetal } from "../trade/plating";

/** What a figure counts. A length counts in the unit that another field says, a size in millimetres, a weight in grams. */
export type Counts =
  | "length"
  | "size"
  | "weight"
  | "carats"
  | "money"
  | "money a gram"
  | "money an ounce"
  | "links per length"
  | "price";

/** Rates that stand in for a field left empty. */
export type StandIn = "spot" | "deposit" | "tolerance" | "ownGoldShare" | "breakage" | "settingFee" | "platingMetal";

/** One field of an order, declared once: its reader, its faults, its header, its column and its place in the form follow. */
export interface OrderField<T> {
  /** In the form, in the headers of a row, in every fault. */
  readonly label: string;
  readonly is: "text" | "choice" | "mark" | "pattern" | "composition" | "figure";
  /** Other headers that name it: what shops say, and what it was called before. In lower case, without signs. */
  readonly alsoCalled: readonly string[];
  /** Whether a person must fill it wherever the form asks for it. */
  readonly needed: boolean;
  /** What a choice offers. */
  readonly words: readonly string[];
  /** What a figure may be; undefined where another field says it. */
  readonly rule: NumberRule | undefined;
  readonly counts: Counts | undefined;
  /** The field of the same table that says its unit, or what it counts. */
  readonly saidBy: string | undefined;
  /** What stands in where it is left empty. */
  readonly usual: StandIn | undefined;
  readonly read: (value: unknown) => T;
}

/** What a field is read to. */
export type ValueOf<F> = F extends OrderField<infer T> ? T : never;

type More = Partial<Pick<OrderField<unknown>, "alsoCalled" | "needed" | "counts" | "saidBy" | "usual">>;

/** A person's own words. @param right what they are, for the fault of an empty one */
export function text(label: string, right: string, more: More = {}): OrderField<string> {
  return declared(label, "text", (value) => readText(value, label, right), { needed: true, ...more });
}

export function optionalText(label: string, more: More = {}): OrderField<string> {
  return declared(label, "text", (value) => readOptionalText(value, label), more);
}

export interface Choice<W extends string, T = W> extends OrderField<T> {
  readonly words: readonly W[];
}

/** One of a few words. The form begins with the first of them; a row must say one. */
export function choice<W extends string>(label: string, words: readonly W[], more: More = {}): Choice<W> {
  return { ...declared(label, "choice", (value) => readWord(value, label, words), more), words };
}

/** @param otherwise what counts where nothing is said */
export function choiceOr<W extends string>(
  label: string,
  words: readonly W[],
  otherwise: NoInfer<W>,
  more: More = {},
): Choice<W> {
  const read = (value: unknown) => (isBlank(value) ? otherwise : readWord(value, label, words));
  return { ...declared(label, "choice", read, more), words };
}

export function optionalChoice<W extends string>(
  label: string,
  words: readonly W[],
  more: More = {},
): Choice<W, W | undefined> {
  const read = (value: unknown) => (isBlank(value) ? undefined : readWord(value, label, words));
  return { ...declared(label, "choice", read, more), words };
}

export interface Figure<T> extends OrderField<T> {
  readonly rule: NumberRule;
}

/** A figure that must be given. */
export function figure(label: string, rule: NumberRule, more: More = {}): Figure<Quotient> {
  const read = (value: unknown) => readNumber(value, label, rule);
  return { ...declared(label, "figure", read, { needed: true, ...more }), rule };
}

/** @param otherwise what counts where nothing is given */
export function figureOr(label: string, rule: NumberRule, otherwise: Quotient, more: More = {}): Figure<Quotient> {
  const read = (value: unknown) => (isBlank(value) ? otherwise : readNumber(value, label, rule));
  return { ...declared(label, "figure", read, more), rule };
}

export function optionalFigure(label: string, rule: NumberRule, more: More = {}): Figure<Quotient | undefined> {
  const read = (value: unknown) => (isBlank(value) ? undefined : readNumber(value, label, rule));
  return { ...declared(label, "figure", read, more), rule };
}

/** A figure of which another field says what it counts: it is read once that is known. */
export function figureBy<W extends string>(
  label: string,
  saidBy: string,
  rules: Readonly<Record<W, NumberRule>>,
): OrderField<(by: W) => Quotient> {
  const read = (value: unknown) => (by: W) => readNumber(value, label, rules[by]);
  return declared(label, "figure", read, { needed: true, counts: "price", saidBy });
}

export function mark(label: string, more: More = {}): OrderField<Mark> {
  return declared(label, "mark", (value) => parseMark(value, label), more);
}

export function optionalMark(label: string, more: More = {}): OrderField<Mark | undefined> {
  return declared(label, "mark", (value) => (isBlank(value) ? undefined : parseMark(value, label)), more);
}

/** The metal that a piece is plated with, named alone; "" where nobody names it. */
export function platingMetal(label: string, more: More = {}): OrderField<string> {
  return declared(label, "text", (value) => readPlatingMetal(value, label), more);
}

export function pattern(label: string): OrderField<ReturnType<typeof parsePattern>> {
  return declared(label, "pattern", (value) => parsePattern(value, label), {});
}

export function composition(label: string): OrderField<Composition | undefined> {
  const read = (value: unknown) => (isBlank(value) ? undefined : parseComposition(value, label));
  return declared(label, "composition", read, { needed: true });
}

function declared<T>(label: string, is: OrderField<T>["is"], read: OrderField<T>["read"], more: More): OrderField<T> {
  return {
    label,
    is,
    alsoCalled: [],
    needed: false,
    words: [],
    rule: undefined,
    counts: undefined,
    saidBy: undefined,
    usual: undefined,
    ...more,
    read,
  };
}

type Fields = Readonly<Record<string, OrderField<unknown>>>;
type Read<T> = ReturnType<typeof field<T>>;

/** Some fields of a table, to be read together. */
export function formOf<F extends Fields, K extends keyof F & string>(
  fields: F,
  ...keys: readonly K[]
): { readonly [P in K]: Read<ValueOf<F[P]>> } {
  const shape = Object.fromEntries(keys.map((key) => [key, field((value) => fields[key]?.read(value))]));
  return shape as { readonly [P in K]: Read<ValueOf<F[P]>> };
}

export function labelsOf<K extends string>(
  fields: Readonly<Record<K, OrderField<unknown>>>,
): Readonly<Record<K, string>> {
  const labels = keysOf(fields).map((key) => [key, fields[key].label] as const);
  return Object.fromEntries(labels) as Record<K, string>;
}

/** The keys of a table, in its order. */
export function keysOf<K extends string>(fields: Readonly<Record<K, unknown>>): readonly K[] {
  return Object.keys(fields) as K[];
}
