import { BooleanNumber, BorderStyleTypes, type IStyleData } from "@univerjs/core";
import type ExcelJS from "exceljs";
import type { Validation } from "./extras";
import { asHex } from "./styles";

/**
 * A formula as Excel's file has it: without "=", and with an add-in's function as _xldudf_NAMESPACE_NAME, which is how
 * Excel itself saves them (office-js issues 2568, 4811, 5611). Texts in quotes are left alone.
 */
export function fileFormula(formula: string): string {
  return formula
    .replace(/^=/, "")
    .split(/("(?:[^"]|"")*")/)
    .map((part) =>
      part.startsWith('"')
        ? part
        : part.replace(
            /\bCURB\.([A-Z0-9_.]+)\s*\(/gi,
            (_all, name: string) => `_xldudf_CURB_${name.toUpperCase().replaceAll(".", "_")}(`,
          ),
    )
    .join("");
}

const BORDERS: Record<number, ExcelJS.BorderStyle> = {
  [BorderStyleTypes.THIN]: "thin",
  [BorderStyleTypes.HAIR]: "hair",
  [BorderStyleTypes.DOTTED]: "dotted",
  [BorderStyleTypes.DASHED]: "dashed",
  [BorderStyleTypes.DASH_DOT]: "dashDot",
  [BorderStyleTypes.DASH_DOT_DOT]: "dashDotDot",
  [BorderStyleTypes.DOUBLE]: "double",
  [BorderStyleTypes.MEDIUM]: "medium",
  [BorderStyleTypes.MEDIUM_DASHED]: "mediumDashed",
  [BorderStyleTypes.MEDIUM_DASH_DOT]: "mediumDashDot",
  [BorderStyleTypes.MEDIUM_DASH_DOT_DOT]: "mediumDashDotDot",
  [BorderStyleTypes.SLANT_DASH_DOT]: "slantDashDot",
  [BorderStyleTypes.THICK]: "thick",
};
const HORIZONTAL = [undefined, "left", "center", "right", "justify", "justify", "distributed"] as const;
const VERTICAL = [undefined, "top", "middle", "bottom"] as const;

/** A cell's look as exceljs wants it; only what differs from a plain cell. */
export function fileStyle(style: IStyleData, format: string): Partial<ExcelJS.Style> {
  const made: Partial<ExcelJS.Style> = {};
  if (format !== "General") made.numFmt = format;
  const font = {
    ...(style.ff && style.ff !== "Segoe UI" ? { name: style.ff } : {}),
    ...(style.fs && style.fs !== 11 ? { size: style.fs } : {}),
    ...(style.bl === BooleanNumber.TRUE ? { bold: true } : {}),
    ...(style.it === BooleanNumber.TRUE ? { italic: true } : {}),
    ...(style.ul?.s === BooleanNumber.TRUE ? { underline: true } : {}),
    ...(style.st?.s === BooleanNumber.TRUE ? { strike: true } : {}),
    ...(style.cl?.rgb ? { color: argb(style.cl.rgb) } : {}),
  };
  if (Object.keys(font).length > 0) made.font = { name: style.ff ?? "Segoe UI", size: style.fs ?? 11, ...font };
  if (style.bg?.rgb) made.fill = { type: "pattern", pattern: "solid", fgColor: argb(style.bg.rgb) };
  const border = borders(style);
  if (border) made.border = border;
  const alignment = alignments(style);
  if (alignment) made.alignment = alignment;
  return made;
}

function argb(rgb: string): { argb: string } {
  return { argb: `FF${asHex(rgb, "#000000").replace("#", "")}` };
}

function borders({ bd }: IStyleData): Partial<ExcelJS.Borders> | undefined {
  const sides = { top: bd?.t, bottom: bd?.b, left: bd?.l, right: bd?.r };
  const lines = Object.entries(sides).flatMap(([side, line]) => {
    const style = line && BORDERS[line.s];
    return line && style ? [[side, { style, color: argb(line.cl?.rgb ?? "#000000") }] as const] : [];
  });
  return lines.length > 0 ? Object.fromEntries(lines) : undefined;
}

function alignments({ ht, vt, tb, pd }: IStyleData): Partial<ExcelJS.Alignment> | undefined {
  const horizontal = HORIZONTAL[ht ?? 0];
  const vertical = VERTICAL[vt ?? 0];
  const indent = Math.max(0, Math.round(((pd?.l ?? 2) - 2) / 9));
  const made = {
    ...(horizontal ? { horizontal } : {}),
    // Bottom is Excel's default.
    ...(vertical && vertical !== "bottom" ? { vertical } : {}),
    ...(tb === 3 ? { wrapText: true } : {}),
    ...(indent > 0 ? { indent } : {}),
  };
  return Object.keys(made).length > 0 ? made : undefined;
}

const TYPES: Record<string, ExcelJS.DataValidation["type"]> = {
  list: "list",
  wholeNumber: "whole",
  decimal: "decimal",
  date: "date",
  textLength: "textLength",
  custom: "custom",
};
const OPERATORS: Record<string, NonNullable<ExcelJS.DataValidation["operator"]>> = {
  Between: "between",
  NotBetween: "notBetween",
  EqualTo: "equal",
  NotEqualTo: "notEqual",
  GreaterThan: "greaterThan",
  LessThan: "lessThan",
  GreaterThanOrEqualTo: "greaterThanOrEqual",
  LessThanOrEqualTo: "lessThanOrEqual",
};

export function fileValidation({
  rule,
  errorAlert,
  prompt,
  ignoreBlanks,
}: Validation): ExcelJS.DataValidation | undefined {
  const [kind] = Object.keys(rule);
  const type = kind === undefined ? undefined : TYPES[kind];
  const details = kind === undefined ? undefined : rule[kind];
  if (!type || typeof details !== "object" || details === null) return undefined;
  const get = (key: string): unknown => Reflect.get(details, key);
  const text = (value: unknown) =>
    typeof value === "string" && value.startsWith("=") ? fileFormula(value) : String(value);
  const formulae: unknown[] =
    type === "list"
      ? [String(get("source")).startsWith("=") ? text(get("source")) : `"${get("source")}"`]
      : [get("formula1") ?? get("formula"), get("formula2")]
          .filter((each) => each !== undefined && each !== null && each !== "")
          .map(text);
  const operator = OPERATORS[String(get("operator"))];
  const style = String(errorAlert.style ?? "Stop").toLowerCase();
  return {
    type,
    formulae,
    allowBlank: ignoreBlanks,
    ...(operator ? { operator } : {}),
    showErrorMessage: errorAlert.showAlert !== false,
    errorStyle: style,
    ...(errorAlert.title ? { errorTitle: String(errorAlert.title) } : {}),
    ...(errorAlert.message ? { error: String(errorAlert.message) } : {}),
    ...(prompt.message
      ? { showInputMessage: true, promptTitle: String(prompt.title ?? ""), prompt: String(prompt.message) }
      : {}),
  };
}
