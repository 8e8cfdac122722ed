/**
 * A workbook as plain data: what somebody saved once and must be able to open again. Formulas are saved with the values they had,
 * so that both can be compared with what a later version makes of them. Looks that nothing reads are left out: fonts, fills,
 * borders, widths.
 */
export interface KeptBook {
  /** The version in package.json that wrote it. */
  readonly version: string;
  /** The workbook's language, as Office names it. */
  readonly locale: string;
  /** The clock's local time when it was kept, as "2026-07-06T15:00:00". The page that opens it shows that time again. */
  readonly clock: string;
  /** The cell shown first, such as "Rates!A1". */
  readonly start: string;
  readonly sheets: readonly KeptSheet[];
  readonly names: readonly KeptName[];
  /** What add-ins save in the workbook, hidden from the person. */
  readonly settings: Readonly<Record<string, unknown>>;
}

export interface KeptSheet {
  /** Stays when the name changes; what was added to a workbook is found by it. */
  readonly id: string;
  readonly name: string;
  readonly visibility?: "Hidden" | "VeryHidden";
  /** Every row that holds something: its first cell with content, then cell after cell. */
  readonly rows: readonly KeptRow[];
  /** Addresses by their number format. */
  readonly formats: Readonly<Record<string, string>>;
  readonly merged?: readonly string[];
  /** Rows and columns such as "3:5" and "B:B". */
  readonly hidden?: readonly string[];
  /** Rules for what may be typed into cells, the newest first. */
  readonly rules?: readonly KeptRule[];
  /** The ranges of tables by their names, header rows included. */
  readonly tables?: Readonly<Record<string, string>>;
  readonly printArea?: string;
  readonly titleRows?: string;
}

export type KeptRow = readonly [first: string, ...cells: KeptCell[]];
export type KeptValue = string | number | boolean;
/** null for a blank; a formula with its value; a value that a formula of another cell left here. */
export type KeptCell = null | KeptValue | readonly [formula: string | null, value: KeptValue];

export interface KeptName {
  readonly name: string;
  readonly refersTo: string;
  readonly comment?: string;
  readonly hidden?: true;
  /** The sheet it is scoped to, where it is not the workbook's. */
  readonly sheet?: string;
}

export interface KeptRule {
  readonly range: string;
  readonly rule: Record<string, unknown>;
  readonly errorAlert: Record<string, unknown>;
  readonly prompt: Record<string, unknown>;
  readonly ignoreBlanks: boolean;
}
