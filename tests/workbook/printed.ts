import type { Page } from "playwright-core";

/** What was printed: the sheet's name, and the words on it. */
export interface Printed {
  readonly title: string;
  readonly words: string;
}

/** What the page prints after an act of the person; fails after the usual wait where nothing is printed. */
export async function printedBy(page: Page, act: () => Promise<void>): Promise<Printed> {
  const before = await countPrints(page);
  await act();
  await page.waitForFunction((count) => (window.prints?.length ?? 0) > count, before);
  const [printed] = await page.evaluate((from) => (window.prints ?? []).slice(from), before);
  if (!printed) throw new Error("Nothing was printed");
  return printed;
}

/** How many sheets were printed since the first call, which begins the counting. */
export function countPrints(page: Page): Promise<number> {
  return page.evaluate(() => {
    if (window.prints) return window.prints.length;
    const prints: Printed[] = [];
    window.prints = prints;
    new MutationObserver((changes) => {
      for (const frame of changes.flatMap(({ addedNodes }) => [...addedNodes])) {
        if (!(frame instanceof HTMLIFrameElement) || frame.id !== "print-frame") continue;
        const answer = () => {
          const { contentWindow: view, contentDocument: paper } = frame;
          if (!view || !paper) return;
          // In place of the browser's own dialog, which no test can answer.
          view.print = () => {
            prints.push({ title: paper.title, words: paper.querySelector("#print-sheet")?.textContent ?? "" });
            view.dispatchEvent(new Event("afterprint"));
          };
        };
        // Before the page's own listener, which prints.
        frame.addEventListener("load", answer, { capture: true });
      }
    }).observe(document.body, { childList: true });
    return 0;
  });
}

declare global {
  interface Window {
    prints?: Printed[];
  }
}
