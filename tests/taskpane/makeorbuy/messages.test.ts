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
import { leastOrderOf, makerRows } from "../../../taskpane/makeorbuy/makerrows";
import { chainRows, orderRows, shortSentences, totalSentences } from "../../../taskpane/makeorbuy/manymessages";
import {
  answerOf,
  headlineOf,
  hingeOfMany,
  hingeSentences,
  leadOf,
  leastSentences,
  rangeRows,
  rangesSentence,
  sameSentence,
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
  const line = weight === "100" ? design.line : lineOfWeight(design.line, grams(Quotient.of(weight)));
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
    const ranges = (rows: readonly Cells[], changes: Record_ = none) => winningRanges(choiceOf(rows, changes));
    // 50 / (6 - 1.50) and 50 / (3 - 1.50).
    const stepped = ranges([
      ["Fennick", 250, 5, 6],
      ["Fennick", 250, 20, 3],
    ]);
    expect(plain(rangesSentence(stepped))).toBe(
      "Making wins between 11.11 g and 20 g and above 33.33 g. Nobody on your price lists sells below 5 g.",
    );
    expect(rangeRows(stepped).map((row) => plain(row.join(": ")))).toEqual([
      "below 5 g: make: nobody sells it",
      "5 g to 11.11 g: buy from Fennick",
      "11.11 g to 20 g: make",
      "20 g to 33.33 g: buy from Fennick",
      "above 33.33 g: make",
    ]);
    expect(rangesSentence(ranges([["F", 250, 0, 1]]))).toBe("At no weight does making win.");
    expect(rangesSentence(ranges([["F", 250, 0, 3]], { ...none, labourFlat: "0" }))).toBe("Making wins at any weight.");
    expect(plain(rangesSentence(ranges([])))).toBe("Making wins above 28.57 g.");
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
      "Fennick | USD 29.00 | 3 pieces, USD 8,700.00 | USD 2,900.00 |  | ",
    ]);
  });

  test("the least order says what lies in stock, where something does", () => {
    const [orrin, fennick] = compared.bids;
    if (!orrin || !fennick) throw new Error("two bids");
    expect(leastSentences("Orrin", leastOrderOf(orrin, compared))).toEqual([]);
    expect(plain(leastSentences("Fennick", leastOrderOf(fennick, compared)).join(" "))).toBe(
      "The least order at Fennick is 3 pieces of this weight, 300.00 g, USD 8,700.00 in cash. 1 more than wanted: USD 2,900.00 lies in stock.",
    );
    expect([leadOf("12"), leadOf("three weeks"), leadOf("")]).toEqual(["12 days", "three weeks", ""]);
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
    // 26.50 a gram and 100 in all made; 28.25 bought: 20 g not sold, 40 g 30 dearer made, 60 g 5 and 100 g 75 cheaper.
    expect(chainRows(all, rates).map(({ cells }) => cells.join(" | "))).toEqual([
      "20 g | 31.50 | – | – | make: not sold",
      "40 g | 29.00 | 28.25 | 30.00 | buy: Fennick",
      "60 g | 28.17 | 28.25 | 5.00 | make",
      "100 g | 27.50 | 28.25 | 75.00 | make",
    ]);
    // 630 + 1130 + 1690 + 2750.
    expect(plain(totalSentences(total).join(" "))).toBe(
      "Each done the cheaper way they cost USD 6,200.00 in all. That is USD 30.00 less than making all, and USD 80.00 less than buying all that are sold. One of them nobody sells.",
    );
    expect(orderRows(total.orders).map(({ cells }) => plain(cells.join(" | ")))).toEqual([
      "Fennick | 1 | 40.00 g | USD 1,130.00",
    ]);
    expect(shortSentences(total.orders).map(plain)).toEqual([
      "Fennick: 160.00 g short of the minimum of 200.00 g. Filling it up takes about USD 4,520.00 more in cash.",
    ]);
  });
});
