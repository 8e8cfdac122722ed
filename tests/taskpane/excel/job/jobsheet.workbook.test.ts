import fc from "fast-check";
import Fraction from "fraction.js";
import { expect, test } from "vitest";
import type { Weight } from "../../../../src/units/weight";
import { ORDER, RATES } from "../../../src/orders";
import { type Expected, workOrder } from "../../../src/workorders";
import { SPOT_FOR_25, withRates } from "../../../workbook/desk";
import { deskForAll } from "../../../workbook/workshop";
import { papersOf, putContents, valuesOf, writeCells, writeRates } from "../papers";

const desk = deskForAll(withRates);

/** A figure of a cell beside the exact one: to a millionth of a millionth of it, which is what a double holds of a sum. */
function agrees(cell: unknown, exact: Fraction): void {
  const wanted = exact.valueOf();
  expect(typeof cell).toBe("number");
  expect(Math.abs(Number(cell) - wanted)).toBeLessThanOrEqual(Math.max(1e-9, Math.abs(wanted) * 1e-12));
}

const SAMPLES = fc.sample(workOrder, { numRuns: 36, seed: 20_261_125 });

test.each(SAMPLES.map((sample, index) => [index + 1, sample] as const))(
  "the job sheet's formulas come to the cent to what exact rationals say: order %i",
  async (_, { rates, form, expected }) => {
    await writeRates(desk, rates);
    const { job, quote, watch } = papersOf(form, rates);
    await putContents(desk, "Job 2001", job.paper);
    const rows = await valuesOf(desk, "Job 2001", job.paper.rows.length);
    const at = (address: string) => {
      const [, column = "", row = ""] = /^\$([A-H])\$(\d+)$/.exec(address) ?? [];
      return rows[Number(row) - 1]?.["ABCDEFGH".indexOf(column)];
    };
    expected.lines.forEach((line: Expected["lines"][number], index: number) => {
      agrees(at(job.at(index)("landed")), line.landed);
      agrees(at(job.at(index)("quoted")), line.price);
      agrees(at(job.at(index)("priceNow")), line.price);
    });
    const figure = (label: string, column = 1) => rows.find(([first]) => first === label)?.[column];
    agrees(figure("Together", 2), expected.landed);
    agrees(figure("Together", 3), expected.subtotal);
    agrees(figure("Discount", 1), new Fraction(String(form.order.discount)));
    agrees(rows.filter(([first]) => first === "Discount")[1]?.[1], expected.discount);
    agrees(figure("Cash out before it is sold"), expected.cashOut);
    // The pane's verdict on the deposit, and the sheet's.
    agrees(figure("What the deposit covers"), new Fraction(quote.deposit.amount.value().toFixed()));
    const isShort = new Fraction(quote.deposit.amount.value().toFixed()).lt(expected.cashOut);
    expect(watch.depositShort).toBe(isShort);
    expect(figure("What the deposit covers", 2)).toMatch(isShort ? /^less than/ : /^covers/);
    agrees(figure("Tax"), expected.tax);
    agrees(figure("Total"), expected.total);
    agrees(figure("Net, without tax and shipping"), expected.net);
    agrees(figure("To pay, as quoted"), expected.toPay);
    if (form.order.ownGoldWeight) {
      agrees(figure("Credit quoted"), expected.credit);
      agrees(figure("Credit at today's spot"), expected.credit);
    }
  },
);

