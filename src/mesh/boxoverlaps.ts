import { type Box, boxesOverlap } from "./box";

/** After this many comparisons every box counts as meeting another. */
const MOST = 30_000_000;

/** Which of the boxes overlap another, by their index. Goes along x: only boxes that overlap there are compared. */
export function meetingBoxes(boxes: readonly Box[]): ReadonlySet<number> {
  const meeting = new Set<number>();
  const order = boxes.map((box, place) => ({ box, place })).sort((a, b) => a.box.least[0] - b.box.least[0]);
  let compared = 0;
  for (const [at, one] of order.entries()) {
    for (let beside = at + 1; beside < order.length; beside += 1) {
      const other = order[beside];
      if (!other || other.box.least[0] >= one.box.most[0]) break;
      compared += 1;
      if (!boxesOverlap(one.box, other.box)) continue;
      meeting.add(one.place);
      meeting.add(other.place);
    }
    if (compared > MOST) return new Set(boxes.keys());
  }
  return meeting;
}
