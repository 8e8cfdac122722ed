import type { Book } from "./book";
import { shiftTo } from "./clock";
import { type Demo, openDemo } from "./demo";
import demo from "./demo.json";
import type { KeptBook } from "./kept";
import { reopen } from "./reopening";

/** The workbook that the page's address asks for, and what is around it. */
export interface Opening {
  readonly open: (book: Book) => void;
  /** The language of the workbook as Office names it (RFC 1766). */
  readonly locale: string;
  /** How far the page's clock runs ahead, in milliseconds. */
  readonly clockShift: number;
}

declare global {
  interface Window {
    /** What the pane's page is told of the workbook page before office.js starts in it. */
    workbookAround?: Pick<Opening, "locale" | "clockShift">;
  }
}

/**
 * Reads the address: `book=blank`, `book=kept/0.1.0-quotes` (a file of kept/, in its own language and at its own time) or
 * else the demo; `locale=de-DE` and `clock=2026-07-06T09:00:00` for other languages and moments.
 */
export async function openingOf(query: URLSearchParams): Promise<Opening> {
  const name = query.get("book") ?? "";
  const kept = name.startsWith("kept/") ? await readKept(name) : undefined;
  const clock = query.get("clock") ?? kept?.clock;
  return {
    locale: query.get("locale") ?? kept?.locale ?? "en-US",
    clockShift: clock === undefined ? 0 : shiftTo(clock),
    open: (book) => {
      if (kept) reopen(book, kept);
      else if (name === "blank") book.open("Sheet1");
      else openDemo(book, demo as Demo);
    },
  };
}

async function readKept(name: string): Promise<KeptBook> {
  const response = await fetch(`/${name}.json`);
  if (!response.ok) throw new Error(`There is no kept workbook ${name}.json: ${response.status}`);
  return (await response.json()) as KeptBook;
}