test.each(SAMPLES.slice(0, 4).map((sample, index) => [index + 1, sample] as const))(
  "what was quoted is taken apart with the tax it was quoted at, whatever Rates say since: order %i",
  async (_, { rates, form }) => {
    await writeRates(desk, rates);
    const settled = { ...form, order: { ...form.order, settled: "by final weight", tolerance: "0.9" } };
    const { job, sheets } = papersOf(settled, rates);
    await putContents(desk, "Job 2001", job.paper);
    const weighed = sheets.flatMap((sheet, index) => {
      const cell = (key: string, column: "D" | "E") => job.at(index)(key, column).replaceAll("$", "");
      const { quantity } = sheet.line;
      const all = ({ grams }: Weight) => grams.times(quantity).toNumber();
      const alloys = sheet.alloys.flatMap((alloy, at) => [
        [cell(`cast${at}`, "E"), all(alloy.cast)],
        [cell(`polished${at}`, "E"), all(alloy.finished)],
      ]);
      const pieces = [cell("finishedPieces", "D"), quantity.toNumber()];
      return [...alloys, pieces, [cell("finishedPieces", "E"), all(sheet.finishedWeight)]];
    });
    await writeCells(desk, "Job 2001", Object.fromEntries(weighed));
    const before = await valuesOf(desk, "Job 2001", job.paper.rows.length);
    const said = (label: string) => before.find(([first]) => first === label)?.[1];
    // Every line was weighed, so that the scale's figures are there to be looked at.
    for (const label of ["Landed, by the scale", "Net, by the scale", "Net, without tax and shipping"])
      expect(typeof said(label), label).toBe("number");
    const otherTax = { tax: "0.31", taxIs: rates.taxIs === "on top" ? "in the price" : "on top" };
    await writeRates(desk, { ...otherTax, shippingTaxed: rates.shippingTaxed === "yes" ? "no" : "yes" });
    const after = await valuesOf(desk, "Job 2001", job.paper.rows.length);
    const moved = after.filter((row, index) => JSON.stringify(row) !== JSON.stringify(before[index]));
    // What the piece would be asked for today is the one figure that follows today's tax.
    expect(new Set(moved.map(([label]) => label))).toEqual(new Set(["Price at today's rates"]));
  },
);

const { customer: _customer, spot: _spot, discount: _discount, ...PLAIN } = ORDER;
/** Fine gold at 25 a gram; 1.50 a gram cast, 50 of labour, 2 g lost on a piece, 30 % on the landed cost, whole money. */
const AT_25 = {
  ...RATES,
  spot: SPOT_FOR_25,
  costBasis: "finished",
  priceStep: "1",
  plating: "40",
  taxIs: "on top",
  shippingTaxed: "no",
  overhead: "0",
  breakage: "0",
  tolerance: "0.05",
  ownGoldShare: "1",
};
/** 12.5 in at 4 an inch: 50 links. */
const FIFTY = { ...PLAIN, mark: "1000", length: "12.5" };
const TWO_LINES = {
  order: { customer: "Ada Quillfeather", settled: "by final weight" },
  lines: [
    { ...FIFTY, design: "Plain curb" },
    { ...FIFTY, design: "Two-colour curb", pattern: "YYW", linkWeightWhite: "2.5", quantity: "2" },
  ],
  extras: [],
};

async function twoLines(first: Readonly<Record<string, string>> = {}) {
  await writeRates(desk, AT_25);
  const [plain, ...others] = TWO_LINES.lines;
  const { job } = papersOf({ ...TWO_LINES, lines: [{ ...plain, ...first }, ...others] }, AT_25);
  await putContents(desk, "Job 2001", job.paper);
  const cell =
    (line: number) =>
    (key: string, column: "B" | "C" | "D" | "E" | "F" | "G" = "B") =>
      job.at(line)(key, column).replaceAll("$", "");
  const values = async () => {
    const rows = await valuesOf(desk, "Job 2001", job.paper.rows.length);
    const read = (address: string) => rows[Number(address.slice(1)) - 1]?.["ABCDEFGH".indexOf(address.charAt(0))];
    const labelled = (label: string, column = 1) => rows.find(([first]) => first === label)?.[column];
    return { read, labelled };
  };
  return { cell, values };
}

test("links of two colours are counted closed and open, weighed, and cast by alloy", async () => {
  const { cell, values } = await twoLines();
  const { read } = await values();
  const at = cell(1);
  // Y at places 0, 1, 3, 4 of six and W at 2 and 5; of 50 links eight whole sixes and two more yellow ones:
  // closed Y 8 x 2 + 1, open Y 8 x 2 + 1, closed W 8, open W 8. 34 x 2 + 16 x 2.5 = 108 g, 110 g with what is lost.
  expect(["B", "C", "D", "F"].map((column) => read(at("alloy0", column as "B")))).toEqual([34, 17, 17, 68]);
  expect(["B", "C", "D", "F"].map((column) => read(at("alloy1", column as "B")))).toEqual([16, 8, 8, 40]);
  expect(read(at("castParts", "G"))).toBe(110);
  agrees(read(at("cast0", "C")), new Fraction(110 * 2 * 68, 108));
  agrees(read(at("cast1", "C")), new Fraction(110 * 2 * 40, 108));
  // 110 x 26.5 + 50 + 40 of plating.
  expect(read(at("landed"))).toBe(3005);
});

