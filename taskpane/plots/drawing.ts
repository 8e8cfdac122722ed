import type { Costed } from "../order/reckoning";
import { figure } from "./figure";
import { marginPlot } from "./marginplot";
import { sourcingPlot } from "./sourcingplot";

export interface Drawing {
  /** Draws the plots of a line, counted from 0. @param width pixels there are */
  draw(costed: Costed, line: number, width: number): void;
}

/** Opens both plots in their place. */
export function openDrawing(place: HTMLElement): Drawing {
  const sourcing = figure();
  const margin = figure();
  place.replaceChildren(sourcing.root, margin.root);
  return {
    draw(costed, line, width) {
      // Ready-made chain is solid: there is nothing to draw a hollow piece against.
      sourcing.root.hidden = costed.sheets[line]?.line.hollow === true;
      if (!sourcing.root.hidden) sourcing.show(sourcingPlot(costed, line, width));
      margin.show(marginPlot(costed, line, width));
    },
  };
}
