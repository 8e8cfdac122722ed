import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { COLOURS } from "../../../src/gold/alloy";
import { contentsOf, type Paper } from "../../../taskpane/excel/paper";
import { ratesPaper } from "../../../taskpane/excel/rates/ratespaper";
import {
  CAUTIONS,
  type Caution,
  type CautionKey,
  type CautionPlace,
  cautionText,
  LOCAL_LAW_FIRST,
} from "../../../taskpane/wording/cautions";
import { ORDER, RATES, type Record_ } from "../../src/orders";
import { published } from "../../src/published";
import { papersOf } from "../excel/papers";

const KEYS = Object.keys(CAUTIONS) as CautionKey[];
const LIMITS = published<{ rows: readonly { what: string; value: string; source: string }[] }>("limits.json").rows;

/** What each caution says in figures, and the published row that says the same. */
const FIGURES: Partial<Record<CautionKey, readonly [what: string, said: RegExp, published: RegExp][]>> = {
  burnout: [
    ["respirable crystalline silica at work", /50 µg\/m³, action level 25/, /50 µg\/m³ \(8 h\), action level 25/],
  ],
  alcohol: [
    ["isopropyl alcohol", /flash point 53 °F, LEL 2\.0%/, /flash point 53 °F .*lower explosive limit 2\.0 %/],
    // (53 - 32) x 5/9 = 11.7.
    ["isopropyl alcohol", /can be lit from 12 °C \(53 °F\)/, /53 °F \(its vapour can be lit\)/],
  ],
  nickel: [
    [
      "nickel release, chains and bracelets",
      /at most 0\.5 µg\/cm²\/week/,
      /breached when greater than 0\.5 µg\/cm²\/week/,
    ],
    [
      "nickel release, chains and bracelets",
      /plated, it must keep that for two years/,
      /coating must hold that for two years/,
    ],
  ],
  mark: [
    ["karat before the word Gold", /true karat directly before “gold”/, /correct karat immediately precedes the word/],
    [
      "name beside a struck quality mark",
      /your name or registered trademark/,
      /registered or applied-for trademark or the name/,
    ],
    ["UK hallmark exemption, gold", /UK: a hallmark from 1 g/, /less than 1 g \(1\.00 g needs the hallmark\)/],
  ],
  lightMark: [["UK hallmark exemption, gold", /below 1 g of metal, no hallmark/, /all its metal weighs less than 1 g/]],
  plating: [["rhodium on precious metal", /23\.7 for rhodium/, /must be disclosed/]],
  publicGold: [
    [
      "dealer in precious metals",
      /buying and selling more than USD 50,000 each in a year/,
      /more than 50000 USD and sold more than 50000 USD/,
    ],
  ],
  cash: [
    ["cash reported on Form 8300", /more than USD 10,000/, /more than 10000 USD/],
    ["cash reported on Form 8300", /within 15 days/, /due within 15 days/],
    [
      "cash reported on Form 8300",
      /connected orders.*12 months/,
      /related payments \(instalments within a year add up\)/,
    ],
  ],
  laser: [["laser classes", /21 CFR 1040\.10/, /class IV/]],
};

describe.each(KEYS)("the caution %s", (key) => {
  const { words, rule = "", where }: Caution = CAUTIONS[key];

  test("has sentences of at most 25 words", () => {
    for (const sentence of words.split(/(?<=\.) /))
      expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(25);
  });

  test("says in figures what the rule says (published limits)", () => {
    for (const [what, said, source] of FIGURES[key] ?? []) {
      expect(cautionText(key)).toMatch(said);
      expect(LIMITS.find((row) => row.what === what)?.value).toMatch(source);
    }
    const hasFigure = /\d/.test(words.replace(/class 4/, ""));
    expect(hasFigure && FIGURES[key] === undefined, "a figure without a published row").toBe(false);
  });

  test("ends with its rule in brackets, and with none that nobody has read", () => {
    expect(cautionText(key)).toBe(rule === "" ? words : `${words} (${rule})`);
    expect(where.length).toBeGreaterThan(0);
  });
});

/** Rules whose text nobody of us has read: a screen says the sentence without them. */
const UNREAD = /1910\.252|EN 1811|EN 12472|98\/6|Price Marking/;

const ROOT = new URL("../../../", import.meta.url);
const textOf = (path: string) => readFileSync(new URL(path, ROOT), "utf8");

/** The words of the pane, of the sheets and of the worksheet functions, and the README. */
const SCREENS = [
  ...["taskpane/", "functions/"].flatMap((house) =>
    readdirSync(new URL(house, ROOT), { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".ts"))
      .map((name) => [house + name.replaceAll("\\", "/"), textOf(house + name)] as const),
  ),
  ["README.md", textOf("README.md")] as const,
];

test("no screen cites a rule that nobody has read", () => {
  expect(SCREENS.length).toBeGreaterThan(200);
  expect(SCREENS.filter(([, text]) => UNREAD.test(text)).map(([name]) => name)).toEqual([]);
});

test("rules are cited in the record of cautions alone, and in the README as they stand there", () => {
  const citing = /\bCFR\b|U\.S\.C|REACH|NIOSH|Form 8300|Hallmarking Act/;
  const withoutComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "");
  const others = SCREENS.filter(
    ([name, text]) => citing.test(withoutComments(text)) && !name.endsWith("wording/cautions.ts"),
  );
  expect(others.map(([name]) => name)).toEqual(["README.md"]);
  const [, readme] = SCREENS.at(-1) ?? ["", ""];
  for (const key of KEYS.filter((each) => each !== "lightMark")) expect(readme).toContain(cautionText(key));
});

