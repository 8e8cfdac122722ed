import { type Child, element, setText } from "./element";

/** What a field is: a text to type, or one of a few words. */
export interface FieldPlan {
  readonly id: string;
  readonly label: string;
  readonly required?: boolean;
  /** A decimal keypad on touch screens. The input stays a text: a number input loses what was typed. */
  readonly numeric?: boolean;
  readonly unit?: string;
  readonly help?: string;
  /** Folds its caution away behind these words. */
  readonly cautionFold?: string;
  readonly start?: string;
  readonly choices?: readonly Choice[];
}

export interface Choice {
  readonly value: string;
  readonly shown: string;
}

export interface Field {
  readonly root: HTMLElement;
  /** Stands apart from the field, so that it may have the whole width. */
  readonly caution: HTMLElement;
  readonly control: HTMLInputElement | HTMLSelectElement;
  /** Puts a text in, or chooses a word; a word that is no choice is kept and shown, for its fault to name. */
  fill(text: string): void;
  /** Offers other words to choose from; what was chosen stays where it is still among them. */
  offer(choices: readonly Choice[]): void;
  setUnit(unit: string): void;
  setPlaceholder(text: string): void;
  setCaution(sentence: string): void;
  setFault(sentence: string): void;
}

/**
 * A labelled control with its unit, help and fault. Native input and select: inside Fluent's text input the real input lies
 * in a shadow root, where aria-describedby and aria-invalid do not reach it and inputmode cannot be set.
 */
export function field(plan: FieldPlan): Field {
  const control = plan.choices ? choice(plan, plan.choices) : input(plan);
  const unit = note(plan, "unit", plan.unit);
  const help = note(plan, "help", plan.help);
  const caution = note(plan, "caution");
  const cautionRoot = plan.cautionFold
    ? element("details", { class: "caution" }, element("summary", {}, plan.cautionFold), caution)
    : caution;
  const fault = note(plan, "fault", "");
  const notes = [fault, unit, help, caution];
  const describe = () => {
    const ids = notes.filter((each) => each.textContent !== "").map((each) => each.id);
    if (ids.length > 0) control.setAttribute("aria-describedby", ids.join(" "));
    else control.removeAttribute("aria-describedby");
    for (const each of notes) each.hidden = each.textContent === "";
    cautionRoot.hidden = caution.hidden;
  };
  const set = (target: HTMLElement) => (text: string) => {
    setText(target, text);
    describe();
  };
  const root = element(
    "div",
    { class: "field" },
    labelLine(plan),
    element("div", { class: plan.choices ? "box choice" : "box" }, control, unit),
    fault,
    help,
  );
  const showFault = set(fault);
  describe();
  return {
    root,
    caution: cautionRoot,
    control,
    fill: (text) => fill(control, text),
    offer: (choices) => offer(control, choices),
    setUnit: set(unit),
    setPlaceholder(text) {
      if (control instanceof HTMLInputElement) control.placeholder = text;
    },
    setCaution: set(caution),
    setFault(sentence) {
      showFault(sentence);
      root.classList.toggle("faulty", sentence !== "");
      if (sentence === "") control.removeAttribute("aria-invalid");
      else control.setAttribute("aria-invalid", "true");
    },
  };
}

function labelLine(plan: FieldPlan): HTMLElement {
  const label = element("label", { for: plan.id }, plan.label);
  // Outside the label: a mark inside would become part of the field's name.
  const dot: Child = plan.required ? element("span", { class: "required", "aria-hidden": "true" }, "•") : undefined;
  return element("div", { class: "label" }, label, dot);
}

function input(plan: FieldPlan): HTMLInputElement {
  const made = element("input", {
    id: plan.id,
    type: "text",
    inputmode: plan.numeric ? "decimal" : undefined,
    class: plan.numeric ? "number" : undefined,
    autocomplete: "off",
    spellcheck: "false",
    "aria-required": plan.required ? "true" : undefined,
  });
  made.value = plan.start ?? "";
  return made;
}

function choice(plan: FieldPlan, choices: readonly Choice[]): HTMLSelectElement {
  const made = element("select", { id: plan.id }, ...options(choices));
  made.value = plan.start ?? choices[0]?.value ?? "";
  return made;
}

function options(choices: readonly Choice[]): readonly HTMLOptionElement[] {
  return choices.map(({ value, shown }) => element("option", { value }, shown));
}

function note(plan: FieldPlan, kind: "unit" | "help" | "caution" | "fault", text = ""): HTMLElement {
  return element("span", { id: `${plan.id}-${kind}`, class: kind }, text);
}

function fill(control: HTMLInputElement | HTMLSelectElement, text: string): void {
  if (control instanceof HTMLSelectElement) {
    control.querySelector("option[data-own]")?.remove();
    if (![...control.options].some((option) => option.value === text)) {
      control.append(element("option", { value: text, "data-own": true }, text));
    }
  }
  control.value = text;
}

function offer(control: HTMLInputElement | HTMLSelectElement, choices: readonly Choice[]): void {
  const offered = control.querySelectorAll("option");
  const isSame =
    offered.length === choices.length &&
    choices.every(({ value, shown }, at) => offered[at]?.value === value && offered[at].textContent === shown);
  // A list that is open just now would close under the person.
  if (isSame) return;
  const value = offered.length === 0 ? undefined : control.value;
  control.replaceChildren(...options(choices));
  control.value = (choices.find((choice) => choice.value === value) ?? choices[0])?.value ?? "";
}
