import { splitWeight, unitsOfWord } from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { ASKING_TEXTS } from "../wording/askingtexts";

const { check: texts } = ASKING_TEXTS;

export interface UnitQuestion {
  readonly root: HTMLElement;
  /** Asks where a weight's unit may be two; nothing else is shown. @param typed the weight as typed */
  show(typed: string): void;
}

/** Asks which unit is meant: an ounce is troy for gold and avoirdupois for all else. @param chosen gets the weight with its unit */
export function unitQuestion(chosen: (weight: string) => void): UnitQuestion {
  const root = element("div", { class: "unitquestion", role: "status" });
  let asked = "";
  root.hidden = true;
  return {
    root,
    show(typed) {
      const { figure, word } = splitWeight(typed);
      const units = unitsOfWord(word);
      root.hidden = units.length < 2;
      if (root.hidden || asked === typed) return;
      asked = typed;
      root.replaceChildren(
        element("p", {}, texts.which(typed.trim())),
        element(
          "div",
          { class: "actions" },
          ...units.map((unit) => {
            const said = texts.units[unit] ?? unit;
            return button(said, "outline", () => chosen(`${figure} ${unit}`), "small").root;
          }),
        ),
      );
    },
  };
}
