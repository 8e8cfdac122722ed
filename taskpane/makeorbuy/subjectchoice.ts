import { element } from "../controls/element";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";

const { what: texts } = SOURCING_TEXTS;

const SUBJECTS = ["order", "list", "catalogue"] as const;
/** What is compared: one chain, a list of weights, or all designs. */
export type Subject = (typeof SUBJECTS)[number];

export interface SubjectChoice {
  readonly root: HTMLElement;
  readonly chosen: Subject;
}

/** Three choices in one row, this order first. */
export function subjectChoice(changed: () => void): SubjectChoice {
  let chosen: Subject = "order";
  const choices = SUBJECTS.map((subject) => {
    const input = element("input", {
      type: "radio",
      name: "sourcing-subject",
      value: subject,
      id: `sourcing-${subject}`,
    });
    input.checked = subject === chosen;
    input.addEventListener("change", () => {
      chosen = subject;
      changed();
    });
    return element("label", { class: "subject", for: input.id }, input, element("span", {}, texts[subject]));
  });
  return {
    root: element("fieldset", { class: "subjects" }, element("legend", { class: "unseen" }, texts.legend), ...choices),
    get chosen() {
      return chosen;
    },
  };
}
