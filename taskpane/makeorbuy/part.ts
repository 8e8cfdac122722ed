import { type Rates, readPriceLists } from "../../src/index";
import { countsOf, type DoneEvents, wayTo, wrote } from "../controls/ended";
import { stepEnding } from "../controls/ending";
import { hold } from "../controls/keepplace";
import { whileWorking } from "../controls/pressstep";
import { type MakersReading, readMakers } from "../excel/makeorbuy/makerbook";
import { isRefusal, sentenceOf } from "../excel/run";
import type { Costed } from "../order/reckoning";
import { oneAtATime } from "../running/oneatatime";
import type { Working } from "../views/lazypart";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { cataloguePart } from "./cataloguepart";
import { listPart } from "./listpart";
import { makerPart } from "./makerpart";
import { skippedWords } from "./manymessages";
import type { ManyChains, WorkingButton } from "./manyview";
import { orderView } from "./orderview";
import { askedMakers, type ReadMakers, unreadOf } from "./readmakers";
import type { SourcingEvents } from "./sourcingevents";
import { putSourcingSheet } from "./sourcingsheet";
import { subjectChoice } from "./subjectchoice";

const texts = SOURCING_TEXTS;

/** Opens make or buy in its place. */
export function openMakeOrBuy(place: HTMLElement, on: SourcingEvents): Working {
  const ending = stepEnding();
  const order = orderView();
  const list = listPart({ attempt: begin, say: on.say, put });
  const catalogue = cataloguePart({ attempt: begin, done, note, put });
  const makers = makerPart({ goTo: on.goTo, attempt: begin, write });
  const parts = { order, list, catalogue };
  const subject = subjectChoice(() => {
    ending.clear();
    show();
    if (subject.chosen === "catalogue") void on.attempt(catalogue.opened);
  });
  let reading: MakersReading = { kind: "none" };
  let makersNow: ReadMakers = { lists: undefined, refused: "" };
  let writing = 0;
  place.replaceChildren(subject.root, ...Object.values(parts).map(({ root }) => root), ending.root, makers.root);

  /** What we write ourselves is read once, at its end. */
  async function write(act: () => Promise<void>): Promise<void> {
    writing += 1;
    try {
      await act();
    } finally {
      writing -= 1;
      await read();
    }
  }

  const read = oneAtATime(async () => {
    try {
      reading = await readMakers();
    } catch (error) {
      reading = { kind: "refused", sentence: sentenceOf(error) };
      if (!isRefusal(error)) throw error;
    } finally {
      show();
    }
  });

  function show(): void {
    const { rates } = on.rates();
    const stay = hold(place);
    const lists = rates && reading.kind === "read" ? readPriceLists(reading.rows, rates.currency) : undefined;
    makersNow = { lists, refused: reading.kind === "refused" ? reading.sentence : "" };
    makers.show(reading, lists, rates?.currency);
    for (const [name, part] of Object.entries(parts)) part.root.hidden = name !== subject.chosen;
    const costed = costedNow();
    if (subject.chosen === "order") showOrder(rates, costed);
    if (subject.chosen === "list") list.follow(rates, makersNow, costed?.sheets[on.line()]?.line);
    if (subject.chosen === "catalogue") catalogue.follow(rates, makersNow);
    stay();
  }

  function costedNow(): Costed | undefined {
    const reckoning = on.order();
    return reckoning?.kind === "costed" ? reckoning.costed : undefined;
  }

  function showOrder(rates: Rates | undefined, costed: Costed | undefined): void {
    const line = costed?.sheets[on.line()]?.line;
    if (rates && costed && line) {
      const asked = askedMakers(makersNow, line, costed.rates);
      const choice = { line, sellers: asked.sellers, spot: costed.order.spot, rates: costed.rates };
      order.show(choice, asked.from, unreadOf(makersNow, asked.unreadRows));
    } else {
      order.lack(!rates ? texts.ratesFirst : on.order()?.kind === "faulty" ? texts.order.faulty : texts.order.none);
    }
  }

  function begin(step: () => Promise<void>): Promise<void> {
    ending.clear();
    return on.attempt(step);
  }

  function done(...[sentence, counts, sheet]: Parameters<DoneEvents["done"]>): void {
    ending.show(wrote(sentence, counts, { ways: sheet === undefined ? [] : [wayTo(sheet, on.goTo)] }));
  }

  function note(sentence: string): void {
    ending.show({ kind: "noted", sentence });
  }

  function put(chains: ManyChains, working: WorkingButton): void {
    void begin(async () => {
      return whileWorking(working, texts.many.putting, async () => {
        const { sheet, looked } = await putSourcingSheet(chains);
        const left = { rows: chains.skipped, sentences: [...skippedWords(chains.skipped), ...chains.unread] };
        done(texts.many.made(sheet), countsOf(looked, left), sheet);
      });
    });
  }

  new ResizeObserver(() => parts[subject.chosen].draw()).observe(place);
  return {
    follow() {
      if (writing === 0) void on.attempt(read);
    },
    opened() {
      if (subject.chosen === "catalogue") void on.attempt(catalogue.opened);
    },
  };
}
