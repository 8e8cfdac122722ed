import { BLOCK, Block, type Rows } from "../columns/block";
import type { Input } from "../columns/bounds";
import { type Cells, columnNumber, columnRule } from "../columns/cells";
import { type Plan, planOf } from "../columns/plan";
import { type Output, settleAll } from "../columns/run";
import { type Trace, traced, type Value } from "../columns/trace";
import { CostingError } from "../exact/errors";
import { isBlank } from "../reading/number";
import type { RateFigure } from "./rateinputs";
import { ordered } from "./rowgroups";
import { type Alike, BLANK, GIVEN, LineChoices } from "./rowkinds";

/** A column of a table of designs: a word takes the formula another way, of a text it only matters whether it is there. */
export interface LineColumn {
  readonly kind: "figure" | "word" | "text";
  /** What its field is called. */
  readonly field: string;
}

/** Takes a table's rows as they come. */
export interface LineTaker {
  /** Rows computed in columns: those of `rows` with `open` of 0, counted from the first. */
  readonly take: (first: number, rows: Rows, open: Uint8Array, outputs: readonly Output[]) => void;
  /** A row computed exactly, or its fault. */
  readonly exact: (row: number, answer: readonly Value[] | CostingError) => void;
}

/** Rows alike, with the ways through the formula that some of them have gone. */
interface Group {
  readonly fields: ReadonlyMap<string, number>;
  readonly plans: Plan[];
}

/** Rows read together: enough that groups are long, few enough to stay in the processor's own memory. */
const CHUNK = 4 * BLOCK;
const MOST_PLANS = 24;
const MOST_GROUPS = 2000;
/** A person's own words are never longer (text.ts). */
const LONGEST_TEXT = 200;
const ANY = columnRule({ right: "a number" });

/**
 * Computes rows of a table by a formula over a line of an order and the workshop's rates, in columns, to the same bits as row by
 * row. Rows that are alike but for their figures are computed together, by plans learned from the first of them (see Plans); the
 * rates are figures too, so what is learned at one spot holds at another.
 */
export class LineColumns {
  private readonly choices = new LineChoices(MOST_GROUPS);
  private readonly groups: Group[] = [];
  private readonly block: Block;
  private readonly figures: readonly number[];
  /** Which group each row of a chunk is of, and one row's keys. */
  private readonly groupAt = new Int16Array(CHUNK);
  private readonly keys: unknown[];

  /** @param rates the fields of those rates that are figures, in their order */
  constructor(
    private readonly columns: readonly LineColumn[],
    rates: readonly string[],
  ) {
    this.figures = columns.flatMap(({ kind }, column) => (kind === "figure" ? [column] : []));
    this.keys = columns.map(() => BLANK);
    this.block = new Block([
      ...this.figures.map(() => ({ mark: false, rows: CHUNK })),
      ...rates.map(() => ({ mark: false, rows: BLOCK })),
    ]);
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
    this.begin(rates);
    const exact = (row: number) => this.exactly(row, compute, to);
    const learn = (row: number, group: Group) => this.learn(row, group, rates, compute, to);
    for (let first = 0; first < rows.length; first += CHUNK) {
      const count = Math.min(CHUNK, rows.length - first);
      for (let k = 0; k < count; k += 1) this.groupAt[k] = this.read(rows[first + k] ?? [], places, k);
      for (const [place, order] of ordered(this.groupAt.subarray(0, count), this.groups.length)) {
        const group = this.groups[place];
        if (!group) for (const k of order) exact(first + k);
        else this.runGroup(group, order, first, to, learn);
      }
    }
  }

  private runGroup(
    group: Group,
    order: Uint16Array<ArrayBuffer>,
    first: number,
    to: LineTaker,
    learn: (row: number, group: Group) => Plan | undefined,
  ): void {
    for (let start = 0; start < order.length; start += BLOCK) {
      const at = order.subarray(start, start + BLOCK);
      settleAll(
        group.plans,
        this.block,
        { at, count: at.length },
        (rows, open, outputs) => to.take(first, rows, open, outputs),
        (k) => learn(first + k, group),
      );
    }
  }

  /** Reads a row: its figures, and which group it is of; -1 where the exact reading must look at it. */
  private read(cells: readonly unknown[], places: readonly number[], row: number): number {
    const { columns, keys } = this;
    let figure = 0;
    let isBlankRow = true;
    for (let column = 0; column < columns.length; column += 1) {
      const cell = cells[places[column] ?? 0];
      const kind = columns[column]?.kind;
      let key: unknown = GIVEN;
      if (kind === "figure") {
        const into = this.block.columns[figure]?.values;
        figure += 1;
        // Numbers without a call, which would make every one an object on the heap.
        if (into && typeof cell === "number" && cell >= ANY.least && cell <= ANY.most) into[row] = cell;
        else if (isBlank(cell)) key = BLANK;
        else {
          const value = columnNumber(cell, ANY, Number.NaN);
          if (!into || Number.isNaN(value)) return -1;
          into[row] = value;
        }
      } else if (isBlank(cell)) key = BLANK;
      else if (kind === "word") {
        if (typeof cell !== "string" && typeof cell !== "number") return -1;
        key = cell;
      } else if (typeof cell !== "number" && !(typeof cell === "string" && cell.length <= LONGEST_TEXT)) return -1;
      if (key !== BLANK) isBlankRow = false;
      keys[column] = key;
    }
    if (isBlankRow) return -1;
    const alike = this.choices.of(keys);
    if (!alike) return -1;
    this.groups[alike.place] ??= this.groupOf(alike);
    return alike.place;
  }

  private groupOf({ given }: Alike): Group {
    const fields = this.figures.flatMap((column, input) => {
      const field = this.columns[column]?.field;
      return field !== undefined && given[column] ? [[field, input] as const] : [];
    });
    return { fields: new Map(fields), plans: [] };
  }

  /** The rates go with every row. */
  private begin(rates: readonly RateFigure[]): void {
    rates.forEach(({ double }, at) => {
      const column = this.block.columns[this.figures.length + at];
      if (!column) return;
      column.single = true;
      column.values.fill(double);
    });
  }

  private exactly(row: number, compute: (row: number) => readonly Value[], to: LineTaker): void {
    to.exact(
      row,
      answerOf(() => compute(row)),
    );
  }

  /** Computes a row exactly and learns its way, where that is new. */
  private learn(
    row: number,
    group: Group,
    rates: readonly RateFigure[],
    compute: (row: number) => readonly Value[],
    to: LineTaker,
  ): Plan | undefined {
    if (group.plans.length >= MOST_PLANS) {
      this.exactly(row, compute, to);
      return undefined;
    }
    const inputs = [...this.figures.map(() => undefined), ...rates.map(({ value }) => value)];
    const made = answerOf(() => traced(inputs, () => compute(row), group.fields));
    to.exact(row, made instanceof CostingError ? made : made.result);
    const trace = made instanceof CostingError ? undefined : made.trace;
    if (!trace || group.plans.some(({ path }) => path === trace.path)) return undefined;
    const plan = planOf(trace, this.inputs(trace, rates));
    if (plan) group.plans.push(plan);
    return plan;
  }

  private inputs({ rules }: Trace, rates: readonly RateFigure[]): readonly Input[] {
    const ofLine = this.figures.map((_, input): Input => {
      const rule = rules.get(input);
      if (!rule) return { unsigned: false, whole: false };
      const { negative, whole, most } = columnRule(rule);
      return { unsigned: !negative, whole, most };
    });
    return [...ofLine, ...rates.map(({ rule: { most } }) => ({ unsigned: true, whole: false, shared: true, most }))];
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
