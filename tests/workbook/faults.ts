import type { Book } from "./book";

interface Fault {
  readonly code: string;
  readonly sentence: string;
  /** The cell whose formula gave the error; `formula` is its text at that time. */
  readonly anchor: readonly [row: number, column: number];
  readonly formula: string;
}

/** The sentences behind the errors that functions gave, by cell. */
export class Faults {
  private readonly faults = new Map<string, Fault>();

  constructor(private readonly book: Book) {}

  set(sheetId: string, row: number, column: number, fault: Omit<Fault, "formula">): void {
    const formula = this.formula(sheetId, fault.anchor);
    this.faults.set(`${sheetId}:${row}:${column}`, { ...fault, formula });
  }

  /** The sentence of the error now shown in a cell; undefined where it has none, or it belongs to an older formula. */
  sentence(sheetId: string, row: number, column: number, shown: string): string | undefined {
    const fault = this.faults.get(`${sheetId}:${row}:${column}`);
    if (!fault || fault.code !== shown || fault.sentence === "") return undefined;
    return this.formula(sheetId, fault.anchor) === fault.formula ? fault.sentence : undefined;
  }

  clear(): void {
    this.faults.clear();
  }

  private formula(sheetId: string, [row, column]: readonly [number, number]): string {
    return this.book.engine.formulas.getFormulaStringByCell(row, column, sheetId, this.book.id) ?? "";
  }
}
