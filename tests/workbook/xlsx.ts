import ExcelJS from "exceljs";
import { MAX_COLUMNS, MAX_ROWS, printRect, printReference } from "./address";
import type { Book } from "./book";
import { type Cell, isLocked, readCells } from "./cells";
import { fromRange, spills, usedRect } from "./extent";
import { type Extras, HEADER_FOOTER } from "./extras";
import { styleAt } from "./styles";
import { fileFormula, fileStyle, fileValidation } from "./xlsxcell";

/** What exceljs writes into <definedNames>; it keeps ranges as they are given. */
interface FileName {
  readonly name: string;
  readonly ranges: readonly string[];
  readonly localSheetId?: number;
}

const PAPER: Record<string, ExcelJS.PaperSize | number> = { Letter: 1, Legal: 5, A3: 8, A4: 9, A5: 11 };

/**
 * The workbook as an .xlsx file, in base64: values, formulas with the values they have now, looks, sizes, names and
 * print set-up. Spilled arrays are array formulas with the values in their cells.
 */
export async function saveXlsx(book: Book): Promise<string> {
  const file = new ExcelJS.Workbook();
  file.creator = "Curbwright workbook page";
  for (const sheet of book.sheets()) await writeSheet(book, file, sheet.getSheetId());
  // exceljs knows neither names of single sheets nor constants, and loses the $ of print areas, so we write the list of names.
  Object.defineProperty(file.definedNames, "model", { get: () => namesOf(book) });
  const bytes = new Uint8Array(await file.xlsx.writeBuffer());
  let binary = "";
  for (let start = 0; start < bytes.length; start += 32_768)
    binary += String.fromCharCode(...bytes.subarray(start, start + 32_768));
  return btoa(binary);
}

async function writeSheet(book: Book, file: ExcelJS.Workbook, sheetId: string): Promise<void> {
  const source = book.sheet(sheetId);
  const extras = book.extrasOf(sheetId);
  const tab = source.getTabColor();
  const sheet = file.addWorksheet(source.getSheetName(), {
    state: source.isSheetHidden() ? (extras.veryHidden ? "veryHidden" : "hidden") : "visible",
    ...(tab ? { properties: { tabColor: { argb: `FF${tab.replace("#", "")}` } } } : {}),
  });
  const { xSplit, ySplit } = source.getFreeze();
  const showGridLines = !source.hasHiddenGridLines();
  sheet.views = [
    xSplit > 0 || ySplit > 0 ? { state: "frozen", xSplit, ySplit, showGridLines } : { state: "normal", showGridLines },
  ];
  writeSizes(book, sheet, sheetId);
  writeCells(book, sheet, sheetId);
  for (const merge of source.getSheet().getMergeData()) sheet.mergeCells(printRect(fromRange(merge)));
  writeValidations(sheet, extras);
  writeTables(book, sheet, sheetId);
  writePage(sheet, extras);
  for (const { png, row, column, inset, width, height } of extras.pictures) {
    const image = file.addImage({ base64: png, extension: "png" });
    const corner = {
      nativeRow: row,
      nativeRowOff: Math.round(inset.top * EMU),
      nativeCol: column,
      nativeColOff: Math.round(inset.left * EMU),
    };
    // exceljs also reads a corner in the units of the file, but has no type for it.
    const tl = corner as unknown as ExcelJS.Anchor;
    sheet.addImage(image, { tl, ext: { width: width / 0.75, height: height / 0.75 } });
  }
  if (extras.protection.on)
    await sheet.protect(extras.protection.password ?? "", { selectLockedCells: true, selectUnlockedCells: true });
}

function writeSizes(book: Book, sheet: ExcelJS.Worksheet, sheetId: string): void {
  const source = book.worksheet(sheetId);
  const { defaultColumnWidth } = source.getConfig();
  sheet.properties.defaultColWidth = characters(defaultColumnWidth);
  for (const [index, data] of Object.entries(source.getConfig().columnData)) {
    const column = sheet.getColumn(Number(index) + 1);
    if (data?.w !== undefined) column.width = characters(data.w);
    if (data?.hd) column.hidden = true;
  }
  for (const [index, data] of Object.entries(source.getConfig().rowData)) {
    const row = sheet.getRow(Number(index) + 1);
    if (data?.h !== undefined) row.height = data.h * 0.75;
    if (data?.hd) row.hidden = true;
  }
}

/** The file's unit of lengths, in a point. */
const EMU = 12_700;

/** Pixels as a width in Excel's file: in characters of seven pixels, after five for the margins. */
function characters(pixels: number): number {
  return Math.round(((pixels - 5) / 7) * 100) / 100;
}

function writeCells(book: Book, sheet: ExcelJS.Worksheet, sheetId: string): void {
  const used = usedRect(book, sheetId, false);
  if (!used) return;
  const source = book.worksheet(sheetId);
  const arrays = spills(book, sheetId);
  for (const [i, line] of readCells(book, sheetId, used).entries()) {
    for (const [j, cell] of line.entries()) {
      const [row, column] = [used.row + i, used.column + j];
      const style = fileStyle(styleAt(source, row, column), cell.format);
      const locked = isLocked(source, row, column);
      if (cell.value === "" && !cell.formula && Object.keys(style).length === 0 && locked) continue;
      const target = sheet.getCell(row + 1, column + 1);
      const array = arrays.find((rect) => rect.row === row && rect.column === column && rect.rows * rect.columns > 1);
      target.value = fileValue(cell, array && printRect(array));
      Object.assign(target, style);
      if (!locked) target.protection = { locked: false };
    }
  }
}

