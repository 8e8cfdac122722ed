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

// Runs in a separate worker, so that the pane stays free. To cancel, the pane ends the worker.
self.onmessage = (event: MessageEvent<Ask>) => {
  void answer(event.data.file);
};

async function answer(file: File): Promise<void> {
  try {
    refuseLargeStl(file.size);
    const model = examineModel(await read(file), steps("examining"));
    const { mesh: _, solidOf: __, ...report } = model;
    sendExamined(report, model);
  } catch (error) {
    if (error instanceof CostingError) send({ kind: "refused", sentence: error.message });
    else send({ kind: "broken", said: error instanceof Error ? error.message : String(error) });
  }
}

/** The file's bytes can be freed when this returns: only the mesh is still needed. */
async function read(file: File): Promise<Mesh> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const measure = measureStl(bytes);
  if (measure) send({ kind: "measured", measure });
  return readStl(bytes, steps("reading")).mesh;
}

function sendExamined(report: Extract<Message, { kind: "examined" }>["report"], model: Model): void {
  const shape = shapeOf(model);
  send({ kind: "examined", report, shape }, [shape.corners.buffer, shape.index.buffer]);
}

/** Reports each per cent once. */
function steps(step: "reading" | "examining"): (share: number) => void {
  let reported = -1;
  return (share) => {
    const percent = Math.floor(100 * share);
    if (percent === reported) return;
    reported = percent;
    send({ kind: "progress", step, share });
  };
}

function send(message: Message, transfer: Transferable[] = []): void {
  self.postMessage(message, { transfer });
}
