import { type CostSheet, type Extra, minorDigits, type Order, type Quote, type Rates } from "../../../src/index";
import { shareText } from "../../wording/sharetext";
import { asText } from "../paper";
import { nameOf } from "../rates/rates";
import { rateSays } from "../rates/ratewords";
import { COUNT, cents, isTaxHeld, SCALE, taxedShipping, taxQuoted } from "./figures";
import { ownGold, spared } from "./owngold";
import { type Column, entry, formula, type JobRow, type Ref, section, within } from "./row";

/** The scope of a line's rows. */
export function lineScope(index: number): string {
  return `line${index + 1}`;
}

/** The order as a whole, a row a line and a row a free line, and what they come to. */
export function totals(order: Order, sheets: readonly CostSheet[], quote: Quote, rates: Rates): JobRow[] {
  return [
    section(`The order, ${rates.currency}`, ["Pieces", "Landed", "Quoted", "Margin", "Cash out", "Fine, g"]),
    ...sheets.map((sheet, index) => lineRow(sheet, index, rates)),
    ...order.extras.map((extra, index) =>
      extraRow(extra, quote.extras[index]?.amount.amount.toNumber() ?? 0, index, rates),
    ),
    togetherRow(sheets.length, order.extras.length, rates),
    ...asked(sheets.length, quote, rates),
    ...ownGold(order, quote, rates),
    ...outlay(order, sheets, quote, rates),
  ];
}

function lineKey(index: number): string {
  return `sum${index + 1}`;
}

/** The key of a free line. */
export function extraKey(index: number): string {
  return `extra${index + 1}`;
}

function lineRow({ line }: CostSheet, index: number, rates: Rates): JobRow {
  const money = cents(rates);
  return {
    key: lineKey(index),
    cells: (ref) => {
      const at = (key: string) => ref(within(lineScope(index), key));
      const all = (key: string) => `${at("quantity")}*${at(key)}`;
      return [
        { content: asText(`${index + 1}. ${line.design}${line.hollow ? ", hollow" : ""}`), look: "item" },
        { content: `=${at("quantity")}`, look: "number", format: COUNT },
        { content: `=${all("landed")}`, look: "number", format: money },
        {
          content: `=CURB.LINEAMOUNT(${at("quoted")},${at("quantity")},${minorDigits(rates.currency)})`,
          look: "number",
          format: money,
        },
        { content: `=${at("margin")}`, look: "number", format: "0.0%" },
        { content: `=${at("cashOut")}`, look: "number", format: money },
        { content: `=${all("fineCast")}`, look: "number", format: SCALE },
      ];
    },
  };
}

/** A free line: its cost may be corrected, what the customer was told stands. */
function extraRow({ text, cost }: Extra, amount: number, index: number, rates: Rates): JobRow {
  const money = cents(rates);
  const key = extraKey(index);
  return {
    key,
    cells: (at) => [
      { content: asText(text), look: "item" },
      { content: "" },
      { content: cost.amount.toNumber(), look: "inputRight", format: money },
      { content: amount, look: "number", format: money },
      { content: "" },
      { content: `=${at(key, "C")}`, look: "number", format: money },
    ],
  };
}

function togetherRow(lines: number, extras: number, rates: Rates): JobRow {
  const money = cents(rates);
  const last = extras > 0 ? extraKey(extras - 1) : lineKey(lines - 1);
  return {
    key: "together",
    cells: (at) => {
      const sum = (column: Column) => `=SUM(${at(lineKey(0), column)}:${at(last, column)})`;
      return [
        { content: "Together", look: "totalLabel" },
        { content: sum("B"), look: "total", format: COUNT },
        { content: sum("C"), look: "total", format: money },
        { content: sum("D"), look: "total", format: money },
        { content: "", look: "total" },
        { content: sum("F"), look: "total", format: money },
        { content: sum("G"), look: "total", format: SCALE },
      ];
    },
  };
}

