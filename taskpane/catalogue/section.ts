import type { Parsed, Rates } from "../../src/index";
import { element, setText } from "../element";
import type { RatesReading } from "../excel/rates";
import { TEXTS } from "../texts";
import type { Board } from "./board";

const texts = TEXTS.catalogue;

export interface CatalogueEvents {
  readonly goTo: (sheet: string) => void;
  /** Runs a step for the person; what the workbook refuses is told at the foot of the pane. */
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly say: (sentence: string) => void;
}

export interface CatalogueSection {
  readonly root: HTMLDetailsElement;
  /** The rates as they stand now. */
  show(reading: RatesReading, rates: Parsed<Rates> | undefined): void;
}

/** The whole catalogue at once, folded away; what it needs is loaded when it is first opened. */
export function catalogueSection(on: CatalogueEvents): CatalogueSection {
  const note = element("p", { class: "help", role: "status" });
  const place = element("div", { class: "board" });
  const root = element("details", { class: "catalogue" }, element("summary", {}, texts.title), note, place);
  let board: Board | undefined;
  let latest: readonly [RatesReading, Parsed<Rates> | undefined] = [{ found: false }, undefined];

  const load = async () => {
    if (board) return board.opened();
    setText(note, texts.loading);
    try {
      const { openBoard } = await import(/* webpackChunkName: "catalogue" */ "./board");
      board ??= openBoard(place, on);
      setText(note, texts.about);
    } catch {
      // A network that failed is tried anew at the next opening.
      setText(note, texts.notLoaded);
      return;
    }
    board.show(...latest);
    await board.opened();
  };
  root.addEventListener("toggle", () => {
    if (root.open) void on.attempt(load);
  });
  return {
    root,
    show(reading, rates) {
      latest = [reading, rates];
      board?.show(reading, rates);
    },
  };
}
