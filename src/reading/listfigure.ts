/** The sign before the fraction of a number. */
export type DecimalSign = "." | ",";

/** What a list's figures tell of their decimal sign. */
export interface DecimalEvidence {
  /** Undefined where they do not tell, or contradict each other. */
  readonly sign: DecimalSign | undefined;
  /** A figure that two people would read as two numbers, until the sign is known; undefined where there is none. */
  readonly doubtful: string | undefined;
}

const OTHER: Readonly<Record<DecimalSign, DecimalSign>> = { ".": ",", ",": "." };

/**
 * What texts of figures tell of the decimal sign they are written with: "12,5" and "1.234,50" that it is a comma, "1.234" nothing.
 * @param texts figures without unit or currency; others are passed over
 */
export function decimalEvidence(texts: readonly string[]): DecimalEvidence {
  const figures = texts.map(squeezed).filter((text) => /^[+-]?[\d.,]+$/.test(text));
  const told = new Set(figures.flatMap((text) => signIn(text) ?? []));
  const [only] = told;
  if (told.size === 1 && only) return { sign: only, doubtful: undefined };
  const doubtful = figures.find((text) => /[.,]/.test(text) && (told.size > 1 || signIn(text) === undefined));
  return { sign: undefined, doubtful };
}

/**
 * A figure as a plain decimal with a point; separators of thousands go where they stand between groups of three. Undefined for
 * anything else.
 * @param sign undefined where it is not known: then a figure that needs it is not read
 */
export function readListFigure(text: string, sign: DecimalSign | undefined): string | undefined {
  const figure = squeezed(text);
  if (/^[+-]?\d+$/.test(figure)) return figure;
  if (sign === undefined) return undefined;
  const [, leading = "", whole = "", rest = ""] =
    new RegExp(`^([+-]?)([^\\${sign}]*)(?:\\${sign}(\\d*))?$`).exec(figure) ?? [];
  if (whole === "" && rest === "") return undefined;
  const group = `\\${OTHER[sign]}`;
  const isPlain = /^\d*$/.test(whole);
  const isGrouped = new RegExp(`^\\d{1,3}(${group}\\d{3})+$`).test(whole);
  if (!isPlain && !isGrouped) return undefined;
  const digits = whole.replaceAll(OTHER[sign], "") || "0";
  return `${leading}${digits}${rest === "" ? "" : `.${rest}`}`;
}

/** Which sign a figure shows to be the decimal one; undefined where it may be either, or has none. */
function signIn(figure: string): DecimalSign | undefined {
  const [points, commas] = [count(figure, "."), count(figure, ",")];
  if (points + commas === 0) return undefined;
  if (points > 0 && commas > 0) return figure.lastIndexOf(".") > figure.lastIndexOf(",") ? "." : ",";
  const sign: DecimalSign = points > 0 ? "." : ",";
  // More than one of a kind are separators of thousands.
  if (points + commas > 1) return OTHER[sign];
  return /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(figure) ? undefined : sign;
}

function count(text: string, sign: string): number {
  return text.split(sign).length - 1;
}

/** Without spaces, of any width, and apostrophes between groups of three figures. */
function squeezed(text: string): string {
  return text.trim().replace(/(?<=\d)[\s'’](?=\d{3}(?!\d))/g, "");
}
