import fc from "fast-check";
import Fraction from "fraction.js";
import { type Order, parseOrder } from "../../src/order/order";
import { parseRates, type Rates } from "../../src/rates/rates";
import type { Parsed } from "../../src/reading/parse";
import { type Figure, figures, marks, positives, rounded, upToStep } from "./reference";
import { orderOfRow } from "./typedorders";

/** A workshop's rates as its sheet holds them; figures of common practice. */
export const RATES = {
  workshop: "Bench & Co",
  workshopContact: "1 Low Street",
  currency: "USD",
  spot: "3110.34768",
  castingFee: "1.50",
  castingMinimum: "0",
  loss: "2",
  lossBasis: "grams",
  costBasis: "quick",
  labourFlat: "50",
  labourPerLink: "0",
  labourPerGram: "0",
  labourMinimum: "0",
  surcharge: "3.25",
  settingFee: "1",
  plating: "",
  priceBy: "markup",
  markup: "0.30",
  margin: "",
  premium: "",
  leastMargin: "0.10",
  priceStep: "5",
  taxName: "Sales tax",
  tax: "0",
  deposit: "0.5",
  validity: "7",
  nextNumber: "1001",
} as const;

/** An order as a form holds it: 24 in at 4 links an inch, 96 links of 2 g. */
export const ORDER = {
  customer: "A. Customer",
  design: "Curb 8 mm",
  mark: "750",
  colour: "yellow",
  plated: "",
  length: "24",
  lengthUnit: "in",
  linksPer: "4",
  linksPerUnit: "in",
  linkWeight: "2",
  claspLength: "",
  claspWeight: "",
  claspCost: "",
  stoneCount: "",
  stonePrice: "",
  settingFee: "",
  quantity: "1",
  spot: "",
  discount: "",
} as const;

export type Record_ = Readonly<Record<string, unknown>>;

export function read<T>(parsed: Parsed<T>): T {
  if (parsed.ok) return parsed.value;
  throw new Error(parsed.faults.map((fault) => fault.sentence).join("\n"));
}

export const ratesOf = (changes: Record_ = {}): Rates => read(parseRates({ ...RATES, ...changes }));

export const orderOf = (changes: Record_ = {}, rates: Rates = ratesOf()): Order =>
  read(parseOrder(orderOfRow({ ...ORDER, ...changes }), rates));

/** Several orders of one customer as one order of several lines. */
export function together(orders: readonly Order[]): Order {
  const first = orders[0];
  if (!first) throw new Error("no order to put together");
  return { ...first, lines: orders.flatMap((order) => order.lines) };
}

const texts = <R extends Readonly<Record<string, Figure | string>>>(record: R): Record_ =>
  Object.fromEntries(
    Object.entries(record).map(([key, value]) => [key, typeof value === "string" ? value : value.text]),
  );

const rateFigures = fc.record({
  spot: positives(5000, 2),
  castingFee: figures(0, 10, 2),
  castingMinimum: figures(0, 300, 2),
  labourFlat: figures(0, 200, 2),
  labourPerLink: figures(0, 2, 2),
  labourPerGram: figures(0, 3, 2),
  labourMinimum: figures(0, 200, 2),
  surcharge: figures(0, 8, 2),
  settingFee: figures(0, 5, 2),
  plating: figures(0, 60, 2),
  markup: figures(0.01, 2, 4),
  margin: figures(0.01, 0.9, 4),
  premium: figures(0, 40, 2),
  leastMargin: figures(0, 0.5, 3),
  tax: figures(0, 0.27, 4),
  deposit: figures(0, 1, 2),
});
const loss = fc.oneof(
  fc.record({ lossBasis: fc.constantFrom("cast", "finished"), loss: figures(0, 0.3, 4) }),
  fc.record({ lossBasis: fc.constant("grams"), loss: figures(0, 9, 3) }),
);
const rateWords = fc.record({
  costBasis: fc.constantFrom("finished", "quick"),
  priceBy: fc.constantFrom("markup", "margin", "premium"),
  currency: fc.constantFrom("USD", "JPY", "KWD"),
});
const step = fc.constantFrom("0", "0.05", "1", "5", "10");
const orderFigures = fc.record({
  length: figures(20, 90, 2),
  linksPer: figures(1, 8, 2),
  linkWeight: positives(9, 3),
  claspLength: figures(0, 9, 1),
  claspWeight: figures(0, 9, 3),
  claspCost: figures(0, 300, 2),
  stoneCount: figures(0, 24, 0),
  stonePrice: figures(0, 90, 2),
  quantity: figures(1, 12, 0),
});
const orderWords = fc.record({
  lengthUnit: fc.constantFrom("in", "cm", "mm"),
  linksPerUnit: fc.constantFrom("in", "cm"),
  colour: fc.constantFrom("yellow", "rose", "white", "green"),
  plated: fc.constantFrom("", "plated", "not plated"),
});

export interface RandomRates {
  readonly record: Record_;
  readonly figures: typeof rateFigures extends fc.Arbitrary<infer F> ? F : never;
  readonly words: typeof rateWords extends fc.Arbitrary<infer W> ? W : never;
  readonly lossBasis: string;
  readonly loss: Figure;
  readonly step: Fraction;
  readonly digits: number;
}

const DIGITS: Readonly<Record<string, number>> = { USD: 2, JPY: 0, KWD: 3 };

