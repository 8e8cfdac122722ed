import { linkButton } from "../controls/button";
import { element, setText } from "../controls/element";
import type { Reckoning } from "../order/reckoning";
import { showList } from "../wording/display";
import { PLATING_TEXTS } from "../wording/platingtexts";

const { ask: texts } = PLATING_TEXTS;

export interface PlatingAsk {
  readonly root: HTMLElement;
  /** Asks while the plating metal of a line of the order is not named. */
  show(reckoning: Reckoning | undefined): void;
}

/** The question for a plating metal, with the two places to answer it: for this order, or once for all orders. */
export function platingAsk(on: {
  readonly nameInOrder: (line: number) => void;
  readonly nameOnRates: () => void;
}): PlatingAsk {
  let first = 0;
  const question = element("p", {});
  const inOrder = linkButton(texts.inOrder, () => on.nameInOrder(first));
  const onRates = linkButton(texts.onRates, on.nameOnRates);
  const root = element("div", { class: "banner noted ask", role: "status" }, question, inOrder, onRates);
  root.hidden = true;
  return {
    root,
    show(reckoning) {
      const costed = reckoning?.kind === "costed" ? reckoning.costed : undefined;
      const lines = costed?.watch.platingUnnamed ?? [];
      root.hidden = lines.length === 0;
      first = lines[0] ?? 0;
      const isOne = costed?.sheets.length === 1;
      const named = showList(lines.map((line) => String(line + 1)));
      setText(question, root.hidden ? "" : isOne ? texts.one : texts.lines(named, lines.length > 1));
    },
  };
}
