import Fraction from "fraction.js";
import { expect, test } from "vitest";
import { minorDigits } from "../../../../src/units/currency";
import { ORDER, RATES } from "../../../src/orders";
import { SPOT_FOR_25, withRates } from "../../../workbook/desk";
import { deskForAll } from "../../../workbook/workshop";
import { papersOf, putContents, valuesOf, writeCells, writeRates } from "../papers";

const desk = deskForAll(withRates);

const { customer: _customer, spot: _spot, discount: _discount, ...PLAIN } = ORDER;
const AT_25 = {
  ...RATES,
  spot: SPOT_FOR_25,
  costBasis: "finished",
  priceStep: "1",
  plating: "40",
  platingMetal: "rhodium",
  taxIs: "on top",
  shippingTaxed: "no",
  overhead: "0",
  breakage: "0",
  tolerance: "0.05",
  ownGoldShare: "1",
};
/** 12.5 in at 4 an inch: 50 links. */
const FIFTY = { ...PLAIN, mark: "14K", length: "12.5" };
const PLAIN_LINE = { ...FIFTY, design: "Plain curb" };
const TWO_COLOURS = { ...FIFTY, design: "Two-colour curb", pattern: "YYW", linkWeightWhite: "2.5", quantity: "2" };
const STONES = {
  ...FIFTY,
  design: "Set curb",
  solidity: "hollow",
  clasp: "cast box clasp",
  claspWeight: "3",
  stonesOn: "all links",
  stonesPerLink: "2",
  stoneDiameter: "2",
  stonePrice: "6",
  breakage: "10 %",
  engraving: "For Ada",
  engravingCost: "20",
};

const order = (...lines: Readonly<Record<string, string>>[]) => ({
  order: { customer: "Ada Quillfeather" },
  lines,
  extras: [{ text: "Gift box", amount: "12", cost: "5" }],
});

async function tickets(...lines: Readonly<Record<string, string>>[]) {
  await writeRates(desk, AT_25);
  const papers = papersOf(order(...lines), AT_25);
  await putContents(desk, "Job 2001", papers.job.paper);
  await putContents(desk, "Tickets 2001", papers.tickets);
  const rows = await valuesOf(desk, "Tickets 2001", papers.tickets.rows.length);
  const titles = rows.map(([first]) => String(first)).filter((first) => /ticket$/.test(first));
  /** The rows of a ticket's table, by the title of the ticket. */
  const table = (title: string) => {
    const start = rows.findIndex(([first]) => first === title);
    const head = rows.findIndex(([first], row) => row > start && first === "Line");
    const end = rows.findIndex(([first], row) => row > head && first === "");
    return rows.slice(head + 1, end);
  };
  const words = rows.flat().filter((value) => value !== "");
  return { papers, rows, titles, table, words };
}

test("a ticket is there only where there is work for it", async () => {
  expect((await tickets(PLAIN_LINE)).titles).toEqual(["Caster's ticket", "Polisher's ticket"]);
  expect((await tickets(TWO_COLOURS, STONES)).titles).toEqual([
    "Caster's ticket",
    "Polisher's ticket",
    "Setter's ticket",
    "Engraver's ticket",
    "Plating ticket",
  ]);
});

