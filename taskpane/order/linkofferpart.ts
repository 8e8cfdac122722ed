import type { StagedWeight } from "../../src/index";
import { type ButtonLook, button } from "../controls/button";
import { element, setText } from "../controls/element";
import type { RatesReading } from "../excel/rates/rates";
import { type MetalLink, offerOf } from "./linkoffer";

export interface LinkOffer {
  readonly root: HTMLElement;
  /** Offers a link's weight; nothing where there is none. */
  show(link: MetalLink | undefined): void;
  /** Rates may have changed. */
  follow(): void;
}

/** The button that takes a link's weight into the order, finished, or the sentence on what is missing for it. */
export function linkOffer(
  look: ButtonLook,
  on: { readonly rates: () => RatesReading | undefined; readonly take: (finished: StagedWeight<"finished">) => void },
): LinkOffer {
  let link: MetalLink | undefined;
  let offered: StagedWeight<"finished"> | undefined;
  const press = button("", look, () => {
    if (offered) on.take(offered);
  });
  const note = element("p", { class: "help", role: "status" });
  const root = element("div", { class: "linkoffer" }, press.root, note);
  const follow = () => {
    const offer = link && offerOf(link, on.rates());
    offered = offer?.finished;
    if (offer?.finished) press.name(offer.words);
    press.root.hidden = offered === undefined;
    setText(note, offer && !offer.finished ? offer.sentence : "");
    note.hidden = note.textContent === "";
  };
  follow();
  return {
    root,
    show(weight) {
      link = weight;
      follow();
    },
    follow,
  };
}
