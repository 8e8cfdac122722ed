import type { Quotient } from "../../src/index";
import { element, say, setText } from "../controls/element";
import { linkOffer } from "../order/linkofferpart";
import { showGrams, showList } from "../wording/display";
import { TEXTS } from "../wording/texts";
import type { Weighing } from "./weighing";

const { result: texts, solids, unit } = TEXTS.model;

export interface WeightResult {
  readonly root: HTMLElement;
  show(weighing: Weighing, hasUnit: boolean, links: Quotient | undefined, ticked: number): void;
  /** To be called when Rates may have changed. */
  follow(): void;
}

/** What the ticked solids weigh, and the button that takes the weight into the order. */
export function weightResult(on: Parameters<typeof linkOffer>[1]): WeightResult {
  const headline = element("p", { class: "headline" });
  const note = element("p", { class: "help", role: "status" });
  const count = element("p", { class: "caution", role: "status" });
  const rows = element("dl", { class: "sums" });
  const offer = linkOffer("primary", on);
  const root = element(
    "section",
    { class: "weighed", "aria-label": texts.title },
    element("h3", {}, texts.ofOne),
    headline,
    note,
    count,
    rows,
    element("p", { class: "help" }, texts.formula),
    offer.root,
  );
  return {
    root,
    show(weighing, hasUnit, links, ticked) {
      const { link } = weighing;
      say(count, link && links ? countOf(weighing, links, ticked) : "");
      setText(headline, link ? showGrams(link.weight, 3) : "–");
      say(note, missing(weighing, hasUnit));
      offer.show(link);
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
    follow: offer.follow,
  };
}

/** What to look at where the number of links and the solids do not go together. */
function countOf({ areAlike }: Weighing, links: Quotient, ticked: number): string {
  const count = links.toNumber();
  if (areAlike && count === 1) return texts.alike(ticked);
  return !areAlike && count > 1 && count === ticked ? texts.unlike(ticked) : "";
}

/** The sentence about what is still missing for a weight. */
function missing({ faulty, link }: Weighing, hasUnit: boolean): string {
  if (faulty.length > 0) {
    const names = showList(faulty.map((solid) => solids.name(solid + 1)));
    return faulty.length === 1 ? texts.faulty(names) : texts.faultyMany(names);
  }
  if (!hasUnit) return unit.ask;
  return link ? "" : texts.stillOpen;
}
