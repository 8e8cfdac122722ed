import { type Input, type Plan, Plans, type Quotient, traced, type Value } from "../src/index";
import { plainCell } from "./grid";
import type { Choice, Figure, MarkFigure, Reader, Said } from "./readers";
import { MOST_WORDS, Words } from "./words";

export type Readers<Row> = { readonly [Name in keyof Row]: Reader<Row[Name]> };

/** An argument computed with: it is the `column`-th of the formula's columns. */
export interface FigureArgument {
  readonly at: number;
  readonly reader: Figure<unknown> | MarkFigure<unknown>;
  readonly column: number;
  /** What a blank cell counts as; not a number where it must not be blank. */
  readonly blank: number;
}

/** An argument that says which way the formula goes. */
export interface ChoiceArgument {
  readonly at: number;
  readonly reader: Choice<unknown>;
  readonly words: Words;
  /** Choices are told apart together: the numbers of this one's words are in units of its digit. */
  readonly digit: number;
}

export type Result = Value | readonly Value[];

/** A worksheet function's formula: its arguments, the exact computing of one row, and the plans learned from such rows. */
export class Formula<Row extends object> {
  readonly names: readonly string[];
  readonly figures: readonly FigureArgument[];
  readonly choices: readonly ChoiceArgument[];
  readonly plans: Plans;
  /** Arguments that are taken whole. */
  readonly isList: readonly boolean[];
  private readonly readers: readonly Reader<unknown>[];

  constructor(
    readers: Readers<Row>,
    private readonly compute: (row: Row) => Result,
  ) {
    this.names = Object.keys(readers);
    this.readers = Object.values(readers);
    this.isList = this.readers.map((reader) => reader.kind === "choice" && reader.isList);
    const figures: FigureArgument[] = [];
    const choices: ChoiceArgument[] = [];
    for (const [at, reader] of this.readers.entries()) {
      if (reader.kind === "choice")
        choices.push({ at, reader, words: new Words(reader), digit: MOST_WORDS ** choices.length });
      else figures.push({ at, reader, column: figures.length, blank: blankOf(reader) });
    }
    this.figures = figures;
    this.choices = choices;
    this.plans = new Plans(figures.map(({ reader }) => inputOf(reader)));
  }

  mayBeBlank(at: number): boolean {
    const reader = this.readers[at];
    if (reader?.kind === "choice") return reader.mayBeBlank;
    return reader?.kind === "figure" && reader.otherwise !== undefined;
  }

  /**
   * What the formula gives for a row's cells; throws their fault. With `words`, the number of the row's choices, the way it
   * went is learned, and a plan given back where that is new.
   */
  exact(cellOf: (at: number) => unknown, words?: number): { readonly result: Result; readonly plan: Plan | undefined } {
    const inputs: Quotient[] = [];
    const said: Said = (argument) => {
      const at = this.names.indexOf(argument);
      const reader = this.readers[at];
      return reader?.kind === "choice" ? reader.read(plainCell(cellOf(at)), argument) : undefined;
    };
    const values = this.readers.map((reader, at): (() => unknown) => {
      const name = this.names[at] ?? "";
      if (reader.kind === "choice") {
        // A list makes its own cells plain.
        const chosen = reader.read(reader.isList ? cellOf(at) : plainCell(cellOf(at)), name);
        return () => chosen;
      }
      const value = reader.read(plainCell(cellOf(at)), name, said);
      inputs.push(value);
      return () => reader.of(value);
    });
    const run = () => this.compute(Object.fromEntries(values.map((value, at) => [this.names[at], value()])) as Row);
    if (words === undefined) return { result: run(), plan: undefined };
    const { result, trace } = traced(inputs, run);
    return { result, plan: trace && this.plans.learn(words, trace) };
  }
}

function blankOf(reader: Figure<unknown> | MarkFigure<unknown>): number {
  return reader.kind === "mark" || reader.otherwise === undefined ? Number.NaN : Number(reader.otherwise);
}

function inputOf(reader: Figure<unknown> | MarkFigure<unknown>): Input {
  if (reader.kind === "mark") return { unsigned: true, whole: false };
  return { unsigned: !reader.rule.negative, whole: reader.rule.whole };
}
