import {
  inWeightUnit,
  type MaterialChange,
  type Parsed,
  parseRecast,
  parseResizing,
  parseWax,
  RECAST_LABELS,
  RECAST_STAGES,
  RESIZE_LABELS,
  type RecastKey,
  type RecastStage,
  type ResizeKey,
  type Resizing,
  type StagedWeight,
  WAX_LABELS,
  type WaxKey,
  type Weight,
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
import { linkOffer } from "../order/linkofferpart";
import type { Working } from "../views/lazypart";
import { cautionsAt } from "../wording/cautions";
import { showNumber } from "../wording/display";
import { LINK_OFFER_TEXTS } from "../wording/linkoffertexts";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { showScale } from "../wording/shownweight";
import { recastFormula, resizeFormula, waxFormula } from "./formulas";
import type { ScaleEvents } from "./weightevents";

const { estimates: texts } = SCALE_TEXTS;

/** What one of the small forms works out: with what, in which words, as which formula. */
interface Estimate<K extends string, T extends { readonly weight: StagedWeight<RecastStage> }> {
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
export function estimates(on: ScaleEvents): Working & { readonly root: HTMLElement } {
  const all = [estimate(WAX, on), estimate(RECAST, on), estimate(RESIZE, on)];
  return {
    root: element("div", {}, ...all.map(({ root }) => root)),
    follow() {
      for (const each of all) each.follow();
    },
  };
}

const { grams, density, millimetres } = SCALE_TEXTS;
const wax = formPlan<WaxKey>(texts.wax.help);
const recast = formPlan<RecastKey>(texts.recast.help);
const resize = formPlan<ResizeKey>(texts.resize.help);

const STAGES = choicesOf(RECAST_STAGES, texts.stages);

const WAX: Estimate<WaxKey, MaterialChange<"cast">> = {
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
  notes: cautionsAt("wax or resin", ["casting", "burnout", "resin", "alcohol"]),
};

const RECAST: Estimate<RecastKey, MaterialChange> = {
  name: "recast",
  ...texts.recast,
  labels: RECAST_LABELS,
  fields: [
    recast.mark("weight", "whole", { required: true, unit: grams }),
    recast.choice("stage", "whole", STAGES, { help: texts.stageHelp }),
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
    resize.choice("stage", "whole", STAGES, { help: texts.stageHelp }),
    resize.figure("fromWidth", "half", { required: true, unit: millimetres }),
    resize.figure("toWidth", "half", { required: true, unit: millimetres }),
    resize.figure("linksPer", "half"),
    resize.choice("seats", "half", choicesOf(YES_NO, SCALE_TEXTS.yesNo)),
  ],
  parse: parseResizing,
  working: ({ known, fromWidth, toWidth, weight, linksPer }) =>
    [
      `${inGrams(known)} × (${showNumber(toWidth, 3)} ÷ ${showNumber(fromWidth, 3)})³ ${resultOf(weight)}`,
      ...(linksPer ? [texts.resize.links(showNumber(linksPer, 4))] : []),
    ].join(". "),
  formula: resizeFormula,
  linksPer: ({ linksPer }) => linksPer?.rounded(6).toFixed(),
  notes: [],
};

function changeInFigures({ known, from, to, weight }: MaterialChange): string {
  return `${inGrams(known)} × ${showNumber(to.value, 3)} ÷ ${showNumber(from.value, 3)} ${resultOf(weight)}`;
}

function resultOf({ stage, weight }: StagedWeight<RecastStage>): string {
  return texts.result(showScale(weight), stage);
}

function inGrams(weight: Weight): string {
  return `${showNumber(inWeightUnit(weight, "g"), 4)} g`;
}

function estimate<K extends string, T extends { readonly weight: StagedWeight<RecastStage> }>(
  plan: Estimate<K, T>,
  on: ScaleEvents,
): Working & { readonly root: HTMLElement } {
  const note = spokenNote();
  const steps = pressSteps(note);
  const result = answerBox();
  const formula = element("code", { class: "formula" });
  const place = button(texts.press, "outline", putFormula, "small");
  const offer = linkOffer("outline", { rates: on.rates, take });
  const actions = element("div", { class: "actions" }, place.root);
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
    offer.show(value?.weight);
    result.show(value ? [{ text: plan.working(value) }] : [], formula, offer.root, actions);
  }

  function putFormula(): void {
    const value = form.read();
    if (!value) return;
    const written = plan.formula(value);
    void steps.run(place, texts.pressing, async () => {
      note.say(texts.placed(await putFormulaIntoCell(written), written, value.weight.stage));
    });
  }

  function take(finished: StagedWeight<"finished">): void {
    const value = form.read();
    if (!value) return;
    const linksPer = plan.linksPer?.(value);
    on.takeLink({ weight: finished, texts: linksPer === undefined ? {} : { linksPer } });
    const weight = showScale(finished.weight);
    note.say(linksPer === undefined ? LINK_OFFER_TEXTS.used(weight) : LINK_OFFER_TEXTS.usedWithLinks(weight, linksPer));
  }

  const root = element(
    "section",
    { class: "estimate" },
    element("h3", {}, plan.title),
    element("p", { class: "help" }, plan.words),
    form.root,
    result.root,
    note.root,
    ...plan.notes.map((sentence) => element("p", { class: "caution" }, sentence)),
  );
  return { root, follow: offer.follow };
}
