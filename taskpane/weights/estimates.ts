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
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import type { FieldPlan } from "../controls/field";
import { type SmallField, smallForm, spokenNote, stillToFill } from "../controls/smallform";
import { isRefusal, sentenceOf } from "../excel/run";
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
  readonly fields: Readonly<Record<K, SmallField>>;
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

const half = (label: string, details: Partial<FieldPlan>): SmallField => ({
  plan: { label, required: true, ...details },
  width: "half",
});

const whole = (label: string, details: Partial<FieldPlan>): SmallField => ({ ...half(label, details), width: "whole" });

const WAX: Estimate<WaxKey, MaterialChange> = {
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
  const figures = element("p", { class: "figuresline" });
  const formula = element("code", { class: "formula" });
  const place = button(texts.press, "outline", () => void putFormula(), "small");
  const use = button(texts.use, "outline", takeWeight, "small");
  const results = element(
    "div",
    { class: "scaleresult" },
    figures,
    formula,
    element("div", { class: "actions" }, place.root, use.root),
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
      note.say(texts.placed(await putFormulaIntoCell(written), written));
    } catch (error) {
      note.failed(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    } finally {
      place.rest();
    }
  }

  function takeWeight(): void {
    const parsed = plan.parse(form.typed());
    if (!parsed.ok) return;
    const linksPer = plan.linksPer?.(parsed.value);
    const filled: Partial<Record<LineKey, string>> = {
      linkWeight: plain(parsed.value.weight),
      ...(linksPer === undefined ? {} : { linksPer }),
    };
    on.takeLink(filled);
    const weight = showScale(parsed.value.weight);
    note.say(linksPer === undefined ? texts.used(weight) : texts.usedWithLinks(weight, linksPer));
  }

  return element(
    "section",
    { class: "estimate" },
    element("h3", {}, plan.title),
    element("p", { class: "help" }, plan.words),
    form.root,
    results,
    note.root,
    ...plan.notes.map((sentence) => element("p", { class: "caution" }, sentence)),
  );
}
