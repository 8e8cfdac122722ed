import type { IStyleData, Worksheet } from "@univerjs/core";
import { contains, intersect, type Rect } from "./address";
import { type Book, DEFAULT_HEIGHT, DEFAULT_WIDTH } from "./book";
import { type Cell, readCells, textOf } from "./cells";
import { fromRange, usedRect } from "./extent";
import type { PageSetup } from "./extras";
import { cornerOf, type Picture } from "./pictures";
import { asHex, lineAt, type Side, styleAt } from "./styles";

/** Millimetres, portrait. */
const PAPER: Record<string, [width: number, height: number]> = {
  Letter: [215.9, 279.4],
  Legal: [215.9, 355.6],
  A3: [297, 420],
  A4: [210, 297],
  A5: [148, 210],
};
const MM_PER_POINT = 25.4 / 72;
const MM_PER_PIXEL = 25.4 / 96;

/** Prints one sheet: its print area, or all that is used. Its HTML is in the page only while it prints. */
export function printSheet(book: Book, sheetId: string): void {
  document.getElementById("print-frame")?.remove();
  const frame = document.createElement("iframe");
  frame.id = "print-frame";
  frame.title = "Print";
  frame.srcdoc = printHtml(book, sheetId);
  frame.addEventListener("load", () => {
    const { contentWindow } = frame;
    contentWindow?.addEventListener("afterprint", () => frame.remove());
    contentWindow?.focus();
    contentWindow?.print();
  });
  document.body.append(frame);
}

/** A sheet as a complete HTML page, fitted to its paper by its page layout, with its heading rows repeated on every page. */
export function printHtml(book: Book, sheetId: string): string {
  const { page, pictures } = book.extrasOf(sheetId);
  const area = page.area ?? usedRect(book, sheetId, false) ?? { row: 0, column: 0, rows: 1, columns: 1 };
  const sheet = book.worksheet(sheetId);
  const columns = range(area.column, area.columns).filter((column) => !sheet.getColumnManager().getColumn(column)?.hd);
  const widths = columns.map((column) =>
    column < sheet.getColumnCount() ? sheet.getColumnWidth(column) : DEFAULT_WIDTH,
  );
  const scale = scaleOf(
    page,
    widths.reduce((sum, width) => sum + width, 0),
  );
  const cells = readCells(book, sheetId, area);
  const merges = sheet.getMergeData().map(fromRange);
  const rows = range(area.row, area.rows).filter((row) => !sheet.getRowManager().getRow(row)?.hd);
  const isTitle = (row: number) =>
    page.titleRows && row >= page.titleRows.row && row < page.titleRows.row + page.titleRows.rows;
  const draw = (row: number) => {
    const height = row < sheet.getRowCount() ? sheet.getRowHeight(row) : DEFAULT_HEIGHT;
    const tds = columns.map((column) =>
      drawCell(sheet, cells[row - area.row]?.[column - area.column], row, column, merges, area, pictures),
    );
    const breaks = page.pageStarts.includes(row) && row !== rows[0] ? ";break-before:page" : "";
    return `<tr style="height:${height}px${breaks}">${tds.join("")}</tr>`;
  };
  // Rows above the heading rows print once, before them; a table's head would print them again on every page.
  const firstTitle = rows.findIndex((row) => isTitle(row));
  const before = firstTitle < 0 ? [] : rows.slice(0, firstTitle);
  const titles = rows.filter((row) => isTitle(row));
  const after = rows.filter((row) => !before.includes(row) && !titles.includes(row));
  const colgroup = `<colgroup>${widths.map((width) => `<col style="width:${width}px">`).join("")}</colgroup>`;
  const table = (inner: string) => `<table>${colgroup}${inner}</table>`;
  const body = [
    before.length > 0 ? table(`<tbody>${before.map(draw).join("")}</tbody>`) : "",
    table(`<thead>${titles.map(draw).join("")}</thead><tbody>${after.map(draw).join("")}</tbody>`),
  ].join("");
  return document_(book.sheet(sheetId).getSheetName(), page, scale, widths, body);
}

