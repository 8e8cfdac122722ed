import { EXTRA_LABELS, type ExtraKey, type Fault, type Rates, type TypedExtra } from "../../src/index";
import { type Button, button } from "../controls/button";
import { element, setText } from "../controls/element";
import { undoNotice } from "../controls/undo";
import { TEXTS } from "../wording/texts";
import { copyOf, countedTexts, type Entries, fillEntries, freshEntries, misread } from "./entries";
import { type FieldPart, fieldPart } from "./fieldpart";
import { keysOf } from "./formplan";
import { EXTRA_GROUP } from "./orderfields";

const { form: texts } = TEXTS;
const GROUPS = [EXTRA_GROUP];
const KEYS = keysOf(GROUPS);

export interface FreeLines {
  readonly root: HTMLElement;
  readonly count: number;
  typed(): readonly TypedExtra[];
  misread(): readonly Fault[];
  fill(extras: readonly TypedExtra[]): void;
  /** Takes all out, with the way back. */
  setAside(): void;
  keep(): () => void;
  adapt(rates: Rates): void;
  judge(faults: readonly Fault[]): void;
  leaveAll(): void;
  goTo(extra: number, key: ExtraKey): void;
}

export interface FreeLinesEvents {
  readonly changed: () => void;
  readonly leftFaulty: (sentence: string) => void;
  readonly say: (sentence: string) => void;
}

interface Item {
  readonly root: HTMLElement;
  readonly legend: HTMLElement;
  readonly remove: Button;
  readonly part: FieldPart<ExtraKey>;
}

/** The free lines of an order, folded away until there are some. */
export function freeLines(on: FreeLinesEvents): FreeLines {
  let items: Item[] = [];
  let made = 0;
  let rates: Rates | undefined;
  const holds = element("span", { class: "holds" });
  const list = element("div", { class: "extras" });
  const note = element("p", { class: "help" }, texts.noExtras);
  const removal = undoNotice<{ readonly entries: Entries<ExtraKey>; readonly at: number }>(({ entries, at }) => {
    const back = item(entries);
    items.splice(Math.min(at, items.length), 0, back);
    render();
    on.changed();
    on.say(texts.extraBack(items.indexOf(back) + 1));
    back.part.goTo("text");
  });
  const add = button(
    texts.addExtra,
    "outline",
    () => {
      const added = item(freshEntries(GROUPS));
      items.push(added);
      render();
      on.changed();
      added.part.goTo("text");
    },
    "small",
  );
  const folded = element(
    "details",
    { class: "group" },
    element("summary", {}, element("span", {}, texts.groups.extras), " ", holds),
    note,
    list,
    element("div", { class: "actions" }, add.root),
  );
  // The way back is in sight also where the rest is folded away.
  const root = element("div", { class: "freelines" }, folded, removal.root);

  function item(entries: Entries<ExtraKey>): Item {
    made += 1;
    const part = fieldPart(GROUPS, EXTRA_LABELS, `extra${made}`, on);
    part.hold(entries);
    if (rates) part.adapt(rates);
    const legend = element("legend", { class: "unseen" });
    const press = button(texts.removeExtra, "outline", () => remove(self), "small");
    const self: Item = {
      part,
      legend,
      remove: press,
      root: element("fieldset", { class: "extra" }, legend, ...part.groups, press.root),
    };
    return self;
  }

  function takeOut(taken: Item) {
    const at = items.indexOf(taken);
    const { entries } = taken.part;
    items = items.filter((each) => each !== taken);
    render();
    return { what: { entries, at }, said: texts.removed(entries.texts.text.trim() || texts.extra(at + 1)) };
  }

  function remove(item: Item): void {
    const { what, said } = takeOut(item);
    on.changed();
    removal.offer(what, said);
  }

  function render(): void {
    list.replaceChildren(...items.map((each) => each.root));
    items.forEach(({ legend, remove: press }, index) => {
      setText(legend, texts.extra(index + 1));
      press.root.setAttribute("aria-label", texts.removeExtraOf(index + 1));
    });
    note.hidden = items.length > 0;
  }

  function restore(entries: readonly Entries<ExtraKey>[]): void {
    items = entries.map(item);
    render();
  }

  return {
    root,
    get count() {
      return items.length;
    },
    typed: () => items.map(({ part }) => countedTexts(GROUPS, part.entries)),
    misread: () =>
      items.flatMap(({ part }, extra) =>
        misread(GROUPS, EXTRA_LABELS, part.entries).map((fault) => ({ ...fault, extra })),
      ),
    fill(extras) {
      removal.clear();
      restore(
        extras.map((typed) => {
          const entries = freshEntries(GROUPS);
          fillEntries(GROUPS, entries, typed);
          return entries;
        }),
      );
    },
    setAside() {
      for (const item of [...items].reverse()) {
        const { what, said } = takeOut(item);
        removal.note(what, said);
      }
    },
    keep() {
      const kept = items.map(({ part }) => copyOf(part.entries));
      const back = removal.keep();
      return () => {
        restore(kept);
        back();
      };
    },
    adapt(now) {
      rates = now;
      for (const { part } of items) part.adapt(now);
    },
    judge(faults) {
      for (const [index, { part }] of items.entries()) part.judge(faults.filter(({ extra }) => extra === index));
      const seen = items.filter(({ root: each }) => each.querySelector("[aria-invalid]") !== null).length;
      setText(holds, saidOf(items.length, seen));
      holds.classList.toggle("fault", seen > 0);
    },
    leaveAll() {
      for (const { part } of items) for (const key of KEYS) part.entries.left.add(key);
    },
    goTo(extra, key) {
      items[extra]?.part.goTo(key);
    },
  };
}

function saidOf(count: number, faulty: number): string {
  if (faulty > 0) return texts.holds.faults(faulty);
  return count === 0 ? texts.holds.none : texts.holds.extras(count);
}
