import { EXTRA_LABELS, type ExtraKey } from "../../src/index";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import type { Entries } from "../controls/entries";
import { type Form, type FormEvents, plannedForm } from "../controls/form";
import type { PlannedGroup } from "../controls/formplan";
import { TEXTS } from "../wording/texts";

const { form: texts } = TEXTS;

/** One free line of an order: its fields, and the button that takes it out. */
export interface FreeLine {
  readonly root: HTMLElement;
  readonly form: Form<ExtraKey>;
  /** @param number counted from 1 */
  name(number: number): void;
}

export function freeLine(
  groups: readonly PlannedGroup<ExtraKey>[],
  name: string,
  entries: Entries<ExtraKey>,
  on: FormEvents,
  removed: () => void,
): FreeLine {
  const form = plannedForm({ name, groups, labels: EXTRA_LABELS }, on);
  const legend = element("legend", { class: "unseen" });
  const remove = button(texts.removeExtra, "outline", removed, "small");
  form.hold(entries);
  return {
    root: element("fieldset", { class: "extra" }, legend, ...form.groups, remove.root),
    form,
    name(number) {
      setText(legend, texts.extra(number));
      remove.root.setAttribute("aria-label", texts.removeExtraOf(number));
    },
  };
}
