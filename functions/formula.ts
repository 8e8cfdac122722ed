import { type CellReading, ColumnDriver, type ColumnInput, type Quotient, type Value, type Watch } from "../src/index";
import { plainCell } from "./grid";
import type { Choice, Figure, MarkFigure, Reader, Said } from "./readers";
import { MOST_WORDS, Words } from "./words";

export type Readers<Row> = { readonly [Name in keyof Row]: Reader<Row[Name]> };

/** An argument that the formula computes with: the `column`-th of its columns. */
export interface FigureArgument {
  readonly at: number;
  readonly reader: Figure<unknown> | MarkFigure<unknown>;
  readonly column: number;
  readonly reading: CellReading;
}

/** An argument that chooses the way through the formula. */
export interface ChoiceArgument {
  readonly at: number;
  readonly reader: Choice<unknown>;
  readonly words: Words;
  /** A row's choice key is the sum of its choices' numbers, each times its digit. */
  readonly digit: number;
}

export type Result = Value | readonly Value[];

/** A worksheet function's formula: its arguments, the exact computing of one row, and the driver that computes many. */
export class Formula<Row extends object> {
  readonly names: readonly string[];
  readonly figures: readonly FigureArgument[];
  readonly choices: readonly ChoiceArgument[];
  readonly driver: ColumnDriver;
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
      else figures.push({ at, reader, column: figures.length, reading: readingOf(reader) });
    }
    this.figures = figures;
    this.choices = choices;
    this.driver = new ColumnDriver(figures.map(({ reader }) => inputOf(reader)));
  }

  mayBeBlank(at: number): boolean {
    const reader = this.readers[at];
    if (reader?.kind === "choice") return reader.mayBeBlank;
    return reader?.kind === "figure" && reader.otherwise !== undefined;
  }

  /** What the formula gives for a row's cells, by `watch`; throws their fault. */
  exact(cellOf: (at: number) => unknown, watch: Watch): Result {
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
    return watch(inputs, () =>
      this.compute(Object.fromEntries(values.map((value, at) => [this.names[at], value()])) as Row),
    );
  }
}

function readingOf(reader: Figure<unknown> | MarkFigure<unknown>): CellReading {
  if (reader.kind === "mark") return { kind: "mark", as: reader.as };
  const { rule, otherwise } = reader;
  return { kind: "figure", rule, blank: otherwise === undefined ? Number.NaN : Number(otherwise) };
}

function inputOf(reader: Figure<unknown> | MarkFigure<unknown>): ColumnInput {
  if (reader.kind === "mark") return { mark: true, unsigned: true, whole: false };
  return { mark: false, unsigned: !reader.rule.negative, whole: reader.rule.whole };
}