test("a rate, or a cell to write in, changes every figure that rests on it", async () => {
  const { cell, values } = await twoLines();
  const at = cell(0);
  expect((await values()).read(at("landed"))).toBe(2753);
  await writeRates(desk, { labourFlat: "60" });
  expect((await values()).read(at("landed"))).toBe(2763);
  // 10 in: 40 links, 80 g; 82 x 26.5 + 60 = 2,233; x 1.3 = 2,902.90, up to 2,903.
  await writeCells(desk, "Job 2001", { [at("length")]: 10 });
  const { read } = await values();
  expect([read(at("castParts")), read(at("landed")), read(at("priceNow"))]).toEqual([40, 2233, 2903]);
  // What was quoted stands: 2,753 x 1.3 = 3,578.90, up to 3,579.
  expect(read(at("quoted"))).toBe(3579);
});

test("a model and mould that a piece has counts in making its chain, and may be corrected (hand arithmetic)", async () => {
  // 40 links, 80 g: 82 x 26.5 + 50 = 2,223 made, 80 x 28.25 = 2,260 bought: 37 saved, less the model and mould.
  const { cell, values } = await twoLines({ length: "10", setup: "10" });
  const at = cell(0);
  const sourcing = async () => {
    const now = await values();
    return ["D", "E"].map((column) => now.read(at("makeOrBuy", column as "D")));
  };
  expect(await sourcing()).toEqual([27, "make"]);
  await writeCells(desk, "Job 2001", { [at("setup")]: 50 });
  expect(await sourcing()).toEqual([-13, "buy"]);
});

test("an alloy of one's own is cast at its own gold and bought ready-made at that of its mark (hand arithmetic)", async () => {
  // Au 600 stamped 585 at 25.00 of fine gold: 102 x (15 + 1.50) + 50 = 1,733 made, 100 x (14.625 + 3.25) = 1,787.50 bought.
  const own = { colour: "own", colourName: "champagne", composition: "Au 600 Cu 400", mark: "585" };
  const { cell, values } = await twoLines(own);
  const at = cell(0);
  const sourcing = async () => {
    const now = await values();
    return ["B", "C", "D", "E"].map((column) => now.read(at("makeOrBuy", column as "D")));
  };
  expect(await sourcing()).toEqual([17.33, 17.875, 54.5, "make"]);
  // 102 x (16.50 + 1.50) + 50 = 1,886.
  await writeCells(desk, "Job 2001", { [at("gold")]: 660 });
  expect(await sourcing()).toEqual([18.86, 17.875, -98.5, "buy"]);
});

test("the credit and what is to be paid stand as they were quoted when spot moves", async () => {
  await writeRates(desk, AT_25);
  const own = { ownGoldWeight: "20", ownGoldMark: "500", ownGoldUse: "credited", ownGoldShare: "0.9" };
  const { job } = papersOf({ ...TWO_LINES, order: { ...TWO_LINES.order, ...own } }, AT_25);
  await putContents(desk, "Job 2001", job.paper);
  const figures = async () => {
    const rows = await valuesOf(desk, "Job 2001", job.paper.rows.length);
    const labels = ["Credit quoted", "Credit at today's spot", "To pay, as quoted"];
    return labels.map((label) => rows.find(([first]) => first === label)?.[1]);
  };
  // 10 g fine at 25, 90 % of it; 3,579 and twice 3,907 less that.
  expect(await figures()).toEqual([225, 225, 11_168]);
  await writeRates(desk, { spot: 2 * Number(SPOT_FOR_25) });
  expect(await figures()).toEqual([225, 450, 11_168]);
});

test("stones on all or every n-th of the links are counted anew with the links; a number of them stands", async () => {
  const set = { ...FIFTY, stonePrice: "5", stonesPerLink: "2" };
  const lines = [
    { ...set, design: "All", stonesOn: "all links" },
    { ...set, design: "Every seventh", stonesOn: "every n-th link", stoneEvery: "7" },
    { ...set, design: "Ten", stonesOn: "a number of links", stoneCount: "10" },
  ];
  await writeRates(desk, AT_25);
  const { job } = papersOf({ ...TWO_LINES, lines }, AT_25);
  await putContents(desk, "Job 2001", job.paper);
  const cells = lines.map((_, line) => (key: string) => job.at(line)(key).replaceAll("$", ""));
  const values = async (key: string) => {
    const rows = await valuesOf(desk, "Job 2001", job.paper.rows.length);
    return cells.map((cell) => rows[Number(cell(key).slice(1)) - 1]?.[1]);
  };
  // Of 50 links: 50, 7 and 10 with two stones each at 5.
  expect(await values("stones0")).toEqual([100, 14, 20]);
  expect(await values("stones")).toEqual([500, 70, 100]);
  await writeCells(desk, "Job 2001", Object.fromEntries(cells.map((cell) => [cell("length"), 10])));
  // Of 40 links: 40 and 5.
  expect(await values("stones0")).toEqual([80, 10, 20]);
});

