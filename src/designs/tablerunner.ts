import type { Output, Value } from "../columns/answers";
import type { Block } from "../columns/block";
import { type Cells, columnNumber, columnRule } from "../columns/cells";
import { ColumnDriver, type RowSource, UNREAD, type Watch } from "../columns/driver";
import { BLOCK, type Rows } from "../columns/lines";
import { readForAll } from "../columns/ranges";
import { CostingError } from "../exact/errors";
import { isBlank } from "../reading/number";
import type { RateFigure } from "./rateinputs";
import { BLANK, GIVEN, LineChoices } from "./rowkinds";

/** A column of a table of designs. Another word takes the formula another way; of a text it only matters whether it is there. */
export interface LineColumn {
  readonly kind: "figure" | "word" | "text";
  /** What its field is called. */
  readonly field: string;
}

/** Receives a table's rows, in any order. */
export interface LineTaker {
  /** Rows computed in columns, counted from `first`; open[k] is 0 where row k is decided. */
  readonly take: (first: number, rows: Rows, open: Uint8Array, outputs: readonly Output[]) => void;
  /** A row computed exactly, or its fault. */
  readonly exact: (row: number, answer: readonly Value[] | CostingError) => void;
}

/** Rows read together: enough that most kinds of rows fill a block, few enough to stay in the processor's own memory. */
const TOGETHER = 4 * BLOCK;
const MOST_KINDS = 2000;
/** A person's own words are never longer (reading/words.ts). */
const LONGEST_TEXT = 200;
const ANY = columnRule({ right: "a number" });

/**
 * Computes rows of a table by a formula over a line of an order and the workshop's rates, in columns, to the same bits as row by
 * row. Rows that are alike but for their figures have one choice key; the rates are figures too, so what is learned at one spot
 * holds at another.
 */
export class LineColumns {
  private readonly choices = new LineChoices(MOST_KINDS);
  private readonly driver: ColumnDriver;

  /** @param rates those that are figures, in their order: other values of the same fields may be given to a run */
  constructor(
    private readonly columns: readonly LineColumn[],
    rates: readonly RateFigure[],
  ) {
    const figures = columns.filter(({ kind }) => kind === "figure");
    this.driver = new ColumnDriver(
      [
        ...figures.map(() => ({ mark: false, unsigned: false, whole: false })),
        ...rates.map(({ rule: { most } }) => ({ mark: false, unsigned: true, whole: false, shared: true, most })),
      ],
      { together: TOGETHER, mostKeys: MOST_KINDS },
    );
  }

  /**
   * @param places where each column's cell stands in a row
   * @param compute one row's values by the formula, which reads the row's cells and these rates; throws its fault
   */
  run(
    rows: Cells,
    places: readonly number[],
    rates: readonly RateFigure[],
    compute: (row: number) => readonly Value[],
    to: LineTaker,
  ): void {
    this.driver.run(new TableRows(this.columns, this.choices, rows, places, rates, compute, to));
  }
}

/** One table's rows, at one workshop's rates. */
class TableRows implements RowSource {
  readonly count: number;
  /** One row's cells, as far as they choose the way through the formula. */
  private readonly keys: unknown[];
  private readonly inputs: readonly undefined[];

  constructor(
    private readonly columns: readonly LineColumn[],
    private readonly choices: LineChoices,
    private readonly rows: Cells,
    private readonly places: readonly number[],
    private readonly rates: readonly RateFigure[],
    private readonly compute: (row: number) => readonly Value[],
    private readonly to: LineTaker,
  ) {
    this.count = rows.length;
    this.keys = columns.map(() => BLANK);
    this.inputs = columns.flatMap(({ kind }) => (kind === "figure" ? [undefined] : []));
  }

  /** The rates go with every row. */
  begin(block: Block): boolean {
    return this.rates.every(({ double, rule }, at) =>
      readForAll(block, this.inputs.length + at, double, { kind: "figure", rule, blank: Number.NaN }, BLOCK),
    );
  }

  read(block: Block, first: number, count: number, keys: Float64Array): undefined {
    for (let k = 0; k < count; k += 1) keys[k] = this.readRow(this.rows[first + k] ?? [], block, k);
  }

  take(first: number, rows: Rows, open: Uint8Array, outputs: readonly Output[]): void {
    this.to.take(first, rows, open, outputs);
  }

  exact(row: number, watch: Watch): void {
    const inputs = [...this.inputs, ...this.rates.map(({ value }) => value)];
    this.to.exact(
      row,
      answerOf(() => watch(inputs, () => this.compute(row), this.fieldsOf(row))),
    );
  }

  /** Reads a row's figures into the block, and gives its choice key. */
  private readRow(cells: readonly unknown[], block: Block, row: number): number {
    const { columns, keys, places } = this;
    let figure = 0;
    let isBlankRow = true;
    for (let column = 0; column < columns.length; column += 1) {
      const cell = cells[places[column] ?? 0];
      const kind = columns[column]?.kind;
      let key: unknown = GIVEN;
      if (kind === "figure") {
        const into = block.columns[figure]?.values;
        figure += 1;
        // Numbers without a call, which would make every one an object on the heap.
        if (into && typeof cell === "number" && cell >= ANY.least && cell <= ANY.most) into[row] = cell;
        else if (isBlank(cell)) key = BLANK;
        else {
          const value = columnNumber(cell, ANY, Number.NaN);
          if (!into || Number.isNaN(value)) return UNREAD;
          into[row] = value;
        }
      } else if (isBlank(cell)) key = BLANK;
      else if (kind === "word") {
        if (typeof cell !== "string" && typeof cell !== "number") return UNREAD;
        key = cell;
      } else if (typeof cell !== "number" && !(typeof cell === "string" && cell.length <= LONGEST_TEXT)) return UNREAD;
      if (key !== BLANK) isBlankRow = false;
      keys[column] = key;
    }
    return isBlankRow ? UNREAD : (this.choices.keyOf(keys) ?? UNREAD);
  }

  /** The figures that a row gives, by the names under which the formula reads them. */
  private fieldsOf(row: number): ReadonlyMap<string, number> {
    const cells = this.rows[row] ?? [];
    const fields = new Map<string, number>();
    let input = 0;
    this.columns.forEach(({ kind, field }, column) => {
      if (kind !== "figure") return;
      if (!isBlank(cells[this.places[column] ?? 0])) fields.set(field, input);
      input += 1;
    });
    return fields;
  }
}

function answerOf<T>(compute: () => T): T | CostingError {
  try {
    return compute();
  } catch (error) {
    if (error instanceof CostingError) return error;
    throw error;
  }
}
