import type { Banner } from "./banner";
import type { Button } from "./button";
import { showMoney } from "./display";
import { fillQuote, RatesChanged } from "./excel/quote";
import type { RateValues } from "./excel/rates";
import type { OrderForm } from "./orderform";
import type { Reckoning } from "./reckoning";
import { refusalOf } from "./refusal";
import type { Revision } from "./revision";
import { TEXTS } from "./texts";

/** What the making of a quote needs of the pane. */
export interface QuoteMakerEvents {
  readonly form: OrderForm;
  readonly revision: Revision;
  readonly ending: Banner;
  readonly press: Button;
  /** The sheet that quotes are copied from. */
  readonly template: () => string;
  /** What the form amounts to now; undefined without rates that can be read. */
  readonly reckoned: () => { readonly reckoning: Reckoning; readonly rateValues: RateValues } | undefined;
  readonly followRates: () => Promise<void>;
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly goTo: (sheet: string) => void;
  readonly say: (sentence: string) => void;
}

export interface QuoteMaker {
  readonly isMaking: boolean;
  /** Makes quote, job and tickets of the form's order, and says how it ended. */
  make(): Promise<void>;
}

export function quoteMaker(on: QuoteMakerEvents): QuoteMaker {
  const { form, revision, ending, press, followRates } = on;
  let isMaking = false;

  async function make(): Promise<void> {
    if (isMaking) return;
    const made = on.reckoned();
    if (!made) return ending.failed(TEXTS.make.notYet);
    const { reckoning, rateValues } = made;
    if (reckoning.kind !== "costed" || reckoning.faults.length > 0) {
      ending.failed(refusalOf(reckoning, form.typed()));
      return form.demand(reckoning.faults);
    }
    isMaking = true;
    ending.clear();
    press.work(TEXTS.make.working);
    on.say(TEXTS.make.working);
    try {
      const { order, sheets, quote, rates } = reckoning.costed;
      const typed = form.typed();
      const template = on.template();
      const filled = await fillQuote({
        order,
        sheets,
        quote,
        rates,
        rateValues,
        typed,
        revised: revision.of,
        template,
      });
      // The form still holds that quote at its spot: what follows is a revision too, until a new order is begun.
      if (revision.of) revision.goOn(filled.number, showMoney(quote.total));
      try {
        // The quote has taken its number; the next one must be known before another can be made.
        await followRates();
      } finally {
        ending.done(filled, on.goTo);
      }
    } catch (error) {
      if (!(error instanceof RatesChanged)) {
        // What was calculated meanwhile was not followed.
        void on.attempt(followRates);
        throw error;
      }
      await followRates();
      const now = on.reckoned()?.reckoning;
      ending.failed(TEXTS.make.ratesChanged(now?.kind === "costed" ? showMoney(now.costed.quote.total) : undefined));
    } finally {
      isMaking = false;
      press.rest();
    }
  }

  return {
    get isMaking() {
      return isMaking;
    },
    make,
  };
}
