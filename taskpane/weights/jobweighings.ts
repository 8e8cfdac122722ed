import {
  CostingError,
  isBlank,
  markAsWritten,
  parseMark,
  sameLink,
  sameText,
  WEIGH_IN_LABELS,
  type WeighInKey,
} from "../../src/index";
import { button } from "../controls/button";
import { element, say } from "../controls/element";
import type { PressSteps } from "../controls/pressstep";
import { isFree, type JobFigures, type JobPlace, readJob, writeJob } from "../excel/weights/jobweighing";
import type { WeighInRow } from "../excel/weights/scalebook";
import { oneAtATime } from "../running/oneatatime";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { weighedOf } from "./weighedrows";
import type { Writing } from "./weightevents";

const { job: texts } = SCALE_TEXTS;
type Typed = Readonly<Record<WeighInKey, string>>;

/** Keeps a job's cream cells and the table of weighings one: says what both have, and brings the one into the other. */
export function jobWeighings(on: {
  readonly typed: () => Typed;
  readonly fill: (texts: Partial<Record<WeighInKey, string>>) => void;
  readonly write: Writing;
  readonly steps: PressSteps;
}) {
  const said = element("p", { class: "help", role: "status" });
  const take = button(texts.take, "outline", () => takePlace(), "small");
  const put = button(
    texts.put,
    "outline",
    () => void on.steps.run(put, texts.putting, () => on.write(putTotal)),
    "small",
  );
  const root = element(
    "div",
    { class: "jobweighing" },
    said,
    element("div", { class: "actions" }, take.root, put.root),
  );
  let rows: readonly WeighInRow[] = [];
  let places: readonly JobPlace[] = [];
  let job = "";

  const read = oneAtATime(async () => {
    job = on.typed().job.trim();
    places = job === "" ? [] : await readJob(job);
    show();
  });

  function show(): void {
    const place = placeOf(places, on.typed());
    const total = place && totalOf(rows, on.typed(), place);
    const isHeld = place !== undefined && !isFree(place);
    const isSame = place !== undefined && total !== undefined && isTotal(place, total);
    say(said, place ? sentence(place, total) : "");
    said.className = isHeld && total && !isSame ? "warning" : "help";
    take.root.hidden = !isHeld || total !== undefined;
    put.root.hidden = !total || isSame;
    root.hidden = said.textContent === "";
  }

  function takePlace(): void {
    const place = placeOf(places, on.typed());
    if (!place) return;
    const { design, mark, colour } = place;
    const { model } = on.typed();
    on.fill({
      ...(model.trim() === "" ? { model: design } : {}),
      mark,
      ...(colour === "" ? {} : { colour }),
      pieces: shown(place.pieces),
      weight: shown(place.weight),
      ...(isBlank(place.who) ? {} : { who: String(place.who) }),
    });
  }

  async function putTotal(): Promise<void> {
    const place = placeOf(places, on.typed());
    const total = place && totalOf(rows, on.typed(), place);
    if (place && total) await writeJob(place, total);
  }

  return {
    root,
    /** What is typed has changed. */
    typed(): void {
      if (on.typed().job.trim() !== job) void read();
      else show();
    },
    /** The table was read again. */
    rows(all: readonly WeighInRow[]): void {
      rows = all;
      void read();
    },
    /** A row was written or taken out: where the job's cells said what the table said before, they say it again. */
    async follow(typed: Typed, before: readonly WeighInRow[], after: readonly WeighInRow[]): Promise<void> {
      const place = typed.job.trim() === "" ? undefined : placeOf(await readJob(typed.job), typed);
      if (!place) return;
      const known = totalOf(before, typed, place);
      if (known ? isTotal(place, known) : isFree(place)) await writeJob(place, totalOf(after, typed, place));
    },
  };
}

/** The cells that a weighing belongs to: of its stage and alloy, and where several lines have that alloy, of its design. */
function placeOf(places: readonly JobPlace[], { stage, mark, colour, model }: Typed): JobPlace | undefined {
  const fits = places.filter(
    (place) =>
      place.stage === stage &&
      (mark.trim() === "" || sameMark(place.mark, mark)) &&
      (place.colour === "" || sameText(place.colour, colour)),
  );
  const ofDesign = fits.filter(({ design }) => sameText(design, model));
  const [only, other] = ofDesign.length > 0 ? ofDesign : fits;
  return other ? undefined : only;
}

/** All weighings of the job, the link and the stage together; undefined where there are none. */
function totalOf(rows: readonly WeighInRow[], typed: Typed, { stage }: JobPlace): JobFigures | undefined {
  const { job, model, width, mark, colour } = typed;
  const link = { model, width, mark: asWritten(mark), colour };
  const found = weighedOf(rows).flatMap((each, at) =>
    each.stage === stage && sameText(each.job, job) && sameLink(each.link, link) ? [{ ...each, at }] : [],
  );
  if (found.length === 0) return undefined;
  const sum = (figures: readonly number[]) =>
    Number(figures.reduce((total, figure) => total + figure, 0).toPrecision(12));
  const sent = found.flatMap((each) => (each.sent ? [each.sent.toNumber()] : []));
  return {
    pieces: sum(found.map(({ pieces }) => pieces.toNumber())),
    weight: sum(found.map(({ weight }) => weight.grams.toNumber())),
    who: typed.who,
    sent: sent.length > 0 ? sum(sent) : undefined,
  };
}

/** As the tables and job sheets write a mark; as it stands while it is being typed. */
function asWritten(mark: string): string {
  try {
    return markAsWritten(mark, WEIGH_IN_LABELS.mark, true);
  } catch (error) {
    if (error instanceof CostingError) return mark;
    throw error;
  }
}

/** Whether two marks are of one fineness, however they are written. */
function sameMark(one: string, other: string): boolean {
  try {
    return parseMark(one).share.equals(parseMark(other).share);
  } catch (error) {
    if (error instanceof CostingError) return false;
    throw error;
  }
}

function isTotal({ pieces, weight }: JobPlace, total: JobFigures): boolean {
  return pieces === total.pieces && weight === total.weight;
}

function sentence(place: JobPlace, total: JobFigures | undefined): string {
  const { sheet, stage } = place;
  const onJob = texts.figures(shown(place.pieces), shown(place.weight), stage);
  const inTable = total && texts.figures(shown(total.pieces), shown(total.weight), stage);
  if (isFree(place)) return inTable ? texts.tableAlone(sheet, inTable) : "";
  if (!total || !inTable) return texts.jobAlone(sheet, onJob);
  return isTotal(place, total) ? texts.same(sheet, onJob) : texts.differ(sheet, onJob, inTable);
}

function shown(cell: unknown): string {
  return isBlank(cell) ? "" : String(cell);
}
