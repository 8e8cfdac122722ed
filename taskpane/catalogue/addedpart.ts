import { money, Quotient, RATE_ROWS } from "../../src/index";
import { button } from "../button";
import { showList, showSpot } from "../display";
import { element } from "../element";
import { type Addition, listAdditions, takeOut } from "../excel/catalogue/additions";
import { putSpotBack } from "../excel/catalogue/spot";
import { readTakenSpot, type TakenSpot } from "../excel/catalogue/takenspot";
import { TEXTS } from "../texts";

const texts = TEXTS.catalogue.added;

export interface AddedPart {
  readonly root: HTMLElement;
  refresh(): Promise<void>;
}

/** What the catalogue put into the workbook, each to be taken out again in one step, and the old spot to be put back. */
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
    const [additions, spot] = [await listAdditions(), await readTakenSpot()];
    list.replaceChildren(...(spot ? [spotEntry(spot)] : []), ...additions.map(additionEntry));
    root.hidden = list.childElementCount === 0;
  }

  function spotEntry({ currency, is, was, cells }: TakenSpot): HTMLElement {
    const shown = (amount: string) => showSpot(money(Quotient.of(amount), currency));
    const beside = cells.filter(({ key }) => key !== "spot").map(({ key }) => RATE_ROWS[key].label);
    return entry(
      texts.spot(shown(is), shown(was)),
      texts.spotBack,
      texts.spotBackOf(shown(was)),
      texts.puttingBack,
      async () => {
        await putSpotBack();
        return texts.spotIsBack(shown(was), showList(beside));
      },
    );
  }

  function additionEntry(addition: Addition): HTMLElement {
    const what = texts.on(texts.whats[addition.what], addition.sheet);
    return entry(what, texts.takeOut, texts.takeOutOf(what), texts.taking, async () => {
      await takeOut(addition.id);
      return texts.taken(what);
    });
  }

  /** @param undo gives what is said once it is done */
  function entry(what: string, press: string, pressOf: string, busy: string, undo: () => Promise<string>): HTMLElement {
    const out = button(
      press,
      "outline",
      () =>
        void on.attempt(async () => {
          out.work(busy);
          try {
            on.done(await undo());
          } finally {
            out.rest();
            await refresh();
          }
        }),
      "small",
    );
    out.root.setAttribute("aria-label", pressOf);
    return element("li", {}, element("span", {}, what), out.root);
  }

  return { root, refresh };
}
