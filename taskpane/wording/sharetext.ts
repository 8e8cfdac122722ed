import { Quotient } from "../../src/index";

/** A share as it may be typed: "30 %". */
export function shareText(share: Quotient): string {
  return `${share.times(Quotient.of(100)).rounded(1).toString()} %`;
}
