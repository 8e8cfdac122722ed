import { element } from "../controls/element";
import { type DoneEvents, wayTo, wrote } from "../controls/ended";
import { stepEnding } from "../controls/ending";
import type { Chosen } from "../designtable/chosendesigns";
import { designPart } from "../designtable/designpart";
import type { Addition } from "../excel/tables/additions";
import type { PartEvents, Working } from "../views/lazypart";
import { addedPart } from "./addedpart";
import { listPart } from "./listpart";
import { rangePart } from "./rangepart";
import { sheetPart } from "./sheetpart";
import { spotPart } from "./spotpart";

/** The designs and all that can be done with them at once. */
export function openBoard(place: HTMLElement, { attempt, goTo, say, rates: ratesNow }: PartEvents): Working {
  const ending = stepEnding();
  let followed = "";

  const done: DoneEvents["done"] = (sentence, counts, sheet) =>
    ending.show(wrote(sentence, counts, { ways: sheet === undefined ? [] : [wayTo(sheet, goTo)] }));
  const note = (sentence: string) => ending.show({ kind: "noted", sentence });
  const begin = (step: () => Promise<void>) => {
    ending.clear();
    return attempt(step);
  };
  const added = addedPart({ attempt: begin, done, say });
  const add = async (_addition: Addition) => added.refresh();
  const designs = designPart({ attempt: begin, chosen: choose, added: add, done, note });
  const chosenNow = () => designs.readAgain();
  const list = listPart({ attempt: begin, chosen: chosenNow, rates: ratesNow, added: add, done, note });
  const spot = spotPart({ attempt: begin, chosen: chosenNow, rates: ratesNow, took: added.refresh, done });
  const sheet = sheetPart({ attempt: begin, chosen: chosenNow, rates: ratesNow, added: add, done, note });
  const range = rangePart({ attempt: begin, chosen: chosenNow, rates: ratesNow, added: add, done, note });
  const tasks = element("div", { class: "tasks" }, list.root, spot.root, sheet.root, range.root);
  tasks.hidden = true;
  place.replaceChildren(designs.root, tasks, ending.root, added.root);

  function choose(chosen: Chosen | undefined): void {
    tasks.hidden = chosen === undefined;
    spot.forget();
    range.forget();
    if (chosen) list.show(chosen);
  }

  return {
    follow() {
      const now = JSON.stringify(ratesNow().reading);
      const isNew = now !== followed;
      followed = now;
      spot.ratesChanged();
      if (isNew) range.forget();
    },
    opened() {
      void attempt(async () => {
        await designs.refresh();
        await added.refresh();
      });
    },
  };
}
