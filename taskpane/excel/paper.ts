/** How a cell looks. One small set for all our sheets: brown text on white, cream where the person types. */
const LOOKS = {
  plain: {},
  title: { size: 20, bold: true, color: "#4A3420" },
  heading: { bold: true, color: "#7A5A2B", rule: "EdgeBottom" },
  lead: { color: "#6F6459", vertical: "Top" },
  label: { color: "#3A332C", vertical: "Top" },
  item: { color: "#3A332C", wrap: true, vertical: "Top" },
  note: { color: "#6F6459", wrap: true, vertical: "Top" },
  unit: { color: "#6F6459", wrap: true, vertical: "Top", indent: 1 },
  aside: { color: "#6F6459", vertical: "Top", indent: 1 },
  block: { size: 14, bold: true, color: "#4A3420" },
  input: { fill: "#FBF4E2", vertical: "Top" },
  inputRight: { fill: "#FBF4E2", align: "Right", vertical: "Top" },
  inputStart: { fill: "#FBF4E2", align: "Left", vertical: "Top" },
  inputAfterNumber: { fill: "#FBF4E2", align: "Left", vertical: "Top", indent: 1 },
  headingRight: { bold: true, color: "#7A5A2B", rule: "EdgeBottom", align: "Right" },
  end: { bold: true, align: "Right" },
  words: { align: "Right", color: "#6F6459", vertical: "Top" },
  head: { bold: true, color: "#4A3420", rule: "EdgeBottom", fill: "#F4EDE1" },
  headRight: { bold: true, color: "#4A3420", rule: "EdgeBottom", fill: "#F4EDE1", align: "Right" },
  body: { wrap: true, vertical: "Top" },
  detail: { size: 9, color: "#3A332C", wrap: true, vertical: "Top" },
  strong: { size: 11, bold: true, wrap: true, vertical: "Top" },
  start: { align: "Left", vertical: "Top" },
  startAfterNumber: { align: "Left", vertical: "Top", indent: 1 },
  headAfterNumber: { bold: true, color: "#4A3420", rule: "EdgeBottom", fill: "#F4EDE1", align: "Left", indent: 1 },
  blank: { fill: "#FBF4E2", rule: "EdgeBottom" },
  blankLabel: { color: "#3A332C", rule: "EdgeBottom" },
  small: { size: 9, color: "#6F6459" },
  quiet: { size: 9, color: "#6F6459", vertical: "Top" },
  number: { align: "Right", vertical: "Top" },
  total: { bold: true, rule: "EdgeTop", align: "Right", vertical: "Top" },
  totalAside: { color: "#6F6459", rule: "EdgeTop", vertical: "Top", indent: 1 },
  totalLabel: { bold: true, rule: "EdgeTop", vertical: "Top" },
} as const satisfies Record<string, Dress>;
export type Look = keyof typeof LOOKS;

interface Dress {
  readonly size?: number;
  readonly bold?: boolean;
  readonly color?: string;
  readonly fill?: string;
  readonly wrap?: boolean;
  readonly align?: "Left" | "Right";
  readonly vertical?: "Top";
  readonly indent?: number;
  readonly rule?: "EdgeBottom" | "EdgeTop";
}

/** One cell of a sheet that we lay out: its content, its number format and its look. */
export interface PaperCell {
  /** A number, a text (see asText) or a formula beginning with "=". */
  readonly content: string | number;
  readonly format?: string;
  readonly look?: Look;
}

/** A sheet laid out from A1: rows of cells, and column widths in points. */
export interface Paper {
  readonly widths: readonly number[];
  readonly rows: readonly (readonly PaperCell[])[];
  readonly size?: PaperSize;
  /** Rows repeated on each printed page, such as "$10:$10". */
  readonly titleRows?: string;
  /** Rows, counted from 0, that begin a printed page. */
  readonly pageStarts?: readonly number[];
  /** Heights in points by row, counted from 0; other rows are as high as their contents. */
  readonly heights?: ReadonlyMap<number, number>;
}

export type PaperSize = "Letter" | "A4" | "A5";

const RULE_COLOR = "#C9B48A";
const EMPTY: PaperCell = { content: "" };

/** Texts that Excel keeps as they are: a letter first, no digit in them, and neither true nor false. */
const PLAIN_WORDS = /^(?!(true|false)$)\p{L}[^\d]*$/iu;

/** A text written so that Excel keeps it as a text, whatever it begins with: never a formula, a number or a date. */
export function asText(text: string): string {
  return text === "" || PLAIN_WORDS.test(text) ? text : `'${text}`;
}

/** The words with a capital first letter, for the beginning of a cell. */
export function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** A text in lines of at most `most` letters, broken between words; a longer word is broken too. */
export function linesOf(text: string, most: number): readonly string[] {
  const line = new RegExp(`.{1,${most}}(?:\\s|$)|.{1,${most}}`, "gsu");
  return (text.match(line) ?? []).map((part) => part.trimEnd());
}

