import { describe, expect, test } from "vitest";
import type { Output } from "../../../src/columns/answers";
import type { Block } from "../../../src/columns/block";
import { ColumnDriver, type RowSource, UNREAD, type Watch } from "../../../src/columns/driver";
import { BLOCK, type Rows } from "../../../src/columns/lines";
import { Quotient } from "../../../src/exact/quotient";
import { roundedRatio, scaled, ten } from "../../functions/rows";

type Formula = (a: Quotient, b: Quotient) => Quotient;

const INPUT = { mark: false, unsigned: true, whole: false };

/** Rows of two figures, computed by one formula; `meanwhile` happens whenever the driver hands something over. */
class TwoFigures implements RowSource {
  readonly answers: number[] = [];
  readonly exactly: number[] = [];

  constructor(
    private readonly rows: readonly (readonly [number, number])[],
    private readonly formula: Formula,
    private readonly meanwhile: () => void = () => {},
    private readonly keyOf: (row: number) => number = () => 0,
  ) {}

  get count(): number {
    return this.rows.length;
  }

  begin(): boolean {
    return true;
  }

  read(block: Block, first: number, count: number, keys: Float64Array): undefined {
    for (let k = 0; k < count; k += 1) {
      const [a, b] = this.rows[first + k] ?? [0, 0];
      block.columns[0]?.values.set([a], k);
      block.columns[1]?.values.set([b], k);
      keys[k] = this.keyOf(first + k);
    }
  }

  take(first: number, { at, count }: Rows, open: Uint8Array, [line]: readonly Output[]): void {
    this.meanwhile();
    for (let k = 0; k < count; k += 1)
      if (open[k] === 0 && typeof line === "object") this.answers[first + (at?.[k] ?? k)] = line[k] ?? Number.NaN;
  }

  exact(row: number, watch: Watch): void {
    this.exactly.push(row);
    const [a, b] = (this.rows[row] ?? []).map((cell) => Quotient.of(cell.toPrecision(15))) as [Quotient, Quotient];
    this.answers[row] = watch([a, b], () => {
      const answer = this.formula(a, b);
      this.meanwhile();
      return answer;
    }).toNumber();
  }
}

// a x b to cents, half of it exact half cents: 0.5, 1.5, … x 0.01, 0.03, …
const products = Array.from({ length: 5000 }, (_, n) => [(n % 40) + 0.5, (((n * 7) % 100) + 1) / 100] as const);
const toCents: Formula = (a, b) => a.times(b).toDecimals(2);
const cents = products.map(([a, b]) => {
  const [x, y] = [scaled(a), scaled(b)];
  return roundedRatio(x.digits * y.digits, ten(x.places + y.places), 2).value;
});

// (a + b) / (a - b), nearest double: for whole numbers below 2^53 that is the double division of them.
const ratios = Array.from({ length: 3000 }, (_, n) => [1000 + n, n % 900] as const);
const ratioOf: Formula = (a, b) => a.plus(b).dividedBy(a.minus(b));
const quotients = ratios.map(([a, b]) => (a + b) / (a - b));

describe("two runs", () => {
  test("of different formulas between each other's blocks, and within each other's exact rows, have each their own answers", () => {
    const inner = new ColumnDriver([INPUT, INPUT]);
    const outer = new ColumnDriver([INPUT, INPUT]);
    const found: (readonly number[])[] = [];
    const some = ratios.slice(0, 300);
    const source = new TwoFigures(products, toCents, () => {
      const within = new TwoFigures(some, ratioOf);
      inner.run(within);
      found.push(within.answers);
    });
    outer.run(source);
    expect(source.answers).toEqual(cents);
    // As often as there are blocks, tiers and rows computed exactly: more than there are blocks.
    expect(found.length).toBeGreaterThan(products.length / BLOCK + source.exactly.length);
    for (const each of found) expect(each).toEqual(quotients.slice(0, 300));
  });

  test("of one driver, the second between the blocks of the first, do not read each other's rows", () => {
    const driver = new ColumnDriver([INPUT, INPUT]);
    let depth = 0;
    const found: (readonly number[])[] = [];
    const run = (rows: typeof products): readonly number[] => {
      depth += 1;
      const source = new TwoFigures(rows, toCents, () => {
        if (depth < 3) found.push(run(products.slice(depth * 100, depth * 100 + 50)));
      });
      driver.run(source);
      depth -= 1;
      return source.answers;
    };
    for (const _ of ["learning", "known"]) expect(run(products)).toEqual(cents);
    expect(found).toContainEqual(cents.slice(100, 150));
    expect(found).toContainEqual(cents.slice(200, 250));
  });

  test("of which one throws leave the other its answers, and the next run all it needs", () => {
    const driver = new ColumnDriver([INPUT, INPUT]);
    const stopped = () => driver.run(new TwoFigures(products, toCents, () => expect.fail("stopped")));
    const source = new TwoFigures(products, toCents, () => expect(stopped).toThrow("stopped"));
    driver.run(source);
    expect(source.answers).toEqual(cents);
  });
});

