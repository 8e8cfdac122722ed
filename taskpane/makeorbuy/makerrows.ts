import { type Bid, type Comparison, type LeastOrder, leastOrder } from "../../src/index";
import type { TableRow } from "../controls/table";
import { showMoney, showNumber, showRate } from "../wording/display";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { leadOf, showBound } from "./messages";

const { makers: texts } = SOURCING_TEXTS;

/** What has to be ordered at once to have these pieces from a maker. */
export function leastOrderOf({ offer, cost }: Bid, { weight, quantity }: Comparison): LeastOrder {
  return leastOrder(offer.minimum, { weight, cost }, quantity);
}

/** Every maker who sells this chain, and making it, the cheapest first. At equal cost buying goes before. */
export function makerRows(said: Comparison): readonly TableRow[] {
  const { bids, makePerGram, verdict } = said;
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