/** Contents as one block, short rows filled up. */
export function contentsOf(paper: Paper): (string | number)[][] {
  return blockOf(paper, (cell) => cell.content);
}

/** Puts a paper on one of our empty sheets, ready to print. */
export function putPaper(sheet: Excel.Worksheet, paper: Paper): void {
  setUpPrint(sheet, putContents(sheet, paper), paper);
}

/** Gives a range one of the looks. */
export function dressAs(range: Excel.Range, look: Look): void {
  dress(range, LOOKS[look]);
}

/** A paper without its print set-up: contents and formats in one block each, then looks and widths. */
export function putContents(sheet: Excel.Worksheet, paper: Paper): Excel.Range {
  const all = sheet.getRangeByIndexes(0, 0, paper.rows.length, paper.widths.length);
  all.numberFormat = blockOf(paper, (cell) => cell.format ?? "General");
  all.formulas = contentsOf(paper);
  paper.widths.forEach((width, column) => {
    sheet.getRangeByIndexes(0, column, 1, 1).format.columnWidth = width;
  });
  for (const run of runsOf(paper)) {
    dressAs(sheet.getRangeByIndexes(run.row, run.column, 1, run.width), run.look);
  }
  all.format.autofitRows();
  for (const [row, height] of paper.heights ?? []) {
    sheet.getRangeByIndexes(row, 0, 1, 1).format.rowHeight = height;
  }
  sheet.showGridlines = false;
  return all;
}

/** One page wide, with a print area and a repeated header row. */
function setUpPrint(
  sheet: Excel.Worksheet,
  area: Excel.Range,
  { widths, size, titleRows, pageStarts = [] }: Paper,
): void {
  const { pageLayout } = sheet;
  if (size) pageLayout.paperSize = paperTypeOf(size);
  pageLayout.orientation = Excel.PageOrientation.portrait;
  // Excel ignores page breaks where it fits a sheet to pages, so a sheet with breaks is scaled.
  pageLayout.zoom = pageStarts.length > 0 ? { scale: onePageWide(widths, size ?? "A4") } : { horizontalFitToPages: 1 };
  pageLayout.setPrintArea(area);
  if (titleRows) pageLayout.setPrintTitleRows(titleRows);
  for (const row of pageStarts) sheet.horizontalPageBreaks.add(sheet.getRangeByIndexes(row, 0, 1, 1));
}

/** Points between Excel's usual margins of 0.7 inch. */
const ROOM: Readonly<Record<PaperSize, number>> = {
  Letter: 612 - 100.8,
  A4: 595.28 - 100.8,
  A5: 419.53 - 100.8,
};

/** The scale, in per cent, at which columns of these widths fit one page; a little less, since widths depend on the font. */
function onePageWide(widths: readonly number[], size: PaperSize): number {
  const width = widths.reduce((total, each) => total + each, 0);
  return Math.min(100, Math.floor((ROOM[size] / width) * 97));
}

/** Excel's name of a paper size. */
export function paperTypeOf(size: PaperSize): Excel.PaperType {
  const types = { Letter: Excel.PaperType.letter, A4: Excel.PaperType.a4, A5: Excel.PaperType.a5 };
  return types[size];
}

/** Letter where it is the usual paper, A4 elsewhere. Source: common practice in the countries named. */
export function paperSizeFor(locale: string): PaperSize {
  return /-(US|CA|MX|PH|CL|CO|VE)$/i.test(locale) ? "Letter" : "A4";
}

function dress(range: Excel.Range, look: Dress): void {
  const { font } = range.format;
  if (look.size) font.size = look.size;
  if (look.bold) font.bold = true;
  if (look.color) font.color = look.color;
  if (look.fill) range.format.fill.color = look.fill;
  if (look.wrap) range.format.wrapText = true;
  if (look.align) range.format.horizontalAlignment = look.align;
  if (look.indent) range.format.indentLevel = look.indent;
  if (look.vertical) range.format.verticalAlignment = look.vertical;
  if (look.rule) {
    const edge = range.format.borders.getItem(look.rule);
    edge.style = "Continuous";
    edge.color = RULE_COLOR;
  }
}

/** Neighbouring cells of one look in a row, to be dressed at once. */
function runsOf(paper: Paper): { row: number; column: number; width: number; look: Look }[] {
  return paper.rows.flatMap((cells, row) => {
    const runs: { row: number; column: number; width: number; look: Look }[] = [];
    cells.forEach(({ look = "plain" }, column) => {
      const last = runs.at(-1);
      if (last?.look === look) last.width += 1;
      else runs.push({ row, column, width: 1, look });
    });
    return runs.filter((run) => run.look !== "plain");
  });
}

function blockOf<T>(paper: Paper, pick: (cell: PaperCell) => T): T[][] {
  return paper.rows.map((cells) => paper.widths.map((_, column) => pick(cells[column] ?? EMPTY)));
}
