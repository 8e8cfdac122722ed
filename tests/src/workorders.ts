import fc from "fast-check";
import Fraction from "fraction.js";
import type { OrderForm } from "../../src/order/order";
import { exactly, RATES, type Record_ } from "./orders";
import { type Figure, figure, figures, marks, positives, rounded, upToStep } from "./reference";

/**
 * Orders of every kind that a workshop takes, each with what its quote must come to in exact rationals (fraction.js), by the
 * definitions of the trade and the notes of the Rates sheet.
 */
export interface WorkOrder {
  readonly rates: Record_;
  readonly form: OrderForm;
  readonly expected: Expected;
}

export interface Expected {
  /** Price of one piece and amount of each line. */
  readonly lines: readonly { readonly price: Fraction; readonly amount: Fraction; readonly landed: Fraction }[];
  readonly subtotal: Fraction;
  readonly discount: Fraction;
  readonly tax: Fraction;
  readonly total: Fraction;
  readonly credit: Fraction;
  readonly toPay: Fraction;
  readonly net: Fraction;
  readonly landed: Fraction;
  /** What goes out before the work is sold: all but overhead, stones in whole ones, metal that the customer brought not bought. */
  readonly cashOut: Fraction;
}

const ZERO = new Fraction(0);
const ONE = new Fraction(1);
const OUNCE = "31.1034768";
const DIGITS: Readonly<Record<string, number>> = { USD: 2, JPY: 0, KWD: 3 };
const LETTERS = { Y: "yellow", R: "rose", W: "white", G: "green" } as const;
type Letter = keyof typeof LETTERS;

const rateFigures = fc.record({
  spot: positives(5000, 2),
  castingFee: figures(0, 10, 2),
  castingMinimum: figures(0, 300, 2),
  labourFlat: figures(0, 200, 2),
  labourPerLink: figures(0, 2, 2),
  labourPerGram: figures(0, 3, 2),
  labourMinimum: figures(0, 200, 2),
  settingFee: figures(0, 5, 2),
  breakage: figures(0, 0.2, 2),
  plating: figures(0, 60, 2),
  overhead: figures(0, 0.3, 2),
  markup: figures(0.01, 2, 4),
  loss: figures(0, 0.3, 4),
  tax: figures(0, 0.27, 4),
  ownGoldShare: figures(0.5, 1, 2),
});
const rateWords = fc.record({
  currency: fc.constantFrom("USD", "JPY", "KWD"),
  lossBasis: fc.constantFrom("cast", "finished"),
  costBasis: fc.constantFrom("finished", "quick"),
  taxIs: fc.constantFrom("on top", "in the price"),
  shippingTaxed: fc.constantFrom("no", "yes"),
  priceStep: fc.constantFrom("0", "0.05", "1", "5", "10"),
});
type Made<A> = A extends fc.Arbitrary<infer Value> ? Value : never;
type Rates = Made<typeof rateFigures> & Made<typeof rateWords>;

/** What bought gold costs: nothing, or more than the gold in it is worth at any spot up to 18,000 an ounce. */
const overItsGold = (cost: Figure, weight: Figure): Figure =>
  cost.fraction.n === 0n ? cost : figure(rounded(cost.fraction.add(weight.fraction.mul(600)), 2));

const anyLine = fc.record({
  mark: marks,
  letters: fc.string({ unit: fc.constantFrom<Letter>("Y", "R", "W", "G"), minLength: 1, maxLength: 5 }),
  weights: fc.record({ Y: positives(9, 3), R: positives(9, 3), W: positives(9, 3), G: positives(9, 3) }),
  measure: fc.record({ length: figures(6, 60, 1), ease: fc.option(figures(0, 3, 1), { nil: undefined }) }),
  linksPer: figures(1, 8, 1),
  clasp: fc.constantFrom("bought lobster clasp", "cast box clasp", "cast hidden clasp", "none"),
  claspLength: figures(0, 2, 1),
  claspWeight: positives(9, 3),
  claspCost: figures(0, 300, 2),
  plated: fc.constantFrom("", "plated", "not plated"),
  stonesOn: fc.constantFrom("no links", "all links", "every n-th link"),
  every: figures(1, 7, 0),
  perLink: figures(1, 3, 0),
  stonePrice: figures(0, 90, 2),
  claspStones: figures(0, 4, 0),
  claspStonePrice: figures(0, 200, 2),
  claspSettingFee: figures(0, 20, 2),
  findingsCost: figures(0, 40, 2),
  findingsWeight: figures(0, 3, 2),
  engravingCost: figures(0, 40, 2),
  setup: figures(0, 30, 2),
  quantity: figures(1, 12, 0),
  priced: fc.oneof(
    fc.record({ by: fc.constantFrom("as the quote", "markup"), figure: figures(0, 2, 3) }),
    fc.record({ by: fc.constant("margin"), figure: figures(0, 0.9, 3) }),
    fc.record({ by: fc.constant("premium"), figure: figures(0, 40, 2) }),
    fc.record({ by: fc.constant("own price"), figure: figures(1, 9000, 3) }),
  ),
});
const lineArbitrary = anyLine.map((line) => ({
  ...line,
  claspCost: overItsGold(line.claspCost, line.claspWeight),
  findingsCost: overItsGold(line.findingsCost, line.findingsWeight),
}));
type Line = Made<typeof lineArbitrary>;

