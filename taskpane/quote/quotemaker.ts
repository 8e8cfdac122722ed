import { showQuoteNumber } from "../../src/index";
import type { Button } from "../controls/button";
import type { Ending } from "../controls/ending";
import { goToIfThere } from "../excel/host";
import { type Filled, fillQuote, RatesChanged } from "../excel/quote/fillquote";
import type { RateValues } from "../excel/rates/rates";
import type { OrderForm } from "../order/orderform";
import type { Costed, Reckoning, Typed } from "../order/reckoning";
import { refusalOf } from "../order/refusal";
import { showMoney } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { quoteMade, quoteThere } from "./quoteending";
import type { Revision } from "./revision";

/** What the making of a quote needs of the pane. */
export interface QuoteMakerEvents {
  readonly form: OrderForm;
  readonly revision: Revision;
  readonly ending: Ending;
  readonly press: Button;
  /** The sheet that quotes are copied from. */
  readonly template: () => string;
  /** What the form amounts to now; undefined without rates that can be read. */
  readonly reckoned: () => { readonly reckoning: Reckoning; readonly rateValues: RateValues } | undefined;
  /** Never fails. */
  readonly followRates: () => Promise<void>;
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly goTo: (sheet: string) => void;
  readonly say: (sentence: string) => void;
}

export interface QuoteMaker {
  /** From the press of the button until what was written has been read again. */
  readonly isMaking: boolean;
  /**
   * Makes quote, job and tickets of the form's order, and says how it ended. An order that a quote was made from already,
   * and that is unchanged, is shown its quote instead, unless another is asked for.
   */
  make(how?: "once" | "anew"): Promise<void>;
}

/** An order as it stood when the button was pressed. */
interface Asked {
  readonly costed: Costed;
  readonly rateValues: RateValues;
  readonly typed: Typed;
  readonly template: string;
}

/** A quote that was made, and what it came to. */
interface Made {
  readonly filled: Filled;
  readonly total: string;
}

export function quoteMaker(on: QuoteMakerEvents): QuoteMaker {
  const { form, revision, ending, press, followRates } = on;
  /** By the order as typed: one press, one quote. */
  const made = new Map<string, Made>();
  let isPressed = false;
  let isMaking = false;

  /** What an order is known by: what was typed, the template, and the quote that it revises. */
  const nameOf = (asked: Asked) => JSON.stringify([asked.typed, asked.template, revision.of ?? null]);

  async function make(how: "once" | "anew" = "once"): Promise<void> {
    if (isPressed) return;
    const reckoned = on.reckoned();
    if (!reckoned) return ending.failed(TEXTS.make.notYet);
    const { reckoning, rateValues } = reckoned;
    if (reckoning.kind !== "costed" || reckoning.faults.length > 0) {
      ending.failed(refusalOf(reckoning, form.typed()));
      return form.demand(reckoning.faults);
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
      const now = on.reckoned()?.reckoning;
      ending.failed(TEXTS.make.ratesChanged(now?.kind === "costed" ? showMoney(now.costed.quote.total) : undefined));
    } finally {
      isPressed = false;
      press.rest();
      // Rates has another next number, and what was calculated meanwhile was not followed. How it ended is told before.
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
    const total = showMoney(quote.total);
    // The form still holds that quote at its spot: what follows is a revision too, until a new order is begun.
    if (revision.of) revision.goOn(filled.number, total);
    made.set(nameOf(asked), { filled, total });
    ending.show(quoteMade(filled, on.goTo));
  }

  /** Shows the quote that the order has already, with the way to a revision; answers false where it has none any more. */
  async function showMade(asked: Asked): Promise<boolean> {
    const order = nameOf(asked);
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
    await make("anew");
  }

  return {
    get isMaking() {
      return isMaking;
    },
    make,
  };
}
