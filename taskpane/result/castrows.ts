import {
  colourName,
  DIAMOND_GRAVITY,
  grams,
  Quotient,
  type StoneSet,
  showMark,
  stonesToBuy,
  type Weight,
} from "../../src/index";
import { shownWord } from "../order/choices";
import type { Costed } from "../order/reckoning";
import { showGrams, showMoney, showNumber } from "../wording/display";
import { TEXTS } from "../wording/texts";
import type { Row } from "./resultrows";

const { result } = TEXTS;

/**
 * What is cast of each alloy for all pieces of all lines, and the fine gold to buy for it. No rows for a single piece of one
 * alloy.
 */
export function castRows(costed: Costed): readonly Row[] {
  const { sheets, watch } = costed;
  const [only] = sheets;
  const isOnePiece = sheets.length === 1 && only?.line.quantity.equals(Quotient.one) && only.alloys.length === 1;
  if (isOnePiece && !watch.goldBalance) return [];
  return [
    ...alloysOf(costed).map(({ name, cast, links, closed, open, claspParts }) => ({
      term: result.castOf(name),
      value: showGrams(cast, 2),
      remark: [
        result.linksOf(showNumber(links), showNumber(closed), showNumber(open)),
        ...(claspParts.isZero() ? [] : [result.claspParts(showNumber(claspParts))]),
      ].join(", "),
    })),
    { term: result.goldToBuy, value: showGrams(watch.goldBalance?.bought ?? goldNeeded(costed), 2) },
  ];
}

/** What becomes of the customer's gold, in fine gold; no rows where none is brought. */
export function goldRows({ watch: { goldBalance }, order }: Costed): readonly Row[] {
  if (!goldBalance || !order.ownGold) return [];
  const { brought, needed, used, returned, credit } = goldBalance;
  return [
    { term: result.brought, value: showGrams(brought, 2) },
    { term: result.needed, value: showGrams(needed, 2) },
    ...(order.ownGold.use === "used"
      ? [
          { term: result.usedGold, value: showGrams(used, 2) },
          { term: result.returned, value: showGrams(returned, 2) },
        ]
      : []),
    { term: result.credit, value: showMoney(credit) },
  ];
}

/** The stones to buy for all pieces, those that setting breaks with them. */
export function stoneRows({ sheets }: Costed): readonly Row[] {
  return sheets.flatMap(({ line }, index) =>
    line.stones.map((set) => ({
      term:
        sheets.length > 1 ? result.stonesWhereOf[set.where](TEXTS.form.line(index + 1)) : result.stonesWhere[set.where],
      value: result.stonesOf(showNumber(stonesToBuy(set, line.quantity)), set.kind, set.size),
      ...caratOf(set),
    })),
  );
}

interface AlloyTotal {
  readonly name: string;
  readonly cast: Weight;
  readonly links: Quotient;
  readonly closed: Quotient;
  readonly open: Quotient;
  readonly claspParts: Quotient;
}

/** Alloys with the same mark and colour come from one melt, whatever the line. */
function alloysOf({ sheets }: Costed): readonly AlloyTotal[] {
  const totals = new Map<string, AlloyTotal>();
  for (const { line, alloys } of sheets) {
    for (const alloy of alloys) {
      const name = `${showMark(line.mark)} ${shownWord(colourName(alloy.colour, line)).toLowerCase()}`;
      const before = totals.get(name);
      const plus = (sum: Quotient | undefined, each: Quotient) =>
        (sum ?? Quotient.zero).plus(each.times(line.quantity));
      totals.set(name, {
        name,
        cast: grams(plus(before?.cast.grams, alloy.cast.grams)),
        links: plus(before?.links, alloy.links),
        closed: plus(before?.closed, alloy.closed),
        open: plus(before?.open, alloy.open),
        claspParts: plus(before?.claspParts, alloy.claspParts),
      });
    }
  }
  return [...totals.values()];
}

function goldNeeded({ sheets }: Costed): Weight {
  return grams(
    sheets.reduce((sum, { fineGoldCast, line }) => sum.plus(fineGoldCast.grams.times(line.quantity)), Quotient.zero),
  );
}

function caratOf({ carat, caratFrom }: StoneSet): { readonly remark?: string } {
  if (!carat) return {};
  const shown = showNumber(carat, 3);
  switch (caratFrom) {
    case "scale":
      return { remark: result.caratEach(shown) };
    case "size":
      return { remark: result.caratBySize(shown) };
    case "a diamond's size":
      return { remark: result.caratAsDiamond(shown, showNumber(Quotient.of(DIAMOND_GRAVITY), 2)) };
  }
}
