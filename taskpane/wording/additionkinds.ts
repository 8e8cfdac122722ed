/** What the pane puts into a workbook so that it can be taken out again in one step. */
export type AdditionKind =
  | "catalogue"
  | "price list"
  | "columns"
  | "price sheet"
  | "bench sheet"
  | "spots"
  | "budget"
  | "make or buy";
