import { describe, expect, test } from "vitest";
import { examineModel, Quotient, readStl, type Weight } from "../../../src/index";
import { shapeOf } from "../../../taskpane/modelfile/shape";
import { type Choices, weighSolids } from "../../../taskpane/modelfile/weighing";
import { binaryStl, boxAt } from "../../src/modelfile";

const q = (text: string) => Quotient.of(text);
const modelOf = (...geometries: Parameters<typeof boxAt>[]) =>
  examineModel(readStl(binaryStl(...geometries.map((each) => boxAt(...each)))).mesh);
/** Volumes 24, 8 and 1. */
const THREE = modelOf(
  [
    [1, 1, 1],
    [9, 0, 0],
  ],
  [
    [2, 3, 4],
    [0, 0, 0],
  ],
  [
    [2, 2, 2],
    [-9, 0, 0],
  ],
);

const CHOICES: Choices = {
  unit: "mm",
  ticked: new Set([0, 1]),
  density: q("10"),
  scale: q("1"),
  shrinkage: q("0"),
  links: q("2"),
};
const weigh = (choices: Partial<Choices>) => {
  const { weights, ticked, link, withSprue, faulty } = weighSolids(THREE, { ...CHOICES, ...choices });
  const shown = (weight: Weight | undefined) => weight?.grams.value().toString();
  return {
    weights: weights.map(shown),
    ticked: shown(ticked),
    link: shown(link?.weight),
    withSprue: shown(withSprue),
    faulty,
  };
};

describe("solids of 24, 8 and 1 mm³ at 10 g/cm³", () => {
  test("weigh 0.24, 0.08 and 0.01 g; the ticked two 0.32 g, one of two links 0.16 g, all 0.33 g", () => {
    expect(weigh({})).toEqual({
      weights: ["0.24", "0.08", "0.01"],
      ticked: "0.32",
      link: "0.16",
      withSprue: "0.33",
      faulty: [],
    });
  });

  test("are a cast weight: no file says what polishing takes", () => {
    expect(weighSolids(THREE, CHOICES).link?.stage).toBe("cast");
  });

  test("in inches they weigh 16387.064 times as much; at half scale an eighth", () => {
    expect(weigh({ unit: "in" }).ticked).toBe("5243.86048");
    expect(weigh({ scale: q("0.5") }).ticked).toBe("0.04");
  });

  test("all ticked: there is no sprue to add", () => {
    expect(weigh({ ticked: new Set([0, 1, 2]) })).toMatchObject({ ticked: "0.33", withSprue: undefined });
  });

  test.each(["unit", "density", "scale", "shrinkage"] as const)("without %s nothing is weighed", (open) => {
    expect(weigh({ [open]: undefined })).toMatchObject({ ticked: undefined, link: undefined, withSprue: undefined });
  });

  test("without a tick, or without a number of links, there is no link", () => {
    expect(weigh({ ticked: new Set() }).link).toBeUndefined();
    expect(weigh({ links: undefined })).toMatchObject({ ticked: "0.32", link: undefined });
  });
});

test("two links alike in one file are told from the parts of one link by their volumes", () => {
  const alikeIn = (model: ReturnType<typeof modelOf>, ...ticked: number[]) =>
    weighSolids(model, { ...CHOICES, ticked: new Set(ticked) }).areAlike;
  const twins = modelOf(
    [
      [2, 3, 4],
      [0, 0, 0],
    ],
    [
      [4, 3, 2],
      [9, 0, 0],
    ],
  );
  expect([alikeIn(twins, 0, 1), alikeIn(twins, 0), alikeIn(THREE, 0, 1)]).toEqual([true, false, false]);
  // Two links of 24 mm³ each at 10 g/cm³: 0.24 g one.
  const { link } = weighSolids(twins, { ...CHOICES, links: q("2") });
  expect(link?.weight.grams.value().toString()).toBe("0.24");
});

test("a ticked solid without a volume stops the sum and is named", () => {
  const stl = binaryStl(boxAt([2, 3, 4], [0, 0, 0]), boxAt([1, 1, 1], [9, 0, 0]));
  const cut = stl.slice(0, stl.length - 50);
  new DataView(cut.buffer).setUint32(80, 23, true);
  const report = examineModel(readStl(cut).mesh);
  const { faulty, ticked } = weighSolids(report, CHOICES);
  expect([faulty, ticked]).toEqual([[1], undefined]);
  expect(
    weighSolids(report, { ...CHOICES, ticked: new Set([0]) })
      .ticked?.grams.value()
      .toString(),
  ).toBe("0.24");
});

test("a picture's triangles are sorted by solid, about the middle of the model", () => {
  const { counts, index, corners, size } = shapeOf(THREE);
  expect([counts, index.length, size]).toEqual([[12, 12, 12], 108, [19.5, 3, 4]]);
  const xs = (solid: number) =>
    [...index.subarray(36 * solid, 36 * solid + 36)].map((corner) => corners[3 * corner] ?? 0);
  // The box 2 x 3 x 4 lies at 0; the model goes from -10 to 9.5.
  expect([Math.min(...xs(0)), Math.max(...xs(0))]).toEqual([-0.75, 1.25]);
  expect([Math.min(...xs(1)), Math.max(...xs(2))]).toEqual([-9.75, 9.75]);
});
