import { element } from "../controls/element";
import { doneWith } from "../controls/ended";
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

  const done = (sentence: string, sheet?: string) => ending.show(doneWith(sentence, goTo, sheet));
  const begin = (step: () => Promise<void>) => {
    ending.clear();
    return attempt(step);
  };
  const added = addedPart({ attempt: begin, done, say });
  const add = async (_addition: Addition) => added.refresh();
  const designs = designPart({ attempt: begin, chosen: choose, added: add, done });
  const chosenNow = () => designs.readAgain();
  const list = listPart({ attempt: begin, chosen: chosenNow, rates: ratesNow, added: add, done });
  const spot = spotPart({ attempt: begin, chosen: chosenNow, rates: ratesNow, took: added.refresh, done });
  const sheet = sheetPart({ attempt: begin, chosen: chosenNow, rates: ratesNow, added: add, done });
  const range = rangePart({ attempt: begin, chosen: chosenNow, rates: ratesNow, added: add, done });
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
