/** The rows of each key together, in their order; keys in the order in which they are first met. @param count at most 2^16 rows */
export function* grouped(
  keys: Float64Array,
  count: number,
): Iterable<readonly [key: number, rows: Uint16Array<ArrayBuffer>]> {
  const groups: { readonly key: number; rows: number }[] = [];
  const groupOfKey = new Map<number, number>();
  const groupAt = new Uint16Array(count);
  let lastKey = Number.NaN;
  let group = 0;
  for (let row = 0; row < count; row += 1) {
    const key = keys[row] ?? 0;
    // Rows often have the key of the one before.
    if (key !== lastKey) {
      group = groupOfKey.get(key) ?? groups.length;
      if (group === groups.length) {
        groups.push({ key, rows: 0 });
        groupOfKey.set(key, group);
      }
      lastKey = key;
    }
    groupAt[row] = group;
    const of = groups[group];
    if (of) of.rows += 1;
  }
  const next = new Int32Array(groups.length);
  for (let at = 1; at < groups.length; at += 1) next[at] = (next[at - 1] ?? 0) + (groups[at - 1]?.rows ?? 0);
  const starts = next.slice();
  const order = new Uint16Array(count);
  for (let row = 0; row < count; row += 1) {
    const at = groupAt[row] ?? 0;
    order[next[at] ?? 0] = row;
    next[at] = (next[at] ?? 0) + 1;
  }
  for (const [at, { key }] of groups.entries()) yield [key, order.subarray(starts[at], next[at])];
}
