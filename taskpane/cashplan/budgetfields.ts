import { BUDGET_KEYS, BUDGET_LABELS, type BudgetKey } from "../../src/index";
import { element } from "../controls/element";
import type { FigureForm } from "../controls/figureform";
import type { SmallField } from "../controls/smallform";
import { DECIDE_TEXTS } from "../wording/decidetexts";

const { budget: texts } = DECIDE_TEXTS;

const REQUIRED: readonly BudgetKey[] = ["price", "pieces"];

/** Every figure of a budget, two in a row. */
export const BUDGET_FIELDS = Object.fromEntries(
  BUDGET_KEYS.map((key): [BudgetKey, SmallField] => [
    key,
    {
      plan: {
        label: BUDGET_LABELS[key],
        numeric: true,
        required: REQUIRED.includes(key),
        ...(key in texts.help ? { help: texts.help[key as keyof typeof texts.help] } : {}),
        ...(key === "pieces" ? { start: "1" } : {}),
      },
      width: "half",
    },
  ]),
) as Record<BudgetKey, SmallField>;

/** The first field of each group, which its heading stands before. */
const GROUPS = { once: "models", each: "metal", plan: "price" } as const satisfies Record<
  keyof typeof texts.groups,
  BudgetKey
>;

/** Puts the groups' headings between the fields. */
export function headGroups({ fields }: FigureForm<BudgetKey>): void {
  for (const group of Object.keys(GROUPS) as (keyof typeof GROUPS)[]) {
    fields[GROUPS[group]].root.before(element("h3", {}, texts.groups[group]));
  }
}