test("the caster reads links closed and open, clasp parts and the weight to cast, of all pieces and by alloy", async () => {
  const { table, words } = await tickets(PLAIN_LINE, TWO_COLOURS, STONES);
  // 50 links are 25 closed and 25 open; 2 g are lost on a piece: 102 g.
  // YYW over 50: 34 yellow, 17 and 17, 16 white, 8 and 8; 108 g, 110 to cast, two pieces.
  // 50 links and a cast box clasp of two parts: 103 g, 105 to cast.
  const rows = table("Caster's ticket");
  expect(rows.map((row) => row.slice(1, 7))).toEqual([
    ["14K", "yellow", 25, 25, "", 50],
    ["14K", "yellow", 34, 34, "", 68],
    ["14K", "white", 16, 16, "", 32],
    ["14K", "yellow", 25, 25, 2, 52],
    ["", "", "", "", "", 170],
    ["", "", "", "", "", 32],
    ["", "", "", "", "", 202],
  ]);
  const weights = [
    new Fraction(102),
    new Fraction(220 * 68, 108),
    new Fraction(220 * 40, 108),
    new Fraction(105),
    new Fraction(220 * 68, 108).add(207),
    new Fraction(220 * 40, 108),
    new Fraction(427),
  ];
  for (const [index, weight] of weights.entries()) expect(rows[index]?.[7]).toBeCloseTo(weight.valueOf(), 9);
  expect(rows.map(([first]) => first).slice(3)).toEqual([
    "3. Set curb, chain, hollow",
    "14K yellow",
    "14K white",
    "In all",
  ]);
  expect(words.join("\n")).toMatch(/Sprues and buttons are not in this weight: weigh them and return them/);
});

test("the polisher reads what comes in, what is to come back, and the loss allowed in grams and as a share", async () => {
  const { table } = await tickets(PLAIN_LINE);
  const [line, all] = table("Polisher's ticket");
  expect(line?.slice(3, 7)).toEqual([50, 102, 100, 2]);
  expect(line?.[7]).toBeCloseTo(2 / 102, 12);
  expect(all?.slice(3, 7)).toEqual([50, 102, 100, 2]);
});

test("the polisher reads the length, the clasp and how colours follow each other", async () => {
  const wrist = {
    lengthGiven: "wrist",
    length: "17",
    ease: "1.5",
    lengthUnit: "cm",
    linksPer: "1.7",
    linksPerUnit: "cm",
  };
  const { rows, words } = await tickets(PLAIN_LINE, { ...TWO_COLOURS, ...wrist }, STONES, {
    ...PLAIN_LINE,
    clasp: "none",
  });
  const start = rows.findIndex(([first]) => first === "To join");
  // 18.5 cm at 1.7 a centimetre are 31.45 links; 31 of them are 18.235... cm long.
  const joined = rows.slice(start + 1, start + 5).map((row) => row.slice(2, 7));
  expect(
    joined.map((row) => row.map((cell) => (typeof cell === "number" ? Math.round(cell * 1000) / 1000 : cell))),
  ).toEqual([
    ["lobster clasp, bought", 1, 12.5, 12.5, "in"],
    ["lobster clasp, bought", 2, 18.5, 18.235, "cm"],
    ["box clasp, cast", 1, 12.5, 12.5, "in"],
    ["no clasp", 1, 12.5, 12.5, "in"],
  ]);
  const text = words.join("\n");
  expect(text).toContain("Line 2: colours follow as YYW (Y yellow, W white), over and over");
  expect(text).not.toContain("Line 1: colours");
  expect(text).toContain("Line 3: its clasp parts are those of a box clasp: the box and its tongue.");
});

test("the engraver reads every word, however many there are", async () => {
  const engraving = `For Ada, ${"with love and patience, ".repeat(6)}always`;
  const { rows: all } = await tickets({ ...STONES, engraving });
  const title = all.findIndex(([first]) => first === "Engraver's ticket");
  const head = all.findIndex(([first], row) => row > title && first === "Line");
  const end = all.findIndex((row, index) => index > head && row.every((cell) => cell === ""));
  const rows = all.slice(head + 1, end);
  expect(rows.map((row) => row[2]).join(" ")).toBe(engraving);
  expect(rows.every((row) => String(row[2]).length <= 48)).toBe(true);
  expect(rows.map((row) => row[7])).toEqual([1, ...rows.slice(1).map(() => "")]);
});

test("a ticket takes care of the lines there is work at: solid links are not called hollow to the engraver", async () => {
  const { rows } = await tickets({ ...PLAIN_LINE, engraving: "For Ada" }, { ...STONES, engraving: "" });
  const title = (name: string) => rows.findIndex(([first]) => first === name);
  const said = (from: string, to?: string) =>
    rows
      .slice(title(from), to === undefined ? undefined : title(to))
      .flat()
      .join(" ");
  expect(said("Engraver's ticket")).not.toContain("Call hollow links hollow");
  expect(said("Setter's ticket", "Engraver's ticket")).toContain("Call hollow links hollow");
});

