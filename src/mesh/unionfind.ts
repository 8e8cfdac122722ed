/** Numbers from 0 joined into groups, two at a time. Source: union-find with path halving (Tarjan and van Leeuwen): from memory. */
export class Groups {
  private readonly towards: Int32Array;

  constructor(count: number) {
    this.towards = new Int32Array(count);
    for (let number = 0; number < count; number += 1) this.towards[number] = number;
  }

  /** The group that a number belongs to, named by its lowest number. */
  of(number: number): number {
    const { towards } = this;
    let at = number;
    let next = towards[at] ?? at;
    while (next !== at) {
      const after = towards[next] ?? next;
      towards[at] = after;
      at = after;
      next = towards[at] ?? at;
    }
    return at;
  }

  join(a: number, b: number): void {
    const first = this.of(a);
    const second = this.of(b);
    if (first !== second) this.towards[Math.max(first, second)] = Math.min(first, second);
  }
}
