import { TEXTS } from "../wording/texts";
import { element, setText } from "./element";
import type { Field } from "./field";
import type { PlannedGroup } from "./formplan";

export interface GroupFrame {
  readonly root: HTMLElement;
  /** What it holds, for when it is folded, and how many faults are shown in it. */
  say(holds: string, faults: number): void;
}

/** What stands around a group's fields: nothing, a heading, or a fold that says what it holds. */
export function groupFrame<K extends string>(group: PlannedGroup<K>, shownOf: (key: K) => Field): GroupFrame {
  const fields = element(
    "div",
    { class: "fields" },
    ...group.fields.flatMap(({ key, cautions }) => [
      shownOf(key).root,
      ...cautions.map((about) => shownOf(about).caution),
    ]),
  );
  if (!group.holds) {
    const isPlain = group.title === "";
    const root = isPlain ? fields : element("fieldset", {}, element("legend", {}, group.title), fields);
    return { root, say: () => undefined };
  }
  const what = element("span", { class: "holds" });
  return {
    root: element(
      "details",
      { class: "group" },
      element("summary", {}, element("span", {}, group.title), " ", what),
      element("fieldset", {}, element("legend", { class: "unseen" }, group.title), fields),
    ),
    say(holds, faults) {
      setText(what, faults > 0 ? TEXTS.form.holds.faults(faults) : holds);
      what.classList.toggle("fault", faults > 0);
    },
  };
}
