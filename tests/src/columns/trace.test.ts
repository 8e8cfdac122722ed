import { describe, expect, test } from "vitest";
import { traced } from "../../../src/columns/trace";
import type { NumberRule } from "../../../src/exact/numberrule";
import { Quotient } from "../../../src/exact/quotient";
import { readNumber } from "../../../src/reading/number";

const [two, three] = ["2", "3"];
const of = (...texts: readonly string[]) => texts.map((text) => Quotient.of(text));

test("a formula's steps are written down in their order, with what it asked on the way", () => {
  const [a, b] = of("5", "2") as [Quotient, Quotient];
  const { result, trace } = traced([a, b], () => (a.isLessThan(b) ? a : a.minus(b).dividedBy(Quotient.of("4"))));
  expect((result as Quotient).value().toString()).toBe("0.75");
  expect(trace?.steps.map(({ kind }) => kind)).toEqual(["input", "input", "minus", "constant", "dividedBy"]);
  expect(trace?.steps.at(-1)).toMatchObject({ a: 2, b: 3 });
  // "Not less" is level or above.
  expect(trace?.comparisons).toEqual([{ a: 0, b: 1, signs: [0, 1] }]);
  expect(trace?.outputs).toEqual([4]);
});

test("adding nothing and multiplying or dividing by one leave no step", () => {
  const [a] = of("5") as [Quotient];
  const { trace } = traced([a], () =>
    Quotient.zero.plus(a).times(Quotient.one).dividedBy(Quotient.one).minus(Quotient.zero),
  );
  expect(trace?.steps).toHaveLength(1);
  expect(trace?.outputs).toEqual([0]);
});

test("the larger of a value and one, or nothing, is a step", () => {
  const [a] = of("5") as [Quotient];
  const { trace } = traced([a], () => [a.larger(Quotient.one), a.smaller(Quotient.zero), Quotient.one.larger(a)]);
  expect(trace?.steps.flatMap((step) => ("b" in step ? [step.kind] : []))).toEqual(["larger", "smaller", "larger"]);
});

test("a cell that is read on the way is an input, each time it is read", () => {
  const rule = { right: "a number" };
  const fields = new Map([["Length", 1]]);
  const { trace } = traced(
    [Quotient.of("2"), undefined],
    () => {
      const [first, again] = [readNumber(5, "Length", rule), readNumber(5, "Length", rule)];
      return first.times(again).plus(readNumber(7, "Width", rule));
    },
    fields,
  );
  expect(trace?.steps.slice(2)).toMatchObject([{ kind: "times", a: 1, b: 1 }, { kind: "constant" }, { kind: "plus" }]);
  expect([...(trace?.rules ?? [])]).toEqual([[1, rule]]);
});

test("a cell that is read by two rules gives no trace: a row would have to pass both", () => {
  const above: NumberRule = { above: "0", right: "a number above 0" };
  const upTo: NumberRule = { most: "100", right: "a number up to 100" };
  const fields = new Map([["Length", 0]]);
  const read = (first: NumberRule, second: NumberRule) =>
    traced([undefined], () => readNumber(5, "Length", first).plus(readNumber(5, "Length", second)), fields);
  expect(read(above, upTo).trace).toBeUndefined();
  expect(read(above, upTo).result.value().toString()).toBe("10");
  expect(read(above, above).trace).toBeDefined();
});

test("rows that go another way have another path, rows that go the same way have the same", () => {
  const path = (text: string) => {
    const [a] = of(text) as [Quotient];
    return traced([a], () => (a.isGreaterThan(Quotient.one) ? a : a.times(Quotient.of("2")))).trace?.path;
  };
  expect(path(three)).toBe(path(two));
  expect(path(three)).not.toBe(path("0.5"));
});

test("a formula that reads a value as a decimal has no trace, but its result", () => {
  const [a] = of("5") as [Quotient];
  const { result, trace } = traced([a], () => Quotient.of(a.value().plus(1)));
  expect(result.value().toString()).toBe("6");
  expect(trace).toBeUndefined();
});

test("texts and booleans are outputs as they are, and what fails is thrown", () => {
  const [a] = of("5") as [Quotient];
  expect(traced([a], () => [a.isPositive(), "make"]).trace?.outputs).toEqual([true, "make"]);
  expect(() => traced([a], () => a.dividedBy(Quotient.zero).isZero())).toThrow("divided by zero");
  // Nothing listens afterwards.
  expect(a.plus(a).value().toString()).toBe("10");
});

describe("a formula run within another", () => {
  const inner = (of: Quotient) => traced([], () => of.times(Quotient.of("3"))).result;

  test("leaves the outer one its trace: what follows is written down", () => {
    const [a] = of("5") as [Quotient];
    const { trace } = traced([a], () => {
      inner(Quotient.one);
      return a.plus(a);
    });
    expect(trace?.steps.map(({ kind }) => kind)).toEqual(["input", "plus"]);
  });

  test("leaves it also where it throws", () => {
    const [a] = of("5") as [Quotient];
    const { trace } = traced([a], () => {
      expect(() => traced([], () => Quotient.one.dividedBy(Quotient.zero))).toThrow("divided by zero");
      return a.plus(a);
    });
    expect(trace?.steps.map(({ kind }) => kind)).toEqual(["input", "plus"]);
  });

  test("and what it does with the outer one's values is a step of both", () => {
    const [a] = of("5") as [Quotient];
    const { result, trace } = traced([a], () => inner(a).plus(Quotient.one));
    expect(result.value().toString()).toBe("16");
    expect(trace?.steps.map(({ kind }) => kind)).toEqual(["input", "constant", "times", "constant", "plus"]);
    expect(traced([a], () => traced([], () => a.value().toString()).result).trace).toBeUndefined();
  });

  test("gives the outer one no trace where it reads a cell under a name of the outer's: whose cell it is, cannot be told", () => {
    const rule = { right: "a number" };
    const read = () => readNumber(5, "Length", rule);
    const fields = new Map([["Length", 0]]);
    expect(traced([undefined], () => traced([], () => read().plus(read())).result, fields).trace).toBeUndefined();
    expect(traced([undefined], read, fields).trace).toBeDefined();
    expect(traced([undefined], () => traced([], read).result, new Map([["Width", 0]])).trace).toBeDefined();
  });
});
