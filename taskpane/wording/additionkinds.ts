/** The kinds of things that the pane adds to a workbook and can take out again in one step. */
export type AdditionKind =
  | "catalogue"
  | "price list"
  | "columns"
  | "price sheet"
  | "bench sheet"
  | "spots"
  | "budget"
  | "make or buy";
