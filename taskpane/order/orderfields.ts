import { EXTRA_FIELDS, type ExtraKey, ORDER_FIELDS, type OrderKey } from "../../src/index";
import type { At, PlannedGroup } from "../controls/formplan";
import { cautionsAt } from "../wording/cautions";
import { TEXTS } from "../wording/texts";
import { shownWord } from "./choices";
import { declaredFields, listed } from "./declaredfields";

const { form } = TEXTS;
const { groups, holds } = form;

const { place, group } = declaredFields<OrderKey>(ORDER_FIELDS, form.help);

/** For whom: it stands before the lines. */
export const WHO: PlannedGroup<OrderKey> = group("who", "", [place("customer", "whole")]);

/** What else an order says once: it stands after the lines. */
export const TERMS: readonly PlannedGroup<OrderKey>[] = [
  group(
    "terms",
    groups.terms,
    [
      place("spot", "half"),
      place("spotShown", "half"),
      place("priceBy", "half"),
      place("priceFigure", "half", {
        isAsked: (at) => at("priceBy") !== "as Rates",
      }),
      place("discount", "half"),
      place("shipping", "half"),
      place("deposit", "half"),
      place("settled", "half"),
      place("tolerance", "half", { cautions: ["settled"] }),
    ],
    termsHeld,
  ),
  group(
    "own-gold",
    groups.ownGold,
    [
      place("ownGoldWeight", "half", {
        caution: (at) =>
          at("ownGoldWeight").trim() === "" ? "" : cautionsAt("customer's gold", ["publicGold"]).join(" "),
      }),
      place("ownGoldMark", "half"),
      place("ownGoldUse", "half"),
      place("ownGoldShare", "half", { cautions: ["ownGoldWeight"] }),
    ],
    (at) =>
      at("ownGoldWeight").trim() === ""
        ? listed(at("ownGoldMark"))
        : holds.gold(at("ownGoldWeight"), at("ownGoldMark"), shownWord(at("ownGoldUse")).toLowerCase()),
  ),
];

export const ORDER_GROUPS: readonly PlannedGroup<OrderKey>[] = [WHO, ...TERMS];

const extra = declaredFields<ExtraKey>(EXTRA_FIELDS, form.extraHelp);

export const EXTRA_GROUP: PlannedGroup<ExtraKey> = extra.group("extra", "", [
  extra.place("text", "whole"),
  extra.place("amount", "half"),
  extra.place("cost", "half"),
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
