import type { PartEvents } from "../views/lazypart";

/** What making or buying needs to know of the rest of the pane. */
export interface SourcingEvents extends PartEvents {
  /** The open line of the order, counted from 0. */
  readonly line: () => number;
}
