import type { LineKey } from "../../src/index";

/** What the parts about weighing need of the order form. */
export interface ScaleEvents {
  /** Puts texts into the open line of the order, as if typed. */
  readonly takeLink: (texts: Readonly<Partial<Record<LineKey, string>>>) => void;
  /** The open line as typed. */
  readonly line: () => Readonly<Partial<Record<LineKey, string>>>;
}

/** Runs a step that writes into the workbook. */
export type Writing = (act: () => Promise<void>) => Promise<void>;
