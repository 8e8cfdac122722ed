import {
  type CostSheet,
  isCashReported,
  type Order,
  type Quote,
  type QuotedTerms,
  type QuoteLine,
  type RateKey,
  type Rates,
  showMark,
  showQuoteNumber,
} from "../../../src/index";
import { asText, type Paper } from "../paper";
import { nameOf } from "../rates/rates";
import { asked } from "./asked";
import { byScale } from "./byscale";
import { cautionLines, lastCautions } from "./cautions";
import { costs, sourcing } from "./costs";
import { outcome } from "./outcome";
import { polishing } from "./polishing";
import { readings } from "./readings";
import { type JobRow, paperOf, type Ref, refsOf, scoped, section, text, within } from "./row";
import { selling } from "./selling";
import { terms } from "./terms";
import { lineScope, totals } from "./totals";
import { weights } from "./weights";

const WIDTHS = [168, 74, 76, 72, 66, 72, 66];

/** A job sheet, and where the rows of each line stand on it. */
export interface JobSheet {
  readonly paper: Paper;
  readonly at: (line: number) => Ref;
}

/**
 * What the bench and the desk work from: the order as a whole, then a block a line, every weight and cost a live formula over
 * the rates, with places for what the scale says.
 * @param missing rates that the workbook has no row for: they count as blank, as they were read
 */
export function jobSheet(
  order: Order,
  sheets: readonly CostSheet[],
  quote: Quote,
  rates: Rates,
  quotedTerms: QuotedTerms,
  missing: readonly RateKey[] = [],
): JobSheet {
  const rows = [
    ...heading(quote),
    ...terms(order, quote, rates, quotedTerms),
    ...totals(order, sheets, quote, rates),
    ...byScale(sheets, order, quote, rates),
    ...cashCaution(quote),
    ...sheets.flatMap((sheet, index) => {
      const quoted = quote.lines[index];
      return quoted ? scoped(lineScope(index), block(sheet, index, order, quoted, rates)) : [];
    }),
    ...cautions(order),
  ];
  const ref = refsOf(rows);
  return {
    paper: { ...blankFor(missing, paperOf(WIDTHS, rows)), titleRows: "$1:$1" },
    at: (line) => (key, column) => ref(within(lineScope(line), key), column),
  };
}

/** Formulas with a blank in place of names that lead nowhere. */
function blankFor(missing: readonly RateKey[], paper: Paper): Paper {
  if (missing.length === 0) return paper;
  const names = new RegExp(`\\b(?:${missing.map(nameOf).join("|")})\\b`, "g");
  const blank = (content: string | number) =>
    typeof content === "string" && content.startsWith("=") ? content.replace(names, '""') : content;
  return {
    ...paper,
    rows: paper.rows.map((cells) => cells.map((cell) => ({ ...cell, content: blank(cell.content) }))),
  };
}

function heading(quote: Quote): JobRow[] {
  return [
    text(`Job ${showQuoteNumber(quote.number)}`, "title"),
    text(asText(`For ${quote.customer}`), "label"),
    text(
      "For the bench and the desk, not for the customer: it shows cost. Cream cells are yours to write in; all follow the Rates sheet.",
      "small",
    ),
  ];
}

function block(sheet: CostSheet, index: number, order: Order, quoted: QuoteLine, rates: Rates): JobRow[] {
  const { line } = sheet;
  const solid = line.hollow ? "hollow" : "solid";
  return [
    {
      ...text(asText(`${index + 1}. ${line.design}, ${line.kind}, ${showMark(line.mark)}, ${solid}`), "block"),
      startsPage: true,
    },
    ...asked(sheet, rates),
    ...weights(sheet),
    ...costs(sheet, rates),
    ...sourcing(sheet, order, rates),
    ...selling(sheet, order, quoted, rates),
    ...readings(sheet),
    ...polishing(sheet, rates),
    ...outcome(sheet, order, quoted, rates),
  ];
}

/** Beside what the customer pays. */
function cashCaution({ total }: Quote): JobRow[] {
  return isCashReported([total])
    ? cautionLines("job sheet", ["cash"]).map((words) => text(asText(words), "small"))
    : [];
}

/** What to take care of, at the end of the sheet. */
function cautions({ ownGold }: Order): JobRow[] {
  const lines = lastCautions("job sheet", ["casting", ...(ownGold ? (["publicGold"] as const) : [])]);
  return [section("Take care"), ...lines.map((words) => text(asText(words), "small"))];
}
