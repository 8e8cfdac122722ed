import { minorDigits, PRICE_COLUMN_KEYS, PRICE_COLUMNS, type PriceColumn, parseCurrency } from "../../../src/index";
import { addressOf, columnLetters } from "../address";
import { locale } from "../host";
import { dressAs, type PaperCell, paperSizeFor, putContents } from "../paper";
import { findRatesBlock, quoted } from "../rates/ratesblock";
import { run } from "../run";
import { freeSheetName } from "../sheetname";
import { type Added, type Addition, noteAddition } from "../tables/additions";
import { numberFormat } from "../template/fields";
import type { Designs } from "./designs";

/** The columns that say what a design weighs, costs and brings, without every cost line. */
export const SHORT_COLUMNS: readonly PriceColumn[] = [
  "design",
  "links",
  "finished",
  "cast",
  "landed",
  "landedPerGram",
  "price",
  "margin",
];

/** How a price list is to be made. */
export interface PriceListPlan {
  readonly designs: Designs;
  /** The headers as CURB.PRICELIST understands them; "" for a column that is not used. */
  readonly headers: readonly string[];
  /** Whether the person's own headers say the same: then the list reads their cells, else a copy of them under our words. */
  readonly direct: boolean;
  readonly columns: readonly PriceColumn[];
}

const HEAD = 3;
/** Rows beyond the designs that are dressed as well, for designs to come. */
const ROOM = 200;

/** Puts one spilled price list on a sheet of its own; nothing else in the workbook is touched. Syncs: six, whatever its length. */
export async function putPriceList(plan: PriceListPlan): Promise<Added> {
  return onOwnSheet("Price list", async (context, sheet) => {
    const { designs, headers, direct, columns } = plan;
    const block = await findRatesBlock(context);
    const rows = designs.cells.length;
    const copied = direct ? [] : headers.flatMap((header, place) => (header === "" ? [] : [{ header, place }]));
    const copyAt = columns.length + 1;
    const lines = direct
      ? linesOf(designs)
      : `$${columnLetters(copyAt)}$${HEAD + 1}:$${columnLetters(copyAt + copied.length - 1)}$${HEAD + rows}`;
    const shown = columns.length === PRICE_COLUMN_KEYS.length ? "" : `,${constantOf(columns)}`;
    putContents(sheet, {
      widths: [...columns.map((column) => WIDTHS[column] ?? 84), ...(direct ? [] : [24, ...copied.map(() => 84)])],
      rows: [
        [{ content: "Price list", look: "title" }],
        [
          {
            content: `For the bench: it shows cost. It follows ${designs.table ?? designs.sheet} and Rates by itself.`,
            look: "small",
          },
        ],
        [
          ...Array<PaperCell>(direct ? 1 : copyAt).fill({ content: "" }),
          ...(direct
            ? []
            : [
                {
                  content: `The designs of ${designs.sheet}, under the words that the list reads.`,
                  look: "small",
                } as const,
              ]),
        ],
        [
          ...columns.map(
            (column): PaperCell => ({
              content: "",
              look: column === "design" ? "head" : "headRight",
            }),
          ),
          ...(direct ? [] : [{ content: "" }]),
          ...copied.map(({ header }): PaperCell => ({ content: header, look: "head" })),
        ],
      ],
    });
    dressFigures(sheet, columns, rows - 1 + ROOM, 0, digitsOf(block.reading.values.currency));
    setUpSheet(sheet);
    if (copied.length > 0) {
      sheet.getRangeByIndexes(HEAD + 1, copyAt, 1, copied.length).formulas = [
        copied.map(({ place }) => copyOf(designs, place)),
      ];
    }
    // Last: it spills over cells that are there and dressed by now.
    sheet.getRangeByIndexes(HEAD, 0, 1, 1).formulas = [[`=CURB.PRICELIST(${lines},${block.address}${shown})`]];
    sheet.activate();
    await context.sync();
    const width = copyAt + copied.length;
    return {
      what: "price list",
      from: designs.sheetId,
      follows: direct ? designs.table : undefined,
      areas: [
        "A1:A4",
        ...copied.map((_, index) => `${addressOf(HEAD, copyAt + index)}:${addressOf(HEAD + 1, copyAt + index)}`),
      ],
      extent: `A1:${addressOf(HEAD + rows - 1, width - 1)}`,
      before: undefined,
      headRow: HEAD,
    };
  });
}

