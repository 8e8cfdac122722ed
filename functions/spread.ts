import { CostingError, isBlank, type Watch } from "../src/index";
import { answer, type Cell, cellsOf, toCellError } from "./cell";
import { type Call, RangeCells, SingleCells } from "./columns";
import { Formula, type Readers, type Result } from "./formula";
import { type Grid, gridOf, isSingle, plainCell } from "./grid";
import { Spill } from "./spill";

/** A cell or range for each argument; undefined or null for one left out. */
export type Cells<Row> = { readonly [Name in keyof Row]: unknown };

/**
 * Makes a worksheet function of a formula: ranges of equal shape go cell by cell, a single cell goes with each.
 * A cell of a range with a fault gives that fault in its own place; one whose range cells are all blank gives a blank.
 * A single call throws its fault, so that Excel shows the sentence. Several values a row give as many columns.
 */
export function spread<Row extends object>(
  readers: Readers<Row>,
  compute: (row: Row) => Result,
): (cells: Cells<Row>) => unknown[][] {
  const formula = new Formula(readers, compute);
  return (cells) => answer(() => oneRow(formula, cells) ?? manyRows(formula, cells));
}

/** The answer to single cells; undefined where one of them is a range. */
function oneRow<Row extends object>(formula: Formula<Row>, cells: Cells<Row>): unknown {
  const { names } = formula;
  const singles: unknown[] = [];
  let asRow = false;
  for (let at = 0; at < names.length; at += 1) {
    const given = cells[names[at] as keyof Row];
    asRow ||= Array.isArray(given);
    if (!Array.isArray(given) || formula.isList[at]) singles.push(given);
    else {
      if (given.length !== 1) return undefined;
      const row: unknown = given[0];
      if (!Array.isArray(row)) singles.push(row);
      else if (row.length === 1) singles.push(row[0]);
      else return undefined;
    }
  }
  const row = new SingleCells(formula, singles);
  formula.driver.run(row);
  const { answers } = row;
  // A bare cell for bare cells; Excel hands rows of cells, and takes them.
  return asRow || answers.length > 1 ? [answers] : answers[0];
}

function manyRows<Row extends object>(formula: Formula<Row>, cells: Cells<Row>): readonly (readonly Cell[])[] {
  const grids = formula.names.map((name) => gridOf(cells[name as keyof Row]));
  const isRange = grids.map((grid, at) => !isSingle(grid) && !formula.isList[at]);
  const ranges = grids.flatMap((grid, at) => (isRange[at] ? [{ name: formula.names[at] ?? "", grid }] : []));
  const lead = ranges[0]?.grid ?? [];
  sameShape(ranges);
  const call = { grids, isRange, keepsBlanks: !grids.some((_, at) => isRange[at] && !formula.mayBeBlank(at)) };
  const width = lead[0]?.length ?? 0;
  const spill = new Spill(lead);
  const isBlankRow = (i: number, j: number) => ranges.every(({ grid }) => isBlank(plainCell(grid[i]?.[j])));
  const exact = (row: number, watch: Watch) => {
    const i = Math.floor(row / width);
    const j = row % width;
    if (isBlankRow(i, j)) {
      spill.put(row, [""]);
      return;
    }
    try {
      const result = formula.exact((at) => cellFor(call, formula.isList[at] === true, at, i, j), watch);
      spill.put(row, cellsOf(result));
    } catch (error) {
      if (!(error instanceof CostingError)) throw error;
      spill.put(row, [toCellError(error)]);
    }
  };
  formula.driver.run(new RangeCells(formula, call, lead, spill, exact));
  return spill.cells();
}

function cellFor({ grids, isRange }: Call, isList: boolean, at: number, i: number, j: number): unknown {
  const grid = grids[at] ?? [];
  if (isList) return grid;
  return isRange[at] ? grid[i]?.[j] : grid[0]?.[0];
}

function sameShape(ranges: readonly { readonly name: string; readonly grid: Grid }[]): void {
  const shapes = ranges.map(({ name, grid }) => ({
    name,
    shape: `${grid.length} x ${grid[0]?.length ?? 0}`,
  }));
  const first = shapes[0];
  const other = shapes.find(({ shape }) => shape !== first?.shape);
  if (first && other) {
    throw new CostingError(
      "wrongShape",
      other.name,
      `found a range of ${other.shape} cells beside ${first.name} of ${first.shape}; give ranges of equal shape, or single cells`,
    );
  }
}
