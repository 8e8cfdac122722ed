import { type Child, element } from "../controls/element";

/** What the shapes of a plot mean, each beside a sample of it. */
export function legend(entries: readonly { readonly sample: Child; readonly text: string }[]): HTMLElement {
  return element(
    "p",
    { class: "legend help" },
    ...entries.map(({ sample, text }) => element("span", {}, sample, " ", text)),
  );
}