const termsArbitrary = fc.record({
  discount: figures(0, 0.4, 3),
  shipping: figures(0, 60, 3),
  own: fc.option(fc.record({ weight: positives(40, 2), mark: marks, use: fc.constantFrom("credited", "used") }), {
    nil: undefined,
  }),
});
const extraArbitrary = fc.record({ amount: figures(0, 200, 3), cost: figures(0, 100, 2) });

export const workOrder: fc.Arbitrary<WorkOrder> = fc
  .record({
    figures: rateFigures,
    words: rateWords,
    lines: fc.array(lineArbitrary, { minLength: 1, maxLength: 4 }),
    extras: fc.array(extraArbitrary, { maxLength: 2 }),
    terms: termsArbitrary,
  })
  .map(({ figures: amounts, words, lines, extras, terms }) => {
    const rates = { ...amounts, ...words };
    return {
      rates: { ...RATES, ...texts(amounts), ...words, priceBy: "markup" },
      form: {
        order: {
          customer: "A. Customer",
          discount: terms.discount.text,
          shipping: terms.shipping.text,
          ...(terms.own
            ? { ownGoldWeight: terms.own.weight.text, ownGoldMark: terms.own.mark.text, ownGoldUse: terms.own.use }
            : {}),
        },
        lines: lines.map(lineRecord),
        extras: extras.map((extra) => ({ text: "Box", amount: extra.amount.text, cost: extra.cost.text })),
      },
      expected: expectedOf(rates, lines, extras, terms),
    };
  });

/** Many lines at one workshop's rates, each with its exact landed cost and price; they are of few kinds, and differ in figures. */
export interface WorkCatalogue {
  readonly rates: Record_;
  readonly lines: readonly Record_[];
  readonly expected: readonly { readonly landed: Fraction; readonly price: Fraction }[];
}

export const workCatalogue: fc.Arbitrary<WorkCatalogue> = fc
  .record({
    figures: rateFigures,
    words: rateWords,
    kinds: fc.array(lineArbitrary, { minLength: 1, maxLength: 3 }),
    lines: fc.array(lineArbitrary, { minLength: 60, maxLength: 60 }),
  })
  .map(({ figures: amounts, words, kinds, lines }) => {
    const rates = { ...amounts, ...words };
    const factor = rates.taxIs === "in the price" ? rates.tax.fraction.add(1) : ONE;
    const alike = lines.map((line, at) => {
      const { mark, letters, clasp, plated, stonesOn, priced, measure } = kinds[at % kinds.length] ?? line;
      const { length, ease } = line.measure;
      return {
        ...line,
        ...{ mark, letters, clasp, plated, stonesOn, priced },
        measure: { length, ease: measure.ease && (ease ?? measure.ease) },
      };
    });
    return {
      rates: { ...RATES, ...texts(amounts), ...words, priceBy: "markup" },
      lines: alike.map(lineRecord),
      expected: alike.map((line) => reckonLine(line, rates, factor, DIGITS[rates.currency] ?? Number.NaN)),
    };
  });

const texts = (record: Readonly<Record<string, Figure>>) =>
  Object.fromEntries(Object.entries(record).map(([key, figure]) => [key, figure.text]));

function firstLetter({ letters }: Line): Letter {
  return (Object.keys(LETTERS) as Letter[]).find((letter) => letters.startsWith(letter)) ?? "Y";
}

