import type { CostSheet, TypedLine } from "../../src/index";
import type { Costed } from "../order/reckoning";
import type { PartEvents } from "./lazypart";

/** What the parts of the view "decide" need from the pane, besides what every part may ask for. */
export interface DecideEvents extends PartEvents {
  /** The open line of the form: its place, counted from 0, and its texts as the library reads them. */
  readonly line: () => { readonly at: number; readonly typed: TypedLine | undefined };
}

/** The open line of the form's order, costed. */
export interface AskedPiece {
  readonly costed: Costed;
  readonly sheet: CostSheet;
  readonly typed: TypedLine;
}

/** The piece that a part works on; undefined while the order has no price. */
export function askedPiece(on: DecideEvents): AskedPiece | undefined {
  const reckoning = on.order();
  if (reckoning?.kind !== "costed") return undefined;
  const { at, typed } = on.line();
  const sheet = reckoning.costed.sheets[at];
  return sheet && typed ? { costed: reckoning.costed, sheet, typed } : undefined;
}
