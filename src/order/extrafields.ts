import { MONEY_AT_LEAST_0, type NumberRule } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { figure, figureOr, keysOf, labelsOf, type OrderField, text } from "./fieldkinds";

const AMOUNT: NumberRule = {
  least: "-1000000000000",
  most: "1000000000000",
  right: "an amount of money, such as 15 or -20",
};

/** A free line: what the customer reads, what it adds to the total (below zero takes off), and what it costs the workshop. */
export const EXTRA_FIELDS = {
  text: text("Free line", "what the customer reads, such as Gift box"),
  amount: figure("Amount", AMOUNT, { counts: "money" }),
  cost: figureOr("Cost to you", MONEY_AT_LEAST_0, Quotient.zero, { counts: "money" }),
} as const satisfies Readonly<Record<string, OrderField<unknown>>>;

export type ExtraKey = keyof typeof EXTRA_FIELDS;
export const EXTRA_KEYS = keysOf(EXTRA_FIELDS);
export const EXTRA_LABELS = labelsOf(EXTRA_FIELDS);
