import type { Answer, OrderQuestion } from "../../src/index";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { showList } from "../wording/display";
import { QUESTION_TEXTS as texts } from "../wording/questiontexts";

export interface QuestionsEvents {
  /** Types a text into the lines asked about, or goes to where a figure is typed. */
  readonly answered: (answer: Exclude<Answer, { readonly does: "keep" }>, lines: readonly number[]) => void;
  /** A figure stands as it is typed: what is shown is to be followed. */
  readonly kept: () => void;
  /** The last open question was answered beside the button. */
  readonly allAnswered: (sentence: string) => void;
}

export interface Questions {
  readonly root: HTMLElement;
  /** Whether a question is open, so that no quote is made. */
  readonly isOpen: boolean;
  /** Shows those that have no answer yet. @param lines how many the order has */
  show(questions: readonly OrderQuestion[], lines: number): void;
  /** Unfolds them and goes to the first. */
  ask(): void;
}

/**
 * The questions beside the button, folded to one line while a person types. An answer is kept for its figure until the pane is
 * closed, also where the same order is filled in again; another figure is another question.
 */
export function openQuestions(on: QuestionsEvents): Questions {
  const kept = new Set<string>();
  let open: readonly OrderQuestion[] = [];
  let drawn = "";
  const head = element("button", { type: "button", class: "questionshead", "aria-controls": "questions-list" });
  const list = element("ol", { id: "questions-list", class: "questionslist" });
  const root = element("section", { class: "questions", "aria-labelledby": "questions-head" }, head, list);
  head.id = "questions-head";
  head.addEventListener("click", () => unfold(list.hidden));
  root.hidden = true;
  unfold(false);

  function unfold(isUnfolded: boolean): void {
    list.hidden = !isUnfolded;
    head.setAttribute("aria-expanded", String(isUnfolded));
  }

  function answer(asked: OrderQuestion, given: Answer): void {
    if (given.does === "keep") {
      kept.add(asked.key);
      on.kept();
    } else on.answered(given, asked.lines);
    if (given.does === "go") return;
    if (open.length > 0) focusFirst();
    else on.allAnswered(texts.answered);
  }

  function focusFirst(): void {
    const first = list.querySelector<HTMLElement>("[role='group']");
    first?.focus({ preventScroll: true });
    first?.scrollIntoView({ block: "nearest" });
  }

  return {
    root,
    get isOpen() {
      return open.length > 0;
    },
    show(questions, lines) {
      open = questions.filter(({ key }) => !kept.has(key));
      const now = JSON.stringify([open, lines > 1]);
      if (now === drawn) return;
      drawn = now;
      setText(head, texts.title(open.length));
      list.replaceChildren(...open.map((asked, at) => questionElement(asked, at, lines > 1, answer)));
      root.hidden = open.length === 0;
      if (root.hidden) unfold(false);
    },
    ask() {
      unfold(true);
      focusFirst();
    },
  };
}

function questionElement(
  asked: OrderQuestion,
  at: number,
  hasLines: boolean,
  answer: (asked: OrderQuestion, given: Answer) => void,
): HTMLElement {
  const lines = asked.lines.map((line) => String(line + 1));
  const whose = hasLines && lines.length > 0 ? `${texts.ofLines(lines, showList(lines))} ` : "";
  const id = `question-${at}`;
  return element(
    "li",
    {},
    element(
      "div",
      { class: "question", role: "group", tabindex: "-1", "aria-labelledby": id },
      element("p", { id }, `${whose}${asked.sentence}`),
      element(
        "div",
        { class: "actions" },
        ...asked.answers.map((given) => button(given.words, "outline", () => answer(asked, given), "small").root),
      ),
    ),
  );
}
