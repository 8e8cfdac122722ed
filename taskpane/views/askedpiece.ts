import type { CostSheet } from "../../src/index";
import type { Costed } from "../order/reckoning";
import type { PartEvents } from "./lazypart";

/** What the parts of the view "decide" need from the pane, besides what every part may ask for. */
export interface DecideEvents extends PartEvents {
  /** The open line of the form: its place, counted from 0. */
  readonly line: () => number;
}

/** The open line of the form's order, costed. */
export interface AskedPiece {
  readonly costed: Costed;
  readonly sheet: CostSheet;
}

/** The piece that a part works on; undefined while the order has no price. */
export function askedPiece(on: DecideEvents): AskedPiece | undefined {
  const reckoning = on.order();
  if (reckoning?.kind !== "costed") return undefined;
  const sheet = reckoning.costed.sheets[on.line()];
  return sheet && { costed: reckoning.costed, sheet };
}
