/** Keeps the field under the cursor where it is on the screen while the result above it grows or shrinks. */
export function hold(form: HTMLElement): () => void {
  const held = document.activeElement;
  if (!held || !form.contains(held)) return () => undefined;
  const before = held.getBoundingClientRect().top;
  return () => window.scrollBy({ top: held.getBoundingClientRect().top - before, behavior: "instant" });
}

/** Marks the foot while the headline is scrolled away, and keeps a field that is gone to clear of the foot. */
export function watchFoot(foot: HTMLElement, headline: HTMLElement): void {
  new IntersectionObserver(([seen]) => {
    if (seen) foot.classList.toggle("scrolled", !seen.isIntersecting);
  }).observe(headline);
  new ResizeObserver(() => {
    document.documentElement.style.scrollPaddingBottom = `${foot.offsetHeight + 12}px`;
  }).observe(foot);
}
