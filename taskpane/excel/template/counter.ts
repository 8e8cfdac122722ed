import type { Paper, PaperCell } from "../paper";
import { DESCRIPTION_WITHIN, OWN_GOLD, SETTLED_DISCOUNT, SETTLED_STONES, SPOT } from "./templatewords";

/** A small ticket for the counter: what was asked for, the price, the deposit, and how long the price holds. */
export const COUNTER_TICKET: Paper = {
  widths: [200, 84],
  rows: [
    [{ content: "{{workshop}}", look: "block" }],
    [{ content: "{{workshopContact}}", look: "small" }],
    [],
    pair("{{customer}}", "No. {{number}}"),
    [{ content: "{{date}}", look: "start" }],
    [
      { content: "", look: "head" },
      { content: "{{currency}}", look: "headRight" },
    ],
    [
      {
        content: `{{line.quantity}} × {{line.design}}: ${DESCRIPTION_WITHIN}`,
        look: "body",
      },
      { content: "{{line.amount}}", look: "number" },
    ],
    pair("{{extra.text}}", "{{extra.amount}}"),
    pair("Discount, taken off", "{{discount}}"),
    pair("Shipping", "{{shipping}}"),
    pair("{{taxName}}", "{{tax}}"),
    [
      { content: "Total", look: "totalLabel" },
      { content: "{{total}}", look: "total" },
    ],
    pair("of which {{taxIncludedName}}", "{{taxIncluded}}"),
    pair("Your gold, taken off", "{{ownGoldCredit}}"),
    pair("To pay", "{{toPay}}"),
    pair("Deposit", "{{deposit}}"),
    pair("Balance", "{{balance}}"),
    [],
    [{ content: "Holds until {{validUntil}}.", look: "label" }],
    [{ content: "[[Fixed price; weight within {{fixedTolerance}} of the one stated.]]", look: "small" }],
    [{ content: "[[Settled by the finished weight, within {{settledTolerance}}.]]", look: "small" }],
    ...[SETTLED_STONES, SETTLED_DISCOUNT, ...OWN_GOLD, SPOT].map((content): PaperCell[] => [
      { content, look: "small" },
    ]),
  ],
};

function pair(label: string, field: string): PaperCell[] {
  return [
    { content: label, look: "label" },
    { content: field, look: "number" },
  ];
}
