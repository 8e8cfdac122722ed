import { COST_LINES, type CostLine, type CostSheet, type Rates } from "../../../src/index";
import { asText } from "../paper";
import { nameOf } from "../rates";
import { goldKey, stoneKey } from "./asked";
import { cents, figureOf, IS_QUICK } from "./figures";
import { entry, formula, type JobRow, type Ref, section } from "./row";

/** The cost lines of one piece and what they come to. */
export function costs({ line }: CostSheet, rates: Rates): JobRow[] {
  const money = cents(rates);
  const cost = (key: CostLine, write: (at: Ref) => string, unit = "") =>
    formula(key, COST_LINES[key], write, unit, money);
  const given = (key: CostLine, amount: number, unit: string) =>
    entry(key, COST_LINES[key], amount, asText(unit), "input", money);
  const stones = (write: (stone: (column: "B" | "D" | "E" | "F") => string) => string) => (at: Ref) =>
    line.stones.map((_, index) => write((column) => at(stoneKey(index), column))).join("+") || "0";
  return [
    section(`Cost of one piece, ${rates.currency}`),
    formula("metalRate", "Metal rate", (at) => `CURB.METALRATE(${at("spot")},${at(goldKey(line))})`, "a gram", money),
    cost("metal", (at) => `CURB.MELTVALUE(${at("castParts", "F")},${at(goldKey(line))},${at("spot")})`),
    cost("lost", (at) => `${at("lostWeight")}*${at("metalRate")}`),
    cost("casting", castingOf(charged)),
    cost("labour", (at) => labourOf(at("castParts"), at("chain"))),
    given("clasp", line.clasp.cost.amount.toNumber(), line.clasp.cast ? "bought parts and work in it" : "bought"),
    given("findings", line.findings.cost.amount.toNumber(), line.findings.what),
    cost(
      "stones",
      stones((stone) => `CURB.STONECOST(${stone("B")},${stone("D")},0,${stone("F")})`),
    ),
    cost(
      "setting",
      stones((stone) => `CURB.STONECOST(${stone("B")},0,${stone("E")})`),
    ),
    given("engraving", line.engravingCost.amount.toNumber(), line.engraving),
    cost("plating", () => (line.plated ? figureOf("plating") : "0"), line.plated ? "" : "not plated"),
    given("setup", line.setup.amount.toNumber(), ""),
    cost("overhead", (at) => `SUM(${at("metal")}:${at("setup")})*${figureOf("overhead")}`),
    formula("landed", "Landed cost", (at) => `SUM(${at("metal")}:${at("overhead")})`, "", money, "total"),
    formula(
      "perGram",
      "Landed cost per gram",
      (at) => `${at("landed")}/${at("finished")}`,
      `=${nameOf("costBasis")}&" basis"`,
      money,
    ),
    formula(
      "cashOut",
      "Cash out, all pieces",
      (at) => {
        const each = ["metal", "lost", "casting", "clasp", "findings"].map((key) => at(key));
        const bought = line.stones.map((_, index) => `+${at(stoneKey(index), "G")}*${at(stoneKey(index), "D")}`);
        return `${at("quantity")}*(${each.join("+")})${bought.join("")}`;
      },
      `metal, casting, clasp, findings${line.stones.length > 0 ? ", whole stones" : ""}`,
      money,
    ),
  ];
}

/** Labour for so many links of such a weight, not below its minimum. */
export function labourOf(links: string, chain: string): string {
  const worked = `${figureOf("labourFlat")}+${links}*${figureOf("labourPerLink")}+${chain}*${figureOf("labourPerGram")}`;
  return `MAX(${worked},${figureOf("labourMinimum")})`;
}

/** Casting of one piece of a weight; the caster's minimum is for all pieces of the line, shared by them. */
export function castingOf(weight: (at: Ref) => string): (at: Ref) => string {
  return (at) =>
    `MAX(${weight(at)}*${nameOf("castingFee")}*${at("quantity")},${figureOf("castingMinimum")})/${at("quantity")}`;
}

/** The weight that the caster's fee is counted on. */
function charged(at: Ref): string {
  return `IF(${IS_QUICK},${at("castParts", "F")},${at("castParts", "G")})`;
}

/** Whether making the plain chain beats buying it ready. */
export function sourcing(rates: Rates): JobRow[] {
  const money = cents(rates);
  return [
    { ...section("Make or buy, the plain chain", ["Made, per g", "Bought, per g", "Saves", "So"]), startsPage: true },
    {
      key: "makeOrBuy",
      cells: (at) => [
        { content: "" },
        { content: `=${makeOrBuy(at)}`, format: money },
        { content: "", format: money },
        { content: "", format: money },
        { content: "", look: "end" },
      ],
    },
  ];
}

/** The links alone, as if nothing else were made. */
function makeOrBuy(at: Ref): string {
  const chain = at("chain");
  const plain = () => `IF(${IS_QUICK},${chain},CURB.CASTWEIGHT(${chain},${nameOf("loss")},${nameOf("lossBasis")}))`;
  const overMinimum = `${castingOf(plain)(at)}-${plain()}*${nameOf("castingFee")}`;
  const given = [chain, at("metalRate"), nameOf("castingFee"), at("labour"), nameOf("loss"), nameOf("surcharge")];
  return `CURB.MAKEORBUY(${[...given, nameOf("lossBasis"), overMinimum, nameOf("costBasis")].join(",")})`;
}
