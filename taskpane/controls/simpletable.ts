import { element, setText } from "./element";

export interface SimpleTable {
  readonly root: HTMLElement;
  show(rows: readonly TableRow[]): void;
  /** Another caption than the one it was made with. */
  name(caption: string): void;
}

export interface TableRow {
  /** The first is the row's name. */
  readonly cells: readonly string[];
  /** Stands small under the row, as wide as the table. */
  readonly below?: string;
  /** The one to look at. */
  readonly isFirst?: boolean;
}

/** A table with a caption for those who listen; out of sight while it has no rows. */
export function simpleTable(caption: string, heads: readonly string[]): SimpleTable {
  const title = element("caption", { class: "unseen" }, caption);
  const body = element("tbody");
  const head = element("tr", {}, ...heads.map((text) => element("th", { scope: "col" }, text)));
  const root = element(
    "div",
    { class: "tableframe" },
    element("table", { class: "figuretable" }, title, element("thead", {}, head), body),
  );
  root.hidden = true;
  return {
    root,
    name: (words) => setText(title, words),
    show(rows) {
      body.replaceChildren(...rows.flatMap((row) => rowElements(row, heads.length)));
      root.hidden = rows.length === 0;
    },
  };
}

function rowElements({ cells: [name = "", ...others], below = "", isFirst }: TableRow, width: number): HTMLElement[] {
  const kind = [...(isFirst ? ["first"] : []), ...(below === "" ? [] : ["over"])].join(" ");
  const row = element(
    "tr",
    { class: kind === "" ? undefined : kind },
    element("th", { scope: "row" }, name),
    ...others.map((cell) => element("td", {}, cell)),
  );
  if (below === "") return [row];
  return [row, element("tr", { class: "below" }, element("td", { colspan: String(width) }, below))];
}