test("the setter reads how many stones to set and to buy, whole ones, and to wait for the seats", async () => {
  const { table, words } = await tickets(STONES);
  const [stones] = table("Setter's ticket");
  // Two in each of 50 links, a tenth of them broken; 2 mm round, 1.2 mm deep: 4 x 1.2 x 0.0061 = 0.02928 ct each.
  expect(stones?.slice(2, 7)).toEqual(["In all links, 2 each, 2 mm round, about 0.029 ct", 100, 1, 100, 110]);
  expect(stones?.[7]).toBeCloseTo(110 * 0.02928, 9);
  expect(words).toContain("Buy the stones only after the cast seats have been checked. (common practice)");
  expect(words.join("\n")).not.toContain("Carats of other stones");
});

test("the setter reads what stones they are, and of which the carats are a diamond's", async () => {
  const { table, words } = await tickets(
    { ...STONES, stoneKind: "sapphire" },
    { ...STONES, stoneKind: "ruby", stoneCarat: "0.03" },
  );
  const [sapphires, rubies] = table("Setter's ticket");
  expect(sapphires?.[2]).toBe("Sapphire, in all links, 2 each, 2 mm round, about 0.029 ct");
  expect(rubies?.[2]).toBe("Ruby, in all links, 2 each, 2 mm round, 0.03 ct");
  expect(words.join(" ")).toContain(
    "Carats of other stones are as of a diamond that size (specific gravity 3.52): weigh them.",
  );
});

test("plating is for the white links only where others stand beside them", async () => {
  const { table } = await tickets(TWO_COLOURS, { ...PLAIN_LINE, colour: "white", platingMetal: "black rhodium" });
  expect(table("Plating ticket").map((row) => row.slice(2, 7))).toEqual([
    ["white links only", "rhodium", 32, 2, 80],
    ["the whole piece", "black rhodium", 50, 1, 100],
  ]);
});

test("tickets follow the job sheet's cells", async () => {
  const { papers, rows } = await tickets(PLAIN_LINE);
  expect(rows.flat()).toContain(102);
  await writeCells(desk, "Job 2001", { [papers.job.at(0)("length").replaceAll("$", "")]: 10 });
  const after = await valuesOf(desk, "Tickets 2001", papers.tickets.rows.length);
  // 40 links of 2 g and the 2 g that are lost.
  expect(after.flat()).toContain(82);
  expect(after.flat()).not.toContain(102);
});

test("tickets say no cost, no price, no margin and no customer", async () => {
  const { papers, words, rows } = await tickets(PLAIN_LINE, TWO_COLOURS, STONES);
  const text = words.join("\n");
  expect(text).not.toMatch(/cost|price|margin|markup|discount|deposit|spot|premium|fee|USD|Quillfeather|Gift box/i);
  const digits = minorDigits("USD");
  const money = papers.sheets.flatMap((sheet) => [
    ...Object.values(sheet.costs),
    sheet.landed,
    sheet.price,
    sheet.netPrice,
    sheet.floor,
    sheet.cashOut,
  ]);
  const shown = new Set(money.map(({ amount }) => amount.rounded(digits).toNumber()).filter((amount) => amount > 110));
  expect(shown.size).toBeGreaterThan(9);
  const figures = rows.flat().filter((value) => typeof value === "number");
  expect(figures.filter((value) => shown.has(Math.round(value * 100) / 100))).toEqual([]);
});

test("each ticket begins a printed page", async () => {
  const { papers, rows } = await tickets(TWO_COLOURS, STONES);
  const starts = papers.tickets.pageStarts ?? [];
  expect([0, ...starts].map((row) => rows[row]?.[0])).toEqual([
    "Caster's ticket",
    "Polisher's ticket",
    "Setter's ticket",
    "Engraver's ticket",
    "Plating ticket",
  ]);
});
