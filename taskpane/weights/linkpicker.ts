import { KEPT_LINK_LABELS, type KeptLinkKey, type LineKey, parseKeptLink, type StagedWeight } from "../../src/index";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { field } from "../controls/field";
import { smallForm, spokenNote } from "../controls/smallform";
import { isRefusal, sentenceOf } from "../excel/run";
import type { LinkRow } from "../excel/weights/scalebook";
import { keepLink } from "../excel/weights/scalerow";
import { linkOffer } from "../order/linkofferpart";
import { today } from "../wording/display";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { linkName } from "../wording/shownweight";
import { type ChosenLink, chosenLink } from "./linkrow";
import type { ScaleEvents, Writing } from "./weightevents";

const { links: texts } = SCALE_TEXTS;

/** What only this part asks; the rest of a kept link comes from the order. */
type Asked = "model" | "width";
const FROM_ORDER = [
  "mark",
  "colour",
  "linksPer",
  "linksPerUnit",
  "linkWeight",
] as const satisfies readonly (KeptLinkKey & LineKey)[];

/** Picks a link of the Links table into the order, and keeps the order's link there. */
export function linkPicker(on: ScaleEvents, write: Writing) {
  const note = spokenNote();
  const kept = spokenNote();
  const empty = element("p", { class: "help" }, texts.none);
  const choice = field({ id: "link-choice", label: texts.choose, choices: [] });
  const offer = linkOffer("outline", { rates: on.rates, take: takeChosen });
  const about = element("p", { class: "help" });
  const pick = element("div", { class: "scalerow" }, choice.root, about, offer.root);
  const tellChosen = () => {
    const chosen = links[Number(choice.control.value)];
    setText(about, chosen?.said ?? "");
    offer.show(chosen?.weight);
  };
  choice.control.addEventListener("change", () => {
    note.say("");
    tellChosen();
  });
  const keep = button(texts.keep, "outline", () => void keepTyped());
  const form = smallForm<Asked>(
    "link",
    texts.keepTitle,
    {
      model: { plan: { label: KEPT_LINK_LABELS.model, required: true }, width: "half" },
      width: {
        plan: {
          label: KEPT_LINK_LABELS.width,
          numeric: true,
          unit: SCALE_TEXTS.millimetres,
          help: texts.keepHelp.width,
        },
        width: "half",
      },
    },
    { changed: () => form.judge(faults().own), submitted: () => void keepTyped() },
  );
  let links: readonly ChosenLink[] = [];
  let shownRows = "";
  pick.hidden = true;

  function takeChosen(weight: StagedWeight<"finished">): void {
    const chosen = links[Number(choice.control.value)];
    if (!chosen) return;
    on.takeLink({ weight, texts: chosen.texts });
    note.say(texts.used(chosen.name));
  }

  const typed = (): Record<KeptLinkKey, string> => {
    const line = on.line();
    const taken = Object.fromEntries(FROM_ORDER.map((key) => [key, line[key] ?? ""]));
    return { ...taken, ...form.typed() } as Record<KeptLinkKey, string>;
  };

  function faults() {
    const parsed = parseKeptLink(typed());
    const all = parsed.ok ? [] : parsed.faults;
    const own = all.filter((fault) => fault.field === "model" || fault.field === "width");
    return { own, ofOrder: all.filter((fault) => !own.includes(fault)) };
  }

  async function keepTyped(): Promise<void> {
    const parsed = parseKeptLink(typed());
    if (!parsed.ok) {
      const { own, ofOrder } = faults();
      const [first] = ofOrder;
      kept.failed(first ? texts.inOrder(first.sentence) : "");
      return form.demand(own);
    }
    keep.work(texts.keeping);
    kept.say("");
    try {
      await write(() => keepLink(parsed.value, today()));
      const { model, width, mark, colour } = parsed.value;
      kept.say(texts.kept(linkName({ model, width: width?.value().toFixed(), mark, colour })));
      form.fill({ model: "", width: "" });
      form.calm();
    } catch (error) {
      kept.failed(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    } finally {
      keep.rest();
    }
  }

  return {
    root: element(
      "div",
      {},
      empty,
      pick,
      note.root,
      element("h3", {}, texts.keepTitle),
      element("p", { class: "help" }, texts.keepAbout),
      form.root,
      element("div", { class: "actions" }, keep.root),
      kept.root,
    ),
    show(rows: readonly LinkRow[]) {
      note.read("");
      const before = links[Number(choice.control.value)]?.name;
      links = rows.flatMap((row) => chosenLink(row) ?? []);
      empty.hidden = links.length > 0;
      pick.hidden = links.length === 0;
      const shown = links.map((link) => link.name);
      if (shown.join("\n") === shownRows) return tellChosen();
      shownRows = shown.join("\n");
      choice.control.replaceChildren(
        ...shown.map((words, index) => element("option", { value: String(index) }, words)),
      );
      choice.control.value = String(Math.max(0, before === undefined ? 0 : shown.indexOf(before)));
      tellChosen();
      const line = on.line();
      if (form.typed().model === "" && links.length === 0) form.fill({ model: line.design ?? "" });
    },
    unread: note.read,
  };
}