/** From the amounts quoted to what the customer pays, and what is left of it. */
function asked(lines: number, quote: Quote, rates: Rates): JobRow[] {
  const money = cents(rates);
  const digits = minorDigits(rates.currency);
  const pieces = (at: Ref) => `SUM(${at(lineKey(0), "D")}:${at(lineKey(lines - 1), "D")})`;
  const work = (at: Ref) => `(${at("together", "D")}-${at("discountAmount")})`;
  const taxed = (at: Ref) => `(${work(at)}+${taxedShipping(at)})`;
  return [
    section("What the customer pays"),
    formula(
      "discountAmount",
      "Discount",
      (at) => `CURB.DISCOUNT(${pieces(at)},${at("discount")},${digits})`,
      "off the pieces",
      money,
    ),
    entry("shipping", "Shipping", quote.shipping.amount.toNumber(), "passed on as it is", "plain", money),
    formula(
      "tax",
      "Tax",
      (at) => `CURB.SALESTAX(${taxed(at)},${taxQuoted(at)},${digits})`,
      quote.taxIncluded ? "in the amounts" : "on top",
      money,
    ),
    formula(
      "total",
      "Total",
      (at) => `${work(at)}+${at("shipping")}+IF(${isTaxHeld(at)},0,${at("tax")})`,
      `${rates.currency}, at the tax quoted`,
      money,
      "total",
    ),
    entry("toPay", "To pay, as quoted", quote.toPay.amount.toNumber(), toPayIs(quote), "plain", money),
    formula(
      "netOrder",
      "Net, without tax and shipping",
      (at) => `CURB.NETPRICE(${work(at)},${taxQuoted(at)})`,
      "",
      money,
    ),
    formula(
      "floorOrder",
      "Floor",
      (at) => `CURB.PRICEATMARGIN(${at("together", "C")},${rateSays("leastMargin")})`,
      "",
      money,
    ),
    {
      key: "marginOrder",
      cells: (at) => [
        { content: "Margin after the discount", look: "totalLabel" },
        {
          content: `=IF(${at("netOrder")}>0,CURB.MARGIN(${at("together", "C")},${at("netOrder")}),"")`,
          look: "total",
          format: "0.0%",
        },
        {
          content: `=IF(ROUND(${at("floorOrder")}-${at("netOrder")},8)>0,"below the floor","not below the floor")`,
          look: "totalAside",
        },
      ],
    },
  ];
}

/** What the customer was told stands, whatever spot and tax do since. */
function toPayIs({ ownGold: own, total }: Quote): string {
  return own ? `${total.currency}, less the credit quoted` : `${total.currency}, the total of the quote`;
}

/** The cash that goes out before the work is sold, and whether the deposit covers it. */
function outlay(order: Order, sheets: readonly CostSheet[], quote: Quote, rates: Rates): JobRow[] {
  const money = cents(rates);
  const isUsed = order.ownGold?.use === "used";
  const lacking = (at: Ref) => `CURB.CASHNEEDED(0,${at("cashOutOrder")},${at("depositCovers")})`;
  const wanted = shareText(order.deposit);
  return [
    section("Cash, and what the scale makes of it"),
    formula(
      "cashOutOrder",
      "Cash out before it is sold",
      (at) => cashOut(at, sheets.length, isUsed),
      isUsed ? "without overhead and the customer's gold" : "without overhead",
      money,
    ),
    entry(
      "deposit",
      "Deposit quoted",
      quote.deposit.amount.toNumber(),
      order.isDepositTyped ? `${wanted} typed for this order` : `${wanted} wanted by Rates`,
      "plain",
      money,
    ),
    entry("depositTax", "Tax in the deposit", quote.depositTax.amount.toNumber(), "", "plain", money),
    {
      key: "depositCovers",
      cells: (at) => [
        { content: "What the deposit covers", look: "label" },
        {
          content: `=CURB.DEPOSITCOVERS(${at("deposit")},${at("depositTax")},${nameOf("taxDue")})`,
          look: "number",
          format: money,
        },
        {
          content: `=IF(ROUND(${lacking(at)},8)>0,"less than the cash that goes out","covers the cash that goes out")`,
          look: "aside",
        },
      ],
    },
  ];
}

/** All that is paid out; the customer's gold spares metal, and nothing else. */
function cashOut(at: Ref, lines: number, isUsed: boolean): string {
  const all = at("together", "F");
  if (!isUsed) return all;
  const metals = Array.from({ length: lines }, (_, index) => {
    const inLine = (key: string) => at(within(lineScope(index), key));
    return `${inLine("quantity")}*(${inLine("metal")}+${inLine("lost")})`;
  });
  const metal = metals.join("+");
  return `CURB.CASHNEEDED(${all}-(${metal}),${metal},${spared(at)})`;
}
