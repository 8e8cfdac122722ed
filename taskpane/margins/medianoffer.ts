import {
  type MedianNear,
  medianNear,
  minorDigits,
  nameMark,
  type Rates,
  type SeenPremium,
  seenPremium,
} from "../../src/index";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { readAskingBook } from "../excel/market/askingbook";
import { keptAskings } from "../excel/market/seenaskings";
import { type AskedPiece, askedPiece, type DecideEvents } from "../views/askedpiece";
import { WEIGHT_CLASS_WORDS } from "../wording/askingtitles";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { markWords, showMonth, showRate, today } from "../wording/display";

const { seen: texts } = DECIDE_TEXTS.mustBring;

export interface MedianOffer {
  readonly root: HTMLElement;
  /** Reads the table of asking prices anew. */
  read(): Promise<void>;
  show(): void;
}

/** What others ask for pieces like the order's, offered as the market's premium. @param on.used told the premium, as typed with a point */
export function medianOffer(on: DecideEvents & { readonly used: (premium: string) => void }): MedianOffer {
  const words = element("p", { class: "help" });
  const use = button("", "outline", () => on.used(premium), "small");
  const root = element("div", { class: "medianoffer" }, words, element("div", { class: "actions" }, use.root));
  root.hidden = true;
  let premium = "";
  let seen: readonly SeenPremium[] = [];

  function show(): void {
    const { rates } = on.rates();
    const piece = askedPiece(on);
    const near = rates && piece && medianNear(seen, { ...piece.sheet.line, weight: piece.sheet.finishedWeight });
    // A middle below the metal is no market: something of those rows is not what it says.
    root.hidden = !near || near.median.perGram.isNegative();
    if (!rates || !piece || !near) return;
    const digits = minorDigits(rates.currency);
    premium = near.median.perGram.rounded(digits).toFixed(digits);
    setText(words, sentenceOf(near, piece));
    use.name(texts.use(near.count));
  }

  return {
    root,
    show,
    async read() {
      const { rates } = on.rates();
      if (!rates) return;
      const { askings } = await readAskingBook();
      seen = askings.ok ? premiumsIn(askings.rows, rates) : [];
      show();
    },
  };
}

function premiumsIn(rows: Parameters<typeof keptAskings>[0], rates: Rates): readonly SeenPremium[] {
  return keptAskings(rows, rates.currency, today()).seen.flatMap((each) => seenPremium(each, rates.spot) ?? []);
}

function sentenceOf({ weightClass, median, count, from, to }: MedianNear, { sheet }: AskedPiece): string {
  const dated =
    from === "" ? "" : from === to ? texts.inMonth(showMonth(from)) : texts.months(showMonth(from), showMonth(to));
  const what = texts.what(
    markWords(nameMark(sheet.line.mark), sheet.line.hollow),
    WEIGHT_CLASS_WORDS[weightClass] ?? "",
  );
  return texts.median(showRate(median), count, what, dated);
}
