import { type ExtraKey, ORDER_PRICE_BY, type OrderKey, OWN_GOLD_USES, SETTLEMENTS, YES_NO } from "../../src/index";
import type { At, PlannedGroup } from "../controls/formplan";
import { TEXTS } from "../wording/texts";
import { planOf, shownWord } from "./choices";
import { listed, priceUnit } from "./linefields";

const { form } = TEXTS;
const { groups, holds } = form;

const { words, figure, mark, money, choice, group } = planOf<OrderKey>(form.help);

/** For whom: it stands before the lines. */
export const WHO: PlannedGroup<OrderKey> = group("who", "", [words("customer", "whole", { required: true })]);

/** What else an order says once: it stands after the lines. */
export const TERMS: readonly PlannedGroup<OrderKey>[] = [
  group(
    "terms",
    groups.terms,
    [
      figure("spot", "half", {
        unit: (_, currency) => form.anOunce(currency),
        usual: (rates) => rates.spot.amount,
      }),
      choice("spotShown", "half", YES_NO),
      choice("priceBy", "half", ORDER_PRICE_BY),
      figure("priceFigure", "half", {
        required: true,
        isAsked: (at) => at("priceBy") !== "as Rates",
        unit: (at, currency) => priceUnit(at("priceBy"), currency),
      }),
      figure("discount", "half"),
      money("shipping", "half"),
      figure("deposit", "half", { usual: (rates) => rates.deposit }),
      choice("settled", "half", SETTLEMENTS),
      figure("tolerance", "half", { usual: (rates) => rates.tolerance }),
    ],
    termsHeld,
  ),
  group(
    "own-gold",
    groups.ownGold,
    [
      figure("ownGoldWeight", "half", { unit: () => form.grams }),
      mark("ownGoldMark", "half"),
      choice("ownGoldUse", "half", OWN_GOLD_USES),
      figure("ownGoldShare", "half", { usual: (rates) => rates.ownGoldShare }),
    ],
    (at) =>
      at("ownGoldWeight").trim() === ""
        ? listed(at("ownGoldMark"))
        : holds.gold(at("ownGoldWeight"), at("ownGoldMark"), shownWord(at("ownGoldUse")).toLowerCase()),
  ),
];

export const ORDER_GROUPS: readonly PlannedGroup<OrderKey>[] = [WHO, ...TERMS];

const extra = planOf<ExtraKey>(form.extraHelp);

export const EXTRA_GROUP: PlannedGroup<ExtraKey> = extra.group("extra", "", [
  extra.words("text", "whole", { required: true }),
  extra.money("amount", "half", { required: true }),
  extra.money("cost", "half"),
]);

function termsHeld(at: At<OrderKey>): string {
  const said = (key: OrderKey, say: (text: string) => string) => (at(key).trim() === "" ? "" : say(at(key).trim()));
  const parts = [
    said("spot", holds.spot),
    at("priceBy") === "as Rates" ? "" : holds.figure(shownWord(at("priceBy")).toLowerCase(), at("priceFigure")),
    said("discount", holds.discount),
    said("shipping", holds.shipping),
    said("deposit", holds.deposit),
    at("settled") === "fixed" ? "" : shownWord(at("settled")).toLowerCase(),
    said("tolerance", holds.tolerance),
    at("spotShown") === "no" ? "" : holds.spotShown,
  ].filter((part) => part !== "");
  return parts.length > 0 ? parts.join(", ") : holds.asRates;
}
