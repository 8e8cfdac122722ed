import { describe, expect, test } from "vitest";
import {
  breakEven,
  type ChainChoice,
  compareSources,
  grams,
  joinTornados,
  type Lever,
  lineOfWeight,
  Quotient,
  readDesigns,
  readPriceLists,
  sellersFor,
  tornado,
  totalOf,
  winningRanges,
} from "../../../src/index";
import { makerRows } from "../../../taskpane/makeorbuy/makerrows";
import { chainRows, largerOrderSentences, orderRows, totalSentences } from "../../../taskpane/makeorbuy/manymessages";
import {
  answerOf,
  headlineOf,
  hingeOfMany,
  hingeSentences,
  largerSentences,
  leadOf,
  moreLinksSentence,
  nobodyBelow,
  rangeRows,
  rangesSentences,
  sameSentence,
  unreadSentences,
} from "../../../taskpane/makeorbuy/messages";
import { AT_25 } from "../../src/chains";
import { type Record_, ratesOf } from "../../src/orders";
import { type Cells, rowsOf } from "../../src/pricelists";

/** 100 links of 1 g at 25.00 a gram, 1.50 cast, 50 labour, 2 g lost on the quick basis (common practice). */
function choiceOf(
  rows: readonly Cells[] = [],
  changes: Record_ = {},
  { weight = "100", quantity = "1" } = {},
): ChainChoice {
  const rates = ratesOf({ ...AT_25, ...changes });
  const header = ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link", "Quantity"];
  const [design] = readDesigns([header, ["Curb", 250, "yellow", 25, 4, 1, quantity]], rates);
  if (design?.kind !== "read") throw new Error("no design");
  const { sellers } = sellersFor(readPriceLists(rowsOf(...rows), "USD"), design.line, rates);
  const line = weight === "100" ? design.line : lineOfWeight(design.line, grams(Quotient.of(weight)), "more links");
  return { line, sellers, spot: rates.spot, rates };
}
const plain = (text: string) => text.replaceAll(/\s/g, " ");
const said = (choice: ChainChoice) => {
  const compared = compareSources(choice);
  return plain([headlineOf(compared), ...answerOf(compared)].join(" | "));
};
const hinge = (choice: ChainChoice) =>
  plain(
    hingeSentences(compareSources(choice), tornado([choice], choice.rates), (lever: Lever) =>
      breakEven(choice, lever),
    ).join(" "),
  );

describe("the answer of one chain", () => {
  test("27.50 made against 28.25 bought: make, 75 a piece, 150 on two (hand arithmetic)", () => {
    expect(said(choiceOf())).toBe(
      "Make it | USD 27.50 a gram made, USD 28.25 bought. | Making saves USD 75.00 a piece.",
    );
    expect(said(choiceOf([["Fennick", 250, 0, 2]], {}, { quantity: "2" }))).toBe(
      "Buy it from Fennick | USD 27.50 a gram made, USD 27.00 bought from Fennick. | Buying saves USD 50.00 a piece, USD 100.00 on 2 pieces.",
    );
  });

  test("at equal cost buy, since it spares the work; what nobody sells is made", () => {
    expect(said(choiceOf([["Fennick", 250, 0, 2.5]]))).toBe(
      "Buy it from Fennick | USD 27.50 a gram either way; buying spares the work.",
    );
    expect(said(choiceOf([["Fennick", 250, 500, 1]]))).toBe(
      "Make it | USD 27.50 a gram made. Nobody on your price lists sells 250 of 100.00 g.",
    );
  });

  test("all weights at which making wins, in one sentence and in rows (hand arithmetic)", () => {
    const none = { loss: "0" };
    const ranges = (rows: readonly Cells[], changes: Record_ = none) =>
      winningRanges(choiceOf(rows, changes), "more links");
    // 50 / (6 - 1.50) and 50 / (3 - 1.50).
    const stepped = ranges([
      ["Fennick", 250, 5, 6],
      ["Fennick", 250, 20, 3],
    ]);
    expect(plain([moreLinksSentence(stepped), ...nobodyBelow(stepped)].join(" "))).toBe(
      "With more of the same links, making wins between 11.11 g and 20 g and above 33.33 g. Below 5 g nobody on your price lists sells this number of pieces.",
    );
    expect(rangeRows(stepped).map((row) => plain(row.join(": ")))).toEqual([
      "below 5 g: make: nobody sells it",
      "5 g to 11.11 g: buy from Fennick",
      "11.11 g to 20 g: make",
      "20 g to 33.33 g: buy from Fennick",
      "above 33.33 g: make",
    ]);
    const told = (rows: readonly Cells[], changes: Record_ = none) =>
      plain(
        rangesSentences(
          {
            "heavier links": winningRanges(choiceOf(rows, changes), "heavier links"),
            "more links": winningRanges(choiceOf(rows, changes), "more links"),
          },
          Quotient.of(100),
        ).join(" "),
      );
    expect(told([["F", 250, 0, 1]])).toBe("With heavier links or with more of them, making wins at no weight.");
    expect(told([["F", 250, 0, 3]], { ...none, labourFlat: "0" })).toBe(
      "With heavier links or with more of them, making wins at any weight.",
    );
    // 50 / 1.75; of 100 links.
    expect(told([])).toBe("With heavier links or with more of them, making wins above 28.57 g (0.29 g per link).");
    // 0.50 for each link: 100 / 1.75 of 100 heavier links; with more links of 1 g 50 / (1.75 - 0.50).
    expect(told([], { ...none, labourPerLink: "0.5" })).toBe(
      "With heavier links at this length, making wins above 57.14 g (0.57 g per link). With more of the same links, making wins above 40 g.",
    );
  });
});

