function listed(words: readonly string[], last = "and"): string {
  const before = words.slice(0, -1).join(", ");
  return [before, ...words.slice(-1)].filter((part) => part !== "").join(` ${last} `);
}

/** What the result says. */
export const result = {
  title: "Result",
  each: "each",
  beforeDiscountShort: "before the discount",
  toFill: "The price shows here as you type.",
  stillToFill: (labels: string) => `Still to fill: ${labels}.`,
  stillForQuote: (labels: string) => `For the quote, still to fill: ${labels}.`,
  faulty: (count: number) => (count === 1 ? "One field needs a look" : `${count} fields need a look`),
  ratesFirst: "The Rates sheet needs a look first.",
  noPrice: "No price yet",
  profit: (margin: string | undefined, markup: string | undefined, discounted: boolean) =>
    `${margin === undefined ? "" : `Margin ${margin} · `}${markup === undefined ? "" : `Markup ${markup}`}${discounted ? ", after the discount" : ""}`,
  spoken: (price: string, of: string, margin: string | undefined, discounted: boolean) =>
    `Price ${price}${of === "" ? "" : ` ${of}`}${margin === undefined ? "" : `, margin ${margin}${discounted ? " after it" : ""}`}`,
  spokenTotal: (total: string, margin: string | undefined) =>
    margin === undefined ? `Total ${total}` : `Total ${total}, margin ${margin}`,
  afterDiscount: "after the discount",
  about: (weight: string) => `about ${weight}`,
  links: "Links",
  reaches: (links: string, length: string) => `${links}, reaching ${length}`,
  exact: "as asked",
  longer: (by: string) => `${by} more than asked`,
  shorter: (by: string) => `${by} less than asked`,
  finished: "Finished weight",
  cast: "Cast weight",
  fineGold: "Fine gold",
  inPiece: (weight: string) => `${weight} in the piece`,
  toBeCast: (weight: string) => `${weight} to be cast`,
  landed: "Landed cost",
  forOne: "for one piece",
  landedPerGram: "Landed per gram",
  basis: { finished: "finished basis", quick: "quick basis" },
  metalRate: "Metal rate",
  premium: "Premium",
  aGram: (rate: string) => `${rate} a gram`,
  sourcing: "Make or buy",
  make: (make: string, buy: string, saving: string) =>
    `Make: ${make} a gram made against ${buy} bought; making saves ${saving}.`,
  buy: (make: string, buy: string, saving: string) =>
    `Buy: ${make} a gram made against ${buy} bought; buying saves ${saving}.`,
  level: (make: string) => `Buy: ${make} a gram either way; buying spares the work.`,
  sourcingNote: "Plain chain alone with its model and mould, without clasp, stones and plating.",
  subtotal: (pieces: string) => `${pieces} pieces`,
  pieces: "All pieces",
  shipping: "Shipping",
  taxIn: (name: string) => `of which ${name}`,
  gold: "Customer's gold",
  toPay: "To pay",
  toPayBack: "To pay to the customer",
  inAll: "in all",
  lines: "Lines",
  pricedEach: (quantity: string, price: string) => `${quantity} × ${price}`,
  lineRemark: (priced: string, links: string, weight: string, hollow: boolean) =>
    `${priced}; ${links} links, about ${weight} a piece${hollow ? ", hollow" : ""}`,
  lineOf: (title: string) => `Line ${title}`,
  hollow: "hollow",
  settling: "Settled by final weight",
  beforeDiscount: (share: string) => `before the discount of ${share}`,
  settlingPerGram: (rate: string) => `${rate} a gram more or less`,
  all: "To cast and to buy",
  castOf: (alloy: string) => `Cast, ${alloy}`,
  linksOf: (links: string, closed: string, open: string) => `${links} links: ${closed} closed, ${open} open`,
  claspParts: (parts: string) => `${parts} clasp parts`,
  goldToBuy: "Fine gold to buy",
  stonesToBuy: "Stones to buy",
  stonesWhere: { links: "For the links", clasp: "For the clasp" },
  stonesWhereOf: { links: (line: string) => `${line}, links`, clasp: (line: string) => `${line}, clasp` },
  stonesOf: (count: string, kind: string, size: string) => {
    if (kind === "") return size === "" ? count : `${count} of ${size}`;
    return size === "" ? `${count} ${kind}` : `${count} ${kind}, ${size}`;
  },
  caratEach: (carat: string) => `${carat} ct each`,
  caratBySize: (carat: string) => `about ${carat} ct each by the size`,
  caratAsDiamond: (carat: string, gravity: string) =>
    `about ${carat} ct each, were it a diamond (specific gravity ${gravity}): weigh one, or give its own. The quote leaves it out`,
  ownGold: "Customer's gold, fine",
  brought: "Brought",
  needed: "In what is cast",
  usedGold: "Used in this work",
  returned: "Goes back",
  bought: "Still to buy",
  credit: "Credit",
  discount: (share: string) => `Discount ${share}`,
  tax: "Tax",
  total: "Total",
  deposit: "Deposit",
  balance: "Balance",
  costLines: "Cost lines",
  costNote: "For one piece. Each line is rounded to be shown; the landed cost is summed before rounding.",
  belowZero: (label: string, found: string) =>
    `${label}: ${found}, which takes off more than the rest comes to; give less to take off`,
  belowFloor: (net: string, floor: string, least: string) =>
    `Below the floor: this brings ${net}, but landed cost at your least margin of ${least} is ${floor}.`,
  belowFloorDiscounted: (net: string, floor: string, least: string) =>
    `Below the floor: after the discount this brings ${net}, but landed cost at your least margin of ${least} is ${floor}.`,
  lineBelowFloor: (line: number, design: string, least: string) =>
    `Line ${line}, ${design}, is below its own floor: it brings less than its landed cost at your least margin of ${least}.`,
  claspLacks: (line: number | undefined, clasp: string, lacking: readonly ("cost" | "weight" | "length")[]) => {
    const whose = line === undefined ? `The clasp (${clasp})` : `Line ${line}: the clasp (${clasp})`;
    const counts = { cost: "free", weight: "of no weight", length: "of no length" };
    return `${whose} has no ${listed(lacking, "or")}: it counts as ${listed(lacking.map((each) => counts[each]))}.`;
  },
  depositShort: (deposit: string, covers: string, cash: string) =>
    `The deposit of ${deposit} covers ${covers} of the ${cash} that you pay out first.`,
  depositTyped: "It stays as you typed it.",
  depositWhole: "More than all that is to be paid cannot be asked.",
  depositTax: "The tax in it is due with the deposit.",
  noDeposit: (cash: string) => `No deposit is asked; you pay out ${cash} first.`,
  paidOutFirst:
    "Paid out first: metal that is not the customer's, casting, labour, clasps, findings, stones, setting, engraving, plating, model and mould.",
  depositRaised: (from: string, to: string, cash: string) =>
    `raised from ${from} to ${to}, to cover the ${cash} that you pay out first`,
} as const;
