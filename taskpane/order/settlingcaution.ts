import { heavierGram, subtractMoney } from "../../src/index";
import { showMoney } from "../wording/display";
import { SETTLING_TEXTS } from "../wording/settlingtexts";
import type { Costed } from "./reckoning";

/** What to know beside the choice to settle by the final weight; of several lines what the one says that a heavier piece serves worst. */
export function settlingCaution(settled: string, costed: Costed | undefined): string {
  if (settled !== "by final weight") return "";
  return [SETTLING_TEXTS.legalScale, ...(costed ? [heavierWords(costed)] : [])].join(" ");
}

function heavierWords({ order, sheets, rates }: Costed): string {
  const lines = sheets.map((sheet, line) => {
    const { brings, costs } = heavierGram(sheet, order, rates);
    return { line, brings, costs, kept: subtractMoney(brings, costs) };
  });
  const worst = lines.reduce((least, each) => (each.kept.amount.isLessThan(least.kept.amount) ? each : least));
  const { brings, costs, kept } = worst;
  const whose = sheets.length > 1 ? SETTLING_TEXTS.heavierLine(worst.line + 1) : SETTLING_TEXTS.heavierPiece;
  const lost = kept.amount.isNegative() ? showMoney(subtractMoney(costs, brings)) : undefined;
  return SETTLING_TEXTS.heavier(whose, showMoney(brings), showMoney(costs), lost, showMoney(kept));
}
