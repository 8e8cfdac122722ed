import { type CostSheet, type OrderLine, type Quote, showMark, showQuoteNumber } from "../../../src/index";
import type { CautionKey, CautionPlace } from "../../wording/cautions";
import { cautionsFor, lastCautions } from "../job/cautions";
import type { JobRow, Ref } from "../job/row";
import { asText, type Look, linesOf, type PaperCell } from "../paper";

/** What tickets are made from. They show no cost. */
export interface Work {
  readonly quote: Quote;
  readonly sheets: readonly CostSheet[];
  /** A cell of a line's block on the job sheet, as another sheet names it. */
  readonly at: (line: number) => Ref;
}

/** The paper that goes out with the metal to one trade. */
export interface Ticket {
  readonly title: string;
  /** The titles of its table after the first column. */
  readonly titles: readonly string[];
  /** The last column that holds words: those after it hold figures. */
  readonly lastOfWords?: number;
  readonly rows: readonly JobRow[];
  /** What is asked of the trade, in short lines. */
  readonly asks: readonly string[];
  /** Which ticket it is among the places of cautions. */
  readonly place: CautionPlace;
  readonly cautions: readonly CautionKey[];
  /** The lines that there is work at, for the cautions; all where none are named. */
  readonly of?: readonly CostSheet[];
  /** What comes back beside the work itself, such as "Sprues". */
  readonly alsoBack?: string;
}

export const TICKET_WIDTHS = [122, 46, 96, 64, 58, 66, 54, 70];
const COLUMNS = TICKET_WIDTHS.length;
/** The line, its mark, its alloy or stones: on most tickets the columns after these hold figures. */
const LAST_OF_WORDS = 2;
/** Letters that always fit across a ticket. */
const ACROSS = 90;
/** A row high enough to write in by hand, in points. */
const HAND = 24;

/** A ticket laid out: heading, table, what is asked for, cautions, and places to write what went out and what came back. */
export function ticketRows(ticket: Ticket, { quote, sheets }: Work): JobRow[] {
  const { title, titles, rows, asks, place, cautions, alsoBack = "" } = ticket;
  const weighed = ["Pieces", "Weight, g", alsoBack === "" ? "" : `${alsoBack}, g`, "Date", "Name", "", ""];
  return [
    { ...plain([{ content: title, look: "title" }]), startsPage: true },
    plain([{ content: asText(`Job ${showQuoteNumber(quote.number)}${from(quote)}`), look: "label" }]),
    plain([]),
    byHand([{ content: "Due", look: "blankLabel" }, ...blanks(2)]),
    byHand([{ content: "Notes", look: "blankLabel" }, ...blanks(COLUMNS - 1)]),
    plain([]),
    head("Line", titles, ticket.lastOfWords),
    ...rows,
    plain([]),
    ...asks.flatMap((ask) => linesOf(ask, ACROSS).map((words) => plain([{ content: asText(words), look: "label" }]))),
    ...lastCautions(place, cautionsFor(ticket.of ?? sheets, cautions)).map((words) =>
      plain([{ content: asText(words), look: "small" }]),
    ),
    plain([]),
    head("On the scale", weighed),
    byHand([{ content: "Out", look: "blankLabel" }, ...blanks(COLUMNS - 1)]),
    byHand([{ content: "Back", look: "blankLabel" }, ...blanks(COLUMNS - 1)]),
  ];
}

/** A line's name on a ticket, without the customer. */
export function lineName({ line }: CostSheet, index: number): PaperCell {
  const solid = line.hollow ? ", hollow" : "";
  return { content: asText(`${index + 1}. ${line.design}, ${line.kind}${solid}`), look: "body" };
}

export function markOf({ line }: CostSheet): PaperCell {
  return { content: asText(showMark(line.mark)), look: "start" };
}

/** A clasp by what it does and where it comes from, such as "box clasp, cast". */
export function claspWords({ clasp }: OrderLine): string {
  if (clasp.kind === "none") return "no clasp";
  return `${clasp.kind.replace(/^(bought|cast) /, "")}, ${clasp.cast ? "cast" : "bought"}`;
}

/** Words in the third column. */
export function words(content: string): PaperCell {
  return { content: asText(content), look: "body" };
}

/** A formula over the job sheet. */
export function figure(formula: string, format: string, look: Look = "number"): PaperCell {
  return { content: `=${formula}`, look, format };
}

/** Blank cells. */
export function free(count: number, look: Look = "plain"): PaperCell[] {
  return Array.from({ length: count }, () => ({ content: "", look }));
}

function from({ workshop, workshopContact }: Quote): string {
  const parts = [workshop, workshopContact].filter((part) => part !== "");
  return parts.length === 0 ? "" : `, from ${parts.join(", ")}`;
}

function plain(cells: readonly PaperCell[]): JobRow {
  return { cells: () => cells };
}

function byHand(cells: readonly PaperCell[]): JobRow {
  return { cells: () => cells, height: HAND };
}

/** A row of column titles. */
export function head(first: string, titles: readonly string[], lastOfWords = LAST_OF_WORDS): JobRow {
  return plain(
    Array.from({ length: COLUMNS }, (_, column) => ({
      content: column === 0 ? first : (titles[column - 1] ?? ""),
      look: column <= lastOfWords ? "head" : "headRight",
    })),
  );
}

function blanks(count: number): PaperCell[] {
  return free(count, "blank");
}
