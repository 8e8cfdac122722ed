import { isRefusal, sentenceOf } from "../excel/run";
import { readScale } from "../excel/weights/scalebook";
import { oneAtATime } from "../running/oneatatime";
import { linkPicker } from "./linkpicker";
import { weighInForm } from "./weighingform";
import type { ScaleEvents, Writing } from "./weightevents";

export interface ScaleDesk {
  /** Reads the scale's tables and shows them. */
  follow(): void;
}

/** Fills the parts that rest on the tables. */
export function openScaleDesk(
  places: { readonly links: HTMLElement; readonly weighIn: HTMLElement },
  on: ScaleEvents,
): ScaleDesk {
  const read = oneAtATime(async () => {
    try {
      const reading = await readScale();
      if (reading.links.ok) links.show(reading.links.rows);
      else links.unread(reading.links.sentence);
      weighIn.show(reading);
    } catch (error) {
      links.unread(sentenceOf(error));
      weighIn.unread(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    }
  });
  let writing = 0;
  /** What we write ourselves is read once, at its end. */
  const write: Writing = async (act) => {
    writing += 1;
    try {
      await act();
    } finally {
      writing -= 1;
      void read();
    }
  };
  const links = linkPicker(on, write);
  const weighIn = weighInForm(write);
  places.links.replaceChildren(links.root);
  places.weighIn.replaceChildren(weighIn.root);
  return {
    follow() {
      if (writing === 0) void read();
    },
  };
}
