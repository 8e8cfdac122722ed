import { floorSpot, type MarginPoint, marginCurve, money, Quotient, timesMoney } from "../../src/index";
import type { Costed } from "../order/reckoning";
import { showMoney, showShare, showSpot } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { ticksOf, xTicks } from "./axis";
import type { Plot } from "./figure";
import type { Flag } from "./flag";
import { draw } from "./picture";
import type { Point } from "./points";
import { around, exactly, isInSight, showShares, showTicks, sorted } from "./span";

const texts = TEXTS.plots.margin;

/** The margin that this order's price, after its discount, leaves while spot moves, with the floor and this order. */
export function marginPlot({ order, sheets, rates }: Costed, line: number, width: number): Plot {
  const sheet = sheets[line];
  if (!sheet) throw new Error("A line that was not costed cannot be drawn");
  const kept = Quotient.one.minus(order.discount);
  /** What the line brings; the customer's price may hold a tax beside it. */
  const price = timesMoney(sheet.netPrice, kept);
  const asked = showMoney(timesMoney(sheet.price, kept));
  const floor = floorSpot(sheet, price, rates);
  const near = floor && isInSight(floor.amount.toNumber(), order.spot.amount.toNumber()) ? floor : undefined;
  const marked = [order.spot, ...(near ? [near] : [])].map((spot) => spot.amount);
  const numbers = marked.map((spot) => spot.toNumber());
  const span = { from: Math.min(...numbers) * 0.75, to: Math.max(...numbers) * 1.25 };
  const at = (spots: readonly Quotient[]) =>
    marginCurve(
      sheet.line,
      price,
      rates,
      spots.map((spot) => money(spot, rates.currency)),
    );

  const curve = at(sorted([exactly(span.from), ...marked, exactly(span.to)])).map(pointOf);
  const ticks = ticksOf(span, xTicks(width));
  const [now, atFloor] = at(marked);
  if (!now) throw new Error("This order's spot has no point");
  const least = rates.leastMargin.toNumber();
  const leastText = showShare(rates.leastMargin);
  const holds = !now.margin.isLessThan(rates.leastMargin);
  const floorText = floor && showMoney(floor);

  return {
    title: texts.title,
    sentence: [
      (order.discount.isZero() ? texts.order : texts.discounted)(
        rates.taxIncluded ? texts.withTax(asked) : asked,
        showShare(now.margin),
        showSpot(order.spot),
      ),
      floorText === undefined ? texts.never(leastText) : (holds ? texts.upTo : texts.onlyUpTo)(leastText, floorText),
      ...(floor && !near ? [texts.outside] : []),
    ].join(" "),
    picture: draw({
      width,
      x: { title: texts.spot(rates.currency), ...span, show: showTicks },
      y: { title: texts.margin, ...around([...curve.map((point) => point.y), least], 0.12), show: showShares },
      level: { text: texts.least(leastText), y: least },
      curves: [{ name: texts.line, kind: "margin", points: curve, nameAt: "start", nameSide: "above" }],
      flags: [
        ...(atFloor && floorText ? [flagOf(atFloor, "crossing", texts.floor(floorText))] : []),
        flagOf(now, "order", texts.thisOrder(showSpot(order.spot))),
      ],
    }),
    heads: [texts.spot(rates.currency), texts.margin],
    rows: at(sorted([...ticks.map(exactly), ...marked])).map(({ spot, margin }) => [
      showMoney(spot),
      showShare(margin),
    ]),
  };
}

function pointOf({ spot, margin }: MarginPoint): Point {
  return { x: spot.amount.toNumber(), y: margin.toNumber() };
}

function flagOf(point: MarginPoint, kind: Flag["kind"], text: string): Flag {
  const { x, y } = pointOf(point);
  return { x, dots: [y], kind, text };
}
