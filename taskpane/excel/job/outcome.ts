import {
  type CostSheet,
  minorDigits,
  type Order,
  type QuoteLine,
  type Rates,
  STATED_DECIMALS,
} from "../../../src/index";
import { SETTLING_TEXTS } from "../../wording/settlingtexts";
import { rateIs } from "../rates/ratewords";
import { stoneKey } from "./asked";
import { castingOf, labourOf, ofOrder, withOverhead } from "./costs";
import { COUNT, cents, SCALE, SHARE, taxQuoted } from "./figures";
import { spareWeight, wentOut } from "./polishing";
import { castKey, polishedKey } from "./readings";
import { type Column, type JobRow, type Ref, section } from "./row";
import { beforeDiscount } from "./selling";

/** Estimate against actual: what the readings make of links, loss, cost and margin. Blank until they are there. */
export function outcome(sheet: CostSheet, order: Order, quoted: QuoteLine, rates: Rates): JobRow[] {
  const { alloys } = sheet;
  const money = cents(rates);
  const last = alloys.length - 1;
  const span = (of: (index: number) => string, column: Column) => (at: Ref) =>
    `${at(of(0), column)}:${at(of(last), column)}`;
  const summed = (of: (index: number) => string, column: "B" | "C") => (at: Ref) => `SUM(${span(of, column)(at)})`;
  const counted = (of: (index: number) => string, column: "D" | "E") => (at: Ref) => {
    const cells = span(of, column)(at);
    return `IF(COUNT(${cells})=${alloys.length},SUM(${cells}),"")`;
  };
  const known = (keys: readonly string[], write: (at: Ref) => string) => (at: Ref) =>
    `IF(COUNT(${keys.map((key) => at(key, "C")).join(",")})=${keys.length},${write(at)},"")`;
  return [
    section("Estimate against actual", ["Estimate", "Actual", "Difference"]),
    compared("actualLinks", "Links and clasp parts", summed(castKey, "B"), counted(castKey, "D"), COUNT),
    compared("actualCast", "Cast, g", summed(castKey, "C"), counted(castKey, "E"), SCALE),
    compared("actualPolished", "Polished, g", summed(polishedKey, "C"), counted(polishedKey, "E"), SCALE),
    compared(
      "actualLoss",
      "Lost in polishing, g",
      (at) => `${at("actualCast")}-${at("actualPolished")}`,
      (at) => wentOut(alloys.length, at, (out) => `${out}-${at("actualPolished", "C")}`),
      SCALE,
    ),
    compared(
      "actualLossShare",
      "Lost, share of the cast weight",
      (at) => `${at("actualLoss")}/${at("actualCast")}`,
      (at) => wentOut(alloys.length, at, (out) => `${at("actualLoss", "C")}/${out}`),
      SHARE,
      (at) => withinAllowance(at("actualLossShare", "D")),
    ),
    ...(hasStones(sheet) ? [goldOnScale()] : []),
    compared(
      "actualPiece",
      hasStones(sheet) ? "One piece without stones, finished, g" : "One piece, finished, g",
      (at) => at("finished"),
      (at) => weighedPiece(at, hasStones(sheet) ? at("goldOnScale", "C") : at("finishedPieces", "E")),
      SCALE,
      (at) => heavierThanItsParts(sheet, at),
    ),
    compared(
      "actualLanded",
      "Landed cost, one piece",
      (at) => at("landed"),
      known(["actualCast", "actualPolished"], (at) => landedByScale(sheet, at)),
      money,
    ),
    compared(
      "actualPerGram",
      "Landed cost per gram",
      (at) => at("perGram"),
      known(["actualLanded", "actualPiece"], (at) => `${at("actualLanded", "C")}/${at("actualPiece", "C")}`),
      money,
    ),
    ...(quoted.perGram
      ? [
          compared(
            "actualPrice",
            `Price settled by weight${beforeDiscount(order)}`,
            (at) => at("quoted"),
            known(["actualPiece"], (at) => settled(at, rates)),
            money,
          ),
        ]
      : []),
    compared(
      "actualMargin",
      "Margin",
      (at) => at("margin"),
      known(["actualLanded"], (at) => {
        const price = quoted.perGram ? settledOrQuoted(at) : at("quoted");
        const net = `CURB.NETPRICE(${price},${taxQuoted(at)},${at("discount")})`;
        return `IF(${net}>0,CURB.MARGIN(${at("actualLanded", "C")},${net}),"")`;
      }),
      "0.0%",
    ),
  ];
}

/** The settled price where there is one; the quoted one until then, and where it is to be agreed. */
export function settledOrQuoted(at: Ref): string {
  return `IF(ISNUMBER(${at("actualPrice", "C")}),${at("actualPrice", "C")},${at("quoted")})`;
}