function document_(title: string, page: PageSetup, scale: number, widths: readonly number[], body: string): string {
  const [width, height] = paper(page);
  const { top, right, bottom, left } = page.margins;
  const margins = [top, right, bottom, left].map((points) => `${round(points * MM_PER_POINT)}mm`).join(" ");
  const wide = widths.reduce((sum, each) => sum + each, 0);
  const grid = page.printGridlines ? "td { border: 1px solid #ccc }" : "";
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${escapeHtml(title)}</title><style>
@page { size: ${width}mm ${height}mm; margin: ${margins} }
body { margin: 0 }
#print-sheet { width: ${wide}px; zoom: ${round(scale)}; ${page.centerHorizontally ? "margin: 0 auto" : ""} }
table { border-collapse: collapse; table-layout: fixed; width: ${wide}px }
td { padding: 1px 3px; overflow: hidden; vertical-align: bottom; white-space: pre; font: 11pt "Segoe UI", "Open Sans", sans-serif; -webkit-print-color-adjust: exact; print-color-adjust: exact }
tr { break-inside: avoid }
${grid}</style></head><body>${edge(page, "Header")}<div id="print-sheet">${body}</div>${edge(page, "Footer")}</body></html>`;
}

/** The page's header or footer text, once; Excel's codes for page numbers and dates are left out: a browser cannot print them. */
function edge(page: PageSetup, where: "Header" | "Footer"): string {
  const [left, center, right] = (["left", "center", "right"] as const).map((side) => page.texts[`${side}${where}`]);
  if (!left && !center && !right) return "";
  const part = (text: string | undefined) =>
    `<span>${escapeHtml((text ?? "").replace(/&(P|N|D|T|A|F|"[^"]*"|\d+|[BIU])/g, ""))}</span>`;
  return `<p style="display:flex;justify-content:space-between;font:9pt sans-serif;margin:4px 0">${part(left)}${part(center)}${part(right)}</p>`;
}

function paper(page: PageSetup): [number, number] {
  const [width, height] = PAPER[page.paperSize] ?? [215.9, 279.4];
  return page.orientation === "Landscape" ? [height, width] : [width, height];
}

/** Fit to one page wide where the layout says so (never enlarged, as in Excel), else the layout's own scale. */
function scaleOf(page: PageSetup, pixels: number): number {
  const pages = page.zoom.horizontalFitToPages;
  if (!pages) return (page.zoom.scale ?? 100) / 100;
  const room = paper(page)[0] - (page.margins.left + page.margins.right) * MM_PER_POINT;
  return Math.min(1, (room * pages) / (pixels * MM_PER_PIXEL));
}

function drawCell(
  sheet: Worksheet,
  cell: Cell | undefined,
  row: number,
  column: number,
  merges: readonly Rect[],
  area: Rect,
  pictures: readonly Picture[],
): string {
  const merge = merges.find((each) => intersect(each, { row, column, rows: 1, columns: 1 }));
  const shown = merge && intersect(merge, area);
  if (shown && (shown.row !== row || shown.column !== column)) return "";
  const spans = shown ? ` rowspan="${shown.rows}" colspan="${shown.columns}"` : "";
  const style = styleAt(sheet, row, column);
  const last = shown ? styleAt(sheet, shown.row + shown.rows - 1, shown.column + shown.columns - 1) : style;
  const text = cell ? textOf(cell) : "";
  const hung = pictures.filter((picture) =>
    contains(shown ?? { row, column, rows: 1, columns: 1 }, { ...picture, rows: 1, columns: 1 }),
  );
  const overflows = hung.length > 0 || isOverflowing(style, cell, shown);
  const holds = hung.length > 0 ? ";position:relative" : "";
  const corner = cornerOf(sheet, { row, column });
  const images = hung.map((picture) => drawPicture(picture, cornerOf(sheet, picture), corner)).join("");
  return `<td${spans} style="${css(style, last, cell, overflows)}${holds}">${images}${escapeHtml(text)}</td>`;
}

type Corner = ReturnType<typeof cornerOf>;

/** Draws a picture over the cells, from its own cell on. @param cell the corner of the cell it is drawn in */
function drawPicture({ name, png, width, height }: Picture, { left, top }: Corner, cell: Corner): string {
  const place = `position:absolute;left:${left - cell.left}pt;top:${top - cell.top}pt;width:${width}pt;height:${height}pt`;
  return `<img alt="${escapeHtml(name)}" src="data:image/png;base64,${escapeHtml(png)}" style="${place}">`;
}

/** A text without wrapping runs over its neighbours, as on the sheet. */
function isOverflowing(style: IStyleData, cell: Cell | undefined, merge: Rect | undefined): boolean {
  return !merge && style.tb !== 3 && typeof cell?.value === "string" && cell.value !== "" && (style.ht ?? 1) <= 1;
}

const ALIGN = ["", "left", "center", "right", "justify", "justify", "justify"];
const VERTICAL = ["bottom", "top", "middle", "bottom"];
const LINE: Record<string, string> = { Continuous: "solid", Double: "double", Dot: "dotted", Dash: "dashed" };
const WEIGHT: Record<string, string> = { Hairline: "0.5px", Thin: "1px", Medium: "2px", Thick: "3px" };

function css(style: IStyleData, last: IStyleData, cell: Cell | undefined, overflows: boolean): string {
  const isNumber = typeof cell?.value === "number";
  const align =
    ALIGN[style.ht ?? 0] ||
    (isNumber ? "right" : typeof cell?.value === "boolean" || cell?.isError ? "center" : "left");
  const parts = [
    `text-align:${align}`,
    `vertical-align:${VERTICAL[style.vt ?? 0]}`,
    style.ff ? `font-family:'${style.ff.replaceAll(/['"<>\\]/g, "")}','Open Sans',sans-serif` : "",
    style.fs ? `font-size:${style.fs}pt` : "",
    style.bl ? "font-weight:bold" : "",
    style.it ? "font-style:italic" : "",
    style.ul?.s ? "text-decoration:underline" : "",
    style.cl?.rgb ? `color:${asHex(style.cl.rgb, "#000000")}` : "",
    style.bg?.rgb ? `background:${asHex(style.bg.rgb, "#FFFFFF")}` : "",
    style.tb === 3 ? "white-space:pre-wrap" : "",
    overflows ? "overflow:visible" : "",
    style.pd?.l ? `padding-left:${style.pd.l + 1}px` : "",
    ...(["t", "l"] as const).map((side) => line(style, side)),
    ...(["b", "r"] as const).map((side) => line(last, side)),
  ];
  return parts.filter((part) => part !== "").join(";");
}

const SIDES: Record<Side, string> = { t: "top", b: "bottom", l: "left", r: "right" };

function line(style: IStyleData, side: Side): string {
  const { style: kind, weight, color } = lineAt(style.bd, side);
  if (kind === "None") return "";
  return `border-${SIDES[side]}:${kind === "Double" ? "3px" : (WEIGHT[weight] ?? "1px")} ${LINE[kind] ?? "dashed"} ${color}`;
}

function range(start: number, count: number): number[] {
  return Array.from({ length: count }, (_, index) => start + index);
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function escapeHtml(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}
