import type { Bid, Comparison } from "../../src/index";
import type { TableRow } from "../controls/table";
import { showMoney, showNumber, showRate } from "../wording/display";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { leadOf, leastOrderOf, showBound } from "./messages";

const { makers: texts } = SOURCING_TEXTS;

/** Every maker of this chain, those too who sell only more at once, and making it; the cheapest first. At equal cost buying goes before. */
export function makerRows(said: Comparison): readonly TableRow[] {
  const { makePerGram, verdict } = said;
  const bids = [...said.bids, ...said.larger].sort((a, b) => a.perGram.perGram.compare(b.perGram.perGram));
  const made: TableRow = {
    cells: [texts.made, showRate(makePerGram), texts.nothingTied, texts.nothingTied],
    isFirst: verdict === "make",
  };
  const cheaper = bids.filter(({ saving }) => !saving.amount.isPositive());
  const dearer = bids.filter((bid) => !cheaper.includes(bid));
  const row = (bid: Bid) => bidRow(bid, said, verdict === "buy" && bid === said.best);
  return [...cheaper.map(row), made, ...dearer.map(row)];
}

function bidRow(bid: Bid, said: Comparison, isFirst: boolean): TableRow {
  const { seller, offer, perGram } = bid;
  const { pieces, cash, spare, tiedUp } = leastOrderOf(bid, said);
  const below = [
    ...(spare.isZero() ? [] : [texts.fewest(texts.pieces(showNumber(pieces)))]),
    ...(offer.from.grams.isZero() ? [] : [texts.fromClass(showBound(offer.from))]),
    ...(offer.lead === "" ? [] : [texts.lead(leadOf(offer.lead))]),
    ...(offer.note === "" ? [] : [offer.note]),
  ];
  return {
    cells: [
      seller.maker === "" ? texts.ofRates : seller.maker,
      showRate(perGram),
      texts.leastOrder(texts.pieces(showNumber(pieces)), showMoney(cash)),
      spare.isZero() ? texts.nothingTied : showMoney(tiedUp),
    ],
    below: below.join(", "),
    isFirst,
  };
}