const { customer: _customer, spot: _spot, discount: _discount, ...LINE } = ORDER;
const AT = { ...RATES, plating: "40", platingMetal: "rhodium", tolerance: "0.05" };
const STONES = { stonesOn: "all links", stoneKind: "sapphire", stoneDiameter: "2" };

/** Every line of a paper, by its sheet: the job sheet, and each ticket for itself. */
function sheetsIn(lines: readonly Record_[], order: Record_ = {}): ReadonlyMap<CautionPlace, string> {
  const form = { order: { customer: "Ada", ...order }, lines: lines.map((line) => ({ ...LINE, ...line })), extras: [] };
  const { job, tickets } = papersOf(form, AT);
  const sheets = new Map<CautionPlace, string>([["job sheet", wordsOf(job.paper)]]);
  const rows = contentsOf(tickets).map((row) => row.map(plain).join(" ").trim());
  let place: CautionPlace | undefined;
  for (const row of rows) {
    place = PLACES[row] ?? place;
    if (place) sheets.set(place, `${sheets.get(place) ?? ""}${row} `);
  }
  return sheets;
}
const PLACES: Readonly<Record<string, CautionPlace>> = {
  "Caster's ticket": "caster's ticket",
  "Polisher's ticket": "polisher's ticket",
  "Setter's ticket": "setter's ticket",
  "Engraver's ticket": "engraver's ticket",
  "Plating ticket": "plater's ticket",
};
const plain = (cell: string | number) => String(cell).replace(/^'/, "");
const wordsOf = (paper: Paper) =>
  contentsOf(paper)
    .map((row) =>
      row
        .map(plain)
        .filter((cell) => cell !== "")
        .join(" "),
    )
    .join(" ");
const times = (text: string, words: string) => text.split(words).length - 1;

/** The cautions that stand on a sheet, each as often as it does. */
const standing = (text: string) =>
  KEYS.flatMap((key) => Array<CautionKey>(times(text, cautionText(key))).fill(key)).sort();

describe("the sheets of two lines that ask for every trade", () => {
  const ALL = { ...STONES, colour: "white", plated: "plated", solidity: "hollow", engraving: "For Ada" };
  const gold = { ownGoldWeight: "10", ownGoldMark: "14K" };
  const sheets = sheetsIn([ALL, ALL], gold);

  test("are all there", () => {
    expect([...sheets.keys()].sort()).toEqual(["job sheet", ...Object.values(PLACES)].sort());
  });

  test.each(["job sheet", ...Object.values(PLACES)] as const)("the %s has each of its cautions once", (place) => {
    const text = sheets.get(place) ?? "";
    const belongs = ({ where }: Caution) => where.includes(place);
    // In place of one another: the hallmark from 1 g, and none below it.
    expect(standing(text)).toEqual(KEYS.filter((key) => belongs(CAUTIONS[key]) && key !== "lightMark").sort());
    expect(times(text, LOCAL_LAW_FIRST)).toBe(1);
    expect(Math.max(...KEYS.map((key) => text.lastIndexOf(cautionText(key))))).toBeLessThan(
      text.indexOf(LOCAL_LAW_FIRST),
    );
  });
});

test("solid yellow links without stones call for no more than casting, joining and the mark", () => {
  const sheets = sheetsIn([{ linePriceBy: "own price", linePriceFigure: "5000" }]);
  const all = [...sheets].map(([place, text]) => [place, standing(text)]);
  expect(Object.fromEntries(all)).toEqual({
    "job sheet": ["casting"],
    "caster's ticket": ["burnout", "casting"],
    "polisher's ticket": ["laser", "mark", "torch"],
  });
});

test("nickel is named for white gold and for an alloy that holds it, and for no other", () => {
  const named = (line: Record_) => standing(sheetsIn([line]).get("caster's ticket") ?? "").includes("nickel");
  for (const colour of COLOURS.filter((each) => each !== "own")) expect(named({ colour })).toBe(colour === "white");
  const own = { colour: "own", colourName: "grey" };
  expect(named({ ...own, composition: "Au 750 Cu 150 Ni 100" })).toBe(true);
  expect(named({ ...own, composition: "Au 750 Ag 100 Pd 150" })).toBe(false);
});

test.each([
  ["0.99", "lightMark"],
  ["1.00", "mark"],
  ["1.01", "mark"],
])("a piece of %s g of all its metal has the UK's sentence %s (Hallmarking Act 1973: below 1 g)", (grams, key) => {
  const one = { length: "1", linksPer: "1", linkWeight: grams, clasp: "none", claspLength: "0", claspWeight: "0" };
  const text = sheetsIn([one]).get("polisher's ticket") ?? "";
  expect(standing(text).filter((each) => each === "mark" || each === "lightMark")).toEqual([key]);
});

test("the Rates sheet says it of tax once", () => {
  expect(times(wordsOf(ratesPaper("4200", 46000).paper), cautionText("tax"))).toBe(1);
});

test.each([
  ["10000", false],
  ["10000.01", true],
])("a total of USD %s, cash to be reported: %s (26 U.S.C. 6050I: more than 10,000)", (price, expected) => {
  const text = sheetsIn([{ linePriceBy: "own price", linePriceFigure: price, quantity: "1" }]).get("job sheet") ?? "";
  expect(standing(text).includes("cash")).toBe(expected);
});
