import type { AskedPieceKey, AskingKey, NearestLink } from "../../src/index";

/** Every sentence of the pane about other sellers' prices. */
export const ASKING_TEXTS = {
  check: {
    form: "An asking price",
    help: {
      price: "Or with its currency: EUR 1200.",
      weight: "Grams, or with its unit: 8 dwt, 0.4 ozt.",
      mark: "Such as 14K, 585 or 750.",
      currency: "Empty: the workbook's.",
      kind: "Such as curb or rope.",
      length: "Empty: the usual one.",
      link: "The nearest: by mark, colour and weight.",
    } satisfies Partial<Record<AskingKey | AskedPieceKey | "link", string>>,
    more: "More about the piece",
    link: "Held against",
    nearest: "The nearest kept link",
    notSaid: "Not said",
    per: {
      piece: "Whole piece",
      g: "A gram",
      dwt: "A pennyweight (dwt)",
      ozt: "A troy ounce (ozt)",
      "oz av": "An avoirdupois ounce",
    },
    exchangeUnit: (own: string, theirs: string) => `${own} for 1 ${theirs}`,
    which: (typed: string) => `Which unit is “${typed}”?`,
    units: {
      ozt: "Troy ounces, 31.10 g each",
      "oz av": "Avoirdupois ounces, 28.35 g each",
      g: "Grams",
      grain: "Grains, 0.065 g each",
    } as Readonly<Partial<Record<string, string>>>,

    result: "What it says",
    toFill: "Type price, weight and mark",
    still: (labels: string) => `Still to fill: ${labels}.`,
    faulty: (labels: string) => `Needs a look: ${labels}.`,
    ratesFirst: "The Rates sheet needs a look first",
    over: (premium: string) => `${premium} a gram over metal`,
    under: (missing: string) => `${missing} a gram below the metal`,
    level: "Asked just what the metal is worth",
    asked: (asked: string, melt: string, share: string) => `Asked ${asked} a gram, metal ${melt}: ${share} above melt.`,
    askedUnder: (asked: string, melt: string, share: string) =>
      `Asked ${asked} a gram, metal ${melt}: ${share} below melt.`,
    forAll: (asked: string, melt: string) => `The whole piece: ${asked} asked, ${melt} of gold in it.`,
    changed: (theirs: string, rate: string, own: string) => `${theirs} at ${rate} is ${own}.`,
    below:
      "Nobody sells gold below its metal for long. Look at it again: does the scale say this weight, and of the gold alone? Is the mark tested, or only stamped? Is it hollow, filled or plated? Are stones, glue or a steel spring weighed as metal?",

    ours: "Against ours",
    match: (landed: string, margin: string) => `We land at ${landed} over; matching it leaves ${margin}.`,
    matchLoses: (landed: string, loss: string, margin: string) =>
      `We land at ${landed} over; matching it would lose ${loss}, ${margin} of the price.`,
    matchLevel: (landed: string) => `We land at ${landed} over; matching it leaves nothing.`,
    belowLeast: (least: string) => `That is below your least margin of ${least}.`,
    landed: (landed: string, perGram: string) => `Landed cost of ours: ${landed}, ${perGram} a gram.`,
    priceBelow: (price: string, perGram: string, apart: string) =>
      `Our price for it: ${price}, ${perGram} a gram: ${apart} less than asked.`,
    priceAbove: (price: string, perGram: string, apart: string) =>
      `Our price for it: ${price}, ${perGram} a gram: ${apart} more than asked.`,
    priceSame: (price: string, perGram: string) => `Our price for it: ${price}, ${perGram} a gram: the same as asked.`,
    left: (left: string) => `Matching it leaves ${left} on the piece.`,
    surcharge: (surcharge: string, own: string) =>
      `Were it a maker's price to you, it would be a surcharge of ${surcharge} a gram: asked less the metal rate, nothing else. Rates have ${own}. A seller's own profit is in it too.`,
    taxIn: (asked: string, net: string, tax: string) =>
      `Taken to hold ${tax}, as your prices do: ${net} of ${asked} is left without it.`,
    taxOn: (tax: string) => `Taken without ${tax}, as your prices are.`,
    tax: "tax",
    taken: (links: string, name: string, weight: string, isWeighed: boolean) =>
      `Held against ${links} links of ${name}, ${weight} each, ${isWeighed ? "weighed" : "an estimate"}: links alone, without clasp, stones or engraving.`,
    wouldWeigh: (length: string, weight: string, isSaid: boolean) =>
      `${isSaid ? `At ${length}` : `At ${length}, usual where no length is said,`} a chain of it weighs ${weight}.`,
    farLighter: "Our link is much lighter than the piece's: labour by the link counts too many of them.",
    farHeavier: "Our link is much heavier than the piece's: labour by the link counts too few of them.",
    otherMark: (kept: string, asked: string) =>
      `It is kept in ${kept}; in ${asked} a link weighs something else, so the count is rough.`,
    otherColour: (kept: string) => `It is kept in ${kept}: another alloy weighs a little else.`,
    otherKind: (kind: string) => `“${kind}” is other work than curb links: take this as a rough comparison.`,
    hollowOther: "One of the two is hollow and the other is not: that is other work and another weight.",
    weightFirst: "Give its weight, to hold it against a piece of ours.",
    lacks: {
      "any link": "Nothing of ours to hold it against yet: keep a link first (Links, “Keep this link”).",
      "a weight": "None of the kept links has a weight yet: give one its estimate in the table Links, or weigh some.",
      "a hollow link":
        "No kept link is hollow, and a solid one says nothing of a hollow piece. Keep one whose model's name says “hollow”.",
      "a solid link": "All kept links are hollow, and a hollow one says nothing of a solid piece. Keep a solid one.",
      "a lighter link": "The kept links are too heavy for it: it would be less than two of the lightest.",
    } satisfies Record<Extract<NearestLink, { found: false }>["lacks"], string>,

    note: "Where seen",
    noteHelp: "A shop, a fair, an address.",
    keep: "Write it down",
    keeping: "Writing…",
    kept: (sheet: string) => `Written down on ${sheet}, with today's date and spot.`,
    double: "It stands in the table AskingPrices already, with the same date and place.",
    undo: "Take it out again",
    undoing: "Taking it out…",
    undone: "Taken out again.",
  },

  list: {
    from: "Where it is",
    selection: "The selected cells",
    table: (name: string) => `Table ${name}`,
    paste: "Pasted text",
    file: "A CSV file",
    pasted: "Paste the list here, headers first",
    read: "Read the list",
    reading: "Reading…",
    noCells:
      "The selection holds no list. Select it with its row of headers, such as Date, Mark, Weight, Price, and try again.",
    noTable: "That table is no longer in the workbook. Choose another, or select the cells.",
    noText: "Nothing is pasted yet.",
    oneRow: "There is only one row. Give a row of headers, then a row an asking price.",
    fileWords: {
      accept: ".csv,.tsv,.txt,text/csv",
      label: "A CSV file",
      choose: "Choose a CSV file",
      another: "Choose another file",
      drop: "or drop it here",
      several: "One file at a time, please.",
      none: "That was no file.",
    },
    tooLarge: "That file is larger than 5 MB. Take it in in parts.",
    summary: (rows: string, where: string) => `${rows} in ${where}`,
    rows: (count: number) => (count === 1 ? "1 row" : `${count} rows`),
    separated: (where: string, separator: string) => `${where}, separated by ${separator}`,
    separators: { ",": "commas", ";": "semicolons", "\t": "tabs", "|": "bars" } as Readonly<Record<string, string>>,
    pastedName: "the pasted text",

    columns: "Columns",
    is: (header: string) => `${header} is`,
    unused: "not used",
    likely: "likely",
    noHeader: (number: number) => `Column ${number}, without a header`,
    missing: (labels: string) => `Still missing: ${labels}. Say which column it is.`,
    doubled: (found: string) => `Found ${found}.`,
    allKnown: "All headers are known words.",
    look: "Look at each column and correct what is wrong.",

    questions: "What the list does not say",
    decimalSigns: {
      ".": (figure: string | undefined) => (figure ? `${figure} (decimal point)` : "written with a decimal point"),
      ",": (figure: string | undefined) => (figure ? `${figure} (decimal comma)` : "written with a decimal comma"),
    },
    decimals: (example: string) => `“${example}” is`,
    dates: (example: string) => `“${example}” is`,
    ounce: (example: string) => `“${example}” is`,
    choose: "Please choose",
    troy: "troy ounces (31.1 g)",
    avoirdupois: "avoirdupois ounces (28.35 g)",
    gram: "grams",
    grain: "grains (0.065 g)",
    per: "Prices are for",
    currency: "Currency where none is named",
    exchange: (theirs: string, own: string) => `1 ${theirs} in ${own}`,
    exchangeHelp: "As of then; it is never assumed.",
    date: "Date where none is given",
    source: "Where seen, if no row says",

    outcome: (ready: string, all: string) => `${ready} of ${all} can be taken in.`,
    none: "No row can be taken in yet.",
    belowMelt: (count: number) =>
      count === 1
        ? "One of them asks less than its metal: look at its weight, mark, hollow, plating, stones."
        : `${count} of them ask less than their metal: look at their weight, mark, hollow, plating, stones.`,
    olderSpot: (count: number) =>
      count === 1
        ? "One older price has no spot of its day: its melt follows the spot on Rates."
        : `${count} older prices have no spot of their day: their melt follows the spot on Rates.`,
    todaySpot: "Beside today's prices the spot on Rates is written down, so that their premium stays.",
    stillOut: (count: number) =>
      count === 1
        ? "One row is still kept out. Answer what is asked above, or mend it in the list."
        : `${count} rows are still kept out. Answer what is asked above, or mend them in the list.`,
    refused: (count: number) => (count === 1 ? "One row is kept out:" : `${count} rows are kept out:`),
    row: (number: number) => `Row ${number}`,
    doubles: (count: number) => (count === 1 ? "One row is there already:" : `${count} rows are there already:`),
    doubleOf: (number: number) => `says the same as row ${number}`,
    doubleKept: "stands in the table AskingPrices",
    showAll: (count: number) => `Show all ${count}`,
    take: (count: number) => (count === 1 ? "Take 1 row in" : `Take ${count} rows in`),
    taking: "Writing…",
    taken: (rows: string, sheet: string) => `${rows} taken in on ${sheet}.`,
    leftOut: (count: number) => (count === 1 ? "One row was kept out." : `${count} rows were kept out.`),

    lists: "Lists taken in",
    listName: (list: number, rows: string) => `List ${list}: ${rows}`,
    out: "Take it out again",
    outOf: (name: string) => `Take it out again: ${name}`,
    outing: "Taking it out…",
    gone: (rows: string) => `${rows} taken out again.`,
    goneAll: "Taken out again. The workbook is as it was before.",
    stay: (rows: string) => `${rows} changed since: they stay, and are yours.`,
  },

  premiums: {
    none: "No asking prices are written down yet. Check a price above and write it down, or take in a list.",
    unread: (count: number) =>
      count === 1
        ? "One row of the table cannot be read: its Remark there says why."
        : `${count} rows of the table cannot be read: their Remark there says why.`,
    weightless: (count: number) =>
      count === 1
        ? "One price by weight has no weight and is not drawn."
        : `${count} prices by weight have no weight and are not drawn.`,
    mark: "Our price in",
    link: "Made of",
    plot: {
      title: "Premium against weight",
      weight: "Weight, grams",
      premium: (currency: string) => `${currency} a gram over metal`,
      seen: (count: string, least: string, most: string) =>
        `${count === "1" ? "One price" : `${count} prices`} from ${least} to ${most} a gram over metal.`,
      ours: (mark: string, light: string, atLight: string, heavy: string, atHeavy: string) =>
        `Our price in ${mark} is ${atLight} a gram over at ${light} and ${atHeavy} at ${heavy}.`,
      below: (below: string, mark: string, all: string) =>
        `Of ${all} in ${mark}, ${below} ${below === "1" ? "asks" : "ask"} less over metal than we do.`,
      belowAll: (below: string, mark: string) =>
        below === "1"
          ? `The one in ${mark} asks less over metal than we do.`
          : `All ${below} in ${mark} ask less over metal than we do.`,
      belowNone: (mark: string) => `None in ${mark} asks less over metal than we do.`,
      noCurve: (why: string) => `Our own price is not drawn. ${why}`,
      ourLine: "our price",
      metal: "metal",
      markHead: "Mark",
      dateHead: "Date",
      sourceHead: "Where",
      premiumHead: (currency: string) => `Over metal, ${currency}`,
      oursHead: (currency: string) => `Ours, ${currency}`,
      legend: (mark: string, count: string) => `${mark} (${count})`,
    },
    medians: {
      title: "Month by month",
      about: "The middle premium of each class of weights and mark: half asked more, half less.",
      weightClass: "Weight, mark",
      month: "Month",
      median: (currency: string) => `Middle, ${currency}/g`,
      count: "Prices",
      noMonth: "no date",
    },
  },
} as const;
