import { splitWeight, unitsOfWord } from "../../src/index";
import { answerBox } from "../controls/answerbox";
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
  const box = answerBox();
  let asked = "";
  return {
    root: box.root,
    show(typed) {
      if (asked === typed) return;
      asked = typed;
      const { figure, word } = splitWeight(typed);
      const units = unitsOfWord(word);
      if (units.length < 2) return box.show([]);
      const answers = units.map((unit) => {
        const said = texts.units[unit] ?? unit;
        return button(said, "outline", () => chosen(`${figure} ${unit}`), "small").root;
      });
      box.show([{ text: texts.which(typed.trim()) }], element("div", { class: "actions" }, ...answers));
    },
  };
}