function fileValue(cell: Cell, array: string | undefined): ExcelJS.CellValue {
  const error = cell.isError ? { error: String(cell.value) as ExcelJS.CellErrorValue["error"] } : undefined;
  if (!cell.formula) return error ?? (cell.value === "" ? null : cell.value);
  const result = error ?? cell.value;
  const formula = fileFormula(cell.formula);
  if (array === undefined) return { formula, result };
  // exceljs writes array formulas but has no type for them.
  return { formula, result, shareType: "array", ref: array } as ExcelJS.CellValue;
}

function writeValidations(sheet: ExcelJS.Worksheet, { validations }: Extras): void {
  for (const validation of [...validations].reverse()) {
    const made = fileValidation(validation);
    const { row, column, rows, columns } = validation.rect;
    if (!made || rows * columns > 5000) continue;
    for (let i = 0; i < rows; i += 1)
      for (let j = 0; j < columns; j += 1) sheet.getCell(row + i + 1, column + j + 1).dataValidation = made;
  }
}

function writeTables(book: Book, sheet: ExcelJS.Worksheet, sheetId: string): void {
  for (const table of book.tables.all(sheetId)) {
    const { row, column, rows } = table.rect;
    const titles = book.tables.headers(table);
    const lines = Array.from({ length: rows - 1 }, (_, i) =>
      titles.map((_title, j) => sheet.getCell(row + 2 + i, column + 1 + j).value),
    );
    sheet.addTable({
      name: table.name,
      ref: printRect({ row, column, rows: 1, columns: 1 }),
      headerRow: true,
      style: {
        theme: table.style as ExcelJS.TableStyleProperties["theme"] & string,
        showRowStripes: table.showBandedRows,
      },
      columns: titles.map((name) => ({ name, filterButton: table.showFilterButton })),
      rows: lines,
    });
  }
}

function writePage(sheet: ExcelJS.Worksheet, { page }: Extras): void {
  const { margins, zoom, texts } = page;
  const fits = zoom.horizontalFitToPages !== undefined || zoom.verticalFitToPages !== undefined;
  sheet.pageSetup = {
    ...sheet.pageSetup,
    orientation: page.orientation === "Landscape" ? "landscape" : "portrait",
    paperSize: PAPER[page.paperSize] as ExcelJS.PaperSize,
    margins: Object.fromEntries(
      Object.entries(margins).map(([side, points]) => [side, points / 72]),
    ) as unknown as ExcelJS.Margins,
    horizontalCentered: page.centerHorizontally,
    verticalCentered: page.centerVertically,
    showGridLines: page.printGridlines,
    showRowColHeaders: page.printHeadings,
    blackAndWhite: page.blackAndWhite,
    fitToPage: fits,
    // In the file 0 pages means as many as needed.
    ...(fits
      ? { fitToWidth: zoom.horizontalFitToPages ?? 0, fitToHeight: zoom.verticalFitToPages ?? 0 }
      : { scale: zoom.scale ?? 100 }),
  };
  // The file counts the row before the break, from 1.
  for (const row of page.pageStarts) sheet.getRow(row).addPageBreak();
  const code = (where: "Header" | "Footer") =>
    HEADER_FOOTER.filter((name) => name.endsWith(where) && texts[name] !== "")
      .map((name) => `&${name.charAt(0).toUpperCase()}${texts[name]}`)
      .join("");
  if (code("Header")) sheet.headerFooter.oddHeader = code("Header");
  if (code("Footer")) sheet.headerFooter.oddFooter = code("Footer");
}

function namesOf(book: Book): FileName[] {
  const index = (sheetId: string) => book.sheets().findIndex((sheet) => sheet.getSheetId() === sheetId);
  const names: FileName[] = book.names.all().map(({ name, formula, sheetId }) => ({
    name,
    ranges: [fileFormula(formula)],
    ...(sheetId === undefined ? {} : { localSheetId: index(sheetId) }),
  }));
  for (const sheet of book.sheets()) {
    const { page } = book.extrasOf(sheet.getSheetId());
    const print = (rect: Parameters<typeof printReference>[1]) => printReference(sheet.getSheetName(), rect, "$");
    const localSheetId = index(sheet.getSheetId());
    if (page.area) names.push({ name: "_xlnm.Print_Area", ranges: [print(page.area)], localSheetId });
    const titles = [
      ...(page.titleColumns ? [print({ ...page.titleColumns, row: 0, rows: MAX_ROWS })] : []),
      ...(page.titleRows ? [print({ ...page.titleRows, column: 0, columns: MAX_COLUMNS })] : []),
    ];
    if (titles.length > 0) names.push({ name: "_xlnm.Print_Titles", ranges: titles, localSheetId });
  }
  return names;
}
