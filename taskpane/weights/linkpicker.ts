import type { StagedWeight } from "../../src/index";
import { element, setText } from "../controls/element";
import { field } from "../controls/field";
import { spokenNote } from "../controls/note";
import type { LinkRow } from "../excel/weights/scalebook";
import { linkOffer } from "../order/linkofferpart";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { linkKeeping } from "./linkkeeping";
import { type ChosenLink, chosenLink } from "./linkrow";
import type { ScaleEvents, Writing } from "./weightevents";

const { links: texts } = SCALE_TEXTS;

/** Picks a link of the Links table into the order, and keeps the order's link there. */
export function linkPicker(on: ScaleEvents, write: Writing) {
  const note = spokenNote();
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
  const keeping = linkKeeping(on, write);
  let links: readonly ChosenLink[] = [];
  let shownRows = "";
  pick.hidden = true;

  function takeChosen(weight: StagedWeight<"finished">): void {
    const chosen = links[Number(choice.control.value)];
    if (!chosen) return;
    on.takeLink({ weight, texts: chosen.texts });
    note.say(texts.used(chosen.name));
  }

  return {
    root: element("div", {}, empty, pick, note.root, ...keeping.parts),
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
      if (links.length === 0) keeping.suggest(on.line().design ?? "");
    },
    unread: note.read,
  };
}
