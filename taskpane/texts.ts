import type { LineKey, OrderKey, Standing } from "../src/index";
import { CATALOGUE_TEXTS } from "./texts/catalogue";

/** Every sentence of the pane that is not the costing library's own: the one file to translate. */
export const TEXTS = {
  name: "Curbwright",
  catalogue: CATALOGUE_TEXTS,
  opening: "Opening…",
  notInExcel: "This pane works inside Excel. Open Excel and start Curbwright from its Home tab.",
  unforeseen: (said: string) =>
    `Something went wrong that should not have: ${said}. What you typed is kept; try once more, or open the pane anew.`,

  rates: {
    reading: "Reading the rates…",
    spot: (spot: string) => `Spot ${spot} an ounce`,
    noTime: "no time noted",
    noSource: "no source noted",
    show: "Show Rates",
    again: "Read again",
    faulty: (count: number) =>
      count === 1 ? "One value on the Rates sheet needs a look" : `${count} values on the Rates sheet need a look`,
    emptyTitle: "No rates in this workbook yet",
    emptyWhat:
      "Curbwright prices from a Rates sheet: spot, casting fee, loss, labour, markup. This adds one with start values for you to replace, and a Quote template sheet for you to restyle. No other sheet is touched.",
    spotLabel: "Spot",
    spotUnit: (currency: string) => `${currency} / ozt`,
    spotHelp: "Money for one troy ounce of fine gold, such as 2650.",
    layOut: "Lay out the Rates sheet",
    layingOut: "Laying out the Rates sheet…",
    missing: (count: number, labels: string) =>
      count === 1 ? `Rates has no row for ${labels}.` : `Rates has no rows for ${labels}.`,
    addMissing: (count: number) => (count === 1 ? "Add the missing row" : "Add the missing rows"),
    addingMissing: "Adding to Rates…",
    addedMissing: (count: number) =>
      count === 1
        ? "One row was added at the end of Rates, under “Added”. Look at its value."
        : `${count} rows were added at the end of Rates, under “Added”. Look at their values.`,
    laidOut: "The Rates sheet is laid out. Replace its start values with your own.",
  },

  result: {
    title: "Result",
    each: "each",
    toFill: "The price shows here as you type.",
    stillToFill: (labels: string) => `Still to fill: ${labels}.`,
    stillForQuote: (labels: string) => `For the quote, still to fill: ${labels}.`,
    faulty: (count: number) => (count === 1 ? "One field needs a look" : `${count} fields need a look`),
    ratesFirst: "The Rates sheet needs a look first.",
    noPrice: "No price yet",
    profit: (margin: string | undefined, markup: string | undefined, discounted: boolean) =>
      `${margin === undefined ? "" : `Margin ${margin} · `}${markup === undefined ? "" : `Markup ${markup}`}${discounted ? ", after the discount" : ""}`,
    spoken: (price: string, margin: string | undefined) =>
      margin === undefined ? `Price ${price}` : `Price ${price}, margin ${margin}`,
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
    sourcingNote: "Plain chain alone, without clasp, stones and plating.",
    subtotal: (pieces: string) => `${pieces} pieces`,
    discount: (share: string) => `Discount ${share}`,
    tax: "Tax",
    total: "Total",
    deposit: "Deposit",
    balance: "Balance",
    costLines: "Cost lines",
    costNote: "For one piece. Each line is rounded to be shown; the landed cost is summed before rounding.",
    belowFloor: (net: string, floor: string, least: string) =>
      `Below the floor: this brings ${net}, but landed cost at your least margin of ${least} is ${floor}.`,
    belowFloorDiscounted: (net: string, floor: string, least: string) =>
      `Below the floor: after the discount this brings ${net}, but landed cost at your least margin of ${least} is ${floor}.`,
    depositShort: (deposit: string, cash: string) =>
      `The deposit of ${deposit} does not cover the ${cash} that goes out for metal, casting, clasp and stones.`,
    noDeposit: (cash: string) => `No deposit is asked; ${cash} goes out first for metal, casting, clasp and stones.`,
  },

  plots: {
    title: "Plots",
    loading: "Loading the plots…",
    notLoaded: "The plots could not be loaded. Close this part and open it again.",
    points: "Points of this plot",
    sourcing: {
      title: "Make or buy by weight",
      above: (weight: string) => `Above ${weight} of plain chain a gram costs less made than bought.`,
      always: "At any weight a gram costs less made than bought.",
      never: "At these rates a gram never costs less made than bought.",
      outside: "That lies outside this plot.",
      order: (weight: string, make: string, buy: string) =>
        `The plain chain of this order, ${weight}, costs ${make} a gram made and ${buy} bought.`,
      weight: "Plain chain, grams",
      perGram: (currency: string) => `${currency} a gram`,
      made: "made",
      bought: "bought",
      madeHead: (currency: string) => `Made, ${currency} a gram`,
      boughtHead: (currency: string) => `Bought, ${currency} a gram`,
      crossing: (weight: string) => `crossing ${weight}`,
      thisOrder: (weight: string) => `this order ${weight}`,
    },
    margin: {
      title: "Margin if spot moves",
      order: (price: string, margin: string, spot: string) =>
        `The price of ${price} leaves a margin of ${margin} at this order's spot of ${spot}.`,
      discounted: (price: string, margin: string, spot: string) =>
        `The price after the discount, ${price}, leaves a margin of ${margin} at this order's spot of ${spot}.`,
      upTo: (least: string, spot: string) => `Your least margin of ${least} is kept up to a spot of ${spot}.`,
      onlyUpTo: (least: string, spot: string) =>
        `Your least margin of ${least} would be kept only up to a spot of ${spot}.`,
      never: (least: string) => `No spot is low enough for your least margin of ${least}.`,
      outside: "That lies outside this plot.",
      spot: (currency: string) => `Spot, ${currency} an ounce`,
      margin: "Margin",
      line: "this price",
      least: (least: string) => `least margin ${least}`,
      floor: (spot: string) => `floor ${spot}`,
      thisOrder: (spot: string) => `this order ${spot}`,
    },
  },

  cautions: {
    mark: "The karat must be true and stands next to the word gold (16 CFR 23.3). Local hallmarking law comes first.",
    nickel:
      "Nickel white gold: release at most 0.5 µg/cm²/week for chains and bracelets (REACH Annex XVII, entry 27); ask the caster.",
    cash: "More than USD 10,000 in cash is reported on Form 8300 within 15 days; ask your tax adviser.",
    casting: "Casting and burnout belong in a licensed, ventilated workshop.",
  },

  form: {
    title: "Order",
    intro: "Numbers with a point, without thousands separators. A dot marks what must be filled.",
    takeRow: "Take from the selected row",
    takingRow: "Reading the row…",
    took: (count: number) => (count === 1 ? "One field taken from the row." : `${count} fields taken from the row.`),
    tookNone: "The selected row holds nothing for this form. Its column headers should be the form's words.",
    groups: {
      who: "Who and what",
      chain: "Chain",
      clasp: "Clasp, bought",
      stones: "Stones",
      terms: "Terms",
    },
    help: {
      mark: "Such as 14K, 585 or 750.",
      plated: "As usual: white is plated, the others are not.",
      linksPer: "Links in that length of closed, taut chain.",
      linkWeight: "One finished link. Weigh ten and divide.",
      stoneCount: "On one piece.",
      settingFee: "A stone; empty takes Rates.",
      spot: "A troy ounce; empty takes Rates.",
      discount: "A share: 0.05 for 5 %.",
      quantity: "Pieces alike.",
    } satisfies Partial<Record<OrderKey | LineKey, string>>,
    choices: {
      yellow: "Yellow",
      rose: "Rose",
      white: "White",
      green: "Green",
      own: "Own alloy",
      "as usual": "As usual",
      plated: "Plated",
      "not plated": "Not plated",
      in: "in",
      cm: "cm",
      mm: "mm",
    },
    grams: "g",
  },

  make: {
    press: "Make the quote",
    working: "Making the quote…",
    keys: "Ctrl+Enter",
    done: (quote: string, job: string) => `${quote} and ${job} are in the workbook.`,
    showQuote: "Show the quote",
    showJob: "Show the job",
    unsigned: "The quote does not say who it is from: give your name under Workshop on the Rates sheet.",
    unknownField: (field: string) =>
      `The template asks for ${field}, which Curbwright does not know; it was left as it is.`,
    formulaField: (field: string) =>
      `The template has ${field} inside a formula, which is not filled. Put the field into a cell of its own and refer to that cell.`,
    errorValue: (error: string) =>
      `The template's formula gave ${error} of the quote. Look at it before you send the quote.`,
    ratesChanged: (total: string | undefined) =>
      `The rates have changed since this price was worked out, so no quote was made. ${
        total === undefined ? "Look at the rates first." : `It now comes to ${total}. Press again to quote that.`
      }`,
    faulty: (count: number, labels: string) =>
      count === 1 ? `One field needs a look: ${labels}.` : `${count} fields need a look: ${labels}.`,
    missing: (labels: string) => `Still to fill: ${labels}.`,
    notYet: "There are no rates to quote from yet.",
  },

  earlier: {
    title: "Earlier quotes",
    none: "No quotes in this workbook yet.",
    about: "Newest first, from the Quotes table. Choose where each one stands, or open it in the form.",
    validUntil: (date: string) => `Valid until ${date}`,
    ended: (date: string) => `Valid until ${date}: ended`,
    open: "Open",
    openOf: (number: string) => `Open quote ${number}`,
    opened: (number: string) => `Quote ${number} is in the form.`,
    standingOf: (number: string) => `Where quote ${number} stands`,
    nowStands: (number: string, standing: string) => `Quote ${number}: ${standing}.`,
    standings: {
      asked: "asked",
      quoted: "quoted",
      agreed: "agreed",
      "at the caster": "at the caster",
      "at the polisher": "at the polisher",
      "with the setter": "with the setter",
      finished: "finished",
      "handed over": "handed over",
      "turned down": "turned down",
    } satisfies Record<Standing, string>,
    noStanding: "not said",
    more: (count: number) => `Show ${count} more`,
    unreadableOrder: (number: string) =>
      `Quote ${number} cannot be opened: its Order cell in the Quotes table does not hold an order any more. The quote's own sheets are as they were.`,
    unreadableSpot: (number: string) =>
      `Quote ${number} cannot be opened: its Spot cell in the Quotes table is no amount. Put the spot it was quoted at there.`,
    otherCurrency: (number: string, quoted: string, now: string) =>
      `Quote ${number} is in ${quoted}, and Rates are in ${now}. Set the currency on Rates to ${quoted}, with its rates, to open it.`,
  },

  revising: {
    title: (number: string) => `Revising quote ${number}`,
    asQuoted: (total: string) =>
      `The form holds it as it was typed, and Spot is the one it was quoted at. It was quoted at ${total}; where the result differs, other rates have changed since, or you have changed the form.`,
    willMake: (number: string) =>
      `“Make the quote” makes a revision with the next letter. The sheets of ${number} stay as they are, with all you changed on them.`,
    leave: "Start a new order",
    left: "A new order. The form is as it was before you opened the quote.",
  },
} as const;
