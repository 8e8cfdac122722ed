import { CostingError, compoundShrinkage, type ModelUnit, modelMillimetres, Quotient, scaleOf } from "../../src/index";
import { element, setText } from "../controls/element";
import { field } from "../controls/field";
import { showLength, showNumber } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { numberField } from "./numberfield";
import { lengthOf } from "./side";

const { scale: texts, shrinkage: shrinking } = TEXTS.model;
const HUNDRED = Quotient.of("100");
const AXES = [0, 1, 2] as const;

export interface SizeFields {
  readonly root: HTMLElement;
  /** What every length is multiplied by; undefined while it is not chosen, or has a fault. */
  scale(unit: ModelUnit | undefined): Quotient | undefined;
}

/** Asks whether the model is cast as drawn, to a width or by per cent. @param size along the axes, in the model's unit */
export function sizeFields(size: readonly [number, number, number]): SizeFields {
  const kind = field({
    id: "model-scale",
    label: texts.label,
    choices: [
      { value: "asDrawn", shown: texts.asDrawn },
      { value: "toWidth", shown: texts.toWidth },
      { value: "byPercent", shown: texts.byPercent },
    ],
  });
  const side = field({
    id: "model-side",
    label: texts.side,
    choices: AXES.map((axis) => ({ value: String(axis), shown: texts.sides[axis] })),
  });
  const width = numberField(
    { id: "model-width", label: texts.width, unit: "mm", required: true },
    { right: "a width in mm above 0", above: "0", most: "1000" },
  );
  const percent = numberField(
    { id: "model-percent", label: texts.percent, unit: "%", required: true },
    { right: "a per cent above 0, such as 80", above: "0", most: "10000" },
  );
  const seats = element("input", { id: "model-seats", type: "checkbox" });
  const note = element("p", { class: "help whole" });
  const fault = element("p", { class: "fault whole", role: "status" });
  kind.root.classList.add("whole");
  side.root.classList.add("half");
  width.field.root.classList.add("half");
  percent.field.root.classList.add("whole");
  const root = element(
    "fieldset",
    {},
    element("legend", {}, texts.title),
    element(
      "div",
      { class: "fields" },
      kind.root,
      side.root,
      width.field.root,
      percent.field.root,
      element("label", { class: "tick whole", for: "model-seats" }, seats, texts.seats),
      fault,
      note,
    ),
  );
  // The smallest side of a link is most likely its thickness, and the middle one its width.
  side.control.value = String([...AXES].sort((a, b) => size[a] - size[b])[1] ?? 0);

  const asked = (unit: ModelUnit | undefined): Quotient | undefined => {
    if (kind.control.value === "byPercent") {
      const share = percent.read();
      return share && scaleOf({ kind: "byPercent", percent: share }, seats.checked);
    }
    const to = width.read();
    const drawn = size[AXES[Number(side.control.value)] ?? 0];
    return to && unit && scaleOf({ kind: "toWidth", from: modelMillimetres(drawn, unit), to }, seats.checked);
  };

  return {
    root,
    scale(unit) {
      const chosen = kind.control.value;
      side.root.hidden = chosen !== "toWidth";
      width.field.root.hidden = chosen !== "toWidth";
      percent.field.root.hidden = chosen !== "byPercent";
      for (const option of side.control.querySelectorAll("option")) {
        const axis = AXES[Number(option.value)] ?? 0;
        setText(
          option,
          unit ? texts.sideOf(texts.sides[axis], showLength(lengthOf(size[axis], unit), "mm")) : texts.sides[axis],
        );
      }
      setText(fault, "");
      setText(note, "");
      if (chosen === "asDrawn") return Quotient.one;
      try {
        const scale = asked(unit);
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

export interface ShrinkageFields {
  readonly root: HTMLElement;
  /** The share of each length that is lost, all steps together; undefined while one is faulty. */
  shrinkage(): Quotient | undefined;
}

/** Asks how much mould, wax and metal shrink, each in per cent of a length. */
export function shrinkageFields(): ShrinkageFields {
  const steps = (["mould", "wax", "metal"] as const).map((step) =>
    numberField(
      { id: `model-shrink-${step}`, label: shrinking[step], unit: shrinking.percent },
      { right: "a per cent of the length from 0 to 20, such as 1.25", least: "0", most: "20" },
    ),
  );
  const note = element("p", { class: "help whole" });
  for (const step of steps) step.field.root.classList.add("third");
  const root = element(
    "fieldset",
    {},
    element("legend", {}, shrinking.title),
    element("p", { class: "help lead" }, shrinking.help),
    element("div", { class: "fields thirds" }, ...steps.map((step) => step.field.root), note),
  );
  return {
    root,
    shrinkage() {
      const shares: Quotient[] = [];
      let sound = true;
      for (const step of steps) {
        const percent = step.read(Quotient.zero);
        if (percent) shares.push(percent.dividedBy(HUNDRED));
        else sound = false;
      }
      const all = sound ? compoundShrinkage(shares) : undefined;
      setText(note, all?.isPositive() ? shrinking.result(showShareFinely(all)) : "");
      return all;
    },
  };
}

/** Compounded shrinkages differ in their third decimal: 3.475 %. */
function showShareFinely(share: Quotient): string {
  return `${showNumber(share.times(HUNDRED), 4)} %`;
}
