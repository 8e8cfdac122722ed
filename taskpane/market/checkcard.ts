import type { Fault, Rates } from "../../src/index";
import { element, setText } from "../controls/element";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { showList } from "../wording/display";
import { CHECK_LABELS, type CheckKey } from "./checkfields";
import { sayMetal, sayOurs } from "./checkmessage";
import type { Checked } from "./pricecheck";

const { check: texts } = ASKING_TEXTS;

export interface CheckCard {
  readonly root: HTMLElement;
  /** Shows what a price amounts to; undefined without rates. @param typed what stands in the fields */
  show(checked: Checked | undefined, typed: Readonly<Record<CheckKey, string>>, rates: Rates | undefined): void;
  /** The answer in a sentence or two, for whoever listens. */
  spoken(): string;
}

/** What an asking price says, first against the metal, then against a piece of ours. In sentences: the judgement is the person's. */
export function checkCard(): CheckCard {
  const headline = element("p", { class: "headline" });
  const metal = element("div", { class: "said" });
  const warning = element("div", { class: "watch" });
  const answer = element("p", { class: "answer" });
  const ours = element("div", { class: "said" });
  const basis = element("div", { class: "help basis" });
  const against = element("div", { class: "figures against" }, element("h3", {}, texts.ours), answer, ours, basis);
  const root = element(
    "section",
    { class: "result checkcard", "aria-labelledby": "check-title" },
    element("div", { class: "resulthead" }, element("h2", { id: "check-title" }, texts.result), headline, metal),
    warning,
    against,
  );
  const sentences = (place: HTMLElement, said: readonly string[]) =>
    place.replaceChildren(...said.map((sentence) => element("p", {}, sentence)));

  function showChecked(checked: Extract<Checked, { kind: "checked" }>, rates: Rates): void {
    const { asking, check, piece } = checked;
    const said = sayMetal(asking, check);
    setText(headline, said.headline);
    sentences(metal, said.sentences);
    sentences(warning, said.warning === undefined ? [] : [said.warning]);
    if (checked.ours.found) {
      const { comparison, match } = checked.ours;
      const it = sayOurs(asking, check, comparison, match, piece, rates);
      setText(answer, it.answer);
      sentences(ours, it.sentences);
      sentences(basis, it.basis);
    } else {
      setText(answer, "");
      sentences(ours, []);
      sentences(basis, checked.ours.sentence === "" ? [] : [checked.ours.sentence]);
    }
    against.hidden = !checked.ours.found && checked.ours.sentence === "";
  }

  return {
    root,
    show(checked, typed, rates) {
      const isChecked = checked?.kind === "checked" && rates !== undefined;
      root.classList.toggle("priced", isChecked);
      if (checked?.kind === "checked" && rates) showChecked(checked, rates);
      else {
        setText(headline, rates ? texts.toFill : texts.ratesFirst);
        sentences(metal, checked?.kind === "faulty" ? lacking(checked.faults, typed) : []);
        warning.replaceChildren();
        against.hidden = true;
      }
      for (const each of [metal, warning, answer]) each.hidden = each.childNodes.length === 0;
    },
    spoken: () =>
      [headline, warning, ...(against.hidden ? [] : [answer])]
        .map((each) => each.textContent)
        .join(" ")
        .trim(),
  };
}

/** What is still to fill, and what needs a look. */
function lacking(faults: readonly Fault[], typed: Readonly<Record<CheckKey, string>>): readonly string[] {
  const isTyped = ({ field }: Fault) => typed[field as CheckKey].trim() !== "";
  const labels = (of: readonly Fault[]) => showList(of.map(({ field }) => CHECK_LABELS[field as CheckKey]));
  const [wrong, blank] = [faults.filter(isTyped), faults.filter((fault) => !isTyped(fault))];
  return [
    ...(wrong.length > 0 ? [texts.faulty(labels(wrong))] : []),
    ...(blank.length > 0 ? [texts.still(labels(blank))] : []),
  ];
}
