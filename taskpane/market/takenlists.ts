import { button } from "../controls/button";
import { element } from "../controls/element";
import type { AskingCells } from "../excel/market/askingbook";
import { listsOf, takeListOut } from "../excel/market/askinglists";
import { ASKING_TEXTS } from "../wording/askingtexts";

const { list: texts } = ASKING_TEXTS;

export interface TakenLists {
  readonly root: HTMLElement;
  show(rows: readonly AskingCells[]): void;
}

/** Newer lists come first; older ones can be found in the table itself. */
const SHOWN = 5;

/** The lists that were taken in, each to be taken out again in one step. */
export function takenLists(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly done: (sentence: string) => void;
  readonly changed: () => Promise<void>;
}): TakenLists {
  const list = element("ul", { class: "added" });
  const root = element(
    "section",
    { "aria-labelledby": "lists-title" },
    element("h3", { id: "lists-title" }, texts.lists),
    list,
  );
  root.hidden = true;

  function entry({ list: number, rows }: ReturnType<typeof listsOf>[number]): HTMLElement {
    const name = texts.listName(number, texts.rows(rows));
    const out = button(texts.out, "outline", () => void on.attempt(takeOut), "small");
    out.root.setAttribute("aria-label", texts.outOf(name));
    async function takeOut(): Promise<void> {
      out.work(texts.outing);
      try {
        const gone = await takeListOut(number);
        const sentences = [
          gone.tableGone ? texts.goneAll : texts.gone(texts.rows(gone.out)),
          ...(gone.stay > 0 ? [texts.stay(texts.rows(gone.stay))] : []),
        ];
        on.done(sentences.join(" "));
      } finally {
        out.rest();
        await on.changed();
      }
    }
    return element("li", {}, element("span", {}, name), out.root);
  }

  return {
    root,
    show(rows) {
      const lists = listsOf(rows).slice(0, SHOWN);
      root.hidden = lists.length === 0;
      list.replaceChildren(...lists.map(entry));
    },
  };
}
