/**
 * The rooms of the house, from the floor up: a room imports those named before it, and no other. DEVELOPERS.md says what each holds.
 */
export const SRC_ROOMS = [
  "exact",
  "reading",
  "units",
  "gold",
  "trade",
  "rates",
  "order",
  "quote",
  "weights",
  "makeorbuy",
  "margins",
  "openquotes",
  "cashplan",
  "columns",
  "designs",
  "market",
  "mesh",
] as const;

/** Rooms of the side panel. Those of taskpane/excel come right after the words, and no feature lends its parts to another. */
export const PANE_ROOMS = [
  "wording",
  "excel",
  "excel/template",
  "excel/rates",
  "excel/tables",
  "excel/job",
  "excel/tickets",
  "excel/quote",
  "excel/weights",
  "excel/market",
  "excel/makeorbuy",
  "excel/designs",
  "excel/cashplan",
  "running",
  "controls",
  "order",
  "plots",
  "views",
  "designtable",
] as const;

/** What a person sees of one noun each. They import the rooms above, never each other. */
export const PANE_FEATURES = [
  "quote",
  "result",
  "designs",
  "market",
  "makeorbuy",
  "margins",
  "openquotes",
  "cashplan",
  "weights",
  "modelfile",
] as const;
