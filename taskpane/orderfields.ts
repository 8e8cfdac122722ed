import {
  COLOURS,
  LINE_LABELS,
  LINKS_PER_UNITS,
  type LineKey,
  ORDER_LABELS,
  ORDER_LENGTH_UNITS,
  type OrderKey,
  PLATING_CHOICES,
} from "../src/index";
import type { Choice, FieldPlan } from "./field";
import { TEXTS } from "./texts";

const { form, cautions } = TEXTS;

/** A field of the form: of the order, or of its one line. */
export type FormKey = OrderKey | LineKey;
export const FORM_LABELS = { ...ORDER_LABELS, ...LINE_LABELS };

export interface FieldGroup {
  readonly title: string;
  readonly fields: readonly {
    readonly key: FormKey;
    readonly plan: FieldPlan;
    readonly width: "third" | "half" | "whole";
    /** Fields whose cautions stand after this one. */
    readonly cautions?: readonly FormKey[];
  }[];
}

/** The order form from top to bottom. */
export const FIELD_GROUPS: readonly FieldGroup[] = [
  {
    title: form.groups.who,
    fields: [
      whole("customer", { required: true }),
      whole("design", { required: true }),
      half("mark", { required: true, help: form.help.mark, caution: cautions.mark }),
      { ...half("colour", { choices: choices(COLOURS) }), cautions: ["mark", "colour"] },
      half("plated", { choices: choices(PLATING_CHOICES), help: form.help.plated }),
      half("quantity", { required: true, numeric: true, start: "1", help: form.help.quantity }),
    ],
  },
  {
    title: form.groups.chain,
    fields: [
      half("length", { required: true, numeric: true }),
      half("lengthUnit", { choices: choices(ORDER_LENGTH_UNITS) }),
      half("linksPer", { required: true, numeric: true, help: form.help.linksPer }),
      half("linksPerUnit", { choices: choices(LINKS_PER_UNITS) }),
      whole("linkWeight", { required: true, numeric: true, unit: form.grams, help: form.help.linkWeight }),
    ],
  },
  {
    title: form.groups.clasp,
    fields: [
      third("claspLength", { numeric: true }),
      third("claspWeight", { numeric: true, unit: form.grams }),
      third("claspCost", { numeric: true }),
    ],
  },
  {
    title: form.groups.stones,
    fields: [
      third("stoneCount", { numeric: true, help: form.help.stoneCount }),
      third("stonePrice", { numeric: true }),
      third("settingFee", { numeric: true, help: form.help.settingFee }),
    ],
  },
  {
    title: form.groups.terms,
    fields: [
      half("spot", { numeric: true, help: form.help.spot }),
      half("discount", { numeric: true, help: form.help.discount }),
    ],
  },
];

/** Fields of money, whose unit is the workshop's currency. */
export const MONEY_FIELDS = ["claspCost", "stonePrice", "settingFee", "spot"] as const satisfies readonly FormKey[];

type Details = Omit<FieldPlan, "id" | "label">;

function third(key: FormKey, details: Details) {
  return { key, plan: planOf(key, details), width: "third" } as const;
}

function half(key: FormKey, details: Details) {
  return { key, plan: planOf(key, details), width: "half" } as const;
}

function whole(key: FormKey, details: Details) {
  return { key, plan: planOf(key, details), width: "whole" } as const;
}

function planOf(key: FormKey, details: Details): FieldPlan {
  return { ...details, id: `order-${key}`, label: FORM_LABELS[key] };
}

function choices(words: readonly (keyof typeof form.choices)[]): readonly Choice[] {
  return words.map((value) => ({ value, shown: form.choices[value] }));
}
