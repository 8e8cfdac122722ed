import {
  CostingError,
  examineModel,
  type Mesh,
  type Model,
  measureStl,
  readStl,
  refuseLargeStl,
} from "../../src/index";
import type { Ask, Message } from "./message";
import { shapeOf } from "./shape";

// Runs in a worker of its own, so that the pane stays free; ending the worker is what cancels it.
self.onmessage = (event: MessageEvent<Ask>) => {
  void answer(event.data.file);
};

async function answer(file: File): Promise<void> {
  try {
    refuseLargeStl(file.size);
    const model = examineModel(await read(file), steps("examining"));
    const { mesh: _, solidOf: __, ...report } = model;
    tellExamined(report, model);
  } catch (error) {
    if (error instanceof CostingError) tell({ kind: "refused", sentence: error.message });
    else tell({ kind: "broken", said: error instanceof Error ? error.message : String(error) });
  }
}

/** The file's bytes go when this returns: only the mesh is needed further. */
async function read(file: File): Promise<Mesh> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const measure = measureStl(bytes);
  if (measure) tell({ kind: "measured", measure });
  return readStl(bytes, steps("reading")).mesh;
}

function tellExamined(report: Extract<Message, { kind: "examined" }>["report"], model: Model): void {
  const shape = shapeOf(model);
  tell({ kind: "examined", report, shape }, [shape.corners.buffer, shape.index.buffer]);
}

/** Tells each per cent once. */
function steps(step: "reading" | "examining"): (share: number) => void {
  let told = -1;
  return (share) => {
    const percent = Math.floor(100 * share);
    if (percent === told) return;
    told = percent;
    tell({ kind: "progress", step, share });
  };
}

function tell(message: Message, transfer: Transferable[] = []): void {
  self.postMessage(message, { transfer });
}
