import type { AddedStonesKey, BudgetKey, HeavierBy, MustBringKey } from "../../src/index";

/** Every sentence of the parts that decide: what a piece must bring, open quotes, a budget, stones. */
export const DECIDE_TEXTS = {
  noOrder: "Fill in an order under Quote first: this part works on its open line.",
  perGram: (currency: string) => `${currency} / g`,
  share: "share or %",

  mustBring: {
    form: "Market and margin",
    help: {
      premium: "What others ask over the metal rate; empty if unknown.",
      margin: "Of the price, before tax.",
      heavierBy: "How pieces like this one grow heavier.",
    } satisfies Partial<Record<MustBringKey, string>>,
    heavier: {
      "heavier links": "heavier links, as many",
      "more links": "more links of the same",
    } satisfies Record<HeavierBy, string>,
    seen: {
      median: (premium: string, count: number, what: string, dated: string) =>
        count === 1
          ? `One price seen for ${what}${dated} asks ${premium} a gram over metal.`
          : `The median of ${count} prices seen for ${what}${dated} is ${premium} a gram over metal.`,
      what: (mark: string, weight: string) => `${mark}, ${weight}`,
      inMonth: (month: string) => `, in ${month},`,
      months: (from: string, to: string) => `, ${from} to ${to},`,
      use: (count: number) => (count === 1 ? "Use the price seen" : `Use the median seen (${count} prices)`),
    },
    any: "At any weight",
    from: (weight: string, isFirst: boolean) => `${isFirst ? "From" : "from"} ${weight} up`,
    upTo: (weight: string, isFirst: boolean) => `${isFirst ? "Up" : "up"} to ${weight}`,
    between: (from: string, to: string, isFirst: boolean) => `${isFirst ? "From" : "from"} ${from} to ${to}`,
    at: (weight: string, isFirst: boolean) => `${isFirst ? "At" : "at"} ${weight}`,
    links: (weight: string, links: string) => `${weight} (${links === "1" ? "one link" : `${links} links`})`,
    more: (count: string) => `${count} more ranges`,
    earns: (where: string, premium: string, margin: string) =>
      `${where} a premium of ${premium} a gram leaves your ${margin}.`,
    never: (premium: string, margin: string) =>
      `At no weight does a premium of ${premium} a gram leave your ${margin}.`,
    own: (weight: string, premium: string, price: string, margin: string) =>
      `The order's piece, ${weight}, must bring ${premium} a gram over metal, ${price} in all, to leave ${margin}.`,
    noMarket: "Give the market's premium to see at which weights it leaves that.",
    brings: (premium: string, price: string, margin: string) =>
      `At ${premium} it brings ${price} and leaves ${margin}.`,
    withTax: (price: string) => `${price} with the tax in it`,
    stones: "The premium has to pay for its stones too.",
    basis: (spot: string) => `At a spot of ${spot}. Clasp, stones and labour as in the order, costs by Rates.`,
    plot: {
      fold: "Margin by weight, drawn",
      loading: "Loading the plot…",
      notLoaded: "The plot could not be loaded. Close this and open it again.",
      title: "Margin by weight at that premium",
      sentence: (weight: string, margin: string, light: string, atLight: string, heavy: string, atHeavy: string) =>
        `The order's piece of ${weight} leaves ${margin}; one of ${light} would leave ${atLight}, one of ${heavy} ${atHeavy}.`,
      weight: "Piece, grams",
      margin: "Margin",
      wanted: (margin: string) => `wanted ${margin}`,
      line: "at that premium",
      edge: (weight: string) => `edge ${weight}`,
      order: (weight: string) => `this order ${weight}`,
    },
  },

  risk: {
    reading: "Reading the quotes…",
    none: "No open quotes: no given price waits for its gold.",
    count: (count: number) => (count === 1 ? "one open quote" : `${count} open quotes`),
    all: (quotes: string, spot: string, least: string) =>
      `At today's spot of ${spot} every one keeps your least margin of ${least}: ${quotes}.`,
    some: (quotes: string, spot: string, said: string) => `Of ${quotes}, at today's spot of ${spot}: ${said}.`,
    losing: (count: number) => (count === 1 ? "one would lose money" : `${count} would lose money`),
    below: (count: number, least: string) =>
      count === 1
        ? `one falls below your least margin of ${least}`
        : `${count} fall below your least margin of ${least}`,
    loses: (loss: string, net: string, landed: string) => `Loses ${loss}: brings ${net}, costs ${landed}.`,
    leaves: (margin: string, net: string, landed: string) => `Leaves ${margin}: brings ${net}, costs ${landed}.`,
    leavesLittle: (margin: string, least: string, net: string, landed: string) =>
      `Leaves ${margin}, below your ${least}: brings ${net}, costs ${landed}.`,
    bringsNothing: (landed: string) => `Brings nothing and costs ${landed}.`,
    limits: {
      upTo: (least: string, spot: string) => `Keeps ${least} up to a spot of ${spot}`,
      downTo: (least: string, spot: string) => `Keeps ${least} down to a spot of ${spot}`,
      always: (least: string) => `Keeps ${least} at any spot`,
      never: (least: string) => `Keeps ${least} at no spot`,
    },
    zeros: {
      upTo: (spot: string) => `loses money above ${spot}`,
      downTo: (spot: string) => `loses money below ${spot}`,
      always: "never loses money",
      never: "loses money at any spot",
    },
    both: (floor: string, zero: string, quoted: string) => `${floor}, ${zero}. Quoted at ${quoted}.`,
    used: (covered: string, needed: string) =>
      `${covered} of its ${needed} of fine gold are the customer's own and follow no spot.`,
    credited: (covered: string) =>
      `The customer's gold, credited as ${covered} of fine gold, moves with spot against the gold to be bought.`,
    settled: "Settled by final weight, at the metal rate it was quoted at: reckoned at the weight stated.",
    revise: "Revise at today's spot",
    reviseOf: (number: string) => `Revise quote ${number} at today's spot`,
    asked: (number: string, before: string, now: string) =>
      `${number} was quoted at ${before}. At today's spot it comes to ${now}.`,
    askedSame: (number: string, total: string) => `At today's spot ${number} still comes to ${total}.`,
    ownPrice: "A price set by hand does not follow spot: open the quote and set another.",
    make: "Make the revision",
    makeOf: (number: string) => `Make the revision of quote ${number}`,
    making: "Making it…",
    leave: "Leave it as it is",
    left: (number: string) => `Quote ${number} stays as it is.`,
    made: (number: string) => `The revision of ${number} was made at today's spot.`,
    termless: (numbers: string) =>
      `Quotes that kept no tax and no terms of their own are worked out at today's on Rates: ${numbers}.`,
    ended: (numbers: string) => `Past their last day, so that a new price may be given: ${numbers}.`,
    together: (customer: string, numbers: string, total: string) =>
      `Quotes of ${customer} come to ${total} together: ${numbers}.`,
    unknownStatus: (numbers: string) => `Where they stand is in words of your own, so they are not judged: ${numbers}.`,
    unread: (count: number) => (count === 1 ? "One cannot be judged" : `${count} cannot be judged`),
    notANumber: (number: string, found: string) =>
      `Quote ${number}: its Total in the Quotes table is ${found}, no amount. Put there what the customer pays.`,
    noOrder: (number: string, sentence: string) => `Quote ${number}: ${sentence}`,
    more: (count: string) => `Show ${count} more`,
  },

  stones: {
    form: "Stones to add",
    help: {
      count: "On the clasp, or on each link.",
      price: "What you pay for one.",
      settingFee: "For one; empty: as on Rates.",
      breakage: "Empty: as on Rates.",
      rise: "As the customer reads it.",
    } satisfies Partial<Record<AddedStonesKey, string>>,
    where: { "on the clasp": "on the clasp", "on every link": "on every link" },
    riseBy: { "as the order is priced": "as the order is priced", "by an amount of mine": "by an amount of mine" },
    head: (stones: string, cost: string, rise: string) =>
      `${stones} cost ${cost} set, and the price must rise by ${rise} to keep your margin.`,
    headNone: (stones: string, cost: string) => `${stones} cost ${cost} set. No rise keeps a margin of 100 %.`,
    count: (count: string) => (count === "1" ? "One stone" : `${count} stones`),
    keeps: (rise: string, price: string, before: string, after: string) =>
      `A rise of ${rise}, to ${price}, does: the margin goes from ${before} to ${after}.`,
    falls: (rise: string, price: string, before: string, after: string, lacking: string) =>
      `A rise of ${rise}, to ${price}, leaves ${after} of ${before}: ${lacking} more would keep it.`,
    none: (price: string, before: string, after: string) =>
      `The price stays at ${price}, and the margin goes from ${before} to ${after}.`,
    noMargin: (rise: string, price: string) => `The price goes up by ${rise} to ${price}.`,
    rows: { without: "Without", with: "With stones", cost: "Cost", price: "Price", margin: "Margin" },
    table: "One piece with and without the stones",
    ownPrice: "The order's price is set by hand and does not follow: give a rise of your own.",
    discounted: "Margins are after the order's discount.",
  },

  budget: {
    form: "A budget",
    groups: { once: "Paid once", each: "For each piece", plan: "Sale and cash" },
    help: {
      models: "Link, clasp: drawing, wax, resin.",
      marking: "Sponsor's mark, assay office.",
      castingMinimum: "Caster's least, for pieces cast together.",
      casting: "By weight.",
      metal: "Cast and lost.",
      assay: "Hallmarking or assay of one.",
      shipping: "To and from the trades.",
      other: "Engraving, overhead.",
      price: "Without tax.",
      deposit: "Of the price, before work begins.",
      cash: "Your own, free for this.",
    } satisfies Partial<Record<BudgetKey, string>>,
    take: "Fill from the order",
    took: (design: string) =>
      `Filled from the order's line ${design}, without overhead. Check what is paid once, and give marks, shipping and your cash yourself.`,
    notTaken: "The order has no price yet. Fill it in under Quote, or type the figures here.",
    needed: (pieces: string, needed: string) =>
      `${pieces === "1" ? "One piece needs" : `${pieces} pieces at a time need`} ${needed} of your own cash before the first sale.`,
    outIn: (out: string, deposits: string) => `${out} goes out; deposits bring ${deposits}.`,
    carries: {
      upTo: (cash: string, to: string) =>
        `${cash} at hand carries ${to === "1" ? "one piece" : `${to} pieces`} at a time.`,
      range: (cash: string, from: string, to: string) =>
        `${cash} at hand carries from ${from} to ${to} pieces at a time: fewer do not share the casting minimum well enough.`,
      from: (cash: string, from: string) =>
        `${cash} at hand carries ${from} pieces at a time or more: fewer do not share the casting minimum well enough.`,
      any: (cash: string) => `${cash} at hand carries any number: deposits pay for every piece.`,
      once: (cash: string, short: string) => `${cash} at hand is ${short} short of what is paid once.`,
      none: (cash: string, short: string) => `${cash} at hand is ${short} short of one piece.`,
      deposit: (share: string) => `A deposit of ${share} would do.`,
    },
    low: (cash: string, step: string) => `Made one after the other, cash is lowest at ${cash}, ${step}.`,
    steps: {
      once: () => "what is paid once",
      deposit: (piece: string) => `deposit of piece ${piece}`,
      costs: (piece: string) => `costs of piece ${piece}`,
      balance: (piece: string) => `balance of piece ${piece}`,
    },
    lowAt: {
      once: () => "once the models and moulds are paid for",
      deposit: (piece: string) => `with the deposit of piece ${piece}`,
      costs: (piece: string) => `once piece ${piece} is paid for`,
      balance: (piece: string) => `with the balance of piece ${piece}`,
    },
    paidBack: (piece: string) =>
      piece === "1"
        ? "The first piece brings back what is paid once."
        : `Piece ${piece} brings back what is paid once.`,
    neverBack: "At this price no number of pieces brings back what is paid once.",
    pieces: {
      title: (currency: string) => `The first three pieces, ${currency}`,
      piece: "Piece",
      carried: "Cost, set-up on the first",
      spread: "Cost, set-up spread",
      left: "Left so far",
    },
    line: {
      title: (currency: string) => `Cash, step by step, ${currency}`,
      step: "Step",
      change: "Comes or goes",
      cash: "Cash after",
    },
    put: "Put it on a sheet",
    putting: "Writing…",
    made: (sheet: string) => `${sheet} is in the workbook, its formulas live over cream cells and Rates.`,
    takeOut: "Take it out again",
    taking: "Taking it out…",
    taken: (sheet: string) => `${sheet} was taken out of the workbook.`,
    sheet: {
      title: "Budget",
      about: [
        "For the desk, not for customers: it shows cost. Cream cells are yours to write in; the rest follows them.",
        "Deposits are counted once the work is ordered; what is paid once comes before them.",
      ],
      once: (currency: string) => `Paid once, ${currency}`,
      onceTotal: "Paid once",
      each: "For each piece",
      metalWeight: "Metal charged",
      mark: "Mark",
      thousandths: "parts in a thousand",
      atSpot: "at the spot on Rates",
      eachTotal: "One piece, casting by weight",
      plan: "Sale and cash",
      before: "Before the first sale",
      made: "The pieces, made together",
      out: "Goes out",
      deposits: "Deposits bring",
      needed: "Own cash needed",
      left: "Left of the cash at hand",
      carries: "What the cash carries",
      room: "Cash beyond what is paid once",
      fewest: "Fewest at a time",
      most: "Most at a time",
      atATime: "Pieces at a time",
      none: "none",
      any: "any number",
      orMore: " or more",
      to: " to ",
      depositForOne: "Deposit that carries one piece",
      depositNote: "share of the price",
      first: "The first three pieces",
      firstHeads: ["Set-up at once", "Set-up spread", "Brings", "Left so far"],
      piece: (piece: string) => `Piece ${piece}`,
      oneCost: "One piece, cast alone",
      oneNote: "without what is paid once",
      oneGain: "Left of its price",
      paidBack: "Paid back with piece",
      never: "never",
      steps: "Cash, step by step",
      stepHeads: ["Comes or goes", "Cash after"],
      low: "Lowest",
      care: "Take care",
    },
  },
} as const;
