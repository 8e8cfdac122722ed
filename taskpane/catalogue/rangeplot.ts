import { money, Quotient, type Rates } from "../../src/index";
import { showMoney, showNumber, showSpot } from "../display";
import type { Plot } from "../plots/figure";
import { draw } from "../plots/picture";
import { around, showTicks } from "../plots/scale";
import { TEXTS } from "../texts";
import type { SpotRange } from "./spotrange";

const texts = TEXTS.catalogue.range;

/** One piece of each design against spot: what they would be priced at, what they would cost, and what they are priced at now. */
export function rangePlot({ at, present, lines }: SpotRange, rates: Rates, width: number): Plot {
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
      texts.to(showSpot(lowest.spot), cash(lowest.prices), showSpot(highest.spot), cash(highest.prices)),
      texts.below(highest.belowFloor, showSpot(highest.spot)),
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
        { name: texts.landed, kind: "bought", points: landed, nameAt: "end", nameSide: "below" },
      ],
      flags: [
        { x: present.spot.amount.toNumber(), dots: [now], kind: "order", text: texts.present(showSpot(present.spot)) },
      ],
    }),
    heads: [TEXTS.plots.margin.spot(rates.currency), texts.prices, texts.landed, texts.belowHead],
    rows: at.map((each) => [
      showMoney(each.spot),
      cash(each.prices),
      cash(each.landed),
      showNumber(count(each.belowFloor)),
    ]),
  };
}

function count(whole: number): Quotient {
  return Quotient.of(whole);
}
