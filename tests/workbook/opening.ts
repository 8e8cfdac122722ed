import type { Book } from "./book";
import { type BookData, openData } from "./bookdata";
import { shiftTo } from "./clock";
import demo from "./demo.json";
import type { KeptBook } from "./kept";
import { reopen } from "./reopening";

/** The workbook that the page's address asks for, with its language and clock. */
export interface Opening {
  readonly open: (book: Book) => void;
  /** The language of the workbook as Office names it (RFC 1766). */
  readonly locale: string;
  /** How far the page's clock runs ahead, in milliseconds. */
  readonly clockShift: number;
}

declare global {
  interface Window {
    /** Set for the pane's page before office.js starts in it. */
    workbookAround?: Pick<Opening, "locale" | "clockShift">;
  }
}

/**
 * Reads the address: `book=blank`, `book=workshop` (what tests work in), `book=kept/0.1.0-quotes` (a file of kept/, in its
 * own language and at its own time) or else the demo; `locale=de-DE` and `clock=2026-07-06T09:00:00` for other languages
 * and moments.
 */
export async function openingOf(query: URLSearchParams): Promise<Opening> {
  const name = query.get("book") ?? "demo";
  const kept = name.startsWith("kept/") ? await readKept(name) : undefined;
  const clock = query.get("clock") ?? kept?.clock;
  return {
    open: kept ? (book) => reopen(book, kept) : await bookOf(name),
    locale: query.get("locale") ?? kept?.locale ?? "en-US",
    clockShift: clock === undefined ? 0 : shiftTo(clock),
  };
}

async function bookOf(name: string): Promise<Opening["open"]> {
  switch (name) {
    case "blank":
      return (book) => book.open("Sheet1");
    case "demo":
      return (book) => openData(book, demo as BookData);
    case "workshop": {
      const { default: workshop } = await import("./workshop.json");
      return (book) => openData(book, workshop as BookData);
    }
    default:
      throw new Error(`There is no workbook "${name}"; choose from blank, demo, workshop or one of kept/`);
  }
}

async function readKept(name: string): Promise<KeptBook> {
  const response = await fetch(`/${name}.json`);
  if (!response.ok) throw new Error(`There is no kept workbook ${name}.json: ${response.status}`);
  return (await response.json()) as KeptBook;
}
