import type { Costed } from "../reckoning";
import { figure } from "./figure";
import { marginPlot } from "./margin";
import { sourcingPlot } from "./sourcing";

export interface Drawing {
  /** Draws the plots of an order. @param width pixels there are */
  draw(costed: Costed, width: number): void;
}

/** Opens both plots in their place. */
export function openDrawing(place: HTMLElement): Drawing {
  const sourcing = figure();
  const margin = figure();
  place.replaceChildren(sourcing.root, margin.root);
  return {
    draw(costed, width) {
      sourcing.show(sourcingPlot(costed, width));
      margin.show(marginPlot(costed, width));
    },
  };
}
