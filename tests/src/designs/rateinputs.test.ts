import { expect, test } from "vitest";
import { rateFiguresOf } from "../../../src/designs/rateinputs";
import { type Record_, ratesOf } from "../orders";

const read = (changes: Record_ = {}) => rateFiguresOf(() => ratesOf(changes));
const figure = (changes: Record_, field: string) => read(changes).figures.find((each) => each.field === field);

test("figures are the rates' own values with the doubles that stand for them", () => {
  const made = read({ spot: "2387.45" });
  const spot = made.figures.find(({ field }) => field === "Spot");
  expect(spot?.double).toBe(2387.45);
  expect(spot?.value).toBe(made.rates.spot.amount);
});

test("other figures leave the words as they are, other words do not", () => {
  const { words } = read();
  expect(read({ spot: "2500", castingFee: "2", markup: "45 %", workshop: "Another", nextNumber: "7" }).words).toBe(
    words,
  );
  for (const changes of [
    { currency: "EUR" },
    { lossBasis: "cast", loss: "0.02" },
    { costBasis: "finished" },
    { taxIs: "in the price" },
    { priceBy: "margin", margin: "0.3" },
    { plating: "12" },
    { overhead: "0.05" },
  ])
    expect(read(changes).words).not.toBe(words);
});

test("a figure of more digits than a cell has is kept among the words", () => {
  const long = { spot: "2387.450000000000000001" };
  expect(figure(long, "Spot")).toBeUndefined();
  expect(read(long).words).toContain("2387.450000000000000001/1");
  expect(read(long).words).not.toBe(read({ spot: "2387.450000000000000002" }).words);
});

test("a figure given in per cent is its share", () => {
  expect(figure({ markup: "30 %" }, "Markup")?.double).toBe(0.3);
});
