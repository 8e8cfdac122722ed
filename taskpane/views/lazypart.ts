import type { Rates } from "../../src/index";
import { element, say } from "../controls/element";
import type { RatesReading } from "../excel/rates/rates";
import type { Reckoning } from "../order/reckoning";
import { TEXTS } from "../wording/texts";

export interface RatesNow {
  /** As last read; undefined while it could not be. */
  readonly reading: RatesReading | undefined;
  readonly rates: Rates | undefined;
}

/** What a part of the pane may know of the rest, and ask of it. */
export interface PartEvents {
  readonly goTo: (sheet: string) => void;
  /** Runs a step for the person; what the workbook refuses is told at the foot of the pane. */
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  /** Says it to whoever listens instead of looks. */
  readonly say: (sentence: string) => void;
  /** Rates as last read, and what they say where all of them can be worked with. */
  readonly rates: () => RatesNow;
  /** What the form's order amounts to now; undefined without rates. */
  readonly order: () => Reckoning | undefined;
}

/** What works a part, once loaded. */
export interface Working {
  /** What it rests on (the workbook, Rates, the order) may have changed: since it was last seen, or while it is. */
  follow(): void;
  /** It has come to be seen: for what is read only when somebody looks. */
  opened?(): void;
}

export interface LazyPart {
  readonly root: HTMLDetailsElement;
  readonly place: HTMLElement;
  /** It may have come to be seen: loads it the first time. */
  look(): void;
  /** What it rests on may have changed: followed while it is seen. */
  follow(): void;
}

/**
 * A part that can be folded away, and is loaded when it is first seen: unfolded, in the view that is shown.
 * @param load gives what works the part; it is asked again after a network that failed, never after it answered
 */
export function lazyPart(
  {
    title,
    name,
    about = "",
    isOpen = false,
  }: { readonly title: string; readonly name: string; readonly about?: string; readonly isOpen?: boolean },
  load: (place: HTMLElement) => Promise<Working>,
  attempt: PartEvents["attempt"],
): LazyPart {
  const note = element("p", { class: "help", role: "status" });
  const place = element("div", { class: `${name}body` });
  const root = element("details", { class: `part ${name}`, open: isOpen }, element("summary", {}, title), note, place);
  note.hidden = true;
  let working: Working | undefined;
  let loading = false;
  const tell = (sentence: string) => say(note, sentence);

  async function open(): Promise<void> {
    if (loading) return;
    loading = true;
    tell(TEXTS.views.loading);
    try {
      working = await load(place);
      tell(about);
      shown(working);
    } catch (error) {
      // A network that failed is tried anew at the next opening; anything else is our mistake.
      tell(TEXTS.views.notLoaded);
      if (!(error instanceof Error && error.name === "ChunkLoadError")) throw error;
    } finally {
      loading = false;
    }
  }

  const isSeen = () => root.open && root.getClientRects().length > 0;

  function shown(what: Working): void {
    what.follow();
    what.opened?.();
  }

  function look(): void {
    if (!isSeen()) return;
    if (working) shown(working);
    else void attempt(open);
  }

  root.addEventListener("toggle", look);
  return {
    root,
    place,
    look,
    follow() {
      if (isSeen()) working?.follow();
    },
  };
}
