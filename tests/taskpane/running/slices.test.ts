import fc from "fast-check";
import { expect, test } from "vitest";
import { Cancelled, inSlices } from "../../../taskpane/running/slices";

const nobody = new AbortController().signal;

test("every item is worked on once and in order, however many", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.integer(), { maxLength: 60 }), async (items) => {
      const parts = await inSlices(items, (slice) => [...slice], { progress: () => undefined, signal: nobody });
      expect(parts.flat()).toEqual(items);
    }),
    { numRuns: 20 },
  );
});

test("progress grows to the whole", async () => {
  const shares: number[] = [];
  await inSlices([...Array(50).keys()], (slice) => slice, { progress: (share) => shares.push(share), signal: nobody });
  expect(shares.at(-1)).toBe(1);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
});

test("called off, no further slice is worked on", async () => {
  const abort = new AbortController();
  let worked = 0;
  const work = inSlices(
    [...Array(1000).keys()],
    (slice) => {
      worked += slice.length;
      abort.abort();
    },
    { progress: () => undefined, signal: abort.signal },
  );
  await expect(work).rejects.toThrow(Cancelled);
  expect(worked).toBeLessThan(1000);
});