describe("what the answer hangs on", () => {
  test("a figure that turns it: how, and where both ways cost the same (hand arithmetic)", () => {
    // At 2.70 making saves 20: 0.27 less turns it; level at 2.50, 7.4 % less.
    expect(hinge(choiceOf([], { surcharge: "2.7" }))).toBe(
      "Hangs most on the maker's surcharge: at 10% less, buying wins. Both ways cost the same at USD 2.50 a gram, 7.4% less than now.",
    );
    // At 2.40 buying saves 10: 0.24 a gram more turns it, and 15 less for casting.
    expect(hinge(choiceOf([], { surcharge: "2.4" }))).toBe(
      "Hangs most on the maker's surcharge: at 10% more, making wins. Both ways cost the same at USD 2.50 a gram, 4.2% more than now. It would also be turned by 10% less of the casting fee.",
    );
  });

  test("a figure that does not: between what the winning way saves (hand arithmetic)", () => {
    expect(hinge(choiceOf())).toBe(
      "Hangs most on the maker's surcharge: 10% less or more of it moves what making saves between USD 42.50 and USD 107.50, and does not turn the answer. Both ways cost the same at USD 2.50 a gram, 23.1% less than now.",
    );
    expect(hinge(choiceOf([], { surcharge: "1" }))).toContain(
      "moves what buying saves between USD 135.00 and USD 165.00",
    );
  });

  test("figures that are the same either way are named; of many chains how many answers turn", () => {
    const choice = choiceOf();
    expect(sameSentence(tornado([choice], choice.rates))).toBe("The same made or bought: the setting fee.");
    const all = ["40", "60", "100"].map((weight) => choiceOf([], {}, { weight }));
    // 60 g saves 5, and loses 14.50 with a tenth less of the surcharge.
    expect(hingeOfMany(joinTornados([tornado(all, choice.rates)]))).toBe(
      "Hangs most on the maker's surcharge: 10% less of it turns one answer of 3, 10% more no answer.",
    );
    expect(hingeOfMany(tornado([all[2] ?? choice], choice.rates))).toBe(
      "Hangs most on the maker's surcharge: 10% less or more of it turns no answer.",
    );
  });
});

