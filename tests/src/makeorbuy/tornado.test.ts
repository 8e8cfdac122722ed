import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { compareSources, lineOfWeight, sellersFor } from "../../../src/makeorbuy/chainchoice";
import type { Lever } from "../../../src/makeorbuy/figures";
import { readPriceLists } from "../../../src/makeorbuy/makers";
import { joinTornados, tornado } from "../../../src/makeorbuy/tornado";
import { grams } from "../../../src/units/weight";
import { AT_25, costed, HUNDRED_GRAMS, madeChain, priced } from "../chains";
import { type RandomRates, type Record_, randomOrder, randomRates } from "../orders";
import { type Cells, type RandomSeller, randomSellers, rowsOf, sellersOfRandom } from "../pricelists";
import { expectExact, figures, positives } from "../reference";

const q = (text: string) => Quotient.of(text);
const text = (value: Quotient) => value.value().toString();

function choiceOf(order: Record_ = {}, rates: Record_ = {}, rows: readonly Cells[] = []) {
  const { line, spot, rates: workshop } = costed({ ...HUNDRED_GRAMS, ...order }, { ...AT_25, ...rates });
  const { sellers } = sellersFor(readPriceLists(rowsOf(...rows), "USD"), line, workshop);
  return { line, spot, rates: workshop, sellers };
}
const swings = (choice: ReturnType<typeof choiceOf>) =>
  Object.fromEntries(
    tornado([choice], choice.rates).swings.map(({ lever, less, more, turnedByLess, turnedByMore }) => [
      lever,
      [
        text(less.amount),
        text(more.amount),
        ...(turnedByLess ? ["turned by less"] : []),
        ...(turnedByMore ? ["turned by more"] : []),
      ],
    ]),
  );

/** In neither cost: the same whether the chain is made or bought. */
const NEITHER: readonly Lever[] = ["claspCost", "findings", "settingFee", "plating", "overhead"];

describe("which figure the answer hangs on", () => {
  test("100 g, 75 saved by making: each figure a tenth less and more, by hand", () => {
    // 100 x 3.25 - 100 x 1.50 - 50 - 2 x 25 = 75.
    expect(swings(choiceOf())).toEqual({
      // 32.5 either way; 15; 5; 2 g lost at 25 is 50: 5; the links' own gold is in both.
      surcharge: ["42.5", "107.5"],
      castingFee: ["90", "60"],
      labourFlat: ["80", "70"],
      loss: ["80", "70"],
      spot: ["80", "70"],
      // 90 g: 90 x 1.75 - 100; 110 g.
      linkWeight: ["57.5", "92.5"],
      settingFee: ["75", "75"],
    });
    const { count, saving, swings: sorted } = tornado([choiceOf()], choiceOf().rates);
    expect([count, text(saving.amount)]).toEqual([1, "75"]);
    expect(sorted.map(({ lever, width }) => `${lever} ${text(width)}`).slice(0, 3)).toEqual([
      "surcharge 65",
      "linkWeight 35",
      "castingFee 30",
    ]);
  });

  test("at a surcharge of 2.70 a tenth less turns the answer: buying wins (hand arithmetic)", () => {
    // 270 - 250 = 20; 243 - 250 = -7.
    const said = swings(choiceOf({}, { surcharge: "2.7" }));
    expect(said.surcharge).toEqual(["-7", "47", "turned by less"]);
    expect(said.labourFlat).toEqual(["25", "15"]);
  });

  test("a maker who asks more loses to the next one: 3.575 is not paid where another asks 3.30 (hand arithmetic)", () => {
    const said = swings(
      choiceOf({}, {}, [
        ["Fennick", 250, 0, 3.25],
        ["Orrin", 250, 0, 3.3],
      ]),
    );
    // 292.5 - 250; 330 - 250.
    expect(said.surcharge).toEqual(["42.5", "80"]);
  });

  test("set-up is a cost of making alone, for all pieces of the line; a chain nobody sells is passed over", () => {
    const two = choiceOf({ setup: "20", quantity: "2" });
    // 2 x (75 - 20), 2 less or more for each piece.
    expect(swings(two).setup).toEqual(["114", "106"]);
    const none = choiceOf({}, {}, [["Fennick", 250, 500, 1]]);
    expect(tornado([none, two], two.rates)).toEqual(tornado([two], two.rates));
    expect(tornado([none], none.rates)).toMatchObject({ count: 0, swings: [] });
  });

  test("figures in neither cost move nothing, and figures that are nothing are left out", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, randomSellers, (rates, order, random) => {
        const { line, spot, rates: workshop } = priced(rates, order);
        const sellers = sellersOfRandom(random, workshop.currency as "USD");
        const said = tornado([{ line, spot, rates: workshop, sellers }], workshop);
        for (const { lever, less, more, width, turnedByLess, turnedByMore } of said.swings) {
          if (!NEITHER.includes(lever)) continue;
          expect(less.amount.equals(said.saving.amount) && more.amount.equals(said.saving.amount)).toBe(true);
          expect([width.isZero(), turnedByLess, turnedByMore]).toEqual([true, 0, 0]);
        }
        const zero = (["castingFee", "labourFlat", "labourPerLink", "settingFee"] as const).filter((key) =>
          rates.figures[key].quotient.isZero(),
        );
        expect(said.swings.filter(({ lever }) => (zero as readonly Lever[]).includes(lever))).toEqual([]);
        expect(said.swings.map(({ width }) => width.toNumber())).toEqual(
          [...said.swings.map(({ width }) => width.toNumber())].sort((a, b) => b - a),
        );
      }),
      { numRuns: 100 },
    );
  });

  test("every swing is that of exact rationals with the figure replaced (fraction.js)", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, randomSellers, figures(0, 80, 2), (rates, order, random, setup) => {
        const {
          line,
          spot,
          rates: workshop,
        } = priced(rates, { ...order, record: { ...order.record, setup: setup.text } });
        const sellers = sellersOfRandom(random, workshop.currency as "USD");
        const links = new Fraction(line.links.value().toString());
        const chain = links.mul(order.figures.linkWeight.fraction);
        const pieces = order.figures.quantity.fraction;
        const saving = (changed: Changed = {}) => {
          const used = changed.rates ?? rates;
          const weight = chain.mul(changed.heavier ?? 1);
          const made = madeChain(used, order, weight, { setup: setup.fraction.mul(changed.setup ?? 1), links });
          const metal = used.figures.spot.fraction.mul(order.share).div("31.1034768");
          const asked = cheapest(changed.sellers ?? random, weight);
          return asked && metal.add(asked).mul(weight).sub(made).mul(pieces);
        };
        const standing = saving();
        const said = tornado([{ line, spot, rates: workshop, sellers }], workshop);
        if (!standing) {
          expect(said.count).toBe(0);
          return;
        }
        expectExact(said.saving.amount, standing, SAVING_PLACES);
        for (const { lever, less, more } of said.swings) {
          if (NEITHER.includes(lever)) continue;
          expectExact(less.amount, saving(changeOf(lever, "0.9", rates, random, chain)) ?? standing, SAVING_PLACES);
          expectExact(more.amount, saving(changeOf(lever, "1.1", rates, random, chain)) ?? standing, SAVING_PLACES);
        }
      }),
      { numRuns: 150 },
    );
  });
});

