import { COLOURS, STAGES, type WeighInKey } from "../../src/index";
import { choicesOf, formPlan } from "../controls/formplan";
import { SCALE_TEXTS } from "../wording/scaletexts";

const { weighIn: texts } = SCALE_TEXTS;
const { words, figure, mark, choice, group } = formPlan<WeighInKey>(texts.help);

/** The fields of a weighing. */
export const WEIGHING_GROUPS = [
  group("weighing", "", [
    words("job", "half"),
    choice("stage", "half", choicesOf(STAGES, texts.stages), { start: "cast" }),
    words("model", "whole", { required: true }),
    figure("width", "half", { unit: SCALE_TEXTS.millimetres }),
    mark("mark", "half", { required: true }),
    choice("colour", "half", choicesOf(COLOURS, texts.colours)),
    words("who", "half"),
    figure("pieces", "half", { required: true }),
    mark("weight", "half", { required: true }),
    figure("sent", "half", { isAsked: (at) => at("stage") === "polished" || at("stage") === "finished" }),
    words("note", "whole"),
  ]),
];

/** What is typed anew for each weighing; the rest stays. */
export const TYPED_ANEW = { pieces: "", weight: "", sent: "", note: "" } as const satisfies Partial<
  Record<WeighInKey, string>
>;
