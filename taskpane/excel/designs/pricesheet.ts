import { addressOf } from "../address";
import { locale } from "../host";
import { asText, dressAs, type PaperCell, paperSizeFor, putContents } from "../paper";
import type { Added, Addition } from "../tables/additions";
import { numberFormat } from "../template/fields";
import { onOwnSheet } from "./pricelist";

/** A sheet of values, ready to print: nothing on it is a formula. */
export interface ValueSheet {
  readonly what: Extract<Addition["what"], "price sheet" | "bench sheet" | "spots" | "make or buy">;
  /** The sheet's name; where it is taken a free one beside it. */
  readonly name: string;
  readonly title: string;
  /** Lines under the title. */
  readonly notes: readonly string[];
  readonly columns: readonly ValueColumn[];
  readonly rows: readonly (readonly (string | number)[])[];
  /** Told after each block of rows; throws to call the work off, and the sheet is taken back. */
  readonly wrote: (share: number) => Promise<void>;
}

export interface ValueColumn {
  readonly head: string | number;
  readonly kind: "text" | "share" | "figure";
  readonly decimals: number;
  /** Points; undefined for the usual. */
  readonly width?: number;
}

/** Rows written at once, well under what Excel on the web takes in one request. */
const BLOCK = 1000;

/** Puts values on a sheet of their own: title, notes, head row, rows in blocks. Syncs: five, and one for every 1,000 rows. */
export async function putValueSheet({ what, name, title, notes, columns, rows, wrote }: ValueSheet): Promise<Added> {
  return onOwnSheet(name, async (context, sheet) => {
    const head = notes.length + 2;
    putContents(sheet, {
      widths: columns.map(({ width, kind }) => width ?? (kind === "text" ? 110 : 84)),
      rows: [
        [{ content: asText(title), look: "title" }],
        ...notes.map((note): PaperCell[] => [{ content: asText(note), look: "small" }]),
        [],
        columns.map(
          ({ head: words, kind, decimals }): PaperCell => ({
            content: typeof words === "string" ? asText(words) : words,
            look: kind === "text" ? "head" : "headRight",
            ...(typeof words === "number" ? { format: numberFormat(decimals) } : {}),
          }),
        ),
      ],
    });
    columns.forEach(({ kind, decimals }, column) => {
      if (rows.length === 0) return;
      const cells = sheet.getRangeByIndexes(head + 1, column, rows.length, 1);
      const format = kind === "text" ? "General" : kind === "share" ? "0.0%" : numberFormat(decimals);
      cells.numberFormat = rows.map(() => [format]);
      dressAs(cells, kind === "text" ? "start" : "number");
    });
    for (let at = 0; at < rows.length; at += BLOCK) {
      const part = rows.slice(at, at + BLOCK);
      sheet.getRangeByIndexes(head + 1 + at, 0, part.length, columns.length).values = part.map((row) =>
        row.map((cell) => (typeof cell === "string" ? asText(cell) : cell)),
      );
      await context.sync();
      await wrote((at + part.length) / rows.length);
    }
    const all = sheet.getRangeByIndexes(0, 0, head + 1 + rows.length, columns.length);
    const widths = columns.reduce((sum, { width, kind }) => sum + (width ?? (kind === "text" ? 110 : 84)), 0);
    setUpPrint(sheet, all, head, widths);
    sheet.activate();
    await context.sync();
    const extent = `A1:${addressOf(head + rows.length, columns.length - 1)}`;
    return { what, from: undefined, follows: undefined, areas: [extent], extent, before: undefined, headRow: head };
  });
}

/** Points that a page's width holds upright. */
const UPRIGHT = 520;

function setUpPrint(sheet: Excel.Worksheet, area: Excel.Range, head: number, width: number): void {
  const { pageLayout } = sheet;
  sheet.freezePanes.freezeRows(head + 1);
  pageLayout.paperSize = paperSizeFor(locale()) === "A4" ? Excel.PaperType.a4 : Excel.PaperType.letter;
  pageLayout.orientation = width > UPRIGHT ? Excel.PageOrientation.landscape : Excel.PageOrientation.portrait;
  pageLayout.zoom = { horizontalFitToPages: 1 };
  pageLayout.setPrintArea(area);
  pageLayout.setPrintTitleRows(`$${head + 1}:$${head + 1}`);
}