/** What savings are taken to (tornado.ts). */
const SAVING_PLACES = 40;

interface Changed {
  readonly rates?: RandomRates;
  readonly sellers?: readonly RandomSeller[];
  readonly heavier?: string;
  readonly setup?: string;
}

function cheapest(sellers: readonly RandomSeller[], weight: Fraction): Fraction | undefined {
  return sellers
    .flatMap(({ classes }) => classes.filter(({ from }) => from.fraction.lte(weight)).at(-1)?.surcharge.fraction ?? [])
    .reduce<Fraction | undefined>((low, each) => (low?.lte(each) ? low : each), undefined);
}

function changeOf(
  lever: Lever,
  by: string,
  rates: RandomRates,
  random: readonly RandomSeller[],
  chain: Fraction,
): Changed {
  const times = <F extends { readonly fraction: Fraction }>(figure: F): F => ({
    ...figure,
    fraction: figure.fraction.mul(by),
  });
  if (lever === "linkWeight") return { heavier: by };
  if (lever === "setup") return { setup: by };
  if (lever === "loss") return { rates: { ...rates, loss: times(rates.loss) } };
  if (lever === "surcharge") {
    const least = cheapest(random, chain);
    const first = random.findIndex(({ classes }) => {
      const own = classes.filter(({ from }) => from.fraction.lte(chain)).at(-1);
      return own && least && own.surcharge.fraction.equals(least);
    });
    const sellers = random.map((seller, at) =>
      at === first
        ? { ...seller, classes: seller.classes.map((each) => ({ ...each, surcharge: times(each.surcharge) })) }
        : seller,
    );
    return { sellers };
  }
  const key = lever as keyof RandomRates["figures"];
  return { rates: { ...rates, figures: { ...rates.figures, [key]: times(rates.figures[key]) } } };
}

describe("a tornado over many chains", () => {
  test("adds their savings and counts how many answers turn", () => {
    const at = (weight: string) => {
      const choice = choiceOf();
      return { ...choice, line: lineOfWeight(choice.line, grams(q(weight)), "more links") };
    };
    // 1.75 a gram less 100: 40 g -30, 60 g +5, 100 g +75. A tenth less surcharge: 0.325 a gram.
    const { rates } = choiceOf();
    const said = tornado([at("40"), at("60"), at("100")], rates);
    expect(text(said.saving.amount)).toBe("50");
    const surcharge = said.swings.find(({ lever }) => lever === "surcharge");
    expect([surcharge && text(surcharge.less.amount), surcharge?.turnedByLess, surcharge?.turnedByMore]).toEqual([
      "-15",
      1,
      0,
    ]);
    expect(compareSources(at("60")).verdict).toBe("make");
  });

  test("of its parts joined is the same as of the whole", () => {
    fc.assert(
      fc.property(
        randomRates,
        randomOrder,
        randomSellers,
        fc.array(positives(200, 1), { minLength: 2, maxLength: 5 }),
        (rates, order, random, weights) => {
          const { line, spot, rates: workshop } = priced(rates, order);
          const sellers = sellersOfRandom(random, workshop.currency as "USD");
          const all = weights.map((weight) => ({
            line: lineOfWeight(line, grams(weight.quotient), "more links"),
            spot,
            rates: workshop,
            sellers,
          }));
          const shown = ({ count, saving, swings: each }: ReturnType<typeof tornado>) => [
            count,
            saving.amount.rounded(30).toFixed(),
            Object.fromEntries(
              each.map(({ lever, less, more, turnedByLess, turnedByMore }) => [
                lever,
                [less.amount.rounded(30).toFixed(), more.amount.rounded(30).toFixed(), turnedByLess, turnedByMore],
              ]),
            ),
          ];
          const parts = [tornado(all.slice(0, 1), workshop), tornado(all.slice(1), workshop)];
          expect(shown(joinTornados(parts))).toEqual(shown(tornado(all, workshop)));
        },
      ),
      { numRuns: 40 },
    );
  });
});
