import type { Quotient, Weight } from "../../src/index";
import { button } from "../controls/button";
import { element, say, setText } from "../controls/element";
import { showGrams, showList } from "../wording/display";
import { TEXTS } from "../wording/texts";
import type { Weighing } from "./weighing";

const { result: texts, solids, unit } = TEXTS.model;

/** A scale of the bench reads no finer than a tenth of a milligram. */
const DECIMALS = 4;

export interface WeightResult {
  readonly root: HTMLElement;
  show(weighing: Weighing, hasUnit: boolean, links: Quotient | undefined): void;
}

/** What the ticked solids weigh, and the button that takes the weight into the order. */
export function weightResult(use: (grams: string, shown: string) => void): WeightResult {
  let link: Weight | undefined;
  const headline = element("p", { class: "headline" });
  const note = element("p", { class: "help", role: "status" });
  const rows = element("dl", { class: "sums" });
  const press = button(texts.use, "primary", () => {
    if (link) use(link.grams.rounded(DECIMALS).toString(), showGrams(link, DECIMALS));
  });
  const root = element(
    "section",
    { class: "weighed", "aria-label": texts.title },
    element("h3", {}, texts.ofOne),
    headline,
    note,
    rows,
    element("p", { class: "help" }, texts.formula),
    press.root,
  );
  return {
    root,
    show(weighing, hasUnit, links) {
      link = weighing.link;
      setText(headline, link ? showGrams(link, 3) : "–");
      say(note, missing(weighing, hasUnit));
      press.root.hidden = link === undefined;
      const more = [
        ...(weighing.ticked && links && !links.equals(links.dividedBy(links))
          ? [[texts.ticked, weighing.ticked] as const]
          : []),
        ...(weighing.withSprue ? [[texts.withSprue, weighing.withSprue] as const] : []),
      ];
      rows.replaceChildren(
        ...more.map(([name, weight]) =>
          element("div", { class: "row" }, element("dt", {}, name), element("dd", {}, showGrams(weight, 3))),
        ),
      );
      rows.hidden = more.length === 0;
    },
  };
}

/** What is still missing for a weight. */
function missing({ faulty, link }: Weighing, hasUnit: boolean): string {
  if (faulty.length > 0) {
    const names = showList(faulty.map((solid) => solids.name(solid + 1)));
    return faulty.length === 1 ? texts.faulty(names) : texts.faultyMany(names);
  }
  if (!hasUnit) return unit.ask;
  return link ? "" : texts.stillOpen;
}
