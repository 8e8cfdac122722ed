import { implausibleLink, MODEL_UNITS, type ModelUnit, modelMillimetres } from "../../src/index";
import { element, setText } from "../controls/element";
import { showLength } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { lengthOf, showSides } from "./side";

const { unit: texts } = TEXTS.model;

export interface UnitChoice {
  readonly root: HTMLElement;
  /** The unit chosen; undefined until one is. Also warns of a size that no link has. */
  unit(): ModelUnit | undefined;
}

/** Asks which unit a model was drawn in, with its size in each. Nothing is chosen beforehand. */
export function unitChoice(size: readonly [number, number, number]): UnitChoice {
  const inputs = MODEL_UNITS.map((unit) =>
    element("input", { type: "radio", name: "model-unit", id: `model-unit-${unit}`, value: unit }),
  );
  const warning = element("p", { class: "fault", role: "status" });
  const root = element(
    "fieldset",
    { class: "units" },
    element("legend", {}, texts.title),
    element("p", { class: "help lead" }, texts.why),
    ...MODEL_UNITS.map((unit, at) =>
      element(
        "label",
        { class: "tick", for: `model-unit-${unit}` },
        inputs[at],
        element(
          "span",
          {},
          element("b", {}, texts.names[unit]),
          element("span", { class: "remark" }, texts.size(...showSides(size, unit))),
        ),
      ),
    ),
    warning,
  );
  const largest = Math.max(...size);
  return {
    root,
    unit() {
      const chosen = MODEL_UNITS.find((_, at) => inputs[at]?.checked);
      const doubt = chosen && implausibleLink(modelMillimetres(largest, chosen));
      const side = chosen ? showLength(lengthOf(largest, chosen), "mm") : "";
      setText(warning, doubt ? texts[doubt](side) : "");
      warning.hidden = !doubt;
      return chosen;
    },
  };
}
