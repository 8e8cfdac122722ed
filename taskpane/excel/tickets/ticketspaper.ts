import type { CostSheet, Quote } from "../../../src/index";
import type { JobSheet } from "../job/jobsheet";
import { type JobRow, paperOf } from "../job/row";
import type { Paper } from "../paper";
import { casterTicket } from "./caster";
import { engraverTicket } from "./engraver";
import { platerTicket } from "./plater";
import { polisherTicket } from "./polisher";
import { setterTicket } from "./setter";
import { TICKET_WIDTHS, ticketRows, type Work } from "./ticket";

/**
 * The papers that travel with the metal to outside trades, each beginning a printed page. Counts and weights follow the job
 * sheet; no cost, price or margin, and no customer.
 * @param jobName the name of the job sheet
 */
export function ticketsPaper(sheets: readonly CostSheet[], quote: Quote, job: JobSheet, jobName: string): Paper {
  const onJob = `'${jobName.replaceAll("'", "''")}'!`;
  const work: Work = {
    quote,
    sheets,
    at: (line) => (key, column) => `${onJob}${job.at(line)(key, column)}`,
  };
  const tickets = [
    casterTicket(work),
    polisherTicket(work),
    setterTicket(work),
    engraverTicket(work),
    platerTicket(work),
  ].filter((ticket) => ticket !== undefined);
  return paperOf(
    TICKET_WIDTHS,
    tickets.flatMap((ticket, index): JobRow[] => [
      ...(index > 0 ? [{ cells: () => [] }] : []),
      ...ticketRows(ticket, work),
    ]),
  );
}
