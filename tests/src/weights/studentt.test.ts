import { expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { grams } from "../../../src/units/weight";
import { studentT95 } from "../../../src/weights/studentt";
import { meanWeight } from "../../../src/weights/weighingmean";
import { published } from "../published";

interface Table {
  readonly source: string;
  readonly seen: string;
  readonly rows: readonly { readonly freedom: number; readonly t: string }[];
}
const table = published<Table & { readonly others: Table }>("student-t.json");

test.each(
  [table, table.others].flatMap(({ source, seen, rows }) =>
    rows.map(({ freedom, t }) => [t, freedom, `${source}: ${seen}`] as const),
  ),
)("Student's t is %s at %i degrees of freedom (%s)", (t, freedom) => {
  expect(studentT95(freedom).toFixed(3)).toBe(t);
});

test("it falls with every weighing more, without a jump, and stays above that of the normal distribution", () => {
  let before = studentT95(1);
  for (let freedom = 2; freedom <= 400; freedom += 1) {
    const now = studentT95(freedom);
    expect(now).toBeLessThan(before);
    // 1.959963984540054: the normal distribution's own, from memory.
    expect(now).toBeGreaterThan(1.959963984540054);
    if (freedom > 30) expect(before - now).toBeLessThan(0.003);
    before = now;
  }
});

test.each([31, 32, 33])("%i weighings know their mean by the t of one fewer", (weighings) => {
  const list = Array.from({ length: weighings }, (_, at) => ({
    pieces: Quotient.one,
    weight: grams(Quotient.of(at % 2 === 0 ? "2.00" : "2.02")),
  }));
  const { spread, within } = meanWeight(list);
  const known = (within?.grams.toNumber() ?? 0) / ((spread?.grams.toNumber() ?? 0) / Math.sqrt(weighings));
  // Table 1.3.6.7.2 as above, 30, 31 and 32 degrees.
  expect(known.toFixed(3)).toBe({ 31: "2.042", 32: "2.040", 33: "2.037" }[weighings]);
});