function compared(
  key: string,
  label: string,
  estimate: (at: Ref) => string,
  actual: (at: Ref) => string,
  format: string,
  remark?: (at: Ref) => string,
): JobRow {
  return {
    key,
    cells: (at) => [
      { content: label, look: "item" },
      { content: `=${estimate(at)}`, look: "number", format },
      { content: `=${actual(at)}`, look: "number", format },
      {
        content: `=IF(COUNT(${at(key, "B")},${at(key, "C")})=2,ROUND(${at(key, "C")}-${at(key, "B")},6),"")`,
        look: "number",
        format,
      },
      { content: remark ? `=${remark(at)}` : "", look: "aside" },
    ],
  };
}

function withinAllowance(difference: string): string {
  return `IF(${difference}="","",IF(${difference}>0,"more than allowed","within what is allowed"))`;
}

function hasStones({ line }: CostSheet): boolean {
  return line.stones.length > 0;
}

/** What lies on the scale less the stones, to a hundredth of a gram as on the quote. */
function goldOnScale(): JobRow {
  const carats = (at: Ref) => `${at("carats")}*${at("finishedPieces", "D")}`;
  return compared(
    "goldOnScale",
    "Finished pieces without stones, g",
    (at) => `${at("finished")}*${at("quantity")}`,
    (at) =>
      `IF(COUNT(${at("finishedPieces", "D")},${at("finishedPieces", "E")},${at("carats")})=3,` +
      `CURB.GOLDONSCALE(${at("finishedPieces", "E")},${carats(at)},${STATED_DECIMALS}),"")`,
    SCALE,
    (at) => `IF(ISNUMBER(${at("carats")}),"","${SETTLING_TEXTS.typeCarats}")`,
  );
}

/** The mean of the finished pieces. @param weight of all of them, without stones */
function weighedPiece(at: Ref, weight: string): string {
  const count = at("finishedPieces", "D");
  return `IF(COUNT(${count},${weight})=2,IF(${count}>0,${weight}/${count},""),"")`;
}

/** Finished pieces that weigh more than the polished links and the parts that were added: one of the weighings is wrong. */
function heavierThanItsParts({ line }: CostSheet, at: Ref): string {
  const quantity = at("quantity");
  const added = [
    ...(line.clasp.cast ? [] : [at("claspWeight")]),
    at("findingsWeight"),
    ...line.stones.map((_, index) => `CURB.WEIGHTIN(N(${at(stoneKey(index), "C")})*${at(stoneKey(index))},"ct","g")`),
  ];
  const most = `(${at("actualPolished", "C")}+${quantity}*(${added.join("+")}))`;
  const weight = at("finishedPieces", "E");
  const isWeighed = `AND(COUNT(${weight},${at("actualPolished", "C")})=2,${at("finishedPieces", "D")}=${quantity})`;
  const unknown = line.stones.some(({ carat }) => !carat) ? ", stones of unknown carats not counted" : "";
  const words = `"more than polished links and added parts, "&TEXT(${most},"0.00")&" g${unknown}: weigh again"`;
  return `IF(${isWeighed},IF(ROUND(${weight}-${most},6)>0,${words},""),"")`;
}

/** The cost lines again, metal, casting and labour by what was counted and weighed; a cast clasp weighs what it should. */
function landedByScale(sheet: CostSheet, at: Ref): string {
  const { line, alloys } = sheet;
  const quantity = at("quantity");
  const each = (key: string) => `${at(key, "C")}/${quantity}`;
  const parts = alloys.reduce((count, { claspParts }) => count + claspParts.toNumber(), 0);
  const polished = `${at(polishedKey(0), "D")}:${at(polishedKey(alloys.length - 1), "D")}`;
  const counted = at("actualLinks", "C");
  const links = `IF(COUNT(${polished})=${alloys.length},SUM(${polished})/${quantity}-${parts},IF(ISNUMBER(${counted}),${counted}/${quantity}-${parts},${at("castParts")}))`;
  const chain = line.clasp.cast ? `(${each("actualPolished")}-${at("claspWeight")})` : each("actualPolished");
  // All metal cast is paid for: what is polished, what is lost and what is missing. Spare links are stock for another piece.
  const cast = `(${at("actualCast", "C")}-${spareWeight(alloys.length, at)})/${quantity}`;
  const charged = `IF(${rateIs("costBasis", "quick")},${each("actualPolished")},${cast})`;
  const lines = [
    `${cast}*${at("metalRate")}`,
    castingOf(charged, quantity),
    labourOf(links, chain),
    ...ofOrder(sheet).map((key) => at(key)),
  ];
  return withOverhead(`(${lines.join("+")})`);
}

/** The quoted price, moved by each gram more or less, as far as the tolerance goes. */
function settled(at: Ref, { currency }: Rates): string {
  const given = [at("quoted"), at("settlingRate"), at("statedWeight"), at("actualPiece", "C"), at("tolerance")];
  const moved = `CURB.SETTLEDPRICE(${[...given, minorDigits(currency)].join(",")})`;
  return `IF(ISNA(${moved}),"${AGREE}",${moved})`;
}

/** In place of a price where the weight is further off than the tolerance. */
export const AGREE = "agree with the customer";
