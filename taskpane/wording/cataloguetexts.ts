import { PRICE_COLUMNS } from "../../src/index";
import type { AdditionKind } from "./additionkinds";
import type { BenchColumn, CustomerColumn, SheetColumn } from "./pricesheetcolumns";

/** The sentences of the pane's Catalogue section. */
export const CATALOGUE_TEXTS = {
  title: "Catalogue",
  about: "All designs at once: price lists, a new spot, a sheet for the counter.",
  ratesFirst: "The Rates sheet needs a look first.",

  designs: {
    title: "Designs",
    from: "Where they are",
    selection: "The selected cells",
    table: (name: string) => `Table ${name}`,
    read: "Read the designs",
    reading: "Reading…",
    blank: "Begin a blank catalogue",
    beginning: "Beginning…",
    begun: (sheet: string) => `${sheet} is in the workbook, with two invented designs. Put your own in their place.`,
    help: "A table, or cells you select: one row of headers, then a row a design. Nothing in it is changed.",
    summary: (rows: string, where: string) => `${rows} in ${where}`,
    rows: (count: number) => (count === 1 ? "1 row" : `${count} rows`),
    again: "Read again",
  },

  columns: {
    title: "Columns",
    confirm: "Look at each column, correct what is wrong, and use them.",
    known: "All headers are words of the order form.",
    unused: "not used",
    needed: "Needed",
    others: "Others",
    noHeader: (letter: string) => `column ${letter}, without a header`,
    is: (header: string) => `${header} is`,
    such: (values: string) => `Its values: ${values}`,
    unitOf: (header: string) => `Unit of ${header}`,
    likely: "likely",
    ownUnit: "choose a unit",
    asLength: "unit of the length",
    missing: (labels: string) => `Still missing for a price: ${labels}.`,
    doubled: (found: string) => `Found ${found}.`,
    use: "Use these columns",
    used: "These columns are in use.",
  },

  list: {
    title: "Price list in the workbook",
    about: "A list on a sheet of its own that follows your designs and Rates by itself.",
    renamed:
      "Your headers differ from the list's words, so the sheet also holds a copy of your cells under them, which follows yours.",
    columns: "Columns",
    short: "Weights, cost, price",
    all: "Every cost line",
    make: "Make the price list",
    making: "Making it…",
    made: (sheet: string) => `${sheet} is in the workbook.`,
    beside: "Add columns beside the designs",
    besideAbout:
      "Links, weights, landed cost, price and margin as formulas of their own, to the right of your table. Nothing of yours is moved or written over.",
    leftOut: (count: number) =>
      count === 1
        ? "One row cannot be priced yet: its cells tell why."
        : `${count} rows cannot be priced yet: their cells tell why.`,
    adding: "Adding…",
    added: (count: string, sheet: string) => `Columns for ${count} were added on ${sheet}.`,
  },

  added: {
    title: "Put into this workbook",
    whats: {
      catalogue: "Blank catalogue",
      "price list": "Price list",
      columns: "Columns beside the designs",
      "price sheet": "Price sheet",
      "bench sheet": "Bench sheet",
      spots: "Prices at other spots",
      budget: "Budget",
      "make or buy": "Make or buy",
    } satisfies Record<AdditionKind, string>,
    on: (what: string, sheet: string) => `${what}, on ${sheet}`,
    takeOut: "Take it out again",
    takeOutOf: (what: string) => `Take it out again: ${what}`,
    taking: "Taking it out…",
    taken: (what: string) => `${what}: taken out again. The workbook is as it was before.`,
    columnsTaken: (what: string) => `${what}: taken out again. Your own cells are as they were.`,
    takenBeside: (what: string) => `${what}: taken out. What is yours stayed.`,
    found: (sheet: string) => `On ${sheet} these columns were changed or used since. Nothing was taken out yet.`,
    own: (places: string) => `Changed since: ${places}. That stays as it is.`,
    readers: (places: string) => `Formulas or names that read the columns, and would find them empty: ${places}.`,
    more: (count: number) => `${count} more`,
    keepMine: "Take the columns out, keep what is mine",
    leave: "Leave all as it is",
    spot: (is: string, was: string) => `Spot on Rates: ${is}, in place of ${was}`,
    spotBack: "Put the old spot back",
    spotBackOf: (was: string) => `Put the old spot back: ${was}`,
    puttingBack: "Putting it back…",
    spotIsBack: (was: string, beside: string) =>
      `Spot on Rates is ${was} again${beside === "" ? "" : `, with ${beside} as before`}. Prices in the workbook follow.`,
  },

  spot: {
    title: "New spot",
    about: "See what another spot does to every price before you take it over.",
    amount: "Spot",
    per: "Counted for",
    ounce: "a troy ounce of fine gold",
    gram: "a gram of the mark",
    mark: "Mark of that gram",
    source: "Source",
    sourceHelp: "Where you read it.",
    time: "Read at",
    timeHelp: "Such as 2026-05-31 14:30.",
    badTime: "Read at: give date and time such as 2026-05-31 14:30",
    see: "See before and after",
    seeing: "Pricing…",
    accept: "Take over this spot",
    accepting: "Writing to Rates…",
    leave: "Leave Rates as they are",
    left: "Rates are as they were.",
    accepted: (spot: string) => `Spot on Rates is now ${spot}. Prices in the workbook follow.`,
    partly: (labels: string) => `${labels}: a formula of yours stands there and was left as it is.`,
    from: (before: string, after: string, share: string) => `From ${before} to ${after} an ounce: ${share}.`,
    jump: (share: string) =>
      `That is ${share} away from the spot on Rates. Look at the figure, its unit and its currency once more.`,
    stillTrue: "It is right",
    moved: (moved: string, all: string) => `${moved} of ${all} lines get another price.`,
    none: (all: string) => `None of ${all} lines gets another price: no move reaches a price step.`,
    noLines: "No line can be priced.",
    up: "Largest move up",
    down: "Largest move down",
    move: (design: string, before: string, after: string) => `${design}, ${before} to ${after}.`,
    belowFloor: (count: string) =>
      count === "1"
        ? "One line falls below its floor if it keeps its present price:"
        : `${count} lines fall below their floor if they keep their present price:`,
    belowLine: (design: string, price: string, margin: string) => `${design} at ${price}, margin ${margin}`,
    more: (count: string) => `and ${count} more.`,
    refused: (count: string) => (count === "1" ? "One line cannot be priced:" : `${count} lines cannot be priced:`),
    row: (row: number, design: string, sentence: string) =>
      `Row ${row}${design === "" ? "" : `, ${design}`}. ${sentence}`,
    changed: "Rates or designs have changed since. See before and after anew.",
    asFormula: (formula: string) =>
      `Spot on Rates is a formula, ${formula}. It is yours and is left as it is: change what it reads instead.`,
  },

  sheet: {
    title: "Price sheet and CSV",
    about: "Values only, dated with their spot: for the counter, the web, or a printer.",
    readers: "Who reads it",
    customers: "Customers",
    bench: "The bench alone",
    benchCaution: "Columns of cost are offered. The sheet says in its title that it is not for customers.",
    columns: "Columns",
    names: {
      design: "Design",
      description: "Description",
      mark: "Mark",
      colour: "Colour",
      length: "Length",
      links: "Links",
      weight: "Weight",
      price: "Price",
      ...benchNames(),
    } satisfies Record<SheetColumn, string>,
    heads: {
      design: () => "Design",
      description: () => "Description",
      mark: () => "Mark",
      colour: () => "Colour",
      length: () => "Length",
      links: () => "Links",
      weight: () => "About, g",
      price: (currency: string) => `Price, ${currency}`,
    } satisfies Record<CustomerColumn, (currency: string) => string>,
    hollow: "hollow",
    make: "Make the sheet",
    making: "Pricing…",
    download: "Download CSV",
    copy: "Copy CSV",
    noColumns: "Choose at least one column.",
    name: "Prices",
    benchName: "Bench prices",
    benchTitle: "Bench prices: not for customers",
    benchNote: "This sheet shows cost. Keep it at the bench.",
    dated: (today: string, spot: string, readAt: string) =>
      `Prices of ${today}, at gold of ${spot} an ounce${readAt === "" ? "" : `, read ${readAt}`}.`,
    moves: "Gold moves, and prices with it. Weights are approximate.",
    tax: "Tax",
    taxIn: (tax: string) => `Prices hold ${tax}.`,
    taxOn: (tax: string) => `${tax} is added to these prices.`,
    made: (sheet: string) => `${sheet} is in the workbook: values that stay as they are.`,
    leftOut: (count: number) =>
      count === 1
        ? "One line cannot be priced and was left out."
        : `${count} lines cannot be priced and were left out.`,
    file: (today: string) => `prices-${today}`,
    downloaded:
      "The CSV file is with your downloads. If it is not, your Excel does not let panes save files: copy it instead.",
    copied: "The CSV text is on the clipboard.",
    copyByHand: "Your Excel does not let panes use the clipboard. Copy the text from here:",
  },

  range: {
    title: "Prices at other spots",
    about:
      "What every design would be priced at, and which would fall below their floor at present prices, while spot moves.",
    spots: "At which spots",
    steps: "Even steps to either side",
    months: "Largest months since 1968",
    monthsHelp: (up: string, upMonths: string, down: string, downMonths: string) =>
      `Gold rose most from ${upMonths}, by ${up}, and fell most from ${downMonths}, by ${down}. Both are monthly averages: single days went further.`,
    monthToMonth: (from: string, to: string) => `${from} to ${to}`,
    asIn: "As gold moved from",
    monthsNote:
      "The largest moves from one month's average to the next since January 1968 (datasets/gold-prices, monthly averages in USD). Single days went further.",
    moved: (spot: string, share: string, months: string) => `${spot}, ${share} as from ${months}`,
    step: "Step",
    stepHelp: "Four steps of so much to either side.",
    see: "Reckon",
    seeing: "Pricing…",
    put: "Put every price on a sheet",
    putting: "Writing…",
    name: "Prices at other spots",
    dated: (today: string, spot: string) =>
      `Reckoned on ${today} from a spot of ${spot} an ounce. Spots stand in the head row.`,
    belowNote:
      "For the bench. Below the floor: lines that at that spot bring less than landed cost at the least margin, if they keep their present price.",
    change: "Change of spot",
    today: "present",
    belowHead: "Lines below the floor",
    plotTitle: "One piece of each design if spot moves",
    now: (count: string, prices: string, spot: string) =>
      `One piece of each of ${count} designs comes to ${prices} at the present spot of ${spot}.`,
    to: (low: string, atLow: string, high: string, atHigh: string) =>
      `At ${low} it would come to ${atLow}, at ${high} to ${atHigh}.`,
    below: (lines: number, spot: string) =>
      lines === 0
        ? `Present prices would keep every line above its floor at ${spot}.`
        : lines === 1
          ? `At ${spot} one line would be below its floor at present prices.`
          : `At ${spot} ${lines} lines would be below their floor at present prices.`,
    sum: (currency: string) => `${currency}, all designs`,
    prices: "prices",
    landed: "landed cost",
    headIn: (what: string, currency: string) => `${what}, ${currency}`,
    level: "present prices",
    present: (spot: string) => `present spot ${spot}`,
  },

  source: {
    title: "Read it from an address",
    url: "Address",
    urlHelp: "Beginning with https. Only one that you have the right to read from.",
    kind: "Its answer is",
    place: "Place of the number",
    placeHelp: "JSON: such as data.0.price. CSV: line/column, such as 2/price or last/3.",
    get: "Read and see",
    getting: "Asking…",
    notHttps: "The address must be a whole one that begins with https://.",
    redirected: (host: string) => `The answer came from ${host}, which is not an https address. It was not read.`,
    status: (host: string, status: number) => `${host} answered with the error ${status} and no number.`,
    late: (host: string) => `${host} gave no answer in time. Try again, or type the spot.`,
    noAnswer: (host: string) =>
      `No answer from ${host}: it cannot be reached, or it does not let other pages read it (CORS). Ask its owner, or type the spot.`,
    tooLong: "The answer is too long to be a spot. Look at the address.",
    notJson: "The answer is not JSON. Look at the address, or choose CSV.",
    wrongPlace: (step: string, before: string, keys: string) =>
      `The answer has no “${step}”${before === "" ? "" : ` in ${before}`}${keys === "" ? "." : `; there is ${keys}.`}`,
    csvPlace: "Place of the number: for CSV give line/column, such as 2/price or last/3.",
    noLine: (line: string, lines: string) => `The answer has no line ${line}; it has ${lines}.`,
    noColumn: (column: string, heads: string) => `The answer has no column ${column}; its first line says ${heads}.`,
    noNumber: (place: string) => `There is no number at ${place}.`,
    found: (place: string) => `The answer at ${place}`,
    right: "the place of a plain number above 0",
  },

  age: {
    old: (hours: string, limit: string) => `Spot is ${hours} old; your limit is ${limit}.`,
    hours: (hours: string) => (hours === "1" ? "1 hour" : `${hours} hours`),
    days: (days: string) => `${days} days`,
    future: "Spot as of lies in the future. Look at it on Rates.",
    noTime: "Spot has no date and time, so its age cannot be checked against your limit.",
    otherSpot: "Spot was changed after its time was written, so its age is not known.",
    before: "Read spot anew before you quote.",
  },
} as const;

/** The columns for the workshop have the words of the price list. */
function benchNames(): Record<BenchColumn, string> {
  const { design, links, finished, price, ...bench } = PRICE_COLUMNS;
  return bench;
}
