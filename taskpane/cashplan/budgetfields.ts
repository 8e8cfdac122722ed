import { type BudgetKey, EACH_KEYS, ONCE_KEYS } from "../../src/index";
import { formPlan } from "../controls/formplan";
import { DECIDE_TEXTS } from "../wording/decidetexts";

const { budget: texts } = DECIDE_TEXTS;
const { figure, money, group } = formPlan<BudgetKey>(texts.help);

/** Every figure of a budget, two in a row. */
export const BUDGET_GROUPS = [
  group(
    "once",
    texts.groups.once,
    ONCE_KEYS.map((key) => money(key, "half")),
  ),
  group(
    "each",
    texts.groups.each,
    [...EACH_KEYS, "castingMinimum" as const].map((key) => money(key, "half")),
  ),
  group("plan", texts.groups.plan, [
    money("price", "half", { required: true }),
    figure("deposit", "half", { unit: DECIDE_TEXTS.share }),
    figure("pieces", "half", { required: true, start: "1" }),
    money("cash", "half"),
  ]),
];
