import { type Asking, markAsWritten, type SeenAsking, seenKey } from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { field } from "../controls/field";
import { spokenNote } from "../controls/note";
import { pressSteps } from "../controls/pressstep";
import { readAskingBook } from "../excel/market/askingbook";
import { takeListOut } from "../excel/market/askinglists";
import { keptAskings, keysOf } from "../excel/market/seenaskings";
import { takeListIn } from "../excel/market/takelist";
import type { PartEvents } from "../views/lazypart";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { today } from "../wording/display";
import { CHECK_LABELS } from "./checkfields";
import type { Checked } from "./pricecheck";

const { check: texts } = ASKING_TEXTS;

export interface CheckKeeping {
  readonly root: HTMLElement;
  /** While it writes, what it writes is not to be read. */
  readonly isWriting: boolean;
  /** Offers to write down what was checked. @param mark as typed */
  show(checked: Checked | undefined, mark: string): void;
  /** @param sentence why the workbook could not be read; "" where it was */
  read(sentence: string): void;
}

/** Writes a checked price down among the asking prices, and takes it out again. */
export function checkKeeping(rates: PartEvents["rates"]): CheckKeeping {
  const note = spokenNote();
  const steps = pressSteps(note);
  const source = field({ id: "check-source", label: texts.note, help: texts.noteHelp });
  const keep = button(texts.keep, "outline", () => void steps.run(keep, texts.keeping, keepIt));
  const undo = button(texts.undo, "outline", () => void steps.run(undo, texts.undoing, takeOut), "small");
  const actions = element("div", { class: "actions" }, keep.root, undo.root);
  const root = element("div", { class: "keep" }, source.root, actions, note.root);
  let offered: { readonly asking: Asking; readonly mark: string } | undefined;
  let written: number | undefined;
  undo.root.hidden = true;

  async function keepIt(): Promise<void> {
    const { rates: now } = rates();
    if (!offered || !now) return;
    const { asking, mark } = offered;
    const seen: SeenAsking = { ...asking, date: today(), source: source.control.value.trim(), spot: now.spot };
    const { askings } = await readAskingBook();
    if (!askings.ok) return note.failed(askings.sentence);
    if (keysOf(keptAskings(askings.rows, now.currency, today())).has(seenKey(seen))) return note.failed(texts.double);
    const row = { seen, mark: markAsWritten(mark, CHECK_LABELS.mark) };
    const { list, sheet } = await takeListIn([row], async () => undefined);
    written = list;
    undo.root.hidden = false;
    note.say(texts.kept(sheet));
  }

  async function takeOut(): Promise<void> {
    if (written === undefined) return;
    await takeListOut(written);
    written = undefined;
    undo.root.hidden = true;
    note.say(texts.undone);
    keep.root.focus();
  }

  return {
    root,
    get isWriting() {
      return steps.isBusy;
    },
    show(checked, mark) {
      offered = checked?.kind === "checked" ? { asking: checked.asking, mark } : undefined;
      keep.root.hidden = !offered;
      root.hidden = !offered && written === undefined;
    },
    read: note.read,
  };
}
