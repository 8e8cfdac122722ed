import type { LineKey } from "../src/index";
import { element, setText } from "./element";
import type { ScaleDesk } from "./scale/desk";
import { SCALE_TEXTS } from "./texts/scale";

/** What the parts about weighing need of the order form. */
export interface ScaleEvents {
  /** Puts texts into the open line of the order, as if typed. */
  readonly takeLink: (texts: Readonly<Partial<Record<LineKey, string>>>) => void;
  /** The open line as typed. */
  readonly line: () => Readonly<Partial<Record<LineKey, string>>>;
}

export interface ScaleSections {
  readonly root: HTMLElement;
  /** The workbook has changed: an open part is read anew. */
  follow(): void;
}

/** Weigh-ins, links and estimates, folded away. What works them is loaded when one is first opened. */
export function scaleSections(on: ScaleEvents): ScaleSections {
  const parts = {
    links: section(SCALE_TEXTS.links.title),
    weighIn: section(SCALE_TEXTS.weighIn.title),
    estimates: section(SCALE_TEXTS.estimates.title),
  };
  const sections = Object.values(parts);
  const root = element("div", { class: "scale" }, ...sections.map((part) => part.root));
  let desk: ScaleDesk | undefined;

  const reads = () => parts.links.root.open || parts.weighIn.root.open;
  const opened = async () => {
    if (!desk) {
      for (const part of sections) part.say(SCALE_TEXTS.loading);
      try {
        const { openScaleDesk } = await import(/* webpackChunkName: "scale" */ "./scale/desk");
        desk ??= openScaleDesk(
          { links: parts.links.place, weighIn: parts.weighIn.place, estimates: parts.estimates.place },
          on,
        );
        for (const part of sections) part.say("");
      } catch {
        // A network that failed is tried anew at the next opening.
        for (const part of sections) part.say(SCALE_TEXTS.notLoaded);
        return;
      }
    }
    if (reads()) desk.follow();
  };
  for (const part of sections) {
    part.root.addEventListener("toggle", () => {
      if (part.root.open) void opened();
    });
  }
  return {
    root,
    follow() {
      if (desk && reads()) desk.follow();
    },
  };
}

function section(title: string) {
  const note = element("p", { class: "help", role: "status" });
  const place = element("div", { class: "scalebody" });
  const root = element("details", { class: "scalepart" }, element("summary", {}, title), note, place);
  note.hidden = true;
  return {
    root,
    place,
    say(sentence: string) {
      setText(note, sentence);
      note.hidden = sentence === "";
    },
  };
}
