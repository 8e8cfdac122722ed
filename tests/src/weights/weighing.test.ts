import { describe, expect, test } from "vitest";
import { parseWeighIn, type WeighInKey } from "../../../src/weights/weighing";

const typed: Record<WeighInKey, string> = {
  job: "1001",
  stage: "cast",
  model: "Ada curb",
  width: "8",
  mark: "14 kt",
  colour: "yellow",
  pieces: "10",
  weight: "13.182 dwt",
  sent: "",
  who: "Bram",
  note: "",
};
const faults = (changes: Partial<typeof typed>) => {
  const parsed = parseWeighIn({ ...typed, ...changes });
  return parsed.ok ? [] : parsed.faults.map(({ field, code }) => [field, code]);
};

describe("a weigh-in", () => {
  test("is read with its weight in grams and its mark in one manner of writing", () => {
    const parsed = parseWeighIn(typed);
    if (!parsed.ok) throw new Error(parsed.faults[0]?.sentence);
    const { mark, weight, pieces, stage, width } = parsed.value;
    expect([mark, stage, pieces.toNumber(), width?.toNumber()]).toEqual(["14K", "cast", 10, 8]);
    // 13.182 x 1.55517384, by hand: 13 x 1.55517384 = 20.21725992; 0.182 x 1.55517384 = 0.28304163888.
    expect(weight.grams.value().toString()).toBe("20.50030155888");
  });

  test("tells every fault at once", () => {
    expect(faults({ model: " ", pieces: "2.5", weight: "", mark: "gold" })).toEqual([
      ["model", "blank"],
      ["pieces", "outOfRange"],
      ["weight", "blank"],
      ["mark", "unknownMark"],
    ]);
    expect(faults({ stage: "melted", width: "-1", pieces: "0" })).toEqual([
      ["stage", "unknownWord"],
      ["width", "outOfRange"],
      ["pieces", "outOfRange"],
    ]);
  });

  test("is not of more pieces than were sent", () => {
    expect(faults({ stage: "polished", sent: "10" })).toEqual([]);
    expect(faults({ stage: "polished", sent: "9" })).toEqual([["sent", "outOfRange"]]);
    expect(faults({ stage: "polished", sent: "9.5", mark: "gold" })).toEqual([
      ["sent", "outOfRange"],
      ["mark", "unknownMark"],
    ]);
  });

  test("needs no mark while it is a model of wax or resin", () => {
    expect(faults({ mark: "", stage: "model" })).toEqual([]);
    expect(faults({ mark: "", stage: "cast" })).toEqual([["mark", "blank"]]);
  });
});
