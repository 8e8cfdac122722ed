import { CLASPS, COLOURS, LINE_LABELS, type PriceColumn } from "../../../src/index";
import { addressOf } from "../address";
import { locale } from "../host";
import { type PaperCell, paperSizeFor, putContents } from "../paper";
import { findRatesBlock } from "../rates/ratesblock";
import { WorkbookFault } from "../run";
import type { Added } from "../tables/additions";
import { constantOf, digitsOf, dressFigures, onOwnSheet } from "./pricelist";

const SHEET = "Catalogue";
/** By which formulas know the designs. */
export const CATALOGUE_TABLE = "CatalogueDesigns";
const HEAD = 3;
/** Rows that the lists rule, beyond the two examples. */
const ROOM = 500;
const PRICED: readonly PriceColumn[] = ["links", "finished", "landed", "price", "margin"];

/** Marks that are offered; any other may be typed. Common practice. */
const MARKS = ["9K", "10K", "14K", "18K", "22K", "375", "585", "750", "916", "999"];

interface CatalogueColumn {
  readonly header: string;
  readonly width: number;
  readonly examples: readonly [string | number, string | number];
  readonly list?: readonly string[];
  /** Whether only words of the list are taken. */
  readonly strict?: boolean;
}

/** Invented examples, in inches or centimetres; alike but for the unit, so that either workshop sees its own. */
function columnsOf(unit: "in" | "cm"): readonly CatalogueColumn[] {
  const inch = unit === "in";
  return [
    { header: LINE_LABELS.design, width: 130, examples: ["Example chain", "Example bracelet"] },
    { header: LINE_LABELS.mark, width: 52, examples: ["14K", 750], list: MARKS },
    { header: LINE_LABELS.colour, width: 60, examples: ["yellow", "rose"], list: COLOURS, strict: true },
    { header: `${LINE_LABELS.length} (${unit})`, width: 78, examples: inch ? [20, 7.5] : [50, 19] },
    { header: `Links per ${unit}`, width: 84, examples: inch ? [4, 3] : [1.6, 1.2] },
    { header: `${LINE_LABELS.linkWeight} (g)`, width: 142, examples: [1.35, 2.4] },
    {
      header: LINE_LABELS.clasp,
      width: 128,
      examples: ["bought lobster clasp", "cast box clasp"],
      list: CLASPS,
      strict: true,
    },
    { header: `${LINE_LABELS.claspLength} (${unit})`, width: 112, examples: inch ? [0.6, 0.9] : [1.5, 2.3] },
    { header: `${LINE_LABELS.claspWeight} (g)`, width: 104, examples: [1.2, 5.8] },
    { header: LINE_LABELS.claspCost, width: 74, examples: [145, 20] },
  ];
}

/**
 * Begins a catalogue on a sheet of its own: a table with two invented designs, lists of words, and beside it its prices as one
 * spilled list that grows with the table. Syncs: seven.
 */
export async function beginCatalogue(): Promise<Added> {
  return onOwnSheet(SHEET, async (context, sheet) => {
    const { tables, names } = context.workbook;
    const sameTable = tables.getItemOrNullObject(CATALOGUE_TABLE);
    const sameName = names.getItemOrNullObject(CATALOGUE_TABLE);
    sameTable.load("name");
    sameName.load("name");
    const block = await findRatesBlock(context);
    if (!sameTable.isNullObject || !sameName.isNullObject) {
      throw new WorkbookFault(
        `The workbook has a table or a name called ${CATALOGUE_TABLE} already. Choose that table of designs above, or give it another name.`,
      );
    }
    const columns = columnsOf(paperSizeFor(locale()) === "Letter" ? "in" : "cm");
    const priceAt = columns.length + 1;
    const looks = columns.map(({ examples }) => (typeof examples[0] === "number" ? "inputRight" : "input"));
    putContents(sheet, {
      widths: [
        ...columns.map(({ width }) => width),
        20,
        ...PRICED.map((column) => (column === "finished" ? 104 : column === "landed" ? 88 : 72)),
      ],
      rows: [
        [{ content: SHEET, look: "title" }],
        [
          {
            content:
              "One row a design, one piece of each. Both rows are invented: put your own in their place and type further ones below.",
            look: "small",
          },
        ],
        [
          {
            content: "More columns are welcome, in the words of the order form, such as Colour pattern.",
            look: "small",
          },
          ...Array<PaperCell>(columns.length).fill({ content: "" }),
          { content: "Follows the table and Rates. For the bench: it shows cost.", look: "small" },
        ],
        [
          ...columns.map(
            ({ header }, index): PaperCell => ({
              content: header,
              look: looks[index] === "inputRight" ? "headRight" : "head",
            }),
          ),
          { content: "" },
          ...PRICED.map((): PaperCell => ({ content: "", look: "headRight" })),
        ],
        ...[0, 1].map((example) =>
          columns.map(
            ({ examples }, index): PaperCell => ({
              content: examples[example] ?? "",
              look: looks[index] ?? "input",
            }),
          ),
        ),
      ],
    });
    const table = sheet.tables.add(sheet.getRangeByIndexes(HEAD, 0, 3, columns.length), true);
    table.name = CATALOGUE_TABLE;
    table.style = "TableStyleLight1";
    table.showBandedRows = false;
    columns.forEach((column, index) => {
      if (column.list)
        ruleWords(sheet.getRangeByIndexes(HEAD + 1, index, ROOM, 1), column.list, column.strict === true);
    });
    // Marks are texts and figures mixed.
    sheet.getRangeByIndexes(HEAD + 1, 1, ROOM, 1).format.horizontalAlignment = "Left";
    dressFigures(sheet, PRICED, ROOM, priceAt, digitsOf(block.reading.values.currency));
    // Once the table has its name, and over cells that are dressed.
    sheet.getRangeByIndexes(HEAD, priceAt, 1, 1).formulas = [
      [`=CURB.PRICELIST(${CATALOGUE_TABLE}[#All],${block.address},${constantOf(PRICED)})`],
    ];
    sheet.freezePanes.freezeRows(HEAD + 1);
    sheet.pageLayout.orientation = Excel.PageOrientation.landscape;
    sheet.pageLayout.zoom = { horizontalFitToPages: 1 };
    sheet.pageLayout.setPrintTitleRows(`$${HEAD + 1}:$${HEAD + 1}`);
    sheet.activate();
    sheet.getRangeByIndexes(HEAD + 1, 0, 1, 1).select();
    await context.sync();
    return {
      what: "catalogue",
      from: undefined,
      follows: undefined,
      areas: [`A1:${addressOf(HEAD + 2, columns.length - 1)}`, addressOf(HEAD, priceAt)],
      extent: `A1:${addressOf(HEAD + 2, priceAt + PRICED.length - 1)}`,
      before: undefined,
      headRow: HEAD,
    };
  });
}

function ruleWords(cells: Excel.Range, words: readonly string[], strict: boolean): void {
  cells.dataValidation.rule = { list: { inCellDropDown: true, source: words.join(",") } };
  if (!strict) cells.dataValidation.errorAlert = { message: "", showAlert: false, style: "Information", title: "" };
}