function lineRecord(line: Line): Record_ {
  const first = firstLetter(line);
  const none = line.clasp === "none";
  const { length, ease } = line.measure;
  return {
    design: "Curb 8 mm",
    mark: line.mark.text,
    colour: LETTERS[first],
    pattern: line.letters.length > 1 ? line.letters : "",
    plated: line.plated,
    quantity: line.quantity.text,
    lengthGiven: ease ? "neck" : "",
    length: length.text,
    ease: ease?.text ?? "",
    lengthUnit: "in",
    linksPer: line.linksPer.text,
    linksPerUnit: "in",
    linkWeight: line.weights[first].text,
    linkWeightYellow: line.weights.Y.text,
    linkWeightRose: line.weights.R.text,
    linkWeightWhite: line.weights.W.text,
    linkWeightGreen: line.weights.G.text,
    clasp: line.clasp,
    claspLength: none ? "" : line.claspLength.text,
    claspWeight: none ? "" : line.claspWeight.text,
    claspCost: none ? "" : line.claspCost.text,
    stonesOn: line.stonesOn,
    stoneEvery: line.every.text,
    stonesPerLink: line.perLink.text,
    stonePrice: line.stonePrice.text,
    claspStoneCount: line.claspStones.text,
    claspStonePrice: line.claspStonePrice.text,
    claspSettingFee: line.claspSettingFee.text,
    findingsCost: line.findingsCost.text,
    findingsWeight: line.findingsWeight.text,
    engravingCost: line.engravingCost.text,
    setup: line.setup.text,
    linePriceBy: line.priced.by,
    linePriceFigure: line.priced.by === "as the quote" ? "" : line.priced.figure.text,
  };
}

const total = (values: readonly Fraction[]) => values.reduce((sum, value) => sum.add(value), ZERO);
const larger = (a: Fraction, b: Fraction) => (a.lt(b) ? b : a);
const smaller = (a: Fraction, b: Fraction) => (b.lt(a) ? b : a);

function expectedOf(
  rates: Rates,
  lines: readonly Line[],
  extras: readonly Made<typeof extraArbitrary>[],
  terms: Made<typeof termsArbitrary>,
): Expected {
  const digits = DIGITS[rates.currency] ?? Number.NaN;
  const included = rates.taxIs === "in the price";
  const factor = included ? rates.tax.fraction.add(1) : ONE;
  const reckoned = lines.map((line) => reckonLine(line, rates, factor, digits));
  const amounts = reckoned.map(({ price, quantity }) => exactly(price.mul(quantity), digits));
  const pieces = total(amounts);
  const besides = total(extras.map(({ amount }) => exactly(amount.fraction, digits)));
  const discount = exactly(pieces.mul(terms.discount.fraction), digits);
  const shipping = exactly(terms.shipping.fraction, digits);
  const work = pieces.sub(discount).add(besides);
  const taxed = rates.shippingTaxed === "yes" ? work.add(shipping) : work;
  const tax = exactly(taxed.mul(rates.tax.fraction).div(factor), digits);
  const sum = work.add(shipping).add(included ? ZERO : tax);
  const needed = total(reckoned.map(({ fineCast, quantity }) => fineCast.mul(quantity)));
  const brought = terms.own ? terms.own.weight.fraction.mul(terms.own.mark.share) : ZERO;
  const counted = terms.own?.use === "used" ? smaller(brought, needed) : brought;
  const worth = counted.mul(rates.spot.fraction).div(OUNCE).mul(rates.ownGoldShare.fraction);
  const credit = exactly(worth, digits);
  const spared = terms.own?.use === "used" ? counted.mul(rates.spot.fraction).div(OUNCE) : ZERO;
  return {
    cashOut: total([...reckoned.map((line) => line.cashOut), ...extras.map(({ cost }) => cost.fraction)]).sub(
      smaller(spared, total(reckoned.map(({ metal, quantity }) => metal.mul(quantity)))),
    ),
    lines: reckoned.map(({ price, landed }, index) => ({ price, landed, amount: amounts[index] ?? ZERO })),
    subtotal: pieces.add(besides),
    discount,
    tax,
    total: sum,
    credit,
    toPay: sum.sub(credit),
    net: work.div(factor),
    landed: total([
      ...reckoned.map(({ landed, quantity }) => landed.mul(quantity)),
      ...extras.map(({ cost }) => cost.fraction),
    ]),
  };
}

