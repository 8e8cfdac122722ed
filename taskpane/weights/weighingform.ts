import {
  allowedLossShare,
  isBlank,
  judgeWeighed,
  metalRate,
  parseMark,
  parseRates,
  parseWeighIn,
  type Rate,
  sameText,
  WEIGH_IN_LABELS,
  type WeighIn,
  type WeighInKey,
} from "../../src/index";
import { type AnswerLine, answerBox } from "../controls/answerbox";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { spokenNote } from "../controls/note";
import { pressSteps } from "../controls/pressstep";
import { readForm } from "../controls/readform";
import { suggestions } from "../controls/suggestions";
import type { RatesReading } from "../excel/rates/rates";
import type { LinkRow, ScaleReading } from "../excel/weights/scalebook";
import { addWeighIn, confirmWeighIn, takeWeighInOut, type WrittenWeighIn } from "../excel/weights/scalerow";
import { today } from "../wording/display";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { showScale } from "../wording/shownweight";
import { jobWeighings } from "./jobweighings";
import { sayVerdict, showCount } from "./lossmessage";
import { weighedFrom, weighedOf } from "./weighedrows";
import { TYPED_ANEW, WEIGHING_GROUPS } from "./weighingfields";
import type { Writing } from "./weightevents";

const { weighIn: texts } = SCALE_TEXTS;
const MOST_JOBS = 30;

/** The weigh-in form with what each weighing says. */
export function weighInForm(write: Writing) {
  const note = spokenNote();
  const steps = pressSteps(note);
  const said = answerBox();
  const press = button(texts.press, "outline", add);
  const form = readForm<WeighInKey, WeighIn>(
    { name: "weighin", title: texts.form, groups: WEIGHING_GROUPS, labels: WEIGH_IN_LABELS, parse: parseWeighIn },
    { changed, submitted: add, lacking: note.say },
  );
  const suggest = suggestionsFor(form.field);
  const job = jobWeighings({ typed: form.counted, fill, write, steps });
  let links: readonly LinkRow[] = [];

  function changed(): void {
    const typed = form.counted();
    const [only, other] = links.filter((link) => sameText(link.model, typed.model));
    if (only && !other && typed.mark.trim() === "") form.fill(alloyOf(only));
    form.read();
    job.typed();
  }

  function fill(texts: Partial<Record<WeighInKey, string>>): void {
    form.fill(texts);
    form.read();
    job.typed();
  }

  function add(): void {
    const weighIn = form.ask();
    if (!weighIn) return;
    const typed = form.counted();
    void steps.run(press, texts.working, () =>
      write(async () => {
        const written = await addWeighIn(weighIn, today());
        put(TYPED_ANEW);
        tell(weighIn, written, typed);
        await job.follow(typed, written.others, [...written.others, written.row]);
      }),
    );
  }

  /** Says what was written down, with what can still be done about it. */
  function tell(weighIn: WeighIn, written: WrittenWeighIn, typed: Readonly<Record<WeighInKey, string>>): void {
    const { lines, isDoubted } = saidOf(weighIn, written);
    const undo = button(texts.undo, "outline", () => void takeOut(undo, written, typed), "small");
    const confirm = button(texts.confirm, "outline", () => void confirmed(), "small");
    const confirmed = () =>
      steps.run(confirm, texts.confirming, () =>
        write(async () => {
          tell(weighIn, await confirmWeighIn(written), typed);
          note.say(texts.confirmed);
        }),
      );
    said.show(lines, element("div", { class: "actions" }, ...(isDoubted ? [confirm.root] : []), undo.root));
  }

  function takeOut(
    undo: ReturnType<typeof button>,
    written: WrittenWeighIn,
    typed: Readonly<Record<WeighInKey, string>>,
  ): Promise<void> {
    return steps.run(undo, texts.undoing, () =>
      write(async () => {
        await takeWeighInOut(written);
        said.show([]);
        put(typed);
        note.say(texts.undone);
        await job.follow(typed, [...written.others, written.row], written.others);
      }),
    );
  }

  function put(texts: Readonly<Partial<Record<WeighInKey, string>>>): void {
    form.fill(texts);
    form.read();
    form.goTo("pieces");
  }

  return {
    root: element(
      "div",
      {},
      element("p", { class: "help" }, texts.about),
      form.root,
      job.root,
      element("div", { class: "actions" }, press.root),
      note.root,
      said.root,
    ),
    show(reading: ScaleReading) {
      links = reading.links.ok ? reading.links.rows : [];
      suggest(reading);
      job.rows(reading.weighIns.ok ? reading.weighIns.rows : []);
      note.read(reading.weighIns.ok ? "" : reading.weighIns.sentence);
    },
    unread: note.read,
  };
}

/** A model of one alloy fills the alloy. */
function alloyOf({ mark, width, colour }: LinkRow): Partial<Record<WeighInKey, string>> {
  return {
    mark: String(mark),
    width: isBlank(width) ? "" : String(width),
    ...(isBlank(colour) ? {} : { colour: String(colour) }),
  };
}

/** Words of the workbook, offered while they are typed. */
function suggestionsFor(field: (key: WeighInKey) => Parameters<typeof suggestions>[0]) {
  const [jobs, models, who] = [suggestions(field("job")), suggestions(field("model")), suggestions(field("who"))];
  return ({ links, weighIns, quotes }: ScaleReading) => {
    const rows = weighIns.ok ? weighIns.rows : [];
    jobs([...quotes.slice(-MOST_JOBS).reverse(), ...rows.map((row) => row.job)]);
    models([...(links.ok ? links.rows : []).map((link) => link.model), ...rows.map((row) => row.model)]);
    who(rows.map((row) => row.who));
  };
}

/** What was written down, and what it says beside the weighings before it. */
function saidOf(
  weighIn: WeighIn,
  written: WrittenWeighIn,
): { readonly lines: readonly AnswerLine[]; readonly isDoubted: boolean } {
  const isConfirmed = written.typed.confirmed === "yes";
  const weighed = { ...weighedFrom(weighIn), isConfirmed };
  const allowed = allowedBy(written.rates);
  const verdict = judgeWeighed(weighed, weighedOf(written.others), allowed);
  const head = texts.written(showCount(weighIn.pieces), showScale(weighIn.weight), texts.stages[weighIn.stage]);
  const rate = rateOf(written.rates, weighIn.mark);
  return {
    lines: [{ text: head }, ...sayVerdict(weighed, verdict, allowed, rate, written.leavesOut)],
    isDoubted: verdict.doubt !== undefined && !isConfirmed && written.leavesOut,
  };
}

/** What a gram of the metal costs at spot; undefined where Rates cannot be read, or the pieces are no metal yet. */
function rateOf(rates: RatesReading, mark: string): Rate | undefined {
  const parsed = rates.found ? parseRates(rates.values) : undefined;
  return parsed?.ok && mark !== "" ? metalRate(parsed.value.spot, parseMark(mark)) : undefined;
}

function allowedBy(rates: RatesReading) {
  const parsed = rates.found ? parseRates(rates.values) : undefined;
  return parsed?.ok ? allowedLossShare(parsed.value.loss) : undefined;
}
