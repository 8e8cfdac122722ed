import { element, setText } from "../controls/element";
import { table } from "../controls/table";
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
  const points = table("", []);
  const root = element(
    "section",
    { class: "plot" },
    title,
    sentence,
    picture,
    legend,
    element("details", {}, element("summary", {}, TEXTS.plots.points), points.root),
  );
  return {
    root,
    show(plot) {
      setText(title, plot.title);
      setText(sentence, plot.sentence);
      picture.replaceChildren(plot.picture);
      legend.replaceChildren(...(plot.legend ? [plot.legend] : []));
      points.name(plot.title);
      points.head(plot.heads);
      points.show(plot.rows.map((cells) => ({ cells })));
    },
  };
}
