import { type Asking, markAsWritten, type SeenAsking, seenKey } from "../../src/index";
import { announcer } from "../controls/announcer";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { field } from "../controls/field";
import { spokenNote } from "../controls/smallform";
import { readAskingBook } from "../excel/market/askingbook";
import { takeListOut } from "../excel/market/askinglists";
import { keptAskings, keysOf } from "../excel/market/seenaskings";
import { takeListIn } from "../excel/market/takelist";
import { isRefusal, sentenceOf } from "../excel/run";
import { fillEntries, misread } from "../order/entries";
import { fieldPart } from "../order/fieldpart";
import { oneAtATime } from "../running/oneatatime";
import type { PartEvents, Working } from "../views/lazypart";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { today } from "../wording/display";
import { linkName } from "../wording/shownweight";
import { checkCard } from "./checkcard";
import { CHECK_LABELS, checkGroups } from "./checkfields";
import { type Checked, checkTyped, type KeptLinks, keptLinks } from "./pricecheck";
import { unitQuestion } from "./unitquestion";

const { check: texts } = ASKING_TEXTS;

/** One asking price, checked as it is typed, and written down if the person likes. */
export function openPriceCheck(place: HTMLElement, on: PartEvents): Working {
  const voice = announcer();
  const card = checkCard();
  const groups = checkGroups(() => on.rates().rates?.currency ?? "");
  const part = fieldPart(groups, CHECK_LABELS, "check", { changed: compute, leftFaulty: voice.say });
  const which = unitQuestion((weight) => {
    fillEntries(groups, part.entries, { weight });
    part.hold(part.entries);
    compute();
    part.goTo("weight");
  });
  const note = spokenNote();
  const source = field({ id: "check-source", label: texts.note, help: texts.noteHelp });
  const keep = button(texts.keep, "outline", () => void step(keep, texts.keeping, keepIt));
  const undo = button(texts.undo, "outline", () => void step(undo, texts.undoing, takeOut), "small");
  const keeping = element(
    "div",
    { class: "keep" },
    source.root,
    element("div", { class: "actions" }, keep.root, undo.root),
    note.root,
  );
  const [offer, more] = part.groups;
  const root = element(
    "form",
    { class: "checkform", novalidate: true, "aria-label": texts.form },
    ...(offer ? [offer] : []),
    which.root,
    card.root,
    ...(more ? [more] : []),
    keeping,
  );
  const linkChoice = root.querySelector<HTMLSelectElement>("#check-link");
  const currency = root.querySelector<HTMLInputElement>("#check-currency");
  let links: KeptLinks | undefined;
  let checked: Checked | undefined;
  let spoken = "";
  let writing = false;
  let written: number | undefined;
  undo.root.hidden = true;
  place.replaceChildren(root, voice.root);
  root.addEventListener("submit", (event) => event.preventDefault());

  function compute(): void {
    const { rates } = on.rates();
    const typed = part.counted();
    checked = rates && checkTyped(typed, misread(groups, CHECK_LABELS, part.entries), rates, links);
    part.judge(checked?.faults ?? []);
    which.show(typed.weight);
    card.show(checked, typed, rates);
    keeping.hidden = checked?.kind !== "checked" && written === undefined;
    keep.root.hidden = checked?.kind !== "checked";
    const said = checked?.kind === "checked" ? card.spoken() : "";
    if (said !== spoken && said !== "") voice.sayAtRest(said);
    spoken = said;
  }

  const read = oneAtATime(async () => {
    try {
      const book = await readAskingBook();
      note.read(book.links.ok ? "" : book.links.sentence);
      links = keptLinks(book.links.ok ? book.links.rows : []);
      offerLinks(links);
    } catch (error) {
      note.read(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    } finally {
      compute();
    }
  });

  function offerLinks({ links: all }: KeptLinks): void {
    const names = [...new Set(all.map(({ name }) => linkName(name)))];
    const first = linkChoice?.options[0];
    if (
      !linkChoice ||
      !first ||
      [...linkChoice.options]
        .slice(1)
        .map(({ value }) => value)
        .join("\n") === names.join("\n")
    )
      return;
    linkChoice.replaceChildren(first, ...names.map((name) => element("option", { value: name }, name)));
    linkChoice.value = part.entries.texts.link;
    if (linkChoice.value === "") fillEntries(groups, part.entries, { link: "" });
  }

  async function keepIt(): Promise<void> {
    const { rates } = on.rates();
    if (checked?.kind !== "checked" || !rates) return;
    const seen = seenNow(checked.asking, source.control.value.trim(), rates.spot);
    const { askings } = await readAskingBook();
    if (!askings.ok) return note.failed(askings.sentence);
    if (keysOf(keptAskings(askings.rows, rates.currency, today())).has(seenKey(seen))) return note.failed(texts.double);
    const { list, sheet } = await takeListIn(
      [{ seen, mark: markAsWritten(part.counted().mark, CHECK_LABELS.mark) }],
      async () => undefined,
    );
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

  /** Runs a step in the workbook; what it refuses is told here, and what was typed stays. */
  async function step(by: ReturnType<typeof button>, words: string, act: () => Promise<void>): Promise<void> {
    if (writing) return;
    writing = true;
    note.say("");
    by.work(words);
    try {
      await act();
    } catch (error) {
      note.failed(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    } finally {
      writing = false;
      by.rest();
    }
  }

  return {
    follow() {
      const { rates } = on.rates();
      if (rates) part.adapt(rates);
      if (rates && currency) currency.placeholder = rates.currency;
      compute();
      if (!writing) void read();
    },
  };
}

function seenNow(asking: Asking, source: string, spot: SeenAsking["spot"]): SeenAsking {
  return { ...asking, date: today(), source, spot };
}
