import { type QuoteNumber, showQuoteNumber } from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import type { OrderForm } from "../order/orderform";
import type { Typed } from "../order/reckoning";
import { TEXTS } from "../wording/texts";

const { revising: texts } = TEXTS;

export interface Revision {
  readonly root: HTMLElement;
  /** The quote in the form that is being revised; undefined while the form holds a new order. */
  readonly of: QuoteNumber | undefined;
  /** Puts a quote into the form. @param total what it was quoted at, as shown @param remarks on what it was quoted at */
  begin(number: QuoteNumber, total: string, typed: Typed, remarks: () => readonly string[]): void;
  /** Rates may have changed: says the remarks as they are now. */
  follow(): void;
  /** The form's quote was made, and is now the one to be revised. */
  goOn(number: QuoteNumber, total: string): void;
  /** The form holds a new order from now on, with its texts unchanged. */
  end(): void;
}

/** Says above the form which earlier quote it holds, what making it will do, and how to leave it. */
export function revisionOf(form: OrderForm, onLeave: () => void): Revision {
  const root = element("section", { class: "revising", tabindex: "-1", "aria-labelledby": "revising-title" });
  root.hidden = true;
  let current: QuoteNumber | undefined;
  let before: (() => void) | undefined;
  const remarked = element("div", {});
  let remarksNow: () => readonly string[] = () => [];
  const follow = () => {
    const now = remarksNow();
    if (now.join("\n") === [...remarked.children].map(({ textContent }) => textContent).join("\n")) return;
    remarked.replaceChildren(...now.map((remark) => element("p", {}, remark)));
  };
  const end = () => {
    current = undefined;
    before = undefined;
    root.hidden = true;
  };
  const leave = button(
    texts.leave,
    "outline",
    () => {
      before?.();
      end();
      onLeave();
    },
    "small",
  );
  const goOn = (number: QuoteNumber, total: string) => {
    current = number;
    const name = showQuoteNumber(number);
    // For a revision at today's spot, the form's own spot is left empty and follows Rates.
    const said = form.typed().order.spot.trim() === "" ? texts.atRates : texts.asQuoted;
    root.replaceChildren(
      element("h2", { id: "revising-title" }, texts.title(name)),
      element("p", {}, said(total)),
      remarked,
      element("p", {}, texts.willMake(name)),
      element("div", { class: "actions" }, leave.root),
    );
    root.hidden = false;
  };
  return {
    root,
    get of() {
      return current;
    },
    begin(number, total, typed, remarks) {
      remarksNow = remarks;
      // Opening one quote after another, what the person had typed before the first is what comes back.
      before ??= form.snapshot();
      form.fill(typed);
      goOn(number, total);
      follow();
    },
    follow,
    goOn(number, total) {
      // What was made now is quoted at Rates as they are.
      remarksNow = () => [];
      goOn(number, total);
      follow();
    },
    end,
  };
}
