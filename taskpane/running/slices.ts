/** The person cancelled long work. */
export class Cancelled extends Error {
  override readonly name = "Cancelled";
}

export interface Slicing {
  /** Called after each slice. @param share of the work done, from 0 to 1 */
  readonly progress: (share: number) => void;
  readonly signal: AbortSignal;
}

/** Lets the pane answer keys and the Cancel button between two steps of long work. Errors: Cancelled. */
export async function pause(signal: AbortSignal): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve));
  if (signal.aborted) throw new Cancelled();
}

/** Milliseconds a slice may take, so that keys and the Cancel button are answered between two. */
const SPAN = 40;
const FIRST = 8;

/**
 * Works through many items a slice at a time; between two slices the pane is free. Slices grow and shrink to take about
 * SPAN each. Errors: Cancelled.
 */
export async function inSlices<Item, Result>(
  items: readonly Item[],
  work: (slice: readonly Item[]) => Result,
  { progress, signal }: Slicing,
): Promise<readonly Result[]> {
  const results: Result[] = [];
  let size = FIRST;
  for (let at = 0; at < items.length; ) {
    const begun = performance.now();
    const slice = items.slice(at, at + size);
    results.push(work(slice));
    at += slice.length;
    const took = Math.max(0.1, performance.now() - begun);
    size = Math.max(1, Math.min(size * 4, Math.round((slice.length * SPAN) / took)));
    progress(at / items.length);
    await pause(signal);
  }
  return results;
}