test("cost lines that a piece has nothing of are not listed, and an overhead that comes later still counts", async () => {
  const lines = [
    { ...FIFTY, design: "Plain curb", clasp: "none" },
    { ...FIFTY, design: "Named curb", clasp: "none", engraving: "For Ada", findings: "jump rings", setup: "25" },
  ];
  await writeRates(desk, AT_25);
  const { job } = papersOf({ ...TWO_LINES, lines }, AT_25);
  await putContents(desk, "Job 2001", job.paper);
  const listed = async (line: number) => {
    const rows = await valuesOf(desk, "Job 2001", job.paper.rows.length);
    const row = (key: string) => Number(job.at(line)(key).split("$").at(-1)) - 1;
    return rows.slice(row("metal"), row("landed") + 1).map((cells) => cells.slice(0, 2));
  };
  const four = [
    ["Metal in the cast parts", 2500],
    ["Metal lost in polishing", 50],
    ["Casting", 153],
    ["Labour", 50],
  ];
  expect(await listed(0)).toEqual([...four, ["Landed cost", 2753]]);
  expect(await listed(1)).toEqual([
    ...four,
    ["Other findings", 0],
    ["Engraving", 0],
    ["Model and mould share", 25],
    ["Landed cost", 2778],
  ]);
  await writeRates(desk, { overhead: "0.1" });
  expect((await listed(0)).at(-1)?.[1]).toBeCloseTo(3028.3, 9);
  await writeRates(desk, { overhead: "0" });
});

test("blank readings stay blank, and readings say what loss, cost, price and margin came to", async () => {
  const { cell, values } = await twoLines();
  const at = cell(0);
  const actual = [
    "actualLinks",
    "actualCast",
    "actualLoss",
    "actualPiece",
    "actualLanded",
    "actualPrice",
    "actualMargin",
  ];
  const before = await values();
  expect(actual.map((key) => before.read(at(key, "C")))).toEqual(actual.map(() => ""));
  await writeCells(desk, "Job 2001", {
    [at("cast0", "D")]: 50,
    [at("cast0", "E")]: 103,
    [at("polished0", "D")]: 50,
    [at("polished0", "E")]: 100.5,
    [at("finishedPieces", "D")]: 1,
    [at("finishedPieces", "E")]: 100.4,
  });
  const { read, labelled } = await values();
  expect(read(at("actualLinks", "C"))).toBe(50);
  expect(read(at("actualLinks", "D"))).toBe(0);
  agrees(read(at("actualLoss", "C")), new Fraction("2.5"));
  expect(read(at("actualLossShare", "E"))).toBe("more than allowed");
  agrees(read(at("actualLossShare", "C")), new Fraction("2.5").div(103));
  // 103 x 26.5 + 50.
  agrees(read(at("actualLanded", "C")), new Fraction("2779.5"));
  agrees(read(at("actualPerGram", "C")), new Fraction("2779.5").div("100.4"));
  // A gram moves it by the metal rate, 25: 3,579 + 0.4 x 25 = 3,589.
  expect(read(at("settlingRate"))).toBe(25);
  agrees(read(at("actualPrice", "C")), new Fraction("3589"));
  agrees(read(at("actualMargin", "C")), new Fraction(1).sub(new Fraction("2779.5").div("3589")));
  // The other line was not weighed.
  expect(labelled("Landed, by the scale")).toBe("");
});

