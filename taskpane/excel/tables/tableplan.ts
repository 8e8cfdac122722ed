import type { Look } from "../paper";

/** A column of one of our tables. */
export interface TableColumn {
  readonly header: string;
  /** Points. */
  readonly width: number;
  readonly look: Look;
  readonly format?: string;
  /** The formula in every row; the column is not typed into. */
  readonly formula?: string;
  /** The words that a cell is chosen from. */
  readonly choices?: readonly string[];
  /** Tables that an earlier version began may be without it. */
  readonly isLater?: true;
  /** The header of the column that stands for it in formulas over such a table. */
  readonly before?: string;
}

/** A table as we add it, on its own sheet. */
export interface TablePlan<K extends string> {
  /** The table's name, as formulas use it. */
  readonly name: string;
  readonly sheet: string;
  /** Two lines under the title. */
  readonly lead: readonly [string, string];
  readonly columns: Readonly<Record<K, TableColumn>>;
}

/** What a row of it is given: texts and numbers for the columns that are typed into. */
export type TypedCells<K extends string> = Readonly<Partial<Record<K, string | number>>>;

export function keysOf<K extends string>(plan: TablePlan<K>): readonly K[] {
  return Object.keys(plan.columns) as K[];
}

/** The columns that a person types into. */
export function typedKeys<K extends string>(plan: TablePlan<K>): readonly K[] {
  return keysOf(plan).filter((key) => plan.columns[key].formula === undefined);
}

/**
 * A formula as it is written over another sheet's table: `Table[Column]` becomes the whole column of that sheet. Excel would
 * accept `Table[Column]`. Other spreadsheets do not see what such a formula depends on, on another sheet.
 */
export function overColumns<K extends string>(
  formula: string,
  plan: TablePlan<K>,
  columnOf: (key: K) => string,
): string {
  return keysOf(plan).reduce(
    (text, key) => text.replaceAll(`${plan.name}[${plan.columns[key].header}]`, columnOf(key)),
    formula,
  );
}

/** How a formula of a table refers to a cell of its own row. */
export function ownCell(table: string, header: string): string {
  return `${table}[[#This Row],[${header}]]`;
}
