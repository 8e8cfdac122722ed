import type { Quotient } from "../exact/quotient";
import { COLOURS, type Colour } from "../gold/alloy";
import { LINE_LABELS } from "../order/fields";
import { fieldsNamed } from "../reading/formfields";
import { LINKS_PER_UNITS } from "../reading/orderwords";
import { field, type Parsed, parseForm } from "../reading/parse";
import { readScaleWeight } from "../units/scaleweight";
import type { Weight } from "../units/weight";
import { markAsWritten } from "./linkname";

export const KEPT_LINK_LABELS = {
  model: "Model",
  width: "Width",
  mark: LINE_LABELS.mark,
  colour: LINE_LABELS.colour,
  linksPer: LINE_LABELS.linksPer,
  linksPerUnit: LINE_LABELS.linksPerUnit,
  linkWeight: LINE_LABELS.linkWeight,
} as const;
export type KeptLinkKey = keyof typeof KEPT_LINK_LABELS;

/** A link as it is first written down, its weight still an estimate. */
export interface KeptLink {
  readonly model: string;
  /** Millimetres; undefined where the model's name says enough. */
  readonly width: Quotient | undefined;
  readonly mark: string;
  readonly colour: Colour;
  readonly linksPer: Quotient;
  readonly linksPerUnit: (typeof LINKS_PER_UNITS)[number];
  readonly linkWeight: Weight;
}

const named = fieldsNamed(KEPT_LINK_LABELS);
const shape = {
  model: named.text("model", "a name for the link's model"),
  width: named.optional("width", { above: "0", right: "a width in mm above 0, such as 8" }),
  mark: field((value) => markAsWritten(value, KEPT_LINK_LABELS.mark)),
  colour: named.word("colour", COLOURS),
  linksPer: named.number("linksPer", { above: "0", right: "links above 0 in the length, such as 4" }),
  linksPerUnit: named.word("linksPerUnit", LINKS_PER_UNITS),
  linkWeight: field((value) => readScaleWeight(value, KEPT_LINK_LABELS.linkWeight)),
};

/** Reads a link to be written down, or every fault in it. */
export function parseKeptLink(record: Readonly<Record<KeptLinkKey, string>>): Parsed<KeptLink> {
  return parseForm(shape, record);
}
