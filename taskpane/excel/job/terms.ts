import type { Order, Quote, QuotedTerms, Rates } from "../../../src/index";
import { asText } from "../paper";
import { rateSays } from "../rates/ratewords";
import { dateSerial } from "../template/fields";
import { cents, SHARE } from "./figures";
import { entry, type JobRow } from "./row";

/** What an order says once: its spot, its discount, how its price is settled. */
export function terms(
  { spot, discount, settledByWeight, tolerance }: Order,
  quote: Quote,
  rates: Rates,
  quotedTerms: QuotedTerms,
): JobRow[] {
  const money = cents(rates);
  const sameSpot = spot.amount.equals(rates.spot.amount);
  return [
    entry(
      "spot",
      "Spot",
      sameSpot ? `=${rateSays("spot")}` : spot.amount.toNumber(),
      sameSpot ? "from Rates" : "typed for this order",
      "input",
      money,
    ),
    {
      key: "quotedOn",
      cells: () => [
        { content: "Quoted on", look: "label" },
        { content: dateSerial(quote.date), look: "number", format: "d mmm yyyy" },
        { content: "at a spot of", look: "aside" },
        { content: spot.amount.toNumber(), look: "number", format: money },
      ],
    },
    ...spotRead(quotedTerms),
    entry("discount", "Discount", discount.toNumber(), "off the pieces", "plain", SHARE),
    ...taxAsQuoted(quotedTerms),
    entry(
      "tolerance",
      "Weight tolerance",
      tolerance.toNumber(),
      settledByWeight ? "price settled by final weight" : "price fixed",
      "plain",
      SHARE,
    ),
  ];
}

/** The tax that was quoted. It stands, whatever Rates say since: the quoted amounts are taken apart with it. */
function taxAsQuoted({ tax, taxName, taxIncluded, shippingTaxed }: QuotedTerms): JobRow[] {
  return [
    entry("taxQuoted", "Tax, as quoted", tax.toNumber(), asText(taxName), "plain", TAX_SHARE),
    entry("taxIsQuoted", "Tax was", taxIncluded ? "in the price" : "on top", "", "plain"),
    entry("shippingTaxedQuoted", "Shipping was taxed", shippingTaxed ? "yes" : "no", "", "plain"),
  ];
}

/** With all the digits that a tax has. */
const TAX_SHARE = "0.0###%";

/** When and where the spot quoted was read, where that is known. */
function spotRead({ spotRead: { time, source } }: QuotedTerms): JobRow[] {
  if (time === undefined && source === "") return [];
  const at = (format: string) =>
    time === undefined ? { content: "" } : ({ content: time, look: "number", format } as const);
  return [
    {
      key: "spotRead",
      cells: () => [
        { content: "Spot was read", look: "label" },
        at("d mmm yyyy"),
        Number.isInteger(time) ? { content: "" } : at("hh:mm"),
        { content: asText(source), look: "aside" },
      ],
    },
  ];
}
