/** What the parts that decide are called; what they say is loaded with them (decidetexts.ts). */
export const DECIDE_PARTS = {
  mustBring: {
    title: "What it must bring",
    about: "From which weight on the market's price leaves your margin, and what the order's piece must bring.",
  },
  risk: {
    title: "Open quotes and spot",
    about:
      "Quotes that stand at asked, quoted or agreed: their price is given, their gold still to be bought. From “at the caster” on it is paid for; if you have bought it already, choose that. Past its last day only an agreed one binds. Costs by today's Rates.",
  },
  stones: {
    title: "Stones that pay",
    about:
      "Stones added to the order's piece: what they cost, what the price must rise, and the margin with and without.",
  },
  budget: {
    title: "Budget for a start or a batch",
    about: "The cash that goes out before the first sale, against deposits, and what your cash can carry.",
  },
} as const;
