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
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import type { FieldPlan } from "../controls/field";
import { type SmallField, smallForm, spokenNote, stillToFill } from "../controls/smallform";
import { isRefusal, sentenceOf } from "../excel/run";
import { putFormulaIntoCell } from "../excel/tables/cellformula";
import { linkOffer } from "../order/linkofferpart";
import type { Working } from "../views/lazypart";
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
  readonly fields: Readonly<Record<K, SmallField>>;
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

const half = (label: string, details: Partial<FieldPlan>): SmallField => ({
  plan: { label, required: true, ...details },
  width: "half",
});

const whole = (label: string, details: Partial<FieldPlan>): SmallField => ({ ...half(label, details), width: "whole" });

const STAGE: SmallField = {
  plan: {
    label: RECAST_LABELS.stage,
    help: texts.stageHelp,
    choices: RECAST_STAGES.map((value) => ({ value, shown: texts.stages[value] })),
  },
  width: "whole",
};

const WAX: Estimate<WaxKey, MaterialChange<"cast">> = {
  name: "wax",
  ...texts.wax,
  labels: WAX_LABELS,
  fields: {
    wax: {
      plan: { label: WAX_LABELS.wax, required: true, unit: SCALE_TEXTS.grams, help: texts.wax.help.wax },
      width: "whole",
    },
    waxDensity: whole(WAX_LABELS.waxDensity, { unit: SCALE_TEXTS.density, help: texts.wax.help.waxDensity }),
    metalDensity: whole(WAX_LABELS.metalDensity, { unit: SCALE_TEXTS.density, help: texts.wax.help.metalDensity }),
  },
  parse: parseWax,
  working: changeInFigures,
  formula: waxFormula,
  notes: texts.wax.cautions,
};

const RECAST: Estimate<RecastKey, MaterialChange> = {
  name: "recast",
  ...texts.recast,
  labels: RECAST_LABELS,
  fields: {
    weight: {
      plan: { label: RECAST_LABELS.weight, required: true, unit: SCALE_TEXTS.grams },
      width: "whole",
    },
    stage: STAGE,
    fromDensity: whole(RECAST_LABELS.fromDensity, { unit: SCALE_TEXTS.density, help: texts.recast.help.fromDensity }),
    toDensity: whole(RECAST_LABELS.toDensity, { unit: SCALE_TEXTS.density, help: texts.recast.help.toDensity }),
  },
  parse: parseRecast,
  working: changeInFigures,
  formula: recastFormula,
  notes: [texts.recast.note],
};

const RESIZE: Estimate<ResizeKey, Resizing> = {
  name: "resize",
  ...texts.resize,
  labels: RESIZE_LABELS,
  fields: {
    weight: {
      plan: { label: RESIZE_LABELS.weight, required: true, unit: SCALE_TEXTS.grams },
      width: "whole",
    },
    stage: STAGE,
    fromWidth: half(RESIZE_LABELS.fromWidth, { numeric: true, unit: SCALE_TEXTS.millimetres }),
    toWidth: half(RESIZE_LABELS.toWidth, {
      numeric: true,
      unit: SCALE_TEXTS.millimetres,
      help: texts.resize.help.toWidth,
    }),
    linksPer: {
      plan: { label: RESIZE_LABELS.linksPer, numeric: true, help: texts.resize.help.linksPer },
      width: "half",
    },
    seats: half(RESIZE_LABELS.seats, {
      required: false,
      choices: YES_NO.map((value) => ({ value, shown: SCALE_TEXTS.yesNo[value] })),
    }),
  },
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
  const figures = element("p", { class: "figuresline" });
  const formula = element("code", { class: "formula" });
  const place = button(texts.press, "outline", () => void putFormula(), "small");
  const offer = linkOffer("outline", { rates: on.rates, take });
  const results = element(
    "div",
    { class: "scaleresult" },
    figures,
    formula,
    offer.root,
    element("div", { class: "actions" }, place.root),
  );
  const form = smallForm<K>(plan.name, plan.title, plan.fields, { changed: show, submitted: demand });
  results.hidden = true;

  function show(): void {
    note.say("");
    const parsed = plan.parse(form.typed());
    form.judge(parsed.ok ? [] : parsed.faults);
    results.hidden = !parsed.ok;
    if (!parsed.ok) return;
    setText(figures, plan.working(parsed.value));
    setText(formula, plan.formula(parsed.value));
    offer.show(parsed.value.weight);
  }

  function demand(): void {
    const parsed = plan.parse(form.typed());
    if (parsed.ok) return;
    form.demand(parsed.faults);
    note.say(stillToFill(parsed.faults, form.typed(), plan.labels));
  }

  async function putFormula(): Promise<void> {
    const parsed = plan.parse(form.typed());
    if (!parsed.ok) return;
    const written = plan.formula(parsed.value);
    place.work(texts.pressing);
    try {
      note.say(texts.placed(await putFormulaIntoCell(written), written, parsed.value.weight.stage));
    } catch (error) {
      note.failed(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    } finally {
      place.rest();
    }
  }

  function take(finished: StagedWeight<"finished">): void {
    const parsed = plan.parse(form.typed());
    if (!parsed.ok) return;
    const linksPer = plan.linksPer?.(parsed.value);
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
    results,
    note.root,
    ...plan.notes.map((sentence) => element("p", { class: "caution" }, sentence)),
  );
  return { root, follow: offer.follow };
}
