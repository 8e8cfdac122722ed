import type { ModelUnit, Solid } from "../../src/index";
import { sizeOf } from "../../src/index";
import { linkButton } from "../controls/button";
import { element, setText } from "../controls/element";
import { showGrams, showNumber } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { faultSentences } from "./notice";
import { showSides } from "./side";
import type { Weighing } from "./weighing";

const { solids: texts } = TEXTS.model;

/** Solids listed at first, and added at each press of "more". */
const STEP = 30;

export interface SolidList {
  readonly root: HTMLElement;
  /** Indexes of the ticked solids. */
  ticked(): ReadonlySet<number>;
  /** Shows volumes, sizes and weights. */
  show(weighing: Weighing, unit: ModelUnit | undefined): void;
}

/** The solids of a file, each to be ticked as metal or left as sprue. Solids with a volume begin ticked. */
export function solidList(solids: readonly Solid[]): SolidList {
  const ticked = new Set(solids.flatMap(({ volume }, place) => (volume === undefined ? [] : [place])));
  const entries: Entry[] = [];
  const list = element("ul", { class: "solids" });
  let shown: [Weighing, ModelUnit | undefined] | undefined;
  const add = () => {
    const from = entries.length;
    for (const [at, solid] of solids.slice(from, from + STEP).entries()) {
      const made = entry(solid, from + at, ticked);
      entries.push(made);
      list.append(made.root);
    }
    const left = solids.length - entries.length;
    more.hidden = left <= 0;
    setText(more, texts.more(Math.min(STEP, left)));
    if (shown) for (const [place, each] of entries.entries()) each.show(place, ...shown);
  };
  const more = linkButton("", add);
  const root = element(
    "fieldset",
    {},
    element("legend", {}, texts.title),
    element("p", { class: "help lead" }, texts.help),
    list,
    more,
  );
  add();
  return {
    root,
    ticked: () => ticked,
    show(weighing, unit) {
      shown = [weighing, unit];
      for (const [place, each] of entries.entries()) each.show(place, weighing, unit);
    },
  };
}

interface Entry {
  readonly root: HTMLElement;
  show(place: number, weighing: Weighing, unit: ModelUnit | undefined): void;
}

function entry(solid: Solid, place: number, ticked: Set<number>): Entry {
  const id = `model-solid-${place}`;
  const box = element("input", { type: "checkbox", id, "aria-describedby": `${id}-about` });
  box.checked = ticked.has(place);
  box.addEventListener("input", () => {
    if (box.checked) ticked.add(place);
    else ticked.delete(place);
  });
  const weight = element("span", { class: "sum" });
  const about = element("p", { class: "help", id: `${id}-about` });
  const faults = faultSentences(solid.faults).map((sentence) => element("p", { class: "fault" }, sentence));
  const size = sizeOf(solid.box);
  return {
    root: element(
      "li",
      {},
      element(
        "p",
        { class: "quotehead" },
        element("label", { class: "tick", for: id }, box, texts.name(place + 1)),
        weight,
      ),
      about,
      ...faults,
    ),
    show(at, weighing, unit) {
      const grams = weighing.weights[at];
      const volume = weighing.volumes[at];
      setText(weight, grams ? showGrams(grams, 3) : "");
      setText(
        about,
        [
          unit ? texts.size(...showSides([size[0], size[1], size[2]], unit)) : texts.unknownSize,
          ...(solid.volume === undefined ? [texts.noVolume] : volume ? [texts.volume(showNumber(volume, 3))] : []),
          ...(solid.hollows > 0 ? [texts.hollows(solid.hollows)] : []),
        ].join(" · "),
      );
    },
  };
}