/** What was counted and weighed of the first line, and what the sheet says of it. */
async function polished(counted: Readonly<Partial<Record<"cast0" | "sent0" | "polished0", number>>>) {
  const { cell, values } = await twoLines();
  const at = cell(0);
  await writeCells(desk, "Job 2001", {
    ...Object.fromEntries(Object.entries(counted).map(([key, count]) => [at(key, "D"), count])),
    [at("cast0", "E")]: 190,
    [at("polished0", "E")]: 173.81,
  });
  const { read } = await values();
  return {
    row: (["B", "C", "D", "E", "F", "G"] as const).map((column) => read(at("cameBack0", column))),
    money: read(at("missing0")),
    remark: read(at("missing0", "C")),
    lost: [read(at("actualLoss", "C")), read(at("actualLossShare", "C")), read(at("actualLossShare", "E"))],
    landed: read(at("actualLanded", "C")),
  };
}

test("loss goes by the link: spare links are stock, missing ones are named with grams and money (hand arithmetic)", async () => {
  const { row, money, remark, lost, landed } = await polished({ cast0: 95, sent0: 93, polished0: 91 });
  // 2 g each as cast: 182 g for 91; 182 - 173.81 = 8.19 g, 4.5 %. Two spare and two missing of 4 g, at 25 a gram.
  expect(row).toEqual([182, 0.045, 2, 4, 2, 4]);
  expect([money, remark]).toEqual([100, "2 sent and not returned"]);
  agrees(lost[0], new Fraction("8.19"));
  agrees(lost[1], new Fraction("0.045"));
  expect(lost[2]).toBe("more than allowed");
  // The spare ones are not in the cost of the piece: (190 - 4) x 26.5 + 50.
  agrees(landed, new Fraction(4979));
});

test("what was sent to the polisher is counted and not weighed: no cream cell asks for a weight that nothing uses", () => {
  const { job } = papersOf(TWO_LINES, AT_25);
  const looks = (key: string) => {
    const row = Number(job.at(0)(key).split("$").at(-1)) - 1;
    return [3, 4].map((column) => job.paper.rows[row]?.[column]?.look);
  };
  expect(looks("cast0")).toEqual(["inputRight", "inputRight"]);
  expect(looks("sent0")).toEqual(["inputRight", undefined]);
});

test("where nobody wrote how many were sent, the sheet asks, and the loss still goes by the link", async () => {
  const { row, money, remark, lost, landed } = await polished({ cast0: 95, polished0: 91 });
  expect(row).toEqual([182, 0.045, "", "", "", ""]);
  expect([money, remark]).toEqual(["", "4 did not come back: type how many were sent"]);
  agrees(lost[1], new Fraction("0.045"));
  // All 190 g: 190 x 26.5 + 50.
  agrees(landed, new Fraction(5085));
});

test.each([
  ["one count alone", { cast0: 95 }, "count the links cast and the links that came back"],
  ["what was sent alone", { sent0: 95 }, "count the links cast and the links that came back"],
  ["more back than were cast", { cast0: 90, polished0: 91 }, "more links than at the step before: count again"],
  [
    "more sent than were cast",
    { cast0: 95, sent0: 96, polished0: 91 },
    "more links than at the step before: count again",
  ],
  [
    "more back than were sent",
    { cast0: 95, sent0: 90, polished0: 91 },
    "more links than at the step before: count again",
  ],
])("counts that say no loss are told, and none is shown: %s", async (_, counted, words) => {
  const { row, remark, lost } = await polished(counted);
  expect([row, remark, lost]).toEqual([["", "", "", "", "", ""], words, ["", "", ""]]);
});

test("without counts all that was cast came back: 190 g to 173.81 g", async () => {
  const { row, remark, lost } = await polished({});
  expect(row.slice(2)).toEqual(["", "", "", ""]);
  agrees(lost[0], new Fraction("16.19"));
  expect(remark).toBe("");
});

test("finished pieces heavier than the polished links and the parts on them get a remark (hand arithmetic)", async () => {
  const stones = { stonePrice: "5", stonesOn: "a number of links", stoneCount: "10", stoneCarat: "0.25" };
  const parts = { clasp: "bought lobster clasp", claspWeight: "3", findingsWeight: "1", ...stones };
  const { cell, values } = await twoLines(parts);
  const at = cell(0);
  const weighed = async (finished: number) => {
    await writeCells(desk, "Job 2001", { [at("finishedPieces", "D")]: 1, [at("finishedPieces", "E")]: finished });
    return (await values()).read(at("actualPiece", "E"));
  };
  expect(await weighed(200)).toBe("");
  await writeCells(desk, "Job 2001", { [at("cast0", "E")]: 102, [at("polished0", "E")]: 100 });
  // 100 g polished, a clasp of 3 g, findings of 1 g, 2.5 ct of stones: 104.5 g.
  expect(await weighed(104.5)).toBe("");
  expect(await weighed(104.51)).toBe("more than polished links and added parts, 104.50 g: weigh again");
});

