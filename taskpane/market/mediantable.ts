import { medianPremiums, type Rates, type SeenPremium } from "../../src/index";
import { element } from "../controls/element";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { WEIGHT_CLASS_WORDS } from "../wording/askingtitles";
import { showRate } from "../wording/display";
import { locale } from "../wording/language";

const { medians: texts } = ASKING_TEXTS.premiums;

/** The middle premium of each class of weights and mark, month by month. */
export function medianTable(seen: readonly SeenPremium[], rates: Rates): HTMLElement {
  const heads = [texts.weightClass, texts.month, texts.median(rates.currency), texts.count];
  let before = "";
  const rows = medianPremiums(seen).map(({ weightClass, mark, month, median, count }) => {
    const group = `${WEIGHT_CLASS_WORDS[weightClass] ?? ""}, ${mark}`;
    const isFirst = group !== before;
    before = group;
    return element(
      "tr",
      { class: isFirst ? "first" : undefined },
      // Said in every row for whoever listens, seen in the first of them.
      element("th", { scope: "row" }, element("span", { class: isFirst ? undefined : "unseen" }, group)),
      element("td", {}, month === "" ? texts.noMonth : showMonth(month)),
      element("td", {}, showRate(median)),
      element("td", {}, String(count)),
    );
  });
  return element(
    "table",
    {},
    element("caption", { class: "unseen" }, texts.title),
    element("thead", {}, element("tr", {}, ...heads.map((head) => element("th", { scope: "col" }, head)))),
    element("tbody", {}, ...rows),
  );
}

/** "2026-05" as the place writes it: May 2026. */
function showMonth(month: string): string {
  const date = new Date(`${month}-01T00:00:00Z`);
  return new Intl.DateTimeFormat(locale(), { year: "numeric", month: "short", timeZone: "UTC" }).format(date);
}
