import { minorDigits, type Order, type Quote, type Rates, showMark } from "../../../src/index";
import { asText } from "../paper";
import { cents, SCALE, SHARE, unlessOnRates } from "./figures";
import { entry, formula, type JobRow, type Ref, section } from "./row";

/** The balance of fine gold: what the customer brought, what goes into the work, what goes back, what is still to be bought. */
export function ownGold({ ownGold: own }: Order, quote: Quote, rates: Rates): JobRow[] {
  const money = cents(rates);
  const needed = (at: Ref) => at("together", "G");
  if (!own) return [section("Fine gold"), formula("fineToBuy", "Fine gold to buy", needed, "g", SCALE)];
  const isUsed = own.use === "used";
  return [
    section("Fine gold"),
    {
      key: "ownGold",
      cells: () => [
        { content: "Customer's gold, g", look: "label" },
        { content: own.weight.grams.toNumber(), look: "inputRight", format: SCALE },
        { content: asText(showMark(own.mark)), look: "inputRight" },
        { content: isUsed ? "used in this work" : "credited", look: "aside" },
      ],
    },
    formula("ownFine", "Fine gold in it", (at) => `CURB.FINEGOLD(${at("ownGold")},${at("ownGold", "C")})`, "g", SCALE),
    ...(isUsed
      ? [
          formula(
            "ownUsed",
            "Fine gold used of it",
            (at) => `CURB.GOLDUSED(${at("ownFine")},${needed(at)})`,
            "g",
            SCALE,
          ),
          formula("ownReturned", "Fine gold that goes back", (at) => `${at("ownFine")}-${at("ownUsed")}`, "g", SCALE),
        ]
      : []),
    formula(
      "fineToBuy",
      "Fine gold to buy",
      (at) => (isUsed ? `${needed(at)}-${at("ownUsed")}` : needed(at)),
      "g",
      SCALE,
    ),
    entry(
      "ownShare",
      "Counted at",
      unlessOnRates(own.share, "ownGoldShare", rates.ownGoldShare),
      "of its melt value",
      "input",
      SHARE,
    ),
    entry("creditQuoted", "Credit quoted", quote.ownGold?.credit.amount.toNumber() ?? 0, "it stands", "plain", money),
    formula(
      "ownCredit",
      "Credit at today's spot",
      (at) =>
        `CURB.GOLDCREDIT(${at(isUsed ? "ownUsed" : "ownFine")},${at("spot")},${at("ownShare")},${minorDigits(rates.currency)})`,
      "at the spot above, for comparison",
      money,
    ),
  ];
}

/** Cash that need not go out, since the customer's gold goes in: what it is worth at the order's spot. */
export function spared(at: Ref): string {
  return `CURB.MELTVALUE(${at("ownUsed")},1000,${at("spot")})`;
}
