import { CostingError, type ModelUnit, modelMillimetres, Quotient, scaleOf } from "../../src/index";
import { element, setText } from "../controls/element";
import { type Form, plannedForm } from "../controls/form";
import { choicesOf, formPlan } from "../controls/formplan";
import { readFigures } from "../controls/readfigures";
import { showLength, showNumber } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { lengthOf } from "./side";

const { scale: texts } = TEXTS.model;
const HUNDRED = Quotient.of("100");
const AXES = ["0", "1", "2"] as const;

type Key = "scale" | "side" | "width" | "percent";
type Size = readonly [number, number, number];

const LABELS: Readonly<Record<Key, string>> = {
  scale: texts.label,
  side: texts.side,
  width: texts.width,
  percent: texts.percent,
};
const RULES = {
  width: { right: "a width in mm above 0", above: "0", most: "1000" },
  percent: { right: "a per cent above 0, such as 80", above: "0", most: "10000" },
} as const;

export interface SizeFields {
  readonly root: HTMLElement;
  /** What every length is multiplied by; undefined while it is not chosen, or has a fault. */
  scale(unit: ModelUnit | undefined): Quotient | undefined;
}

/** Asks whether the model is cast as drawn, to a width or by per cent. @param size along the axes, in the model's unit */
export function sizeFields(size: Size): SizeFields {
  const form = plannedForm({ name: "model", groups: groupsFor(size), labels: LABELS }, { changed: () => undefined });
  const seats = element("input", { id: "model-seats", type: "checkbox" });
  const note = element("p", { class: "help" });
  const fault = element("p", { class: "fault", role: "status" });
  const root = element(
    "fieldset",
    {},
    element("legend", {}, texts.title),
    ...form.groups,
    element("label", { class: "tick", for: "model-seats" }, seats, texts.seats),
    fault,
    note,
  );
  return {
    root,
    scale(unit) {
      form.field("side").offer(sidesOf(size, unit));
      setText(fault, "");
      setText(note, "");
      if (form.counted().scale === "asDrawn") return Quotient.one;
      try {
        const scale = askedScale(form, size, unit, seats.checked);
        if (scale) setText(note, texts.result(`${showNumber(scale.times(HUNDRED), 2)} %`));
        return scale;
      } catch (error) {
        if (!(error instanceof CostingError)) throw error;
        setText(fault, error.message);
        return undefined;
      }
    },
  };
}

function groupsFor(size: Size) {
  const { figure, choice, group } = formPlan<Key>();
  // The least side that is no thickness is the likeliest width of a link: the middle one.
  const start = [...AXES].sort((a, b) => size[a] - size[b])[1] ?? "0";
  const isTo = (scale: string) => ({ isAsked: (at: (key: Key) => string) => at("scale") === scale });
  return [
    group("size", "", [
      choice("scale", "whole", choicesOf(["asDrawn", "toWidth", "byPercent"], texts)),
      choice("side", "half", sidesOf(size, undefined), { start, ...isTo("toWidth") }),
      figure("width", "half", { required: true, unit: "mm", ...isTo("toWidth") }),
      figure("percent", "whole", { required: true, unit: "%", ...isTo("byPercent") }),
    ]),
  ];
}

function sidesOf(size: Size, unit: ModelUnit | undefined) {
  return AXES.map((axis) => {
    const name = texts.sides[axis];
    return { value: axis, shown: unit ? texts.sideOf(name, showLength(lengthOf(size[axis], unit), "mm")) : name };
  });
}

function askedScale(form: Form<Key>, size: Size, unit: ModelUnit | undefined, seats: boolean): Quotient | undefined {
  const figures = readFigures(form, RULES);
  const { scale, side } = form.counted();
  if (scale === "byPercent") {
    const { percent } = figures ?? {};
    return percent && scaleOf({ kind: "byPercent", percent }, seats);
  }
  const { width: to } = figures ?? {};
  const drawn = size[AXES.find((axis) => axis === side) ?? "0"];
  return to && unit && scaleOf({ kind: "toWidth", from: modelMillimetres(drawn, unit), to }, seats);
}
