import { describe, expect, test } from "vitest";
import { readWeightList } from "../../../src/units/weightlist";

const said = (given: string | readonly unknown[]) =>
  readWeightList(given, "Weight").map((each) => (each.ok ? each.weight.grams.value().toString() : each.sentence));

describe("a list of weights", () => {
  test("stands one a line, with semicolons, spaces, or a comma and a space between", () => {
    expect(said("8\n12.5\r\n20")).toEqual(["8", "12.5", "20"]);
    expect(said(" 8; 12.5;20 ")).toEqual(["8", "12.5", "20"]);
    expect(said("8 12.5\t20")).toEqual(["8", "12.5", "20"]);
    expect(said("8, 12.5, 20")).toEqual(["8", "12.5", "20"]);
    expect(said("")).toEqual([]);
  });

  test("a unit belongs to the figure before it: 8 dwt are 12.44139072 g, 1 ozt 31.1034768 g (UCUM)", () => {
    expect(said("8 dwt 1ozt 5 g; 7")).toEqual(["12.44139072", "31.1034768", "5", "7"]);
  });

  test("cells are numbers or texts; blank ones are passed over", () => {
    expect(said([8, "", null, "12.5 g", " ", 20.5])).toEqual(["8", "12.5", "20.5"]);
  });

  test("what is no weight is told by its place, and keeps no other from being read", () => {
    const [zero, first, word, comma, oz] = said("0; 5; heavy; 8,5; 3 oz");
    expect(first).toBe("5");
    expect(zero).toMatch(/^Weight 1: found "0"; give grams above 0/);
    expect(word).toMatch(/^Weight 3: found "heavy"/);
    expect(comma).toMatch(/^Weight 4: found "8,5".*a comma where a point would be right/);
    expect(oz).toMatch(/^Weight 5: found "3 oz", in a unit that is not known here/);
  });
});
