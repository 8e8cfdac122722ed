import type { Measure } from "../../src/index";
import type { Ask, Message, Report } from "./message";
import type { Shape } from "./shape";

export interface ExaminerEvents {
  readonly progress: (step: "reading" | "examining", share: number) => void;
  /** The first figures, where they can be measured before the examination. */
  readonly measured: (measure: Measure) => void;
  readonly examined: (report: Report, shape: Shape) => void;
  readonly refused: (sentence: string) => void;
  readonly broken: (problem: string) => void;
}

/** Examines one model file at a time, in a worker. */
export class Examiner {
  private worker: Worker | undefined;

  constructor(private readonly on: ExaminerEvents) {}

  /** Begins with a file; work on an earlier one is cancelled. */
  start(file: File): void {
    this.cancel();
    const worker = new Worker(/* webpackChunkName: "modelworker" */ new URL("./worker.ts", import.meta.url));
    this.worker = worker;
    worker.onmessage = (event: MessageEvent<Message>) => this.receive(event.data);
    worker.onerror = (event) => {
      event.preventDefault();
      this.cancel();
      this.on.broken(event.message || "its worker could not be started");
    };
    const ask: Ask = { file };
    worker.postMessage(ask);
  }

  /** Ends the work at once; no more events follow. */
  cancel(): void {
    this.worker?.terminate();
    this.worker = undefined;
  }

  private receive(message: Message): void {
    switch (message.kind) {
      case "progress":
        this.on.progress(message.step, message.share);
        return;
      case "measured":
        this.on.measured(message.measure);
        return;
      case "examined":
        this.cancel();
        this.on.examined(message.report, message.shape);
        return;
      case "refused":
        this.cancel();
        this.on.refused(message.sentence);
        return;
      case "broken":
        this.cancel();
        this.on.broken(message.said);
    }
  }
}
