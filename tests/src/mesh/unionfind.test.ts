import fc from "fast-check";
import { expect, test } from "vitest";
import { Groups } from "../../../src/mesh/unionfind";

test("numbers are in one group where joins lead from one to the other, and the group is called by its lowest", () => {
  const number = fc.integer({ min: 0, max: 14 });
  fc.assert(
    fc.property(fc.array(fc.tuple(number, number), { maxLength: 20 }), (joins) => {
      const groups = new Groups(15);
      for (const [a, b] of joins) groups.join(a, b);
      // The reference walks from neighbour to neighbour.
      const reached = (from: number): Set<number> => {
        const seen = new Set([from]);
        for (const at of seen)
          for (const [a, b] of joins)
            for (const [p, q] of [
              [a, b],
              [b, a],
            ])
              if (p === at && q !== undefined) seen.add(q);
        return seen;
      };
      for (let from = 0; from < 15; from += 1) expect(groups.of(from)).toBe(Math.min(...reached(from)));
    }),
  );
});
