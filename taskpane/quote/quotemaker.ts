import { type Money, showQuoteNumber } from "../../src/index";
import type { Button } from "../controls/button";
import type { Ending } from "../controls/ending";
import { goToIfThere } from "../excel/host";
import { type Filled, fillQuote, RatesChanged } from "../excel/quote/fillquote";
import { type RateValues, sameRates } from "../excel/rates/rates";
import type { OrderForm } from "../order/orderform";
import type { Costed, Reckoning, Typed } from "../order/reckoning";
import { refusalOf } from "../order/refusal";
import { showMoney } from "../wording/display";
import { TEXTS } from "../wording/texts";
import type { Questions } from "./questions";
import { quoteMade, quoteThere } from "./quoteending";
import type { Revision } from "./revision";

/** What quoteMaker needs from the pane. */
export interface QuoteMakerEvents {
  readonly form: OrderForm;
  readonly revision: Revision;
  readonly ending: Ending;
  readonly press: Button;
  readonly questions: Pick<Questions, "isOpen" | "ask">;
  /** The sheet that quotes are copied from. */
  readonly template: () => string;
  /** The form's order, calculated now; undefined without rates that can be read. */
  readonly reckoned: () => { readonly reckoning: Reckoning; readonly rateValues: RateValues } | undefined;
  /** Reads Rates again; never throws. */
  readonly followRates: () => Promise<void>;
  /** A quote was made at this spot. */
  readonly made: (spot: Money) => void;
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly goTo: (sheet: string) => void;
  readonly say: (sentence: string) => void;
}

export interface QuoteMaker {
  /** True from the press of the button until what was written has been read again. */
  readonly isMaking: boolean;
  /**
   * Makes quote, job and tickets of the form's order, and says how it ended; where something in it is doubtful, that is asked
   * first. Where a quote was already made from the same
   * unchanged order, that quote is shown instead, unless `how` asks for another.
   */
  make(how?: "once" | "again"): Promise<void>;
}

/** An order as it was when the button was pressed. */
interface Asked {
  readonly costed: Costed;
  readonly rateValues: RateValues;
  readonly typed: Typed;
  readonly template: string;
}

/** A quote that was made, and its total. */
interface Made {
  readonly filled: Filled;
  readonly total: string;
}

export function quoteMaker(on: QuoteMakerEvents): QuoteMaker {
  const { form, revision, ending, press, questions, followRates } = on;
  /** By orderKey, so that two presses for the same order make one quote. */
  const made = new Map<string, Made>();
  let isPressed = false;
  let isMaking = false;

  /** Identifies an order by what was typed, the template, and the quote that it revises. */
  const orderKey = (asked: Asked) => JSON.stringify([asked.typed, asked.template, revision.of ?? null]);

  async function make(how: "once" | "again" = "once"): Promise<void> {
    if (isPressed) return;
    const reckoned = on.reckoned();
    if (!reckoned) return ending.failed(TEXTS.make.notYet);
    const { reckoning, rateValues } = reckoned;
    if (reckoning.kind !== "costed" || reckoning.faults.length > 0) {
      ending.failed(refusalOf(reckoning, form.typed()));
      return form.demand(reckoning.faults);
    }
    if (questions.isOpen) {
      ending.clear();
      return questions.ask();
    }
    isPressed = true;
    isMaking = true;
    ending.clear();
    press.work(TEXTS.make.working);
    on.say(TEXTS.make.working);
    // What is typed from here on belongs to the next quote.
    const asked = { costed: reckoning.costed, rateValues, typed: form.typed(), template: on.template() };
    try {
      if (how === "once" && (await showMade(asked))) return;
      await fill(asked);
    } catch (error) {
      if (!(error instanceof RatesChanged)) throw error;
      await followRates();
      const now = on.reckoned();
      // Where they could not be read again, the pane still has the old figures: no new price is known.
      const isNew = now !== undefined && !sameRates(now.rateValues, rateValues);
      const costed = isNew && now.reckoning.kind === "costed" ? now.reckoning.costed : undefined;
      ending.failed(TEXTS.make.ratesChanged(costed && showMoney(costed.quote.total)));
    } finally {
      isPressed = false;
      press.rest();
      // Rates has a new next number, and changes made meanwhile were not followed. How it ended is shown before.
      void followRates().then(() => {
        isMaking = isPressed;
      });
    }
  }

  async function fill(asked: Asked): Promise<void> {
    const { costed, rateValues, typed, template } = asked;
    const { order, sheets, quote, rates } = costed;
    const revised = revision.of;
    const filled = await fillQuote({ order, sheets, quote, rates, rateValues, typed, revised, template });
    on.made(order.spot);
    const total = showMoney(quote.total);
    // The form still holds that quote: what is made next is a revision of it, until a new order is begun.
    if (revision.of) revision.goOn(filled.number, total);
    made.set(orderKey(asked), { filled, total });
    ending.show(quoteMade(filled, on.goTo));
  }

  /** Shows the quote that the order has already, with a button for a revision; gives false where that quote is gone. */
  async function showMade(asked: Asked): Promise<boolean> {
    const order = orderKey(asked);
    const before = made.get(order);
    if (!before) return false;
    if (!(await goToIfThere(before.filled.quoteSheet))) {
      made.delete(order);
      return false;
    }
    const now = showMoney(asked.costed.quote.total);
    const number = showQuoteNumber(before.filled.number);
    const sentence =
      now === before.total ? TEXTS.make.already(number, now) : TEXTS.make.alreadyOtherwise(number, before.total, now);
    const again = () => void on.attempt(() => revise(before));
    ending.show(quoteThere(before.filled, sentence, { goTo: on.goTo, revise: again }));
    return true;
  }

  async function revise({ filled, total }: Made): Promise<void> {
    revision.goOn(filled.number, total);
    await make("again");
  }

  return {
    get isMaking() {
      return isMaking;
    },
    make,
  };
}
