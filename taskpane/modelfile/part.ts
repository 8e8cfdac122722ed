import { Quotient, sizeOf } from "../../src/index";
import { element, say, setText } from "../controls/element";
import { fileDrop } from "../controls/filedrop";
import { plannedForm } from "../controls/form";
import { formPlan } from "../controls/formplan";
import { progressBar } from "../controls/progress";
import type { Progressed } from "../controls/progressed";
import { readFigures } from "../controls/readfigures";
import type { RatesReading } from "../excel/rates/rates";
import type { TakeLink } from "../order/linkoffer";
import type { Working } from "../views/lazypart";
import { cautionsAt } from "../wording/cautions";
import { showGrams, showNumber } from "../wording/display";
import { LINK_OFFER_TEXTS } from "../wording/linkoffertexts";
import { TEXTS } from "../wording/texts";
import { type AlloyAsked, alloyFields } from "./alloyfields";
import { Examiner } from "./examiner";
import type { Report } from "./message";
import { modelNotes, modelWarnings } from "./notice";
import { pictureFold } from "./picturefold";
import { weightResult } from "./result";
import type { Shape } from "./shape";
import { shrinkageFields } from "./shrinkagefields";
import { sizeFields } from "./sizefields";
import { solidList } from "./solidlist";
import { unitChoice } from "./unitchoice";
import { weighSolids } from "./weighing";

const { model: texts } = TEXTS;

export interface ModelEvents {
  readonly takeLink: TakeLink;
  /** Rates, as last read. */
  readonly rates: () => RatesReading | undefined;
  /** The gold that the order asks for now. */
  readonly alloyAsked: () => AlloyAsked;
  readonly say: (sentence: string) => void;
}

/** Opens the part of the pane in which a model file is examined and weighed. */
export function openModel(place: HTMLElement, on: ModelEvents): Working {
  let name = "";
  let closePicture = () => {};
  let progressed: Progressed = { share: 0 };
  let followRates = () => {};
  const examiner = new Examiner({
    progress: (step, share) =>
      tell(
        step === "reading"
          ? { doing: texts.work.opening(name), share: share / 4 }
          : { doing: texts.work.examining(name), share: (1 + 3 * share) / 4 },
      ),
    measured: ({ box, closed }) => {
      const [x, y, z] = sizeOf(box).map((side) => showNumber(Quotient.of(side), 2));
      tell({ ...progressed, found: texts.work.first(x ?? "", y ?? "", z ?? "", closed) });
    },
    examined: (report, shape) => {
      end("");
      drop.shrink(true);
      const shown = examined(name, report, shape, on);
      closePicture = shown.close;
      followRates = shown.follow;
      outcome.replaceChildren(shown.root);
      shown.root.focus({ preventScroll: true });
      on.say(texts.work.done(name, report.solids.length));
    },
    refused: (sentence) => refuse(sentence),
    broken: (said) => refuse(texts.work.broken(said)),
  });
  const bar = progressBar(texts.work.label, () => {
    examiner.cancel();
    end("");
    drop.focus();
    on.say(texts.work.cancelled);
  });
  const drop = fileDrop({ ...TEXTS.model.file, accept: ".stl,model/stl" }, start, end);
  const refusal = element("p", { class: "fault", role: "alert" });
  const outcome = element("div", { class: "outcome" });
  place.replaceChildren(element("p", { class: "help" }, texts.file.intro), drop.root, bar.root, refusal, outcome);
  end("");
  return { follow: () => followRates() };

  function start(file: File): void {
    name = file.name;
    setText(refusal, "");
    refusal.hidden = true;
    closePicture();
    followRates = () => {};
    outcome.replaceChildren();
    drop.shrink(false);
    drop.root.hidden = true;
    progressed = { share: 0 };
    tell({ doing: texts.work.opening(name), share: 0 });
    bar.focus();
    examiner.start(file);
  }

  /** What was found so far stays under the bar. */
  function tell(now: Progressed): void {
    progressed = { ...progressed, ...now };
    bar.show(progressed);
  }

  function refuse(sentence: string): void {
    end(sentence);
    drop.focus();
  }

  function end(sentence: string): void {
    bar.show(undefined);
    drop.root.hidden = false;
    say(refusal, sentence);
  }
}

const { figure, group } = formPlan<"links">({ links: texts.links.help });
const LINK_GROUPS = [group("links", "", [figure("links", "whole", { required: true, start: "1" })])];
const LINKS = { right: "a whole number of links from 1", least: "1", most: "100000", whole: true };

/** One examined model: everything a person chooses about it, and what it weighs. */
function examined(
  name: string,
  report: Report,
  shape: Shape,
  on: ModelEvents,
): Working & { readonly root: HTMLElement; close(): void } {
  const units = unitChoice(shape.size);
  const solids = solidList(report.solids);
  const alloy = alloyFields(on.alloyAsked());
  const size = sizeFields(shape.size);
  const shrinkage = shrinkageFields();
  const links = plannedForm(
    { name: "model", groups: LINK_GROUPS, labels: { links: texts.links.label } },
    { changed: () => undefined },
  );
  const used = element("p", { class: "help", role: "status" });
  const result = weightResult({
    rates: on.rates,
    take(weight) {
      on.takeLink({ weight, texts: {} });
      setText(used, LINK_OFFER_TEXTS.used(showGrams(weight.weight, 3)));
    },
  });
  const picture = pictureFold(report, shape);
  const warnings = modelWarnings(report).map((sentence) => element("li", {}, sentence));
  const root = element(
    "div",
    { class: "examined", tabindex: "-1" },
    element("p", { class: "filename" }, texts.about(name, showNumber(Quotient.of(report.triangles)))),
    warnings.length > 0 ? element("ul", { class: "notices" }, ...warnings) : undefined,
    ...modelNotes(report).map((sentence) => element("p", { class: "help" }, sentence)),
    picture.root,
    units.root,
    solids.root,
    alloy.root,
    size.root,
    shrinkage.root,
    ...links.groups,
    result.root,
    used,
    ...cautionsAt("3-D file", ["resin", "alcohol"]).map((sentence) => element("p", { class: "caution" }, sentence)),
  );
  const weigh = () => {
    setText(used, "");
    const unit = units.unit();
    const scale = size.scale(unit);
    const count = readFigures(links, { links: LINKS })?.links;
    const weighing = weighSolids(report, {
      unit,
      ticked: solids.ticked(),
      density: alloy.density(),
      scale,
      shrinkage: shrinkage.shrinkage(),
      links: count,
    });
    solids.show(weighing, unit);
    result.show(weighing, unit !== undefined, count, solids.ticked().size);
    picture.show(solids.ticked(), unit, scale);
  };
  root.addEventListener("input", weigh);
  weigh();
  return { root, close: picture.close, follow: result.follow };
}
