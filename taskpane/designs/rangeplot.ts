import { minorDigits, money, Quotient, type Rates, spotMove } from "../../src/index";
import type { Plot } from "../plots/figure";
import { draw } from "../plots/picture";
import { around, showTicks } from "../plots/span";
import { showFixed, showMoney, showMove, showNumber, showSpot } from "../wording/display";
import { TEXTS } from "../wording/texts";
import type { SpotRange } from "./spotrange";

const texts = TEXTS.catalogue.range;

/** One piece of each design against spot: what they would be priced at, what they would cost, and what they are priced at now. */
export function rangePlot({ at, as, present, lines }: SpotRange, rates: Rates, width: number): Plot {
  // A spot that gold's own months lead to ends nowhere.
  const shown = as.length > 0 ? showMoney : showSpot;
  const figure = (amount: Quotient) => showFixed(amount, minorDigits(rates.currency));
  const cash = (amount: Quotient) => showMoney(money(amount, rates.currency));
  const [lowest, highest] = [at[0] ?? present, at.at(-1) ?? present];
  const points = (pick: (each: SpotRange["at"][number]) => Quotient) =>
    at.map((each) => ({ x: each.spot.amount.toNumber(), y: pick(each).toNumber() }));
  const prices = points((each) => each.prices);
  const landed = points((each) => each.landed);
  const now = present.prices.toNumber();
  return {
    title: texts.plotTitle,
    sentence: [
      texts.now(showNumber(count(lines.length)), cash(present.prices), showSpot(present.spot)),
      texts.to(shown(lowest.spot), cash(lowest.prices), shown(highest.spot), cash(highest.prices)),
      texts.below(highest.belowFloor, shown(highest.spot)),
    ].join(" "),
    picture: draw({
      width,
      x: {
        title: TEXTS.plots.margin.spot(rates.currency),
        from: lowest.spot.amount.toNumber(),
        to: highest.spot.amount.toNumber(),
        show: showTicks,
      },
      y: {
        title: texts.sum(rates.currency),
        ...around(
          [...prices, ...landed].map(({ y }) => y),
          0.08,
        ),
        show: (ticks) => ticks.map((tick) => showNumber(count(Math.round(tick)))),
      },
      level: { text: texts.level, y: now, nameAt: "end" },
      curves: [
        { name: texts.prices, kind: "made", points: prices, nameAt: "end", nameSide: "above" },
        { name: texts.landed, kind: "bought", points: landed, nameAt: "start", nameSide: "above" },
      ],
      flags: [
        { x: present.spot.amount.toNumber(), dots: [now], kind: "order", text: texts.present(showSpot(present.spot)) },
      ],
    }),
    heads: [
      TEXTS.plots.margin.spot(rates.currency),
      texts.headIn(texts.prices, rates.currency),
      texts.headIn(texts.landed, rates.currency),
      texts.belowHead,
    ],
    rows: at.map((each, index) => [
      as[index]
        ? texts.moved(figure(each.spot.amount), showMove(spotMove(present.spot, each.spot)), as[index])
        : figure(each.spot.amount),
      figure(each.prices),
      figure(each.landed),
      showNumber(count(each.belowFloor)),
    ]),
  };
}

function count(whole: number): Quotient {
  return Quotient.of(whole);
}
