import type { Lever } from "../../src/index";
import { plots } from "./plottexts";

/** A figure in the middle of a sentence. */
const IN_WORDS: Readonly<Record<Lever, string>> = {
  spot: "spot",
  surcharge: "the maker's surcharge",
  castingFee: "the casting fee",
  castingMinimum: "the casting minimum",
  loss: "the polish loss",
  labourFlat: "flat labour",
  labourPerLink: "labour per link",
  labourPerGram: "labour per gram",
  labourMinimum: "the labour minimum",
  linkWeight: "the weight of one link",
  setup: "the model and mould share",
  claspCost: "the clasp's cost",
  findings: "the cost of findings",
  claspPremium: "the clasp's premium",
  findingsPremium: "the premium of findings",
  settingFee: "the setting fee",
  plating: "plating",
  overhead: "overhead",
};

/** What the part "Make or buy" says. */
export const SOURCING_TEXTS = {
  what: {
    legend: "Compare",
    order: "This order",
    list: "Weights",
    catalogue: "Catalogue",
  },
  same: "Plain chain alone, with its model and mould. Clasp, findings, stones, plating and overhead are the same either way.",
  ratesFirst: "Put the Rates sheet right first.",
  show: (sheet: string) => `Show ${sheet}`,
  inWords: IN_WORDS,

  order: {
    none: "Fill in mark, length, links and link weight of a piece in Quote. Its plain chain is compared here.",
    faulty: "A field of the order needs a look first, in Quote.",
    subject: (design: string, weight: string, mark: string) => `${design}: ${weight} of plain chain, ${mark}`,
    nameless: "This piece",
    twoMetals: (pot: string, mark: string) =>
      `Your alloy holds ${pot} parts of gold in 1,000. Ready-made chain marked ${mark} is counted at its mark.`,
    make: "Make it",
    buy: "Buy it",
    buyFrom: (maker: string) => `Buy it from ${maker}`,
    against: (make: string, buy: string) => `${make} a gram made, ${buy} bought.`,
    againstMaker: (make: string, buy: string, maker: string) => `${make} a gram made, ${buy} bought from ${maker}.`,
    alone: (make: string, weight: string, mark: string) =>
      `${make} a gram made. Nobody on your price lists sells ${mark} of ${weight}.`,
    aloneInFew: (make: string, pieces: string, weight: string, mark: string) =>
      `${make} a gram made. Nobody on your price lists sells ${pieces} of ${weight} in ${mark}.`,
    level: (cost: string) => `${cost} a gram either way; buying spares the work.`,
    saves: (saving: string, isMade: boolean) => `${isMade ? "Making" : "Buying"} saves ${saving} a piece.`,
    savesAll: (saving: string, all: string, pieces: string, isMade: boolean) =>
      `${isMade ? "Making" : "Buying"} saves ${saving} a piece, ${all} on ${pieces} pieces.`,
  },

  ranges: {
    title: "Cheapest by weight",
    never: (by: string) => `${by}, making wins at no weight.`,
    always: (by: string) => `${by}, making wins at any weight.`,
    wins: (by: string, ranges: string) => `${by}, making wins ${ranges}.`,
    by: plots.sourcing.by,
    perLink: (chain: string, link: string) => `${chain} (${link} per link)`,
    upTo: (to: string) => `below ${to}`,
    between: (from: string, to: string) => `between ${from} and ${to}`,
    above: (from: string) => `above ${from}`,
    nobodyBelow: (weight: string) => `Below ${weight} nobody on your price lists sells this number of pieces.`,
    anyWeight: "any weight",
    weightHead: "Chain weight",
    winnerHead: "Cheapest",
    from: (from: string, to: string) => `${from} to ${to}`,
    make: "make",
    onlyMake: "make: nobody sells it",
    buy: (maker: string) => `buy from ${maker}`,
    makerOfRates: "the surcharge on Rates",
    caption: "Who is cheapest at which weight, with heavier links at this length",
  },

  hinge: {
    title: "What the answer hangs on",
    most: (what: string, says: string) => `Hangs most on ${what}: ${says}.`,
    lessTurns: (share: string, way: string) => `at ${share} less, ${way} wins`,
    moreTurns: (share: string, way: string) => `at ${share} more, ${way} wins`,
    both: (less: string, more: string) => `${less}; ${more}`,
    making: "making",
    buying: "buying",
    stays: (share: string, way: string, least: string, most: string) =>
      `${share} less or more of it moves what ${way} saves between ${least} and ${most}, and does not turn the answer`,
    turnsNone: (share: string) => `${share} less or more of it turns no answer`,
    turnsOf: (less: string, more: string, share: string) => `${share} less of it turns ${less}, ${share} more ${more}`,
    answers: (turned: number, count: number) =>
      turned === 0 ? "no answer" : turned === 1 ? `one answer of ${count}` : `${turned} answers of ${count}`,
    level: (value: string, change: string) => `Both ways cost the same at ${value}, ${change} than now.`,
    less: (share: string) => `${share} less`,
    more: (share: string) => `${share} more`,
    lessOf: (share: string, what: string) => `${share} less of ${what}`,
    moreOf: (share: string, what: string) => `${share} more of ${what}`,
    too: (list: string) => `It would also be turned by ${list}.`,
    instead: (list: string) => `It would be turned by ${list}.`,
    same: (list: string) => `The same made or bought: ${list}.`,
    legend: (share: string) =>
      `Bars: what making saves with one figure ${share} less (−) and ${share} more (+), the others as they are.`,
    nowLabel: "now",
    levelLabel: "level",
    heads: (share: string) => ["Figure", `${share} less`, `${share} more`, "Level at"],
    headsOfMany: (share: string) => ["Figure", `${share} less`, `${share} more`, "Answers that turn"],
    axis: (currency: string) => `${currency} saved by making`,
    noLevel: "–",
    ratePerGram: (rate: string) => `${rate} a gram`,
    nothing: "No figure moves the answer.",
  },

  makers: {
    title: "Makers",
    heads: ["Maker", "A gram", "Least order", "Tied up"],
    caption: "What each maker asks for this chain, the cheapest first",
    made: "made by you",
    ofRates: "surcharge on Rates",
    fromClass: (from: string) => `from ${from}`,
    lead: (lead: string) => `lead time ${lead}`,
    days: (days: string) => `${days} days`,
    dated: (date: string) => `list of ${date}`,
    pieces: (pieces: string) => (pieces === "1" ? "1 piece" : `${pieces} pieces`),
    nothingTied: "–",
    leastOrder: (pieces: string, cash: string) => `${pieces}, ${cash}`,
    fewest: (pieces: string) => `no fewer than ${pieces}`,
    larger: (maker: string, pieces: string, weight: string, rate: string) =>
      `${maker} sells no fewer than ${pieces} (${weight}), at ${rate} per gram.`,
    largerSaves: (saving: string) => `That order would save ${saving} per piece.`,
    largerTakes: (cash: string, pieces: string, tiedUp: string) =>
      `It takes ${cash} in cash, and ${pieces} worth ${tiedUp} would stay in stock.`,
    unreadRows: (rows: string) => `Not compared, because a row needs correcting: ${rows}.`,
    unreadRow: (maker: string, row: string) => `${maker} (row ${row})`,
    unreadTable: (sentence: string) =>
      `Your makers' price lists could not be read, so the surcharge on Rates is used. ${sentence}`,
    hollow: "The piece is hollow. Price lists and the surcharge on Rates are for solid chain, so nothing is compared.",
    noTable: (surcharge: string) =>
      `No price lists yet: bought is the surcharge on Rates, ${surcharge} a gram at any weight.`,
    noRow: (mark: string, surcharge: string) =>
      `No price list has a usable row for ${mark}: bought is the surcharge on Rates, ${surcharge} a gram.`,
    aRow: "a row without a maker",
    lists: "Makers' price lists",
    count: (makers: number, rows: number) =>
      `${makers === 1 ? "One maker" : `${makers} makers`}, ${rows === 1 ? "one class of weight" : `${rows} classes of weight`}.`,
    faults: (count: number) => (count === 1 ? "One row needs a look:" : `${count} rows need a look:`),
    none: "Keep what makers ask in a table of the workbook: one row a class of weight. Without it the surcharge on Rates counts.",
    begin: "Begin the Makers table",
    beginning: "Adding a sheet…",
    begun: "The table Makers is there, on a sheet of its own. Type into its cream cells, or write rows down here.",
    formTitle: "Write a maker's price down",
    forMark: "For mark",
    help: {
      mark: "As stamped, or all.",
      from: "Of one chain; empty for any weight.",
      surcharge: "Added to the metal rate.",
      minimum: "Least sold at once.",
      lead: "Days, or words.",
    },
    units: { g: "g", kg: "kg", dwt: "dwt", ozt: "troy ounces", money: "money", "": "–" } as Readonly<
      Record<string, string>
    >,
    press: "Write it down",
    pressing: "Writing…",
    written: (maker: string) => `Written down: ${maker}.`,
  },

  list: {
    weights: "Weights of chain",
    weightsHelp: "Grams, or with a unit, such as 8; 12.5; 5 dwt. One a line, or with semicolons.",
    field: "Weight",
    take: "Take the selected cells",
    taking: "Reading the cells…",
    taken: (count: number) => (count === 1 ? "One weight taken." : `${count} weights taken.`),
    mark: "Mark of all",
    linkWeight: "A link weighs",
    quantity: "Pieces of each",
    fromOrder: "Empty fields take what the order in Quote says.",
    tooMany: (count: number, most: number) =>
      `Found ${count} weights; the pane compares ${most} at once. Take fewer, or use CURB.BESTMAKER and CURB.MAKEORBUY in cells.`,
    nameHead: "Chain",
  },

  catalogue: {
    press: "Compare the designs",
    pressing: "Comparing…",
    noLines: "None of these designs could be priced.",
    refused: (count: number) =>
      count === 1 ? "One design could not be priced:" : `${count} designs could not be priced:`,
    nameHead: "Design",
    shown: (shown: number, count: number) => `The ${shown} with the largest savings of ${count}. The sheet has all.`,
    row: (row: number, design: string) => (design === "" ? `Row ${row}` : `Row ${row}, ${design}`),
    quantityNote: "Savings and orders count the pieces of each design's Quantity column, else one piece.",
  },

  many: {
    headline: (make: number, buy: number, skipped: number) => {
      const read = make + buy;
      const all = skipped === 0 ? "all of them" : read === 1 ? "the one that was read" : `the ${read} that were read`;
      return buy === 0 ? `Make ${all}` : make === 0 ? `Buy ${all}` : `Make ${make}, buy ${buy}`;
    },
    skipped: (count: number) =>
      count === 1
        ? "1 of the list could not be read and is not counted."
        : `${count} of the list could not be read and are not counted.`,
    onlyMade: (count: number) =>
      count === 1 ? "One of them nobody sells in this number." : `${count} of them nobody sells in this number.`,
    cost: (cost: string) => `Each done the cheaper way they cost ${cost} in all.`,
    underMaking: (saving: string) => `That is ${saving} less than making all.`,
    underBuying: (saving: string) => `It is ${saving} less than buying all that are sold.`,
    both: (making: string, buying: string) =>
      `That is ${making} less than making all, and ${buying} less than buying all that are sold.`,
    orders: "To be bought",
    orderHeads: ["Maker", "Pieces", "Weight", "Cash"],
    orderCaption: "What is to be bought, maker by maker",
    larger: (maker: string, chains: number, weight: string, saving: string) =>
      `${maker} sells ${chains === 1 ? "one of these chains" : `${chains} of these chains`} for less in a larger order: ${weight} for ${saving} less.`,
    largerReached: "Ordered together they reach the minimum.",
    short: (missing: string, minimum: string, cash: string) =>
      `${missing} are missing to the minimum of ${minimum}. Filling it up takes about ${cash} more in cash.`,
    heads: (name: string) => [name, "Made", "Bought", "Saves", "Answer"],
    caption: (currency: string) => `${currency}. Made and bought: a gram. Saves: the cheaper way, for all pieces.`,
    make: "make",
    buy: (maker: string) => `buy: ${maker}`,
    buyPlain: "buy",
    onlyMake: "make: not sold",
    put: "Put it on a sheet",
    putting: "Putting it on a sheet…",
    made: (sheet: string) => `It is on the sheet ${sheet}: values of now, with cost. Not for a customer.`,
  },

  sheet: {
    name: "Make or buy",
    dated: (date: string, spot: string) => `${date}, spot ${spot}. For the bench: it shows cost.`,
    heads: {
      name: "Chain",
      mark: "Mark",
      weight: "Chain g",
      pieces: "Pieces",
      make: "Made a gram",
      buy: "Bought a gram",
      saving: "Making saves, a piece",
      answer: "Answer",
      maker: "Cheapest maker",
      least: "Least order, pieces",
      cash: "Least order, cash",
    },
  },

  plot: {
    title: "Cost a gram by weight",
    order: (weight: string, make: string, buy: string) => `At ${weight}: ${make} a gram made, ${buy} bought.`,
    orderMade: (weight: string, make: string) =>
      `At ${weight}: ${make} a gram made; nobody sells this number of pieces.`,
    band: "Shaded: making wins.",
    by: {
      "heavier links": "Weights differ by heavier links at this length.",
      "more links": "Weights differ by more or fewer of the same links.",
    },
    outside: "Some of these weights lie outside this plot.",
    cheapest: "cheapest maker",
    notSold: "not sold",
  },
} as const;
