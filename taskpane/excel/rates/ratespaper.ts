import { RATE_KEYS, RATE_ROWS, type RateKey, type RateRow } from "../../../src/index";
import { cautionText } from "../../wording/cautions";
import { asText, type Paper, type PaperCell } from "../paper";
import { dateSerial } from "../template/fields";
import { nameOf } from "./rates";

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

/** Rows at the top that are frozen. */
export const HEAD_ROWS = 3;

/** A new Rates sheet, and the row of each rate on it. */
export function ratesPaper(spot: string, readAt: number): { paper: Paper; rowOf: Record<RateKey, number> } {
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
    if (heading) rows.push(headingRow(heading));
    rowOf[key] = rows.length;
    rows.push(rateRow(key, startOf(key, RATE_ROWS[key], spot, readAt)));
  }
  return { paper: { widths: [130, 110, 190, 330], rows, titleRows: "$3:$3" }, rowOf: rowOf as Record<RateKey, number> };
}

/** A heading row of the sheet. */
export function headingRow(heading: string): PaperCell[] {
  return [{ content: heading, look: "heading" }, ...Array<PaperCell>(3).fill({ content: "", look: "heading" })];
}

/** A rate's label, value, unit and note. */
export function rateRow(key: RateKey, content: string | number): PaperCell[] {
  const { label, unit, note, shown } = RATE_ROWS[key];
  return [
    { content: label, look: "label" },
    { content, look: "input", format: FORMATS[shown] },
    { content: unit, look: "unit" },
    { content: key === "tax" ? cautionText("tax") : note, look: "note" },
  ];
}

/**
 * The note of a limit for the age of spot, as a formula that turns into a warning once spot is older. It names rates: write
 * it once they have their names. Excel's own functions alone: the sheet lives without the add-in.
 */
export function ageRemark(): string {
  const { note } = RATE_ROWS.spotAge;
  const [limit, time] = [nameOf("spotAge"), nameOf("spotTime")];
  const hours = `(NOW()-${time})*24`;
  return (
    `=IF(TRIM(${limit})="","${note}",IF(NOT(ISNUMBER(${time})),"Spot as of holds no date and time: the age of spot is not known",` +
    `IF(${hours}>VALUE(${limit}),"OLD: Spot as of is "&TEXT(${hours},"0.0")&" hours ago","${note}")))`
  );
}

/** What a rate's cell starts from. @param readAt when the spot was read, as a serial number */
export function startOf(key: RateKey, row: RateRow, spot: string, readAt: number): string | number {
  if (key === "spot") return spot === "" ? "" : Number(spot);
  if (key === "spotTime") return spot === "" ? "" : readAt;
  if (row.start === "") return "";
  return row.shown === "text" || row.shown === "word" ? asText(row.start) : Number(row.start);
}

/** The person's own date and time as Excel's serial number. */
export function serialNow(): number {
  const now = new Date();
  const minutes = Math.floor(now.getTime() / 60_000) - now.getTimezoneOffset();
  return minutes / 1440 + dateSerial("1970-01-01");
}
