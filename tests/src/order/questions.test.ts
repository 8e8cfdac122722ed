import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseOrder } from "../../../src/order/order";
import { orderQuestions } from "../../../src/order/questions";
import { ORDER, type Record_, ratesOf } from "../orders";

const { customer: _customer, spot: _spot, discount: _discount, ...LINE } = ORDER;
const RATES = ratesOf({ plating: "40" });

const asked = (...lines: readonly Record_[]) => {
  const read = parseOrder(
    { order: { customer: "A. Customer" }, lines: lines.map((line) => ({ ...LINE, ...line })), extras: [] },
    RATES,
  );
  if (!read.ok) throw new Error(read.faults.map(({ sentence }) => sentence).join("\n"));
  return orderQuestions(read.value);
};
const keyOf = (line: Record_) => asked(line).map(({ key }) => key);

/** Each of them doubtful in one figure, and the same figure otherwise doubtful. */
const DOUBTFUL: readonly (readonly [what: string, line: Record_, otherwise: Record_])[] = [
  ["a piece plated with a metal nobody has named", { colour: "white" }, { colour: "white", design: "Another" }],
  ["a link that is too heavy", { linkWeight: "75" }, { linkWeight: "76" }],
  ["a link that is too light", { linkWeight: "0.02" }, { linkWeight: "0.021" }],
];

describe.each(DOUBTFUL)("%s", (_what, line, otherwise) => {
  test("is one question, not a fault, with its answers in words", () => {
    const [first, ...more] = asked(line);
    expect(more).toEqual([]);
    expect(first?.sentence).toMatch(/\?( |$)/);
    expect(first?.answers.map(({ words }) => words).every((words) => words !== "")).toBe(true);
    // Whoever is sure can say so.
    expect(first?.answers.some(({ does }) => does !== "go")).toBe(true);
  });

  test("is the same question for the same figure, and another for another", () => {
    expect(keyOf(line)).toEqual(keyOf(line));
    expect(keyOf(otherwise)).not.toEqual(keyOf(line));
    expect(asked(line, {}, line).map(({ lines }) => lines)).toEqual([[0, 2]]);
  });
});

test("a usual line is asked nothing", () => {
  expect(asked({})).toEqual([]);
});

test("of the weight of a link it is asked outside 0.05 to 60 g, and there always", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1_000_000 }), (thousandths) => {
      const linkWeight = (thousandths / 1000).toFixed(3);
      expect(asked({ linkWeight }).length).toBe(thousandths < 50 || thousandths > 60_000 ? 1 : 0);
    }),
  );
});
