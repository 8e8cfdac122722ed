import type { QuoteStatus } from "../../src/index";
import { CATALOGUE_TEXTS } from "./cataloguetexts";
import { form } from "./formtexts";
import { MODEL_TEXTS } from "./modeltexts";
import { plots } from "./plottexts";
import { result } from "./resulttexts";

/** Every sentence of the pane that is not the costing library's own: to be translated together with the other files of wording/. */
export const TEXTS = {
  /** The language of these texts, for joining words to lists. */
  language: "en",
  name: "Curbwright",
  catalogue: CATALOGUE_TEXTS,
  opening: "Opening…",
  notInExcel: "This pane works inside Excel. Open Excel and start Curbwright from its Home tab.",
  unforeseen: (said: string) =>
    `Something went wrong that should not have: ${said}. What you typed is kept; try once more, or open the pane anew.`,

  views: {
    label: "What to do",
    quote: "Quote",
    check: "Check",
    decide: "Decide",
    links: "Links",
    catalogue: "Catalogue",
    loading: "Loading…",
    notLoaded: "This part could not be loaded. Close it and open it again.",
  },

  rates: {
    reading: "Reading the rates…",
    spot: (spot: string) => `Spot ${spot} an ounce`,
    noTime: "no time noted",
    timeNotKnown: "time not known",
    noSource: "no source noted",
    show: "Show Rates",
    otherTime: (spot: string) =>
      `Time and source on Rates were written for a spot of ${spot}. When you read this spot is not known.`,
    otherWords: (spot: string) => (spot === "" ? "nothing" : `“${spot}”`),
    readNow: "I read it now",
    readNowKeep: (source: string) => `I read it now, from ${source}`,
    readNowClear: "I read it now, from another source",
    timeIsRight: "The time on Rates is right",
    stamping: "Writing the time…",
    stamped: "The time of spot on Rates is now.",
    stampedCleared: "The time of spot on Rates is now, and its source is blank.",
    confirmed: "The time on Rates is noted as the time of this spot.",
    again: "Read again",
    unread: "The Rates sheet could not be read just now.",
    kept: "The figures read before stay in use here. Curbwright tries again every minute.",
    triedAgain: "Nothing was changed. Curbwright tries again every minute.",
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

  result,

  plots,

  form,

  make: {
    press: "Make the quote",
    working: "Making the quote…",
    keys: "Ctrl+Enter",
    done: (quote: string, job: string, tickets: string) => `${quote}, ${job} and ${tickets} are in the workbook.`,
    shownOn: (sheet: string, fault: string) => `${sheet}: ${fault}`,
    showQuote: "Show the quote",
    showJob: "Show the job",
    showTickets: "Show the tickets",
    unsigned: "The quote does not say who it is from: give your name under Workshop on the Rates sheet.",
    unknownField: (field: string) =>
      `The template asks for ${field}, which Curbwright does not know; it was left as it is.`,
    unplaced: (fields: string) =>
      `The total counts what the template has no place for: ${fields}. Look at the quote before you send it, and give the template those fields.`,
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
    already: (number: string, total: string) =>
      `Quote ${number} was made from this order already, at ${total}. Change the order for another quote.`,
    alreadyOtherwise: (number: string, total: string, now: string) =>
      `Quote ${number} was made from this order already, at ${total}. With the rates as they are now it comes to ${now}.`,
    revise: "Make a revision",
  },

  template: {
    title: "Template",
    about:
      "Quotes are copied from a sheet of yours: any sheet with “template” in its name and fields such as {{customer}}.",
    choose: "Make quotes from",
    builtIn: "Built in",
    willBeAdded: (name: string) => `The sheet “${name}” is added with the first quote made from it.`,
    add: "Add it now, to restyle it",
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
    statusOf: (number: string) => `Where quote ${number} stands`,
    statusIs: (number: string, status: string) => `Quote ${number}: ${status}.`,
    statuses: {
      asked: "asked",
      quoted: "quoted",
      agreed: "agreed",
      "at the caster": "at the caster",
      "at the polisher": "at the polisher",
      "with the setter": "with the setter",
      finished: "finished",
      "handed over": "handed over",
      "turned down": "turned down",
    } satisfies Record<QuoteStatus, string>,
    noStatus: "not said",
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
    atRates: (total: string) =>
      `The form holds it as it was typed, at the spot on Rates. It was quoted at ${total}; where the result differs, rates have changed since, or you have changed the form.`,
    willMake: (number: string) =>
      `“Make the quote” makes a revision with the next letter. The sheets of ${number} stay as they are, with all you changed on them.`,
    leave: "Start a new order",
    left: "A new order. The form is as it was before you opened the quote.",
  },

  /** What Rates promised when a quote was made. */
  terms: {
    notKept: "This quote kept no tax and no terms of its own. Those on Rates today are used.",
    changed: (changes: string) => `Rates have changed since it was quoted: ${changes}.`,
    change: (label: string, then: string, now: string) => `${label} was ${then} and is ${now}`,
    none: "none",
    perGram: (money: string) => `${money} per gram`,
    spotRead: (read: string) => `Its spot was read: ${read}.`,
  },

  model: MODEL_TEXTS,
} as const;
