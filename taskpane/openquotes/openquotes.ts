import {
  atTerms,
  type CashBuyer,
  cashBuyers,
  found,
  money,
  NOT_KNOWN,
  type Order,
  openQuotes,
  parseOrder,
  type QuotedTerms,
  Quotient,
  type Rates,
  type SpotRisk,
  showQuoteNumber,
  spotRisk,
  termsOf,
} from "../../src/index";
import type { BookedQuote } from "../excel/quote/quotebook";
import { dateSerial } from "../excel/template/fields";
import { currencyOf, openBooked } from "../order/bookedquote";
import type { Typed } from "../order/reckoning";
import { DECIDE_TEXTS } from "../wording/decidetexts";

const { risk: texts } = DECIDE_TEXTS;

/** An open quote with what today's spot does to its price. */
export interface QuoteRisk {
  readonly quote: BookedQuote;
  readonly order: Order;
  /** The order as typed, with the spot it was quoted at. */
  readonly typed: Typed;
  /** What it was quoted at; undefined where it kept none, and is judged at today's. */
  readonly terms: QuotedTerms | undefined;
  readonly risk: SpotRisk;
}

/** What the pane shows of a workbook's open quotes. */
export interface Risks {
  /** Worst first: the least share of the price left at today's spot. */
  readonly open: readonly QuoteRisk[];
  /** Numbers of quotes that have ended, and of those whose status is blank or in the person's own words. */
  readonly ended: readonly string[];
  readonly unknownStatus: readonly string[];
  /** Customers whose quotes come to so much together that cash for them may have to be reported. */
  readonly cashBuyers: readonly CashBuyer<Payable>[];
  /** Sentences that say why other quotes cannot be judged. */
  readonly unread: readonly string[];
}

/** Judges the open quotes among the rows of the quotes table. @param today ISO 8601 */
export function risksOf(quotes: readonly BookedQuote[], rates: Rates, today: string): Risks {
  const payable = quotes.map((quote) => payableOf(quote, dateSerial(today)));
  const { open, ended, unknownStatus } = openQuotes(payable);
  const names = (some: typeof open) => some.map(({ number }) => showQuoteNumber(number));
  const judged = open.map(({ quote }) => judge(quote, rates));
  return {
    open: judged.flatMap((each) => (typeof each === "string" ? [] : [each])).sort(worstFirst),
    ended: names(ended),
    unknownStatus: names(unknownStatus),
    cashBuyers: cashBuyers(payable),
    unread: judged.filter((each) => typeof each === "string"),
  };
}

type Payable = ReturnType<typeof payableOf>;

/** A row of the quotes table as far as it says who pays, how much and until when. @param today a serial number */
function payableOf(quote: BookedQuote, today: number) {
  const { status, validUntil, customer, total, currency, date } = quote.cells;
  return {
    quote,
    number: quote.number,
    status,
    ended: typeof validUntil === "number" && validUntil < today,
    customer: String(customer),
    total: typeof total === "number" && currencyOf(currency) === "USD" ? money(cellAmount(total), "USD") : undefined,
    isOfThisYear: typeof date !== "number" || date > today - DAYS_OF_A_YEAR,
  };
}
const DAYS_OF_A_YEAR = 366;

/** One quote at today's spot, or the sentence that says why it cannot be judged. */
function judge(quote: BookedQuote, rates: Rates): QuoteRisk | string {
  const name = showQuoteNumber(quote.number);
  const opened = openBooked(quote, rates.currency);
  if (!opened.ok) return opened.sentence;
  const { typed, terms } = opened;
  const quoted = terms ?? termsOf(rates, NOT_KNOWN);
  const parsed = parseOrder(typed, atTerms(rates, quoted));
  if (!parsed.ok) return texts.noOrder(name, parsed.faults[0]?.sentence ?? "");
  const total = quote.cells.total;
  if (typeof total !== "number" || !Number.isFinite(total)) return texts.notANumber(name, said(total));
  const risk = spotRisk(parsed.value, money(cellAmount(total), rates.currency), rates, quoted);
  return { quote, order: parsed.value, typed, terms, risk };
}

function worstFirst(a: QuoteRisk, b: QuoteRisk): number {
  if (!a.risk.margin || !b.risk.margin)
    return Number(a.risk.margin !== undefined) - Number(b.risk.margin !== undefined);
  return a.risk.margin.compare(b.risk.margin);
}

/** A cell's double by its 15 significant digits, which is what a person sees in the cell. */
function cellAmount(value: number): Quotient {
  return Quotient.of(value.toPrecision(15));
}

function said(value: unknown): string {
  return found(value).replace(/^found /, "");
}
