import { medianPremiums, type Rates, type SeenPremium } from "../../src/index";
import { type TableRow, table } from "../controls/table";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { WEIGHT_CLASS_WORDS } from "../wording/askingtitles";
import { markWords, showRate } from "../wording/display";
import { locale } from "../wording/language";

const { medians: texts } = ASKING_TEXTS.premiums;

/** The middle premium of each class of weights and mark, month by month. */
export function medianTable(seen: readonly SeenPremium[], rates: Rates): HTMLElement {
  const medians = table(texts.title, [texts.weightClass, texts.month, texts.median(rates.currency), texts.count]);
  medians.show(medianRows(seen));
  return medians.root;
}

function medianRows(seen: readonly SeenPremium[]): readonly TableRow[] {
  let before = "";
  return medianPremiums(seen).map(({ weightClass, mark, hollow, month, median, count }) => {
    const group = `${WEIGHT_CLASS_WORDS[weightClass] ?? ""}, ${markWords(mark, hollow)}`;
    const isSameName = group === before;
    before = group;
    const when = month === "" ? texts.noMonth : showMonth(month);
    return { cells: [group, when, showRate(median), String(count)], isSameName };
  });
}

/** "2026-05" as the place writes it, short: May 2026. */
function showMonth(month: string): string {
  const date = new Date(`${month}-01T00:00:00Z`);
  return new Intl.DateTimeFormat(locale(), { year: "numeric", month: "short", timeZone: "UTC" }).format(date);
}
