/** Keeps the focused element where it is on the screen while a part above it grows or shrinks; call what it gives after. */
export function hold(changing: HTMLElement): () => void {
  const held = document.activeElement;
  if (!held || held === document.body || changing.contains(held)) return () => undefined;
  const before = held.getBoundingClientRect().top;
  return () => window.scrollBy({ top: held.getBoundingClientRect().top - before, behavior: "instant" });
}

/** Keeps one element where it is on the screen while what is around it grows or shrinks; call what it gives after. */
export function steady(held: HTMLElement): () => void {
  const before = held.getBoundingClientRect().top;
  return () => window.scrollBy({ top: held.getBoundingClientRect().top - before, behavior: "instant" });
}
