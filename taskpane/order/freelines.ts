import type { ExtraKey, Fault, Rates, TypedExtra } from "../../src/index";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { allGoneFrom, type Entries, filledWith, freshEntries } from "../controls/entries";
import { undoNotice } from "../controls/undo";
import { TEXTS } from "../wording/texts";
import { type FreeLine, freeLine } from "./freeline";
import { EXTRA_GROUP } from "./orderfields";

const { form: texts } = TEXTS;
const GROUPS = [EXTRA_GROUP];

export interface FreeLines {
  readonly root: HTMLElement;
  typed(): readonly TypedExtra[];
  misread(): readonly Fault[];
  fill(extras: readonly TypedExtra[]): void;
  /** Takes all out, with the way back. */
  setAside(): void;
  snapshot(): () => void;
  adapt(rates: Rates): void;
  judge(faults: readonly Fault[]): void;
  /** Shows every fault, also of fields that nobody has gone on from yet. */
  askAll(): void;
  goTo(extra: number, key: ExtraKey): void;
}

export interface FreeLinesEvents {
  readonly changed: () => void;
  readonly leftFaulty: (sentence: string) => void;
  readonly say: (sentence: string) => void;
}

interface TakenExtra {
  readonly entries: Entries<ExtraKey>;
  readonly at: number;
}

/** The free lines of an order, folded away until there are some. */
export function freeLines(on: FreeLinesEvents): FreeLines {
  let items: readonly FreeLine[] = [];
  let made = 0;
  let rates: Rates | undefined;
  const view = freeLinesView(() => putIn(freshEntries(GROUPS), items.length));
  const removal = undoNotice<TakenExtra>(({ entries, at }) => {
    const back = putIn(entries, Math.min(at, items.length));
    on.say(texts.extraBack(items.indexOf(back) + 1));
  });

  function item(entries: Entries<ExtraKey>): FreeLine {
    made += 1;
    const line = freeLine(GROUPS, `extra${made}`, entries, on, () => {
      const taken = takeOut(line);
      on.changed();
      removal.offer(taken, removedWords(taken));
    });
    if (rates) line.form.adapt(rates);
    return line;
  }

  function show(now: readonly FreeLine[]): void {
    items = now;
    view.show(items);
  }

  function putIn(entries: Entries<ExtraKey>, at: number): FreeLine {
    const line = item(entries);
    show([...items.slice(0, at), line, ...items.slice(at)]);
    on.changed();
    line.form.goTo("text");
    return line;
  }

  function takeOut(taken: FreeLine): TakenExtra {
    const at = items.indexOf(taken);
    show(items.filter((each) => each !== taken));
    return { entries: taken.form.entries, at };
  }

  return {
    // The way back is in sight also where the rest is folded away.
    root: element("div", { class: "freelines" }, view.root, removal.root),
    typed: () => items.map(({ form }) => form.counted()),
    misread: () => items.flatMap(({ form }, extra) => form.misread().map((fault) => ({ ...fault, extra }))),
    fill(extras) {
      removal.clear();
      show(extras.map((typed) => item(filledWith(GROUPS, freshEntries(GROUPS), typed))));
    },
    setAside() {
      for (const line of [...items].reverse()) {
        const taken = takeOut(line);
        removal.note(taken, removedWords(taken));
      }
    },
    snapshot() {
      const kept = items.map(({ form }) => form.entries);
      const back = removal.snapshot();
      return () => {
        show(kept.map(item));
        back();
      };
    },
    adapt(now) {
      rates = now;
      for (const { form } of items) form.adapt(now);
    },
    judge(faults) {
      for (const [index, { form }] of items.entries()) form.judge(faults.filter(({ extra }) => extra === index));
      view.judge(items);
    },
    askAll() {
      for (const { form } of items) form.hold(allGoneFrom(GROUPS, form.entries));
    },
    goTo: (extra, key) => items[extra]?.form.goTo(key),
  };
}

/** The fold that they stand in. */
function freeLinesView(added: () => void) {
  const holds = element("span", { class: "holds" });
  const list = element("div", { class: "extras" });
  const note = element("p", { class: "help" }, texts.noExtras);
  const add = button(texts.addExtra, "outline", added, "small");
  return {
    root: element(
      "details",
      { class: "group" },
      element("summary", {}, element("span", {}, texts.groups.extras), " ", holds),
      note,
      list,
      element("div", { class: "actions" }, add.root),
    ),
    show(items: readonly FreeLine[]): void {
      list.replaceChildren(...items.map(({ root }) => root));
      for (const [index, { name }] of items.entries()) name(index + 1);
      note.hidden = items.length > 0;
    },
    judge(items: readonly FreeLine[]): void {
      const faulty = items.filter(({ root }) => root.querySelector("[aria-invalid]") !== null).length;
      setText(holds, heldWords(items.length, faulty));
      holds.classList.toggle("fault", faulty > 0);
    },
  };
}

function removedWords({ entries, at }: TakenExtra): string {
  return texts.removed(entries.texts.text.trim() || texts.extra(at + 1));
}

function heldWords(count: number, faulty: number): string {
  if (faulty > 0) return texts.holds.faults(faulty);
  return count === 0 ? texts.holds.none : texts.holds.extras(count);
}