function reckonLine(line: Line, rates: Rates, factor: Fraction, digits: number) {
  const quantity = line.quantity.fraction;
  const claspLength = line.clasp === "none" ? ZERO : line.claspLength.fraction;
  const claspWeight = line.clasp === "none" ? ZERO : line.claspWeight.fraction;
  const claspCost = line.clasp === "none" ? ZERO : line.claspCost.fraction;
  const isCast = line.clasp.startsWith("cast");
  const length = line.measure.length.fraction.add(line.measure.ease?.fraction ?? ZERO);
  const links = length.sub(claspLength).mul(line.linksPer.fraction).add("0.5").floor();
  const count = Number(links.toString());
  // The pattern written out, cut to the links there are, and each letter's link weighed.
  const written = line.letters.repeat(count).slice(0, count);
  const chain = total(
    (Object.keys(LETTERS) as Letter[]).map((letter) =>
      line.weights[letter].fraction.mul(written.split(letter).length - 1),
    ),
  );
  const castParts = isCast ? chain.add(claspWeight) : chain;
  const loss = rates.loss.fraction;
  const cast = rates.lossBasis === "finished" ? castParts.mul(loss.add(1)) : castParts.div(ONE.sub(loss));
  const quick = rates.costBasis === "quick";
  const metalRate = rates.spot.fraction.mul(line.mark.share).div(OUNCE);
  const castingOfAll = (quick ? castParts : cast).mul(rates.castingFee.fraction).mul(quantity);
  const worked = rates.labourFlat.fraction
    .add(rates.labourPerLink.fraction.mul(links))
    .add(rates.labourPerGram.fraction.mul(chain));
  const linkStones = {
    "no links": ZERO,
    "all links": links,
    "every n-th link": links.div(line.every.fraction).floor(),
  }[line.stonesOn as "no links" | "all links" | "every n-th link"].mul(line.perLink.fraction);
  const claspStones = line.claspStones.fraction;
  const withBreakage = rates.breakage.fraction.add(1);
  const plated = line.plated === "plated" || (line.plated === "" && line.letters.includes("W"));
  const stones = linkStones.mul(line.stonePrice.fraction).add(claspStones.mul(line.claspStonePrice.fraction));
  const parts = {
    metal: castParts.mul(metalRate),
    lost: (quick ? castParts.mul(loss) : cast.sub(castParts)).mul(metalRate),
    casting: larger(castingOfAll, rates.castingMinimum.fraction).div(quantity),
    labour: larger(worked, rates.labourMinimum.fraction),
    clasp: claspCost,
    findings: line.findingsCost.fraction,
    stones: stones.mul(withBreakage),
    setting: linkStones.mul(rates.settingFee.fraction).add(claspStones.mul(line.claspSettingFee.fraction)),
    engraving: line.engravingCost.fraction,
    plating: plated ? rates.plating.fraction : ZERO,
    setup: line.setup.fraction,
  };
  const landed = total(Object.values(parts)).mul(rates.overhead.fraction.add(1));
  const figure = line.priced.figure.fraction;
  const over = metalRate.add(figure);
  const asked = () => {
    switch (line.priced.by) {
      case "margin":
        return landed.div(ONE.sub(figure));
      case "premium":
        return total([
          chain.mul(over),
          larger(claspWeight.mul(over), parts.clasp),
          larger(line.findingsWeight.fraction.mul(over), parts.findings),
          parts.stones,
          parts.setting,
          parts.engraving,
          parts.plating,
        ]);
      case "markup":
        return landed.mul(figure.add(1));
      default:
        return landed.mul(rates.markup.fraction.add(1));
    }
  };
  const coin = new Fraction(1, 10 ** digits);
  const step = new Fraction(rates.priceStep);
  const price =
    line.priced.by === "own price"
      ? exactly(figure, digits)
      : exactly(upToStep(asked().mul(factor), step.lt(coin) ? coin : step), digits);
  // Stones are bought for all pieces together, and no part of one is.
  const bought = (count: Fraction) => count.mul(quantity).mul(withBreakage).ceil();
  const { stones: _inWholeOnes, ...paidEach } = parts;
  const cashOut = total(Object.values(paidEach))
    .mul(quantity)
    .add(bought(linkStones).mul(line.stonePrice.fraction))
    .add(bought(claspStones).mul(line.claspStonePrice.fraction));
  return { price, landed, quantity, cashOut, metal: parts.metal.add(parts.lost), fineCast: cast.mul(line.mark.share) };
}
