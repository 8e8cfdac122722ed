import { expect, test } from "vitest";
import { alloyDensity } from "../../../src/gold/alloy";
import { fineness, parseMark } from "../../../src/gold/mark";
import { TYPICAL_ALLOYS } from "../../../src/gold/typicalalloy";
import { published } from "../published";

const { rows } = published<{
  rows: readonly { composition: Readonly<Record<string, string>>; density: string; tolerance: string }[];
}>("alloy-density.json");
const named = (mark: string, colour: string) => {
  const alloy = TYPICAL_ALLOYS.find((each) => each.mark === mark && each.colour === colour);
  if (!alloy) throw new Error(`no ${mark} ${colour}`);
  return alloy;
};

test.each([
  ["10K", "yellow", "11.57"],
  ["14K", "yellow", "13.33"],
  ["18K", "rose", "15.18"],
])("%s %s is the published composition, and its density the published %s", (mark, colour, density) => {
  const { parts } = named(mark, colour);
  const row = rows.find((each) => each.density === density);
  expect(Object.fromEntries(parts.map((part) => [part.metal, part.parts.value().toString()]))).toEqual(
    row?.composition,
  );
  const off = alloyDensity(parts).toNumber() / Number(density) - 1;
  expect(Math.abs(off)).toBeLessThanOrEqual(Number(row?.tolerance));
});

test("each holds the gold its mark says, to a part in a thousand", () => {
  for (const { mark, parts } of TYPICAL_ALLOYS) {
    const all = parts.reduce((sum, part) => sum + part.parts.toNumber(), 0);
    const gold = parts.find((part) => part.metal === "Au")?.parts.toNumber() ?? 0;
    expect(Math.abs((1000 * gold) / all - fineness(parseMark(mark)).toNumber())).toBeLessThan(1);
  }
});