test("an order weighed in full shows its landed cost, and a weight outside the tolerance is to be agreed", async () => {
  const { cell, values } = await twoLines();
  const [first, second] = [cell(0), cell(1)];
  await writeCells(desk, "Job 2001", {
    [first("cast0", "E")]: 102,
    [first("polished0", "E")]: 100,
    [first("finishedPieces", "D")]: 1,
    [first("finishedPieces", "E")]: 105.01,
    [second("cast0", "E")]: 138,
    [second("cast1", "E")]: 82,
    [second("polished0", "E")]: 136,
    [second("polished1", "E")]: 80,
    [second("finishedPieces", "D")]: 2,
    [second("finishedPieces", "E")]: 226.8,
  });
  const { read, labelled } = await values();
  expect(read(first("actualPrice", "C"))).toBe("agree with the customer");
  // 108 g stated, 5 % of it is 5.4 g: 113.4 g is the last that is settled. 3,005 x 1.3 = 3,906.50, up to 3,907.
  // 3,907 + 5.4 x the metal rate of 25 = 4,042.
  agrees(read(second("actualPrice", "C")), new Fraction("4042"));
  // 102 x 26.5 + 50 = 2,753, and twice 110 x 26.5 + 50 + 40.
  agrees(labelled("Landed, by the scale"), new Fraction(2753 + 2 * 3005));
  // The price to be agreed still counts as quoted.
  agrees(labelled("Net, by the scale"), new Fraction("3579").add(new Fraction("4042").mul(2)));
  expect(labelled("Left to pay")).toBe("");
  expect(labelled("Left to pay", 2)).toBe("a price is to be agreed first");
});

test("a price settled by weight stands before the discount, on the quote and on the job, and the job says what is left to pay", async () => {
  const rates = { ...AT_25, tax: "0.08", deposit: "0.9", priceStep: "1" };
  await writeRates(desk, rates);
  const order = {
    order: { ...TWO_LINES.order, discount: "10 %", shipping: "20" },
    lines: [{ ...FIFTY, design: "Plain curb", quantity: "2" }],
    extras: [{ text: "Gift box", amount: "15.50", cost: "4" }],
  };
  const { job, quote } = papersOf(order, rates);
  await putContents(desk, "Job 2001", job.paper);
  expect(quote.lines[0]?.perGram?.amount.toNumber()).toBe(25);
  expect(quote.settledDiscount?.toNumber()).toBe(0.1);
  const at = (key: string, column: "B" | "C" | "E" | "D" = "B") => job.at(0)(key, column).replaceAll("$", "");
  await writeCells(desk, "Job 2001", {
    [at("cast0", "E")]: 204,
    [at("polished0", "E")]: 200,
    [at("finishedPieces", "D")]: 2,
    [at("finishedPieces", "E")]: 202,
  });
  const rows = await valuesOf(desk, "Job 2001", job.paper.rows.length);
  const labelled = (label: string, column = 1) => rows.filter(([first]) => first === label).at(-1)?.[column];
  expect(labelled("A gram more or less", 2)).toBe("on the price, before the discount");
  // 101 g each, one more than stated: 3,579 + 25 = 3,604, two of them.
  const settledAt = rows.findIndex(([first]) => first === "Settled by final weight");
  const [pieces, total, rest] = rows.slice(settledAt + 1, settledAt + 4);
  expect(pieces?.slice(0, 3)).toEqual(["Pieces", 7208, "at the settled prices, before the discount"]);
  // 7,208 - 720.80 + 15.50 = 6,502.70; tax 8 %: 520.216; + 20 of shipping.
  expect(total?.slice(0, 2)).toEqual(["Total", 7042.92]);
  // Quoted: 7,158 - 715.80 + 15.50 = 6,457.70, 516.62 of tax and 20: 6,994.32, of which 90 % is 6,294.888, up to 6,295.
  expect(rest?.slice(0, 3)).toEqual(["Left to pay", 747.92, "less the deposit"]);
});

