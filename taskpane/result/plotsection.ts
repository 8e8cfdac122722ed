import { element, setText } from "../controls/element";
import type { Costed } from "../order/reckoning";
import { drawnFold } from "../plots/drawnfold";
import { TEXTS } from "../wording/texts";

const { plots: texts } = TEXTS;

export interface PlotSection {
  readonly root: HTMLElement;
  /** Draws the plots of a line, counted from 0, if the section is open and once typing pauses; undefined draws nothing. */
  show(costed: Costed | undefined, line: number): void;
}

/** The plots of an order. What draws them is loaded when the section is first opened. */
export function plotSection(): PlotSection {
  const which = element("span", { class: "holds" });
  const fold = drawnFold<{ readonly costed: Costed; readonly line: number }>(
    [element("span", {}, texts.title), " ", which],
    texts,
    async (place) => {
      const { openDrawing } = await import(/* webpackChunkName: "plots" */ "../plots/drawing");
      const drawing = openDrawing(place);
      return ({ costed, line }, width) => drawing.draw(costed, line, width);
    },
  );
  let shown: readonly [Costed | undefined, number] = [undefined, 0];
  return {
    root: fold.root,
    show(costed, line) {
      if (costed === shown[0] && line === shown[1]) return;
      shown = [costed, line];
      setText(which, costed && costed.sheets.length > 1 ? texts.ofLine(line + 1) : "");
      fold.show(costed && { costed, line });
    },
  };
}
