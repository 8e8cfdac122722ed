import type { Currency, PriceLists } from "../../src/index";
import { button, linkButton } from "../controls/button";
import { element, setText } from "../controls/element";
import { faultList } from "../controls/faultlist";
import { spokenNote } from "../controls/note";
import { whileWorking } from "../controls/pressstep";
import { beginMakers, type MakersReading } from "../excel/makeorbuy/makerbook";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { makerForm } from "./makerform";

const { makers: texts } = SOURCING_TEXTS;

export interface MakerPart {
  readonly root: HTMLElement;
  show(reading: MakersReading, lists: PriceLists | undefined, currency: Currency | undefined): void;
}

/** The price lists that the workbook keeps: how many, what is wrong with them, and a row written down. */
export function makerPart(on: {
  readonly goTo: (sheet: string) => void;
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  /** Runs a step that writes price lists; they are read again at its end. */
  readonly write: (act: () => Promise<void>) => Promise<void>;
}): MakerPart {
  const state = element("p", { class: "help" });
  const faults = faultList();
  const note = spokenNote();
  const begin = button(texts.begin, "outline", () => void on.attempt(beginTable));
  const sheetLink = linkButton("", () => on.goTo(sheet));
  const form = makerForm(note, () => currency, on.write);
  const root = element(
    "details",
    { class: "task" },
    element("summary", {}, texts.lists),
    state,
    element("div", { class: "actions" }, sheetLink, begin.root),
    faults.root,
    element("h3", {}, texts.formTitle),
    ...form,
    note.root,
  );
  let sheet = "";
  let currency: Currency | undefined;

  async function beginTable(): Promise<void> {
    return whileWorking(begin, texts.beginning, async () => {
      await on.write(beginMakers);
      note.say(texts.begun);
    });
  }

  return {
    root,
    show(reading, lists, nowCurrency) {
      currency = nowCurrency;
      sheet = reading.kind === "read" ? reading.sheet : "";
      const makers = new Set(lists?.offers.map(({ maker }) => maker.toLowerCase()));
      setText(
        state,
        reading.kind === "refused"
          ? reading.sentence
          : makers.size === 0
            ? texts.none
            : texts.count(makers.size, lists?.offers.length ?? 0),
      );
      state.classList.toggle("fault", reading.kind === "refused");
      setText(sheetLink, SOURCING_TEXTS.show(sheet));
      sheetLink.hidden = sheet === "";
      begin.root.hidden = reading.kind !== "none";
      const wrong = lists?.faults ?? [];
      faults.show(
        wrong.map(({ sentence }) => sentence),
        texts.faults(wrong.length),
      );
      if (wrong.length > 0) root.open = true;
    },
  };
}