/** Makes something on a new sheet and notes it; on a fault the sheet is taken back. */
export async function onOwnSheet(
  wanted: string,
  fill: (
    context: Excel.RequestContext,
    sheet: Excel.Worksheet,
  ) => Promise<
    Pick<Addition, "what" | "from" | "follows" | "areas" | "extent" | "before"> & { readonly headRow?: number }
  >,
): Promise<Added> {
  let begun: string | undefined;
  try {
    return await run(async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load("items/name");
      await context.sync();
      const name = freeSheetName(wanted, new Set(worksheets.items.map((each) => each.name.toLowerCase())));
      const worksheet = worksheets.add(name);
      begun = name;
      return noteAddition(context, { worksheet, ...(await fill(context, worksheet)) });
    });
  } catch (error) {
    const name = begun;
    // What went wrong first is what the person must hear, also where taking back fails.
    if (name !== undefined) await deleteSheet(name).catch(() => undefined);
    throw error;
  }
}

async function deleteSheet(name: string): Promise<void> {
  await run(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(name);
    sheet.load("name");
    await context.sync();
    if (!sheet.isNullObject) sheet.delete();
    await context.sync();
  });
}

/** Number formats for columns of figures below the head row. */
export function dressFigures(
  sheet: Excel.Worksheet,
  columns: readonly PriceColumn[],
  rows: number,
  first: number,
  digits: number,
): void {
  columns.forEach((column, index) => {
    if (column === "design") return;
    const cells = sheet.getRangeByIndexes(HEAD + 1, first + index, rows, 1);
    const format = formatOf(column, digits);
    cells.numberFormat = Array.from({ length: rows }, () => [format]);
    dressAs(cells, "number");
  });
}

/** How a column's figures are shown; what they are is not rounded. */
export function formatOf(column: PriceColumn, digits: number): string {
  if (column === "design") return "General";
  if (column === "links") return "#,##0";
  if (column === "margin") return "0.0%";
  return column === "finished" || column === "cast" || column === "fineGold" ? "#,##0.00" : numberFormat(digits);
}

/** The decimals of the currency on Rates; two while it says none. */
export function digitsOf(currency: unknown): number {
  try {
    return minorDigits(parseCurrency(currency));
  } catch {
    return 2;
  }
}

/** Columns as an array constant of their words. */
export function constantOf(columns: readonly PriceColumn[]): string {
  return `{${columns.map((column) => `"${PRICE_COLUMNS[column]}"`).join(",")}}`;
}

/** The designs as a formula names them: a table by its name, so that designs to come are priced too. */
export function linesOf({ sheet, table, row, column, cells }: Designs): string {
  if (table !== undefined) return `${table}[#All]`;
  const last = column + (cells[0]?.length ?? 1) - 1;
  return `${quoted(sheet)}!$${columnLetters(column)}$${row + 1}:$${columnLetters(last)}$${row + cells.length}`;
}

/** One column of the designs under its header, spilled; an empty cell stays empty. */
function copyOf({ sheet, row, column, cells }: Designs, place: number): string {
  const letters = columnLetters(column + place);
  const range = `${quoted(sheet)}!$${letters}$${row + 2}:$${letters}$${row + cells.length}`;
  return `=IF(${range}="","",${range})`;
}

const WIDTHS: Partial<Record<PriceColumn, number>> = {
  design: 150,
  links: 48,
  margin: 58,
  finished: 106,
  metal: 146,
  lost: 150,
  findings: 96,
  setup: 146,
  landedPerGram: 140,
};

function setUpSheet(sheet: Excel.Worksheet): void {
  sheet.freezePanes.freezeRows(HEAD + 1);
  sheet.pageLayout.paperSize = paperSizeFor(locale()) === "A4" ? Excel.PaperType.a4 : Excel.PaperType.letter;
  sheet.pageLayout.orientation = Excel.PageOrientation.landscape;
  sheet.pageLayout.zoom = { horizontalFitToPages: 1 };
  // No print area: the list grows with its designs.
  sheet.pageLayout.setPrintTitleRows(`$${HEAD + 1}:$${HEAD + 1}`);
}
