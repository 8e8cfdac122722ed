/** How often the grid paints itself, which is most of what its page does while nobody looks. */
import { Layer, Engine as Painter } from "@univerjs/preset-sheets-core";

/** Milliseconds that pass between two paintings of one canvas; 0 paints at every frame. */
let pause = 0;
let watchers = 0;

/** Has the grid paint at every frame that changed it, or only so often. Called before the grid starts. */
export function paintEvery(milliseconds: number): void {
  pause = milliseconds;
  pacePainters();
  gatherMarks();
}

/** Resolves after two drawn frames: what was asked of the grid is on the screen then, however seldom it paints. */
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
 * Univer 0.25.1 marks a layer for painting with a message channel of its own for each mark, which it closes again for the
 * next one; a thousand changed cells are a thousand channels. One does.
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
