import {
  inWeightUnit,
  type LineKey,
  type MaterialChange,
  type Parsed,
  parseRecast,
  parseResizing,
  parseWax,
  RECAST_LABELS,
  RESIZE_LABELS,
  type RecastKey,
  type ResizeKey,
  type Resizing,
  WAX_LABELS,
  type WaxKey,
  YES_NO,
} from "../../src/index";
import { answerBox } from "../controls/answerbox";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { choicesOf, formPlan, type PlannedField } from "../controls/formplan";
import { spokenNote } from "../controls/note";
import { pressSteps } from "../controls/pressstep";
import { readForm } from "../controls/readform";
import { putFormulaIntoCell } from "../excel/tables/cellformula";
import { showNumber } from "../wording/display";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { showScale } from "../wording/shownweight";
import { recastFormula, resizeFormula, waxFormula } from "./formulas";
import { plain } from "./linkrow";
import type { ScaleEvents } from "./weightevents";

const { estimates: texts } = SCALE_TEXTS;

/** What one of the small forms works out: with what, in which words, as which formula. */
interface Estimate<K extends string, T extends { readonly weight: MaterialChange["weight"] }> {
  readonly name: string;
  readonly title: string;
  readonly words: string;
  readonly labels: Readonly<Record<K, string>>;
  readonly fields: readonly PlannedField<K>[];
  readonly parse: (record: Readonly<Record<K, string>>) => Parsed<T>;
  readonly working: (value: T) => string;
  readonly formula: (value: T) => string;
  readonly linksPer?: (value: T) => string | undefined;
  readonly notes: readonly string[];
}

/** Weight from wax, in another alloy and at another width, each with its formula. */
export function estimates(on: ScaleEvents): HTMLElement {
  return element("div", {}, estimate(WAX, on), estimate(RECAST, on), estimate(RESIZE, on));
}

const { grams, density, millimetres } = SCALE_TEXTS;
const wax = formPlan<WaxKey>(texts.wax.help);
const recast = formPlan<RecastKey>(texts.recast.help);
const resize = formPlan<ResizeKey>(texts.resize.help);

const WAX: Estimate<WaxKey, MaterialChange> = {
  name: "wax",
  ...texts.wax,
  labels: WAX_LABELS,
  fields: [
    wax.mark("wax", "whole", { required: true, unit: grams }),
    wax.figures("waxDensity", "whole", { required: true, unit: density }),
    wax.figures("metalDensity", "whole", { required: true, unit: density }),
  ],
  parse: parseWax,
  working: changeInFigures,
  formula: waxFormula,
  notes: texts.wax.cautions,
};

const RECAST: Estimate<RecastKey, MaterialChange> = {
  name: "recast",
  ...texts.recast,
  labels: RECAST_LABELS,
  fields: [
    recast.mark("weight", "whole", { required: true, unit: grams }),
    recast.figures("fromDensity", "whole", { required: true, unit: density }),
    recast.figures("toDensity", "whole", { required: true, unit: density }),
  ],
  parse: parseRecast,
  working: changeInFigures,
  formula: recastFormula,
  notes: [texts.recast.note],
};

const RESIZE: Estimate<ResizeKey, Resizing> = {
  name: "resize",
  ...texts.resize,
  labels: RESIZE_LABELS,
  fields: [
    resize.mark("weight", "whole", { required: true, unit: grams }),
    resize.figure("fromWidth", "half", { required: true, unit: millimetres }),
    resize.figure("toWidth", "half", { required: true, unit: millimetres }),
    resize.figure("linksPer", "half"),
    resize.choice("seats", "half", choicesOf(YES_NO, SCALE_TEXTS.yesNo)),
  ],
  parse: parseResizing,
  working: ({ known, fromWidth, toWidth, weight, linksPer }) =>
    [
      `${inGrams(known)} × (${showNumber(toWidth, 3)} ÷ ${showNumber(fromWidth, 3)})³ ${texts.result(showScale(weight))}`,
      ...(linksPer ? [texts.resize.links(showNumber(linksPer, 4))] : []),
    ].join(". "),
  formula: resizeFormula,
  linksPer: ({ linksPer }) => linksPer?.rounded(6).toFixed(),
  notes: [],
};

function changeInFigures({ known, from, to, weight }: MaterialChange): string {
  return `${inGrams(known)} × ${showNumber(to.value, 3)} ÷ ${showNumber(from.value, 3)} ${texts.result(showScale(weight))}`;
}

function inGrams(weight: MaterialChange["weight"]): string {
  return `${showNumber(inWeightUnit(weight, "g"), 4)} g`;
}

function estimate<K extends string, T extends { readonly weight: MaterialChange["weight"] }>(
  plan: Estimate<K, T>,
  on: ScaleEvents,
): HTMLElement {
  const note = spokenNote();
  const steps = pressSteps(note);
  const result = answerBox();
  const formula = element("code", { class: "formula" });
  const place = button(texts.press, "outline", putFormula, "small");
  const use = button(texts.use, "outline", takeWeight, "small");
  const actions = element("div", { class: "actions" }, place.root, use.root);
  const form = readForm(
    {
      ...plan,
      groups: [{ id: plan.name, title: "", fields: plan.fields, holds: undefined, isAsked: () => true }],
    },
    { changed: show, submitted: () => void form.ask(), lacking: note.say },
  );

  function show(): void {
    note.say("");
    const value = form.read();
    setText(formula, value ? plan.formula(value) : "");
    result.show(value ? [{ text: plan.working(value) }] : [], formula, actions);
  }

  function putFormula(): void {
    const value = form.read();
    if (!value) return;
    const written = plan.formula(value);
    void steps.run(place, texts.pressing, async () => {
      note.say(texts.placed(await putFormulaIntoCell(written), written));
    });
  }

  function takeWeight(): void {
    const value = form.read();
    if (!value) return;
    const linksPer = plan.linksPer?.(value);
    const filled: Partial<Record<LineKey, string>> = {
      linkWeight: plain(value.weight),
      ...(linksPer === undefined ? {} : { linksPer }),
    };
    on.takeLink(filled);
    const weight = showScale(value.weight);
    note.say(linksPer === undefined ? texts.used(weight) : texts.usedWithLinks(weight, linksPer));
  }

  return element(
    "section",
    { class: "estimate" },
    element("h3", {}, plan.title),
    element("p", { class: "help" }, plan.words),
    form.root,
    result.root,
    note.root,
    ...plan.notes.map((sentence) => element("p", { class: "caution" }, sentence)),
  );
}
