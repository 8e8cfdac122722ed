import { announcer } from "../controls/announcer";
import { type Form, formElement, plannedForm } from "../controls/form";
import { readAskingBook } from "../excel/market/askingbook";
import { isRefusal, sentenceOf } from "../excel/run";
import { oneAtATime } from "../running/oneatatime";
import type { PartEvents, Working } from "../views/lazypart";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { type CheckCard, checkCard } from "./checkcard";
import { CHECK_LABELS, type CheckKey, checkGroups } from "./checkfields";
import { checkKeeping } from "./checkkeeping";
import { type Checked, checkTyped, type KeptLinks, keptLinks, linkChoices } from "./pricecheck";
import { type UnitQuestion, unitQuestion } from "./unitquestion";

const { check: texts } = ASKING_TEXTS;

/** One asking price, checked as it is typed, and written down if the person likes. */
export function openPriceCheck(place: HTMLElement, on: PartEvents): Working {
  const voice = announcer();
  const card = checkCard();
  const groups = checkGroups(() => on.rates().rates?.currency ?? "");
  const form = plannedForm(
    { name: "check", groups, labels: CHECK_LABELS },
    { changed: compute, leftFaulty: voice.say },
  );
  const which = unitQuestion((weight) => {
    form.fill({ weight });
    compute();
    form.goTo("weight");
  });
  const keeping = checkKeeping(on.rates);
  let links: KeptLinks | undefined;
  let spoken = "";
  place.replaceChildren(checkElement(form, which, card, keeping.root), voice.root);

  function compute(): void {
    const { rates } = on.rates();
    const typed = form.counted();
    const checked: Checked | undefined = rates && checkTyped(typed, form.misread(), rates, links);
    form.judge(checked?.faults ?? []);
    which.show(typed.weight);
    card.show(checked, typed, rates);
    keeping.show(checked, typed.mark);
    const said = checked?.kind === "checked" ? card.spoken() : "";
    if (said !== spoken && said !== "") voice.sayAtRest(said);
    spoken = said;
  }

  const read = oneAtATime(async () => {
    try {
      const book = await readAskingBook();
      keeping.read(book.links.ok ? "" : book.links.sentence);
      links = keptLinks(book.links.ok ? book.links.rows : []);
      offerLinks(form, links);
    } catch (error) {
      keeping.read(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    } finally {
      compute();
    }
  });

  return {
    follow() {
      const { rates } = on.rates();
      if (rates) form.adapt(rates);
      if (rates) form.field("currency").setPlaceholder(rates.currency);
      compute();
      if (!keeping.isWriting) void read();
    },
  };
}

function checkElement(
  { groups: [offer, more] }: Form<CheckKey>,
  which: UnitQuestion,
  card: CheckCard,
  keeping: HTMLElement,
): HTMLElement {
  const parts = [offer, which.root, card.root, more, keeping].filter((part) => part !== undefined);
  return formElement({ class: "checkform", "aria-label": texts.form }, () => undefined, ...parts);
}

function offerLinks(form: Form<CheckKey>, links: KeptLinks): void {
  const { offer, control } = form.field("link");
  offer(linkChoices(links));
  // One that is gone is chosen no longer.
  if (control.value !== form.entries.texts.link) form.fill({ link: control.value });
}
