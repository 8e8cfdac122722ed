import type { LineKey } from "../../src/index";
import type { RatesReading } from "../excel/rates/rates";
import type { TakeLink } from "../order/linkoffer";

/** What the parts about weighing need of the order form. */
export interface ScaleEvents {
  readonly takeLink: TakeLink;
  /** Rates as last read. */
  readonly rates: () => RatesReading | undefined;
  /** The open line as typed. */
  readonly line: () => Readonly<Partial<Record<LineKey, string>>>;
}

/** Runs a step that writes into the workbook. */
export type Writing = (act: () => Promise<void>) => Promise<void>;
