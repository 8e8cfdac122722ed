import { contentsOf, type Paper, type PaperSize, putPaper } from "../paper";
import { A4_QUOTE } from "./a4";
import { COUNTER_TICKET } from "./counter";
import { LETTER_QUOTE } from "./letter";

/** The sheet that quotes are copied from unless another is chosen; the user's to restyle. */
export const TEMPLATE_SHEET = "Quote template";

/** The built-in templates by the names of their sheets. The usual quote has the paper size of the person's country. */
const BUILT_IN = {
  [TEMPLATE_SHEET]: undefined,
  "Quote template Letter": LETTER_QUOTE,
  "Quote template A4": A4_QUOTE,
  "Counter ticket template": COUNTER_TICKET,
} as const satisfies Record<string, Paper | undefined>;
export type BuiltInTemplate = keyof typeof BUILT_IN;

/** The built-in templates to offer where one paper size is usual: the quote on the other size is a separate template. */
export function builtInTemplates(usual: PaperSize): readonly BuiltInTemplate[] {
  return [TEMPLATE_SHEET, usual === "A4" ? "Quote template Letter" : "Quote template A4", "Counter ticket template"];
}

/** Whether a sheet of that name is laid out by us where it is missing. */
export function isBuiltIn(name: string): name is BuiltInTemplate {
  return Object.hasOwn(BUILT_IN, name);
}

/** Puts a built-in template on an empty sheet. */
export function putTemplate(sheet: Excel.Worksheet, name: BuiltInTemplate, usual: PaperSize): void {
  putPaper(sheet, paperOf(name, usual));
}

/** A built-in template's cells, as reading it back would give them. */
export function templateContents(name: BuiltInTemplate, usual: PaperSize): (string | number)[][] {
  return contentsOf(paperOf(name, usual));
}

function paperOf(name: BuiltInTemplate, usual: PaperSize): Paper {
  // A ticket is half a sheet: A5, or the top half of a letter sheet, to be cut off.
  if (name === "Counter ticket template") return { ...COUNTER_TICKET, size: usual === "A4" ? "A5" : usual };
  return BUILT_IN[name] ?? (usual === "A4" ? A4_QUOTE : LETTER_QUOTE);
}