describe("rows", () => {
  test("of one way are computed exactly once, then not at all", () => {
    const driver = new ColumnDriver([INPUT, INPUT]);
    const [first, second] = [new TwoFigures(products, toCents), new TwoFigures(products, toCents)];
    driver.run(first);
    driver.run(second);
    expect(first.exactly).toEqual([0]);
    expect(second.exactly).toEqual([]);
    expect(second.answers).toEqual(cents);
  });

  test("of different keys are learned apart, and those that cannot be read are computed exactly", () => {
    const driver = new ColumnDriver([INPUT, INPUT], { together: 2 * BLOCK });
    const source = new TwoFigures(products, toCents, undefined, (row) => (row === 4321 ? UNREAD : row % 3));
    driver.run(source);
    expect(source.answers).toEqual(cents);
    expect([...source.exactly].sort((a, b) => a - b)).toEqual([0, 1, 2, 4321]);
  });

  test("of more ways than are remembered are still right", () => {
    // A way of its own for each number of halvings.
    const halved: Formula = (a, b) => {
      let rest = a;
      while (rest.isGreaterThan(b)) rest = rest.dividedBy(Quotient.of("2"));
      return rest.toDecimals(3);
    };
    const rows = Array.from({ length: 200 }, (_, n) => [2 ** (n % 40), 1] as const);
    const source = new TwoFigures(rows, halved);
    new ColumnDriver([INPUT, INPUT]).run(source);
    expect(source.answers).toEqual(rows.map(() => 1));
  });

  test("learned where two values are equal are right where they are not, and the other way about (hand arithmetic)", () => {
    const rows = [
      [5, 5],
      [7, 5],
      [5, 7],
      [5, 5],
      [7, 7],
      [7, 5],
    ] as const;
    const answers: readonly (readonly [Formula, readonly number[]])[] = [
      [(a, b) => a.minus(b), [0, 2, -2, 0, 0, 2]],
      [(a, b) => a.minus(b).dividedBy(b), [0, 0.4, -2 / 7, 0, 0, 0.4]],
      [(a, b) => (a.equals(b) ? a.plus(b) : a.times(b)), [10, 35, 35, 10, 14, 35]],
      [(a, b) => (a.compare(b) === 0 ? a : a.minus(b)), [5, 2, -2, 5, 7, 2]],
      [(a, b) => (a.isGreaterThan(b) ? a.minus(b) : b.plus(a)), [10, 2, 12, 10, 14, 2]],
      [(a, b) => (a.isLessThan(b) ? a.minus(b) : b.plus(a)), [10, 12, -2, 10, 14, 12]],
      [(a, b) => (a.minus(b).isZero() ? a : b), [5, 5, 7, 5, 7, 5]],
      [(a, b) => a.larger(b).minus(a.smaller(b)), [0, 2, 2, 0, 0, 2]],
      [(a, b) => a.dividedBy(b).ceil().plus(a.dividedBy(b).floor()), [2, 3, 1, 2, 2, 3]],
    ];
    for (const [formula, expected] of answers)
      for (let from = 0; from < rows.length; from += 1) {
        // Each row is the first once: what is learned from it is used for all others.
        const turned = <T>(list: readonly T[]) => [...list.slice(from), ...list.slice(0, from)];
        const driver = new ColumnDriver([INPUT, INPUT]);
        for (const _ of ["learning", "known"]) {
          const source = new TwoFigures(turned(rows), formula);
          driver.run(source);
          expect(source.answers, `${formula} from ${from}`).toEqual(turned(expected));
        }
      }
  });
});
