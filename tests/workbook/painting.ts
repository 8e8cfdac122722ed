/** How often the grid paints itself, which takes most of its page's time in tests. */
import { Layer, Engine as Painter } from "@univerjs/preset-sheets-core";

/** Milliseconds that pass between two paintings of one canvas; 0 paints at every frame. */
let pause = 0;
let watchers = 0;

/** Makes the grid paint at every frame that changed it, or less often. To be called before the grid starts. */
export function paintEvery(milliseconds: number): void {
  pause = milliseconds;
  pacePainters();
  gatherMarks();
}

/** Resolves after two drawn frames. By then all changes are on the screen, even where the grid paints seldom. */
export async function painted(): Promise<void> {
  watchers += 1;
  await new Promise<void>((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve())));
  watchers -= 1;
}

function pacePainters(): void {
  const { runRenderLoop, stopRenderLoop } = Painter.prototype;
  const paced = new Map<() => void, () => void>();
  Painter.prototype.runRenderLoop = function (paint) {
    let last = Number.NEGATIVE_INFINITY;
    const pacedPaint = () => {
      const now = performance.now();
      if (watchers === 0 && now - last < pause) return;
      last = now;
      paint();
    };
    paced.set(paint, pacedPaint);
    runRenderLoop.call(this, pacedPaint);
  };
  Painter.prototype.stopRenderLoop = function (paint) {
    stopRenderLoop.call(this, paint && (paced.get(paint) ?? paint));
    if (paint) paced.delete(paint);
  };
}

/**
 * Univer 0.25.1 opens a message channel each time it marks a layer for painting, and closes it at the next mark: a thousand
 * channels for a thousand changed cells. One is enough.
 */
function gatherMarks(): void {
  const marked = new Map<Layer, boolean>();
  const channel = new MessageChannel();
  channel.port1.onmessage = () => {
    const layers = [...marked];
    marked.clear();
    for (const [layer, state] of layers) layer.makeDirty(state);
  };
  Layer.prototype.makeDirtyWithDebounce = function (state = true) {
    if (marked.size === 0) channel.port2.postMessage(null);
    marked.set(this, state);
  };
}
