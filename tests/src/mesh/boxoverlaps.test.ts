import fc from "fast-check";
import { expect, test } from "vitest";
import type { Box } from "../../../src/mesh/box";
import { boxesOverlap } from "../../../src/mesh/box";
import { meetingBoxes } from "../../../src/mesh/boxoverlaps";

test("boxes that overlap another are found, however they lie", () => {
  const side = fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 1, max: 5 }));
  const box = fc
    .tuple(side, side, side)
    .map(([x, y, z]): Box => ({ least: [x[0], y[0], z[0]], most: [x[0] + x[1], y[0] + y[1], z[0] + z[1]] }));
  fc.assert(
    fc.property(fc.array(box, { maxLength: 25 }), (boxes) => {
      const expected = boxes.flatMap((one, place) =>
        boxes.some((other, beside) => beside !== place && boxesOverlap(one, other)) ? [place] : [],
      );
      expect([...meetingBoxes(boxes)].sort((a, b) => a - b)).toEqual(expected);
    }),
  );
});

test("thousands in one place end soon, all of them meeting", () => {
  const box: Box = { least: [0, 0, 0], most: [1, 1, 1] };
  expect(meetingBoxes(Array.from({ length: 20_000 }, () => box)).size).toBe(20_000);
});
