import type { Rates } from "../../src/index";
import { element, say } from "../controls/element";
import type { RatesReading } from "../excel/rates/rates";
import type { Reckoning } from "../order/reckoning";
import { TEXTS } from "../wording/texts";

export interface RatesNow {
  /** As last read; undefined while the reading failed. */
  readonly reading: RatesReading | undefined;
  readonly rates: Rates | undefined;
}

/** What a part of the pane may ask of the rest. */
export interface PartEvents {
  readonly goTo: (sheet: string) => void;
  /** Runs a step for the person; what the workbook refuses is shown at the foot of the pane. */
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  /** Has screen readers read a sentence. */
  readonly say: (sentence: string) => void;
  /** Rates as last read, and parsed where all of them are valid. */
  readonly rates: () => RatesNow;
  /** The form's order, calculated now; undefined without rates. */
  readonly order: () => Reckoning | undefined;
}

/** A part once it is loaded. */
export interface Working {
  /** Called when what it depends on (the workbook, Rates, the order) may have changed, while it was hidden or is seen. */
  follow(): void;
  /** Called when it comes into sight, for what is read only then. */
  opened?(): void;
}

export interface LazyPart {
  readonly root: HTMLDetailsElement;
  readonly place: HTMLElement;
  /** To be called when it may have come into sight: loads it the first time. */
  look(): void;
  /** To be called when what it depends on may have changed: it follows while it is seen. */
  follow(): void;
}

/**
 * A part that can be folded, and is loaded when it is first seen: unfolded, in the view that is shown.
 * @param load loads the part; it is called again after a network failure, never after it succeeded
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
