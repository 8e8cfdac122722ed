/** Rows in their order, those of each group together; those of none, marked -1, first. */
export function* ordered(
  groupAt: Int16Array,
  groups: number,
): Iterable<readonly [group: number, order: Uint16Array<ArrayBuffer>]> {
  // How many rows are before those of a group; the group -1 is at 0.
  const before = new Int32Array(groups + 2);
  for (const group of groupAt) before[group + 2] = (before[group + 2] ?? 0) + 1;
  for (let at = 1; at < before.length; at += 1) before[at] = (before[at] ?? 0) + (before[at - 1] ?? 0);
  const order = new Uint16Array(groupAt.length);
  const next = before.slice();
  for (let row = 0; row < groupAt.length; row += 1) {
    const group = groupAt[row] ?? 0;
    const at = next[group + 1] ?? 0;
    order[at] = row;
    next[group + 1] = at + 1;
  }
  for (let group = -1; group < groups; group += 1) {
    const rows = order.subarray(before[group + 1], before[group + 2]);
    if (rows.length > 0) yield [group, rows];
  }
}