test("stones lie on the scale and are not gold: a piece exactly as stated costs as quoted, whatever its stones weigh", async () => {
  await writeRates(desk, AT_25);
  const stones = { stonesOn: "a number of links", stoneCount: "40", stonesPerLink: "2", stonePrice: "5" };
  const lines = [
    // 80 stones of 0.4 ct weigh 6.4 g: with 100 g of gold 106.40 g lie on the scale.
    { ...FIFTY, ...stones, design: "Weighed", stoneCarat: "0.4" },
    // 2 mm round: 2 x 2 x 1.2 x 0.0061 = 0.02928 ct, 80 of them 2.3424 ct and 0.46848 g. Two pieces show 200.94 g.
    { ...FIFTY, ...stones, design: "Measured", stoneDiameter: "2", quantity: "2" },
    { ...FIFTY, ...stones, design: "Unknown" },
    { ...FIFTY, design: "Plain" },
  ];
  const { job, quote, watch } = papersOf({ ...TWO_LINES, lines }, AT_25);
  expect(watch.stonesUnweighed).toEqual([2]);
  expect(quote.lines.map(({ weight }) => weight.toNumber())).toEqual([100, 100, 100, 100]);
  await putContents(desk, "Job 2001", job.paper);
  const cell = (line: number, key: string, column: "B" | "C" | "D" | "E" = "B") =>
    job.at(line)(key, column).replaceAll("$", "");
  const read = async (key: string, column: "B" | "C" | "D" | "E" = "B") => {
    const rows = await valuesOf(desk, "Job 2001", job.paper.rows.length);
    return lines.map((_, line) => {
      const address = cell(line, key, column);
      return rows[Number(address.slice(1)) - 1]?.["ABCDEFGH".indexOf(address.charAt(0))];
    });
  };
  const expected = await read("finishedPieces", "C");
  expect(expected.map((value) => (typeof value === "number" ? Number(value.toFixed(4)) : value))).toEqual([
    106.4,
    200.937,
    "",
    100,
  ]);
  const weighed = (weights: readonly number[]) =>
    Object.fromEntries(
      lines.flatMap(({ quantity }: { quantity?: string }, line) => [
        [cell(line, "finishedPieces", "D"), Number(quantity ?? 1)],
        [cell(line, "finishedPieces", "E"), weights[line]],
      ]),
    );
  await writeCells(desk, "Job 2001", weighed([106.4, 200.94, 105, 100]));
  const asQuoted = await read("quoted");
  const settled = await read("actualPrice", "C");
  expect([settled[0], settled[1], settled[3]]).toEqual([asQuoted[0], asQuoted[1], asQuoted[3]]);
  // Without the carats nothing is settled, and the sheet asks for them.
  expect(settled[2]).toBe("");
  expect((await read("actualPiece", "C"))[2]).toBe("");
  const { paper } = job;
  const asks = (await valuesOf(desk, "Job 2001", paper.rows.length)).flat();
  expect(asks.filter((value) => value === "type the carat of each stone above")).toHaveLength(1);
  // A gram more on the scale is a gram more of gold, at 25; half of it in each of two pieces.
  await writeCells(desk, "Job 2001", weighed([107.4, 201.94, 105, 101]));
  const heavier = await read("actualPrice", "C");
  expect([0, 1, 3].map((line) => Number(heavier[line]) - Number(asQuoted[line]))).toEqual([25, 12.5, 25]);
  expect(await read("actualPiece", "C")).toEqual([101, 100.5, "", 101]);
});

test("rates that the workbook has no row for count as blank on the job, as they were read", async () => {
  await writeRates(desk, AT_25);
  const missing = ["overhead", "breakage", "taxIs", "shippingTaxed", "taxName", "castingMinimum"] as const;
  await desk.pane.evaluate(
    async (names) => {
      await Excel.run(async (context) => {
        for (const name of names) context.workbook.names.getItem(name).delete();
        await context.sync();
      });
    },
    missing.map((key) => `Rate_${key.charAt(0).toUpperCase()}${key.slice(1)}`),
  );
  const without = Object.fromEntries(Object.entries(AT_25).filter(([key]) => !missing.some((name) => name === key)));
  const { job } = papersOf(TWO_LINES, without, missing);
  await putContents(desk, "Job 2001", job.paper);
  const rows = await valuesOf(desk, "Job 2001", job.paper.rows.length);
  expect(rows.flat().filter((value) => typeof value === "string" && value.startsWith("#"))).toEqual([]);
  const landed = rows.filter(([first]) => first === "Landed cost").map(([, value]) => value);
  expect(landed).toEqual([2753, 3005]);
});
