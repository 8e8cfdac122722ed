import type { Fault } from "../exact/errors";
import type { NumberRule } from "../exact/numberrule";
import type { Quotient } from "../exact/quotient";
import { COLOURS, type Colour } from "../gold/alloy";
import { LINE_LABELS } from "../order/fields";
import { fieldsNamed } from "../reading/formfields";
import { accepted, attempt, faultOf, field, type Parsed, parseForm, refused } from "../reading/parse";
import { STAGES, type Stage } from "../trade/stagedweight";
import { readScaleWeight } from "../units/scaleweight";
import type { Weight } from "../units/weight";
import { markAsWritten } from "./linkname";

export const WEIGH_IN_LABELS = {
  job: "Job",
  stage: "Stage",
  model: "Model",
  width: "Width",
  mark: LINE_LABELS.mark,
  colour: LINE_LABELS.colour,
  pieces: "Pieces",
  weight: "Weight",
  sent: "Sent",
  who: "Who",
  note: "Note",
} as const;
export type WeighInKey = keyof typeof WEIGH_IN_LABELS;

/** Equal pieces on the scale together, at one stage. */
export interface WeighIn {
  /** "" where it belongs to no job. */
  readonly job: string;
  readonly stage: Stage;
  readonly model: string;
  /** Millimetres; undefined where the model's name says enough. */
  readonly width: Quotient | undefined;
  /** As written in the table; "" at the stage "model", which is not metal yet. */
  readonly mark: string;
  readonly colour: Colour;
  /** Links, or whole pieces: the same at every stage of a job. */
  readonly pieces: Quotient;
  /** Of all of them. */
  readonly weight: Weight;
  /** How many went to whom these came back from; undefined where nobody counted them. */
  readonly sent: Quotient | undefined;
  readonly who: string;
  readonly note: string;
}

const WIDTH: NumberRule = { above: "0", right: "a width in mm above 0, such as 8" };
const PIECES: NumberRule = {
  above: "0",
  whole: true,
  right: "how many pieces lie on the scale, a whole number from 1",
};

const SENT: NumberRule = {
  above: "0",
  whole: true,
  right: "how many were sent to be polished or finished, a whole number from 1, or nothing",
};

const named = fieldsNamed(WEIGH_IN_LABELS);
const shape = {
  job: named.optionalText("job"),
  stage: named.word("stage", STAGES),
  model: named.text("model", "the model's name, the same at every weighing"),
  width: named.optional("width", WIDTH),
  mark: named.optionalText("mark"),
  colour: named.word("colour", COLOURS),
  pieces: named.number("pieces", PIECES),
  weight: field((value) => readScaleWeight(value, WEIGH_IN_LABELS.weight)),
  sent: named.optional("sent", SENT),
  who: named.optionalText("who"),
  note: named.optionalText("note"),
};

/** Reads a weigh-in from its texts, or every fault in them. The mark may be left out at the model only. */
export function parseWeighIn(record: Readonly<Record<WeighInKey, string>>): Parsed<WeighIn> {
  const parsed = parseForm(shape, record);
  const isModel = record.stage.trim().toLowerCase() === "model";
  const mark = attempt("mark", () => markAsWritten(record.mark, WEIGH_IN_LABELS.mark, isModel));
  if (parsed.ok) {
    const { sent, pieces } = parsed.value;
    if (sent?.isLessThan(pieces)) return refused([fewerSent(sent, pieces), ...(mark.ok ? [] : mark.faults)]);
  }
  if (parsed.ok && mark.ok) return accepted({ ...parsed.value, mark: mark.value });
  return refused([...(parsed.ok ? [] : parsed.faults), ...(mark.ok ? [] : mark.faults)]);
}

function fewerSent(sent: Quotient, pieces: Quotient): Fault {
  const found = `found ${sent.inWords()}, and ${pieces.inWords()} pieces came back`;
  return faultOf("sent", WEIGH_IN_LABELS.sent, "outOfRange", `${found}; give how many were sent, at least as many`);
}