export const randomRates: fc.Arbitrary<RandomRates> = fc
  .tuple(rateFigures, loss, rateWords, step)
  .map(([amounts, lost, words, priceStep]) => ({
    record: { ...RATES, ...texts(amounts), ...texts(lost), ...words, priceStep },
    figures: amounts,
    words,
    lossBasis: lost.lossBasis,
    loss: lost.loss,
    step: new Fraction(priceStep),
    digits: DIGITS[words.currency] ?? Number.NaN,
  }));

export interface RandomOrder {
  readonly record: Record_;
  readonly figures: typeof orderFigures extends fc.Arbitrary<infer F> ? F : never;
  readonly words: typeof orderWords extends fc.Arbitrary<infer W> ? W : never;
  readonly share: Fraction;
}

export const randomOrder: fc.Arbitrary<RandomOrder> = fc
  .tuple(orderFigures, orderWords, marks)
  .map(([amounts, words, mark]) => ({
    // All stones in one link, so that there is always room for them.
    record: {
      ...ORDER,
      ...texts(amounts),
      ...words,
      mark: mark.text,
      stoneCount: amounts.stoneCount.text === "0" ? "0" : "1",
      stonesPerLink: amounts.stoneCount.text === "0" ? "" : amounts.stoneCount.text,
    },
    figures: amounts,
    words,
    share: mark.share,
  }))
  .filter(hasRoomForALink);

/** A clasp of 9 mm on a chain of 20 leaves no room for a link of an inch: that is refused, and no order. */
function hasRoomForALink({ figures: { length, claspLength, linksPer }, words }: RandomOrder): boolean {
  const room = length.fraction.sub(claspLength.fraction).mul(MM[words.lengthUnit] ?? "");
  return room.mul(linksPer.fraction).gte(new Fraction(MM[words.linksPerUnit] ?? "").div(2));
}

const MM: Readonly<Record<string, string>> = { in: "25.4", cm: "10", mm: "1" };
const larger = (a: Fraction, b: Fraction) => (a.lt(b) ? b : a);
export const exactly = (value: Fraction, digits: number) => new Fraction(rounded(value, digits));

/** One piece costed in exact rationals, by the definitions of the trade and the notes of the Rates sheet. */
export function reckon(rates: RandomRates, order: RandomOrder) {
  const rate = (key: keyof RandomRates["figures"]) => rates.figures[key].fraction;
  const ordered = (key: keyof RandomOrder["figures"]) => order.figures[key].fraction;
  const unit = MM[order.words.lengthUnit] ?? "";
  const length = ordered("length").mul(unit);
  const clasp = ordered("claspLength").mul(unit);
  const pitch = new Fraction(MM[order.words.linksPerUnit] ?? "").div(ordered("linksPer"));
  const links = length.sub(clasp).div(pitch).add("0.5").floor();
  const chain = links.mul(ordered("linkWeight"));
  const finished = chain.add(ordered("claspWeight"));
  const lost = rates.loss.fraction;
  const cast =
    rates.lossBasis === "grams"
      ? chain.add(lost)
      : rates.lossBasis === "finished"
        ? chain.mul(lost.add(1))
        : chain.div(new Fraction(1).sub(lost));
  const quick = rates.words.costBasis === "quick";
  const benchLost = rates.lossBasis === "grams" ? lost : chain.mul(lost);
  const metalRate = rate("spot").mul(order.share).div("31.1034768");
  const castingOfAll = (quick ? chain : cast).mul(rate("castingFee")).mul(ordered("quantity"));
  const plated = order.words.plated === "" ? order.words.colour === "white" : order.words.plated === "plated";
  const worked = rate("labourFlat").add(rate("labourPerLink").mul(links)).add(rate("labourPerGram").mul(chain));
  const none = new Fraction(0);
  const costs = {
    metal: chain.mul(metalRate),
    lost: (quick ? benchLost : cast.sub(chain)).mul(metalRate),
    casting: larger(castingOfAll, rate("castingMinimum")).div(ordered("quantity")),
    labour: larger(worked, rate("labourMinimum")),
    clasp: ordered("claspCost"),
    findings: none,
    stones: ordered("stoneCount").mul(ordered("stonePrice")),
    setting: ordered("stoneCount").mul(rate("settingFee")),
    engraving: none,
    plating: plated ? rate("plating") : none,
    setup: none,
    overhead: none,
  };
  const landed = Object.values(costs).reduce((total, cost) => total.add(cost), new Fraction(0));
  const asked = {
    markup: landed.mul(rate("markup").add(1)),
    margin: landed.div(new Fraction(1).sub(rate("margin"))),
    premium: chain
      .mul(metalRate.add(rate("premium")))
      .add(higher(ordered("claspWeight").mul(metalRate.add(rate("premium"))), costs.clasp))
      .add(costs.stones)
      .add(costs.setting)
      .add(costs.plating),
  }[rates.words.priceBy as "markup" | "margin" | "premium"];
  const coin = new Fraction(1, 10 ** rates.digits);
  const price = exactly(upToStep(asked, rates.step.lt(coin) ? coin : rates.step), rates.digits);
  // No stone breaks here.
  const cashOut = landed.sub(costs.overhead);
  const floor = landed.div(new Fraction(1).sub(rate("leastMargin")));
  return { length, clasp, pitch, links, chain, finished, cast, metalRate, costs, landed, price, cashOut, floor };
}

function higher(a: Fraction, b: Fraction): Fraction {
  return a.lt(b) ? b : a;
}
