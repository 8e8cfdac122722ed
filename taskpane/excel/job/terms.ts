import type { Order, Quote, Rates } from "../../../src/index";
import { nameOf } from "../rates/rates";
import { rateIs, rateSays } from "../rates/ratewords";
import { dateSerial } from "../template/fields";
import { cents, SHARE } from "./figures";
import { entry, formula, type JobRow } from "./row";

/** What an order says once: its spot, its discount, how its price is settled. */
export function terms({ spot, discount, settledByWeight, tolerance }: Order, quote: Quote, rates: Rates): JobRow[] {
  const money = cents(rates);
  const sameSpot = spot.amount.equals(rates.spot.amount);
  const taxHeld = `IF(${rateIs("taxIs", "in the price")},${rateSays("tax")},0)`;
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
    entry("discount", "Discount", discount.toNumber(), "off the pieces", "plain", SHARE),
    formula("taxHeld", "Tax that the prices hold", () => taxHeld, `=${nameOf("taxName")}&""`, SHARE),
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
