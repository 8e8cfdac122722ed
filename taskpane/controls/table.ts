import { element, setText } from "./element";

export interface Table {
  readonly root: HTMLElement;
  show(rows: readonly TableRow[]): void;
  /** Another caption than the one it was made with. */
  name(caption: string): void;
  /** Other heads than those it was made with. */
  head(heads: readonly string[]): void;
}

/** A row of figures. */
export interface TableRow {
  /** The first is the row's name; the others stand to the right. */
  readonly cells: readonly string[];
  /** Stands small under the row, as wide as the table. */
  readonly below?: string;
  /** The one to look at. */
  readonly isFirst?: boolean;
  /** Its name is that of the row before: said to whoever listens, not seen again. */
  readonly isSameName?: boolean;
}

/** A table with a caption for those who listen; out of sight while it has no rows. */
export function table(caption: string, heads: readonly string[], rows: readonly (readonly string[])[] = []): Table {
  const title = element("caption", { class: "unseen" }, caption);
  const head = element("tr");
  const body = element("tbody");
  const root = element("div", { class: "tableframe" }, element("table", {}, title, element("thead", {}, head), body));
  const made: Table = {
    root,
    name: (words) => setText(title, words),
    head: (words) => head.replaceChildren(...words.map((text) => element("th", { scope: "col" }, text))),
    show(shown) {
      const width = head.childElementCount;
      body.replaceChildren(...shown.flatMap((row) => rowElements(row, width)));
      root.hidden = shown.length === 0;
    },
  };
  made.head(heads);
  made.show(rows.map((cells) => ({ cells })));
  return made;
}

function rowElements(row: TableRow, width: number): readonly HTMLElement[] {
  const { cells, below = "", isFirst, isSameName } = row;
  const [name = "", ...others] = cells;
  const kinds = [isFirst ? "first" : "", below === "" ? "" : "over", isSameName ? "same" : ""].filter(Boolean);
  const shown = element(
    "tr",
    { class: kinds.length === 0 ? undefined : kinds.join(" ") },
    element("th", { scope: "row" }, isSameName ? element("span", { class: "unseen" }, name) : name),
    ...others.map((cell) => element("td", {}, cell)),
  );
  if (below === "") return [shown];
  return [shown, element("tr", { class: "below" }, element("td", { colspan: String(width) }, below))];
}
