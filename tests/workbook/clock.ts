/** Milliseconds from now to another moment. @param at local time, as "2026-07-06T09:00:00" */
export function shiftTo(at: string): number {
  const shift = new Date(at).getTime() - Date.now();
  if (Number.isNaN(shift)) throw new Error(`"${at}" is no time; give one such as 2026-07-06T09:00:00`);
  return shift;
}

/** Makes a page's clock run ahead by some milliseconds, for all code in that page. */
export function shiftClock(page: Window & typeof globalThis, shift: number): void {
  const { Date: usual } = page;
  const now = () => usual.now() + shift;
  page.Date = new Proxy(usual, {
    construct: (target, given) => Reflect.construct(target, given.length === 0 ? [now()] : given),
    apply: () => new usual(now()).toString(),
    get: (target, key) => (key === "now" ? now : Reflect.get(target, key)),
  });
}

/** Local time to the second, in the form that shiftTo reads. */
export function localTime(date: Date): string {
  const two = (part: number) => String(part).padStart(2, "0");
  const day = [date.getFullYear(), date.getMonth() + 1, date.getDate()].map(two).join("-");
  return `${day}T${[date.getHours(), date.getMinutes(), date.getSeconds()].map(two).join(":")}`;
}
