import { element } from "./element";

/** A small table of figures: its name for a screen reader, its heads, its rows with the row's head first. */
export function figureTable(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): HTMLTableElement {
  return element(
    "table",
    { class: "figuretable" },
    element("caption", { class: "unseen" }, caption),
    element("thead", {}, element("tr", {}, ...heads.map((head) => element("th", { scope: "col" }, head)))),
    element(
      "tbody",
      {},
      ...rows.map(([first = "", ...others]) =>
        element("tr", {}, element("th", { scope: "row" }, first), ...others.map((cell) => element("td", {}, cell))),
      ),
    ),
  );
}
