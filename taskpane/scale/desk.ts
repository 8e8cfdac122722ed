import { readScale } from "../excel/scale/scalebook";
import { isRefusal, sentenceOf } from "../refusal";
import type { ScaleEvents } from "../scalesections";
import { oneAtATime } from "../turns";
import { estimates } from "./estimates";
import { linkPicker } from "./linkpicker";
import { weighInForm } from "./weighinform";

export interface ScaleDesk {
  /** Reads the scale's tables and shows them. */
  follow(): void;
}

/** Fills the three parts. */
export function openScaleDesk(
  places: { readonly links: HTMLElement; readonly weighIn: HTMLElement; readonly estimates: HTMLElement },
  on: ScaleEvents,
): ScaleDesk {
  const read = oneAtATime(async () => {
    try {
      const reading = await readScale();
      links.show(reading.links);
      weighIn.show(reading);
    } catch (error) {
      links.failed(sentenceOf(error));
      weighIn.failed(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    }
  });
  const links = linkPicker(on);
  const weighIn = weighInForm();
  places.links.replaceChildren(links.root);
  places.weighIn.replaceChildren(weighIn.root);
  places.estimates.replaceChildren(estimates(on));
  return { follow: () => void read() };
}
