import { compoundShrinkage, Quotient } from "../../src/index";
import { element, setText } from "../controls/element";
import { plannedForm } from "../controls/form";
import { formPlan } from "../controls/formplan";
import { readFigures } from "../controls/readfigures";
import { showNumber } from "../wording/display";
import { TEXTS } from "../wording/texts";

const { shrinkage: texts } = TEXTS.model;
const HUNDRED = Quotient.of("100");
const STEPS = ["mould", "wax", "metal"] as const;
const RULE = { right: "a per cent of the length from 0 to 20, such as 1.25", least: "0", most: "20" };
const RULES = { mould: RULE, wax: RULE, metal: RULE };

const { figure, group } = formPlan<(typeof STEPS)[number]>();
const GROUPS = [
  group(
    "shrinkage",
    "",
    STEPS.map((step) => figure(step, "third", { unit: texts.percent })),
  ),
];

export interface ShrinkageFields {
  readonly root: HTMLElement;
  /** The share of each length that is lost, all steps together; undefined while one is faulty. */
  shrinkage(): Quotient | undefined;
}

/** Asks how much mould, wax and metal shrink, each in per cent of a length. */
export function shrinkageFields(): ShrinkageFields {
  const form = plannedForm({ name: "model-shrink", groups: GROUPS, labels: texts }, { changed: () => undefined });
  const note = element("p", { class: "help" });
  return {
    root: element(
      "fieldset",
      {},
      element("legend", {}, texts.title),
      element("p", { class: "help lead" }, texts.help),
      ...form.groups,
      note,
    ),
    shrinkage() {
      const figures = readFigures(form, RULES);
      const shares = figures && STEPS.flatMap((step) => figures[step]?.dividedBy(HUNDRED) ?? []);
      const all = shares && compoundShrinkage(shares);
      // Compounded shrinkages differ in their third decimal: 3.475 %.
      setText(note, all?.isPositive() ? texts.result(`${showNumber(all.times(HUNDRED), 4)} %`) : "");
      return all;
    },
  };
}
