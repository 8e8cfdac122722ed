import { button } from "../button";
import { element } from "../element";
import { type Addition, listAdditions, takeOut } from "../excel/catalogue/additions";
import { TEXTS } from "../texts";

const texts = TEXTS.catalogue.added;

export interface AddedPart {
  readonly root: HTMLElement;
  refresh(): Promise<void>;
}

/** What the catalogue put into the workbook, each to be taken out again in one step. */
export function addedPart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly done: (sentence: string) => void;
}): AddedPart {
  const list = element("ul", { class: "added" });
  const root = element(
    "section",
    { "aria-labelledby": "added-title" },
    element("h3", { id: "added-title" }, texts.title),
    list,
  );
  root.hidden = true;

  async function refresh(): Promise<void> {
    const additions = await listAdditions();
    root.hidden = additions.length === 0;
    list.replaceChildren(...additions.map(entry));
  }

  function entry(addition: Addition): HTMLElement {
    const what = texts.on(texts.whats[addition.what], addition.sheet);
    const out = button(
      texts.takeOut,
      "outline",
      () =>
        void on.attempt(async () => {
          out.work(texts.taking);
          try {
            await takeOut(addition.id);
            on.done(texts.taken(what));
          } finally {
            out.rest();
            await refresh();
          }
        }),
      "small",
    );
    out.root.setAttribute("aria-label", texts.takeOutOf(what));
    return element("li", {}, element("span", {}, what), out.root);
  }

  return { root, refresh };
}
