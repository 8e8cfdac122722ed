import { type CostSheet, minorDigits, type Order, type Quote, type Rates } from "../../../src/index";
import { SETTLING_TEXTS } from "../../wording/settlingtexts";
import { cents, isTaxHeld, taxedShipping, taxQuoted } from "./figures";
import { AGREE, settledOrQuoted } from "./outcome";
import { formula, type JobRow, type Ref, section, text, within } from "./row";
import { beforeDiscount } from "./selling";
import { extraKey, lineScope } from "./totals";

/** What the scale made of the order, once every line was weighed; and what the customer pays where the weight settles it. */
export function byScale(sheets: readonly CostSheet[], order: Order, quote: Quote, rates: Rates): JobRow[] {
  const money = cents(rates);
  const landed = (at: Ref) => {
    const cells = sheets.map((_, index) => inLine(index, at)("actualLanded", "C"));
    const costs = sheets.map((_, index) => `${inLine(index, at)("quantity")}*${cells[index]}`);
    const extras = order.extras.map((_, index) => at(extraKey(index), "C"));
    return `IF(COUNT(${cells.join(",")})=${cells.length},${[...costs, ...extras].join("+")},"")`;
  };
  const net = (at: Ref) =>
    `IF(${at("landedByScale")}="","",CURB.NETPRICE(${workOf(`(${piecesOf(quote, rates, at)})`, order, rates, at)},${taxQuoted(at)}))`;
  return [
    formula("landedByScale", "Landed, by the scale", landed, "when every line was weighed", money),
    formula("netByScale", "Net, by the scale", net, "", money),
    formula(
      "marginByScale",
      "Margin, by the scale",
      (at) =>
        `IF(AND(COUNT(${at("netByScale")})=1,N(${at("netByScale")})>0),CURB.MARGIN(${at("landedByScale")},${at("netByScale")}),"")`,
      "",
      "0.0%",
    ),
    ...(order.settledByWeight ? settled(order, quote, rates) : []),
  ];
}

/** The quote again at the prices that the weights settle; blank until every piece was weighed. */
function settled(order: Order, quote: Quote, rates: Rates): JobRow[] {
  const money = cents(rates);
  const prices = (at: Ref) => quote.lines.map((_, index) => inLine(index, at)("actualPrice", "C"));
  const taxed = (at: Ref) => `(${workOf(at("settledPieces"), order, rates, at)}+${taxedShipping(at)})`;
  const tax = (at: Ref) => `CURB.SALESTAX(${taxed(at)},${taxQuoted(at)},${minorDigits(rates.currency)})`;
  return [
    section("Settled by final weight"),
    formula(
      "settledPieces",
      "Pieces",
      (at) => `IF(COUNT(${prices(at).join(",")})=${quote.lines.length},${piecesOf(quote, rates, at)},"")`,
      `at the settled prices${beforeDiscount(order)}`,
      money,
    ),
    formula(
      "settledTotal",
      "Total",
      (at) =>
        `IF(COUNT(${at("settledPieces")})=1,${workOf(at("settledPieces"), order, rates, at)}+${at("shipping")}` +
        `+IF(${isTaxHeld(at)},0,${tax(at)}),"")`,
      `${rates.currency}, at the tax quoted`,
      money,
      "total",
    ),
    {
      key: "settledRest",
      cells: (at) => {
        const off = ["deposit", ...(quote.ownGold ? ["creditQuoted"] : [])].map((key) => `-${at(key)}`).join("");
        const isOpen = prices(at).map((price) => `${price}="${AGREE}"`);
        return [
          { content: "Left to pay", look: "label" },
          {
            content: `=IF(COUNT(${at("settledTotal")})=1,${at("settledTotal")}${off},"")`,
            look: "number",
            format: money,
          },
          {
            content: `=IF(OR(${isOpen.join(",")}),"a price is to be agreed first","less the deposit${quote.ownGold ? " and the credit quoted" : ""}")`,
            look: "aside",
          },
        ];
      },
    },
    text(SETTLING_TEXTS.legalScale, "small"),
  ];
}

function inLine(index: number, at: Ref): Ref {
  return (key, column) => at(within(lineScope(index), key), column);
}

/** The amounts of the lines, at their settled prices where they are settled, each rounded once. */
function piecesOf(quote: Quote, { currency }: Rates, at: Ref): string {
  const amounts = quote.lines.map(({ perGram }, index) => {
    const here = inLine(index, at);
    return `CURB.LINEAMOUNT(${perGram ? settledOrQuoted(here) : here("quoted")},${here("quantity")},${minorDigits(currency)})`;
  });
  return amounts.join("+");
}

/** Pieces after the discount, which is rounded as on the quote, and free lines. */
function workOf(pieces: string, { extras }: Order, { currency }: Rates, at: Ref): string {
  const besides = extras.map((_, index) => at(extraKey(index), "D"));
  return [`${pieces}-CURB.DISCOUNT(${pieces},${at("discount")},${minorDigits(currency)})`, ...besides].join("+");
}
