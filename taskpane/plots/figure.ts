import { element, setText } from "../controls/element";
import { TEXTS } from "../wording/texts";

/** A plot with what it says in words: a heading, a sentence, its points as a table. */
export interface Plot {
  readonly title: string;
  readonly sentence: string;
  readonly picture: SVGSVGElement;
  /** What the shapes in it mean. */
  readonly legend?: HTMLElement;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface Figure {
  readonly root: HTMLElement;
  show(plot: Plot): void;
}

/** The place of one plot. The picture is for eyes alone: the sentence and the table say the same. */
export function figure(): Figure {
  const title = element("h3");
  const sentence = element("p");
  const picture = element("div", { class: "picture", "aria-hidden": "true" });
  const legend = element("div");
  const table = element("table");
  const root = element(
    "section",
    { class: "plot" },
    title,
    sentence,
    picture,
    legend,
    element("details", {}, element("summary", {}, TEXTS.plots.points), table),
  );
  return {
    root,
    show(plot) {
      setText(title, plot.title);
      setText(sentence, plot.sentence);
      picture.replaceChildren(plot.picture);
      legend.replaceChildren(...(plot.legend ? [plot.legend] : []));
      const heads = plot.heads.map((head) => element("th", { scope: "col" }, head));
      const rows = plot.rows.map(([first = "", ...others]) =>
        element("tr", {}, element("th", { scope: "row" }, first), ...others.map((cell) => element("td", {}, cell))),
      );
      table.replaceChildren(
        element("caption", { class: "unseen" }, plot.title),
        element("thead", {}, element("tr", {}, ...heads)),
        element("tbody", {}, ...rows),
      );
    },
  };
}
