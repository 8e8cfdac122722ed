import {
  KEPT_LINK_LABELS,
  type KeptLink,
  type KeptLinkKey,
  type LineKey,
  type Parsed,
  parseKeptLink,
} from "../../src/index";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { field } from "../controls/field";
import { formPlan } from "../controls/formplan";
import { spokenNote } from "../controls/note";
import { pressSteps } from "../controls/pressstep";
import { readForm } from "../controls/readform";
import type { LinkRow } from "../excel/weights/scalebook";
import { keepLink } from "../excel/weights/scalerow";
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

const { words, figure, group } = formPlan<Asked>(texts.keepHelp);
const KEEPING_GROUPS = [
  group("keeping", "", [
    words("model", "half", { required: true }),
    figure("width", "half", { unit: SCALE_TEXTS.millimetres }),
  ]),
];

/** Picks a link of the Links table into the order, and keeps the order's link there. */
export function linkPicker(on: ScaleEvents, write: Writing) {
  const note = spokenNote();
  const kept = spokenNote();
  const empty = element("p", { class: "help" }, texts.none);
  const choice = field({ id: "link-choice", label: texts.choose, choices: [] });
  const use = button(texts.use, "outline", takeChosen);
  const about = element("p", { class: "help" });
  const pick = element(
    "div",
    { class: "scalerow" },
    choice.root,
    about,
    element("div", { class: "actions" }, use.root),
  );
  const tellChosen = () => {
    const chosen = links[Number(choice.control.value)];
    setText(about, chosen?.said ?? "");
  };
  choice.control.addEventListener("change", () => {
    note.say("");
    tellChosen();
  });
  const keep = button(texts.keep, "outline", keepTyped);
  const steps = pressSteps(kept);
  const form = readForm(
    { name: "link", title: texts.keepTitle, groups: KEEPING_GROUPS, labels: KEPT_LINK_LABELS, parse },
    { changed: () => form.read(), submitted: keepTyped, lacking: kept.say },
  );
  let links: readonly ChosenLink[] = [];
  let shownRows = "";
  pick.hidden = true;

  function takeChosen(): void {
    const chosen = links[Number(choice.control.value)];
    if (!chosen) return;
    if (!chosen.isUsable) {
      note.failed(chosen.said);
      return;
    }
    on.takeLink(chosen.texts);
    note.say(texts.used(chosen.name));
  }

  function parse(asked: Readonly<Record<Asked, string>>): Parsed<KeptLink> {
    const line = on.line();
    const taken = Object.fromEntries(FROM_ORDER.map((key) => [key, line[key] ?? ""]));
    return parseKeptLink({ ...taken, ...asked } as Record<KeptLinkKey, string>);
  }

  function keepTyped(): void {
    const link = form.ask();
    if (!link) {
      const parsed = parse(form.counted());
      const ofOrder = parsed.ok ? undefined : parsed.faults.find(({ field: key }) => !(key in form.counted()));
      if (ofOrder) kept.failed(texts.inOrder(ofOrder.sentence));
      return;
    }
    void steps.run(keep, texts.keeping, async () => {
      await write(() => keepLink(link, today()));
      const { model, width, mark, colour } = link;
      kept.say(texts.kept(linkName({ model, width: width?.value().toFixed(), mark, colour })));
      form.fill({ model: "", width: "" });
    });
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
      choice.offer(shown.map((words, index) => ({ value: String(index), shown: words })));
      choice.control.value = String(Math.max(0, before === undefined ? 0 : shown.indexOf(before)));
      tellChosen();
      const line = on.line();
      if (form.counted().model === "" && links.length === 0) form.fill({ model: line.design ?? "" });
    },
    unread: note.read,
  };
}
