import { CASH_LINES, COST_LINES, type CostLine, type CostSheet, type Order, type Rates } from "../../../src/index";
import { crossingSentences } from "../../wording/crossingwords";
import { showGrams } from "../../wording/display";
import { asText } from "../paper";
import { nameOf } from "../rates/rates";
import { rateSays } from "../rates/ratewords";
import { goldKey, stoneKey } from "./asked";
import { cents, LOSS } from "./figures";
import { entry, formula, type JobRow, type Ref, section, text } from "./row";

/** Cost lines that an order has or has not, in their order. */
const OF_ORDER = ["clasp", "findings", "stones", "setting", "engraving", "plating", "setup"] as const;

/** Those of them that this piece has: a clasp that is fitted, words that are engraved, an amount that is not nothing. */
export function ofOrder({ line, costs }: CostSheet): readonly CostLine[] {
  const isThere: Partial<Record<CostLine, boolean>> = {
    clasp: line.clasp.kind !== "none",
    findings: line.findings.what !== "",
    engraving: line.engraving !== "",
    plating: line.plated,
  };
  return OF_ORDER.filter((key) => isThere[key] || !costs[key].amount.isZero());
}

/** A cost line in the formula of another row: nothing where the piece has none. */
export function costAt(sheet: CostSheet, at: Ref): (key: CostLine) => string {
  const there = ofOrder(sheet);
  return (key) => (OF_ORDER.some((each) => each === key) && !there.includes(key) ? "0" : at(key));
}

/** The cost lines of one piece and what they come to; lines that it has nothing of are left out. */
export function costs(sheet: CostSheet, rates: Rates): JobRow[] {
  const { line } = sheet;
  const money = cents(rates);
  const cost = (key: CostLine, write: (at: Ref) => string, unit = "") =>
    formula(key, COST_LINES[key], write, unit, money);
  const given = (key: CostLine, amount: number, unit: string) =>
    entry(key, COST_LINES[key], amount, asText(unit), "input", money);
  const bought = (key: "clasp" | "findings", unit: string) => {
    const { cost: paid } = line[key];
    return paid.by === "money"
      ? given(key, paid.each.amount.toNumber(), paid.each.amount.isZero() ? `${unit}, free` : unit)
      : cost(key, partAtPremium(key), `${unit === "" ? "bought" : unit}, follows spot`);
  };
  const stones = (write: (stone: (column: "B" | "D" | "E" | "F") => string) => string) => (at: Ref) =>
    line.stones.map((_, index) => write((column) => at(stoneKey(index), column))).join("+") || "0";
  const there = ofOrder(sheet);
  const besides: Readonly<Record<(typeof OF_ORDER)[number], JobRow>> = {
    clasp: bought("clasp", line.clasp.cast ? "bought parts and work in it" : "bought"),
    findings: bought("findings", line.findings.what),
    stones: cost(
      "stones",
      stones((stone) => `CURB.STONECOST(${stone("B")},${stone("D")},0,${stone("F")})`),
      "with the share that breaks",
    ),
    setting: cost(
      "setting",
      stones((stone) => `CURB.STONECOST(${stone("B")},0,${stone("E")})`),
    ),
    engraving: given("engraving", line.engravingCost.amount.toNumber(), line.engraving),
    plating: cost("plating", () => rateSays("plating")),
    setup: given("setup", line.setup.amount.toNumber(), ""),
  };
  const last = there.at(-1) ?? "labour";
  return [
    section(`Cost of one piece, ${rates.currency}`),
    formula("metalRate", "Metal rate", (at) => `CURB.METALRATE(${at("spot")},${at(goldKey(line))})`, "a gram", money),
    cost("metal", (at) => `CURB.MELTVALUE(${at("castParts", "F")},${at(goldKey(line))},${at("spot")})`),
    cost("lost", (at) => `${at("lostWeight")}*${at("metalRate")}`),
    cost("casting", (at) => castingOf(charged(at("castParts", "F")), at("quantity"))),
    cost("labour", (at) => labourOf(at("castParts"), at("chain"))),
    ...OF_ORDER.filter((key) => there.includes(key)).map((key) => besides[key]),
    ...(rates.overhead.isZero()
      ? [
          // A job follows Rates: an overhead that comes later still counts, and is said.
          formula(
            "landed",
            "Landed cost",
            (at) => withOverhead(`SUM(${at("metal")}:${at(last)})`),
            `=IF(${rateSays("overhead")}>0,"with the overhead on Rates","")`,
            money,
            "total",
          ),
        ]
      : [
          cost("overhead", (at) => overheadOf(`SUM(${at("metal")}:${at(last)})`)),
          formula("landed", "Landed cost", (at) => `SUM(${at("metal")}:${at("overhead")})`, "", money, "total"),
        ]),
    formula(
      "perGram",
      "Landed cost per gram",
      (at) => `${at("landed")}/${at("finished")}`,
      `=${rateSays("costBasis")}&" basis"`,
      money,
    ),
    formula(
      "cashOut",
      "Cash out, all pieces",
      (at) => {
        const each = CASH_LINES.map(costAt(sheet, at));
        const bought = line.stones.map((_, index) => `+${at(stoneKey(index), "G")}*${at(stoneKey(index), "D")}`);
        return `${at("quantity")}*(${each.join("+")})${bought.join("")}`;
      },
      `all but overhead${line.stones.length > 0 ? ", whole stones" : ""}`,
      money,
    ),
  ];
}