describe("makers of one chain", () => {
  const choice = choiceOf(
    [
      ["Fennick", 250, 0, 4, 300, "g"],
      ["Orrin", "all", 50, 2],
    ],
    {},
    { quantity: "2" },
  );
  const compared = compareSources(choice);

  test("stand with making among them, the cheapest first, each with its least order (hand arithmetic)", () => {
    expect(
      makerRows(compared).map(({ cells, below, isFirst }) =>
        plain([...cells, below ?? "", isFirst ? "first" : ""].join(" | ")),
      ),
    ).toEqual([
      "Orrin | USD 27.00 | 2 pieces, USD 5,400.00 | – | from 50 g | first",
      "made by you | USD 27.50 | – | – |  | ",
      // 300 g are 3 pieces of 29.00 a gram, one more than wanted.
      "Fennick | USD 29.00 | 3 pieces, USD 8,700.00 | USD 2,900.00 | no fewer than 3 pieces | ",
    ]);
    expect([leadOf("12"), leadOf("three weeks"), leadOf("")]).toEqual(["12 days", "three weeks", ""]);
  });

  test("who sells five cannot sell one: the answer is what one piece can have, and the larger order is said after it", () => {
    const five: Cells = ["Fennick", 250, 0, 2, 500, "g"];
    const one = compareSources(choiceOf([five, ["Orrin", 250, 0, 3]]));
    // 27.00 from Fennick, but 500 g at once: 27.50 made, 28.00 from Orrin.
    expect([one.verdict, one.best?.seller.maker]).toEqual(["make", "Orrin"]);
    expect(said(choiceOf([five, ["Orrin", 250, 0, 3]]))).toBe(
      "Make it | USD 27.50 a gram made, USD 28.00 bought from Orrin. | Making saves USD 50.00 a piece.",
    );
    // 5 x 2,700; four of them in stock.
    expect(plain(largerSentences(one).join(" "))).toBe(
      "Fennick sells no fewer than 5 pieces (500.00 g), at USD 27.00 per gram. That order would save USD 50.00 per piece. It takes USD 13,500.00 in cash, and 4 pieces worth USD 10,800.00 would stay in stock.",
    );
    // Alone on the lists: then nobody sells one.
    expect(said(choiceOf([five]))).toBe(
      "Make it | USD 27.50 a gram made. Nobody on your price lists sells 1 piece of 100.00 g in 250.",
    );
    // Of five it is the answer itself, and nothing is said after it.
    const all = compareSources(choiceOf([five], {}, { quantity: "5" }));
    expect([all.verdict, largerSentences(all)]).toEqual(["buy", []]);
    // A larger order that is dearer than the answer is no advice.
    expect(largerSentences(compareSources(choiceOf([["Fennick", 250, 0, 4, 500, "g"]])))).toEqual([]);
  });

  test("a row that cannot be read is named in the answer", () => {
    const { line, rates } = choiceOf();
    const lists = readPriceLists(
      rowsOf(["Fennick", 250, 0, "soon"], ["Orrin", 250, 0, 3], ["", 250, 0, 3], ["Thackley", 750, 0, ""]),
      "USD",
    );
    expect(plain(unreadSentences(sellersFor(lists, line, rates).unread).join(" "))).toBe(
      "Not compared, because a row needs correcting: Fennick (row 5) and a row without a maker (row 7).",
    );
    expect(unreadSentences([])).toEqual([]);
  });
});

describe("many chains", () => {
  const rows: readonly Cells[] = [
    ["Fennick", 250, 30, 3.25, 200, "g"],
    ["Orrin", 250, 50, 3.5, 50, "money"],
  ];
  const all = ["20", "40", "60", "100"].map((weight) => ({
    name: `${weight} g`,
    said: compareSources(choiceOf(rows, {}, { weight })),
  }));
  const { rates } = choiceOf();
  const total = totalOf(
    all.map(({ said: each }) => each),
    rates,
  );

  test("a row each, the total, and what the minimum takes (hand arithmetic)", () => {
    // 26.50 a gram and 100 in all made; 28.25 bought, from 200 g on, and 28.50: 40 g would be 30 dearer made, in a larger order.
    expect(chainRows(all, rates).map(({ cells }) => cells.join(" | "))).toEqual([
      "20 g | 31.50 | – | – | make: not sold",
      "40 g | 29.00 | – | – | make: not sold",
      "60 g | 28.17 | 28.50 | 20.00 | make",
      "100 g | 27.50 | 28.50 | 100.00 | make",
    ]);
    // 630 + 1160 + 1690 + 2750.
    expect(plain(totalSentences(total).join(" "))).toBe(
      "Each done the cheaper way they cost USD 6,230.00 in all. It is USD 120.00 less than buying all that are sold. 2 of them nobody sells in this number.",
    );
    expect(orderRows(total.orders)).toEqual([]);
    // 160 g more at 28.25.
    expect(largerOrderSentences(total.larger).map(plain)).toEqual([
      "Fennick sells one of these chains for less in a larger order: 40.00 g for USD 30.00 less. 160.00 g are missing to the minimum of 200.00 g. Filling it up takes about USD 4,520.00 more in cash.",
    ]);
  });
});
