import {
  allowedLossShare,
  COLOURS,
  isBlank,
  judgeWeighed,
  parseRates,
  parseWeighIn,
  STAGES,
  sameText,
  WEIGH_IN_LABELS,
  type WeighIn,
  type WeighInKey,
} from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { type SmallField, smallForm, spokenNote } from "../controls/smallform";
import { suggestions } from "../controls/suggestions";
import type { RatesReading } from "../excel/rates/rates";
import { isRefusal, sentenceOf } from "../excel/run";
import type { LinkRow, ScaleReading } from "../excel/weights/scalebook";
import { addWeighIn, takeWeighInOut, type WrittenWeighIn } from "../excel/weights/scalerow";
import { today } from "../wording/display";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { showScale } from "../wording/shownweight";
import { sayVerdict, showCount } from "./lossmessage";
import { weighedFrom, weighedOf } from "./weighedrows";
import type { Writing } from "./weightevents";

const { weighIn: texts } = SCALE_TEXTS;

const FIELDS: Readonly<Record<WeighInKey, SmallField>> = {
  job: { plan: { label: WEIGH_IN_LABELS.job, help: texts.help.job }, width: "half" },
  stage: {
    plan: {
      label: WEIGH_IN_LABELS.stage,
      choices: STAGES.map((value) => ({ value, shown: texts.stages[value] })),
      start: "cast",
    },
    width: "half",
  },
  model: { plan: { label: WEIGH_IN_LABELS.model, required: true, help: texts.help.model }, width: "whole" },
  width: { plan: { label: WEIGH_IN_LABELS.width, numeric: true, unit: SCALE_TEXTS.millimetres }, width: "half" },
  mark: { plan: { label: WEIGH_IN_LABELS.mark, required: true }, width: "half" },
  colour: {
    plan: {
      label: WEIGH_IN_LABELS.colour,
      choices: COLOURS.map((value) => ({ value, shown: texts.colours[value] })),
    },
    width: "half",
  },
  who: { plan: { label: WEIGH_IN_LABELS.who, help: texts.help.who }, width: "half" },
  pieces: {
    plan: { label: WEIGH_IN_LABELS.pieces, required: true, numeric: true, help: texts.help.pieces },
    width: "half",
  },
  weight: { plan: { label: WEIGH_IN_LABELS.weight, required: true, help: texts.help.weight }, width: "half" },
  note: { plan: { label: WEIGH_IN_LABELS.note }, width: "whole" },
};

/** What is typed anew for each weighing; the rest stays. */
const ANEW = ["pieces", "weight", "note"] as const satisfies readonly WeighInKey[];
const MOST_JOBS = 30;

/** The weigh-in form with what each weighing says. */
export function weighInForm(write: Writing) {
  const note = spokenNote();
  const said = element("div", { class: "scalesaid", role: "status", "aria-live": "polite" });
  const press = button(texts.press, "outline", () => void add());
  const form = smallForm<WeighInKey>("weighin", texts.form, FIELDS, {
    changed: () => {
      form.judge(faults());
      takeAlloyOf(form.typed().model);
    },
    submitted: () => void add(),
  });
  const jobs = suggestions(form.fields.job);
  const models = suggestions(form.fields.model);
  const who = suggestions(form.fields.who);
  let links: readonly LinkRow[] = [];
  let busy = false;

  const faults = () => {
    const parsed = parseWeighIn(form.typed());
    return parsed.ok ? [] : parsed.faults;
  };

  /** A model of one alloy fills the alloy, as far as nothing is typed there. */
  function takeAlloyOf(model: string): void {
    const named = links.filter((link) => sameText(link.model, model));
    const [only] = named;
    if (!only || named.length > 1 || form.typed().mark.trim() !== "") return;
    form.fill({ mark: String(only.mark), width: isBlank(only.width) ? "" : String(only.width) });
    if (!isBlank(only.colour)) form.fill({ colour: String(only.colour) });
    form.judge(faults());
  }

  async function add(): Promise<void> {
    if (busy) return;
    const typed = form.typed();
    const parsed = parseWeighIn(typed);
    if (!parsed.ok) return form.demand(parsed.faults);
    await step(press, texts.working, async () => {
      const written = await addWeighIn(parsed.value, today());
      form.fill(Object.fromEntries(ANEW.map((key) => [key, ""])));
      form.calm();
      form.judge(faults());
      show(parsed.value, written, typed);
      form.fields.pieces.control.focus();
    });
  }

  function show(weighIn: WeighIn, written: WrittenWeighIn, typed: Readonly<Record<WeighInKey, string>>): void {
    const weighed = weighedFrom(weighIn);
    const allowed = allowedBy(written.rates);
    const verdict = judgeWeighed(weighed, weighedOf(written.others), allowed);
    const head = texts.written(showCount(weighIn.pieces), showScale(weighIn.weight), texts.stages[weighIn.stage]);
    const undo = button(texts.undo, "outline", () => void takeOut(), "small");
    const takeOut = () =>
      step(undo, texts.undoing, async () => {
        await takeWeighInOut(written);
        said.replaceChildren();
        form.fill(typed);
        form.judge(faults());
        note.say(texts.undone);
        form.fields.pieces.control.focus();
      });
    said.replaceChildren(
      element("p", { class: "saidhead" }, head),
      ...sayVerdict(weighed, verdict, allowed).map(({ sentence, isWarning }) =>
        element("p", { class: isWarning ? "warning" : undefined }, sentence),
      ),
      undo.root,
    );
  }

  /** Runs a step in the workbook; what it refuses is told here, and what was typed stays. */
  async function step(by: ReturnType<typeof button>, words: string, act: () => Promise<void>): Promise<void> {
    busy = true;
    note.say("");
    by.work(words);
    try {
      await write(act);
    } catch (error) {
      note.failed(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    } finally {
      busy = false;
      by.rest();
    }
  }

  return {
    root: element(
      "div",
      {},
      element("p", { class: "help" }, texts.about),
      form.root,
      element("div", { class: "actions" }, press.root),
      note.root,
      said,
    ),
    show(reading: ScaleReading) {
      links = reading.links.ok ? reading.links.rows : [];
      const weighIns = reading.weighIns.ok ? reading.weighIns.rows : [];
      const newest = reading.quotes.slice(-MOST_JOBS).reverse();
      jobs([...newest, ...weighIns.map((row) => row.job)]);
      models([...links.map((link) => link.model), ...weighIns.map((row) => row.model)]);
      who(weighIns.map((row) => row.who));
      note.read(reading.weighIns.ok ? "" : reading.weighIns.sentence);
    },
    unread: note.read,
  };
}

function allowedBy(rates: RatesReading) {
  const parsed = rates.found ? parseRates(rates.values) : undefined;
  return parsed?.ok ? allowedLossShare(parsed.value.loss) : undefined;
}