function overheadOf(cost: string): string {
  return `CURB.OVERHEAD(${cost},${nameOf("overhead")})`;
}

/** A cost and the overhead on it. */
export function withOverhead(cost: string): string {
  return `${cost}+${overheadOf(cost)}`;
}

/** A bought part by its weight: at the metal rate of its mark and its premium. */
function partAtPremium(key: "clasp" | "findings"): (at: Ref) => string {
  return (at) => {
    const rate = `CURB.METALRATE(${at("spot")},${at(`${key}Mark`)})`;
    return `CURB.PRICEATPREMIUM(${at(`${key}Weight`)},${rate},${at(`${key}Premium`)})`;
  };
}

/** Labour for so many links of such a weight. */
export function labourOf(links: string, chain: string): string {
  const rates = (["labourFlat", "labourPerLink", "labourPerGram", "labourMinimum"] as const).map(nameOf);
  return `CURB.LABOURCOST(${[links, chain, ...rates].join(",")})`;
}

/** Casting of one piece, from the weight that the caster's fee is counted on. */
export function castingOf(weight: string, pieces: string): string {
  return `CURB.CASTINGCOST(${[weight, nameOf("castingFee"), nameOf("castingMinimum"), pieces].join(",")})`;
}

/** The weight that the caster's fee is counted on, from a finished one. */
function charged(finished: string): string {
  return `CURB.CHARGEDWEIGHT(${finished},${LOSS})`;
}

/** Whether making the plain chain beats buying it ready. */
export function sourcing(sheet: CostSheet, { spot }: Order, rates: Rates): JobRow[] {
  // Ready-made chain is solid.
  if (sheet.line.hollow) return [];
  const money = cents(rates);
  const crossings = crossingSentences(sheet.line, spot, rates, (weight) => showGrams(weight, 1));
  return [
    { ...section("Make or buy, the plain chain", ["Made, per g", "Bought, per g", "Saves", "So"]), startsPage: true },
    {
      key: "makeOrBuy",
      cells: (at) => [
        { content: "" },
        { content: `=${makeOrBuy(at, sheet)}`, format: money },
        { content: "", format: money },
        { content: "", format: money },
        { content: "", look: "end" },
      ],
    },
    text("At the rates of this quote:", "small"),
    ...crossings.map((sentence) => text(asText(sentence), "small")),
  ];
}

/** The links alone, as if nothing else were made but their model and mould. */
function makeOrBuy(at: Ref, sheet: CostSheet): string {
  const chain = at("chain");
  const weight = charged(chain);
  const overMinimum = `${castingOf(weight, at("quantity"))}-CURB.CASTINGCOST(${weight},${nameOf("castingFee")})`;
  const given = [chain, at("metalRate"), nameOf("castingFee"), at("labour"), nameOf("loss"), nameOf("surcharge")];
  const other = `${overMinimum}+${costAt(sheet, at)("setup")}`;
  // An alloy of one's own is cast at its own gold; ready-made chain is bought at that of the mark.
  const bought = goldKey(sheet.line) === "mark" ? [] : [`CURB.METALRATE(${at("spot")},${at("mark")})`];
  return `CURB.MAKEORBUY(${[...given, nameOf("lossBasis"), other, nameOf("costBasis"), ...bought].join(",")})`;
}
