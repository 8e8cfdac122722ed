/** Marks the foot while the headline is scrolled away, and keeps a field that is gone to clear of the foot. */
export function watchFoot(foot: HTMLElement, headline: HTMLElement): void {
  new IntersectionObserver(([seen]) => {
    if (seen) foot.classList.toggle("scrolled", !seen.isIntersecting);
  }).observe(headline);
  new ResizeObserver(() => {
    document.documentElement.style.scrollPaddingBottom = `${foot.offsetHeight + 12}px`;
  }).observe(foot);
}
