import { RATE_KEYS, RATE_ROWS, type RateKey, type RateRow } from "../../src/index";
import { dateSerial } from "./fields";
import { locale } from "./host";
import { asText, type Paper, type PaperCell, paperSizeFor, putPaper } from "./paper";
import { run } from "./run";
import { putTemplate, TEMPLATE_SHEET } from "./template";

/** What the workbook says of the workshop's rates. */
export type RatesReading =
  | { readonly found: false }
  | { readonly found: true; readonly sheet: string; readonly values: Readonly<Record<RateKey, unknown>> };

const SHEET = "Rates";
const SPARE_SHEET = "Rates (Curbwright)";

/** Headings of the Rates sheet, each before the row it opens. */
const HEADINGS: Partial<Record<RateKey, string>> = {
  workshop: "Workshop",
  spot: "Gold",
  castingFee: "Casting and loss",
  labourFlat: "Labour and setting",
  surcharge: "Ready chain",
  priceBy: "Price",
  taxName: "Quote",
};

const FORMATS: Record<RateRow["shown"], string> = {
  money: "#,##0.00##",
  share: "0.0#%",
  number: "General",
  text: "General",
  word: "General",
  date: "yyyy-mm-dd hh:mm",
};

/** The defined name of a rate: Rate_Spot, Rate_CastingFee, … */
export function nameOf(key: RateKey): string {
  return `Rate_${key.charAt(0).toUpperCase()}${key.slice(1)}`;
}

/** Asks for every rate through its defined name along with whatever else a batch reads; ready after its sync. */
export function askRates(context: Excel.RequestContext): () => RatesReading {
  const ranges = RATE_KEYS.map((key) => {
    const range = context.workbook.names.getItemOrNullObject(nameOf(key)).getRangeOrNullObject();
    range.load("values");
    return range;
  });
  const spot = ranges[RATE_KEYS.indexOf("spot")];
  const sheet = spot?.worksheet;
  sheet?.load("name");
  return () => {
    if (!spot || spot.isNullObject) return { found: false };
    const values = Object.fromEntries(
      RATE_KEYS.map((key, index) => {
        const range = ranges[index];
        return [key, !range || range.isNullObject ? "" : range.values[0]?.[0]];
      }),
    ) as Record<RateKey, unknown>;
    return { found: true, sheet: sheet?.name ?? SHEET, values };
  };
}

/**
 * Lays out the Rates sheet with its start values, each value a defined name, and the quote template where there is none.
 * @param spot money per troy ounce of fine gold, as typed; "" leaves it open
 */
export async function layOutRates(spot: string): Promise<void> {
  await run(async (context) => {
    const { worksheets, names } = context.workbook;
    const taken = worksheets.getItemOrNullObject(SHEET);
    const template = worksheets.getItemOrNullObject(TEMPLATE_SHEET);
    const stale = RATE_KEYS.map((key) => names.getItemOrNullObject(nameOf(key)));
    for (const item of [taken, template, ...stale]) item.load("name");
    await context.sync();
    for (const name of stale) if (!name.isNullObject) name.delete();
    const size = paperSizeFor(locale());
    const sheet = worksheets.add(taken.isNullObject ? SHEET : SPARE_SHEET);
    const { paper, rowOf } = ratesPaper(spot, serialNow());
    putPaper(sheet, { ...paper, size });
    for (const key of RATE_KEYS) {
      const cell = sheet.getRangeByIndexes(rowOf[key], 1, 1, 1);
      names.add(nameOf(key), cell, RATE_ROWS[key].label);
      const { words } = RATE_ROWS[key];
      if (words) cell.dataValidation.rule = { list: { inCellDropDown: true, source: words.join(",") } };
      cell.format.horizontalAlignment = "Right";
    }
    sheet.freezePanes.freezeRows(HEAD_ROWS);
    if (template.isNullObject) putTemplate(worksheets.add(TEMPLATE_SHEET), size);
    sheet.activate();
    await context.sync();
  });
}

/** Calls when a cell changes anywhere, since a rate may be a formula on any sheet. */
export async function watchRates(changed: () => void): Promise<void> {
  await run(async (context) => {
    context.workbook.worksheets.onChanged.add(async () => changed());
    await context.sync();
  });
}

const HEAD_ROWS = 3;

function ratesPaper(spot: string, readAt: number): { paper: Paper; rowOf: Record<RateKey, number> } {
  const rows: PaperCell[][] = [
    [{ content: "Rates", look: "title" }],
    [
      {
        content:
          "Cream cells are yours to change; prices, job sheets and the pane follow. Start values are examples: put your own.",
        look: "small",
      },
    ],
    ["Rate", "Value", "Counted in", "Meaning"].map((content) => ({ content, look: "head" })),
  ];
  const rowOf: Partial<Record<RateKey, number>> = {};
  for (const key of RATE_KEYS) {
    const heading = HEADINGS[key];
    if (heading)
      rows.push([{ content: heading, look: "heading" }, ...Array<PaperCell>(3).fill({ content: "", look: "heading" })]);
    rowOf[key] = rows.length;
    const row: RateRow = RATE_ROWS[key];
    rows.push([
      { content: row.label, look: "label" },
      { content: startOf(key, row, spot, readAt), look: "input", format: FORMATS[row.shown] },
      { content: row.unit, look: "unit" },
      { content: row.note, look: "note" },
    ]);
  }
  return { paper: { widths: [130, 110, 190, 330], rows, titleRows: "$3:$3" }, rowOf: rowOf as Record<RateKey, number> };
}

function startOf(key: RateKey, row: RateRow, spot: string, readAt: number): string | number {
  if (key === "spot") return spot === "" ? "" : Number(spot);
  if (key === "spotTime") return spot === "" ? "" : readAt;
  if (row.start === "") return "";
  return row.shown === "text" || row.shown === "word" ? asText(row.start) : Number(row.start);
}

/** The person's own date and time as Excel's serial number. */
function serialNow(): number {
  const now = new Date();
  const minutes = Math.floor(now.getTime() / 60_000) - now.getTimezoneOffset();
  return minutes / 1440 + dateSerial("1970-01-01");
}
