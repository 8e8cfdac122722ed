import { button } from "../controls/button";
import { element } from "../controls/element";
import type { Filled } from "../excel/quote/fillquote";
import { showList } from "../wording/display";
import { TEXTS } from "../wording/texts";

const { make } = TEXTS;

export interface Banner {
  readonly root: HTMLElement;
  done(filled: Filled, goTo: (sheet: string) => void): void;
  /** Shows a quote that was made before, with buttons to its sheets and to a revision of it. */
  already(
    filled: Filled,
    sentence: string,
    on: { readonly goTo: (sheet: string) => void; readonly revise: () => void },
  ): void;
  /** Shows a sentence on what is worth a look, though nothing went wrong. */
  noted(sentence: string): void;
  /** Shows a sentence on what went wrong. */
  failed(sentence: string): void;
  clear(): void;
}

/** Shows how the last step ended. It is a live region, so screen readers read it too. */
export function banner(): Banner {
  const root = element("div", { class: "ending", role: "status", "aria-live": "polite", "aria-atomic": "true" });
  return {
    root,
    done(filled, goTo) {
      root.replaceChildren(
        element(
          "div",
          { class: "banner done" },
          element("p", { class: "bannerhead" }, make.done(filled.quoteSheet, filled.jobSheet, filled.ticketsSheet)),
          ...(filled.isSigned ? [] : [element("p", { class: "help" }, make.unsigned)]),
          ...filled.unknownFields.map((field) => element("p", { class: "help" }, make.unknownField(field))),
          ...(filled.unplacedFields.length > 0
            ? [
                element(
                  "p",
                  { class: "help" },
                  make.unplaced(showList(filled.unplacedFields.map((each) => `{{${each}}}`))),
                ),
              ]
            : []),
          ...filled.formulaFields.map((field) => element("p", { class: "help" }, make.formulaField(field))),
          ...filled.errors.map((error) => element("p", { class: "help" }, make.errorValue(error))),
          element("div", { class: "actions" }, ...showing(filled, goTo)),
        ),
      );
    },
    already(filled, sentence, on) {
      const revise = button(make.revise, "outline", on.revise).root;
      root.replaceChildren(
        element(
          "div",
          { class: "banner noted" },
          element("p", { class: "bannerhead" }, sentence),
          element("div", { class: "actions" }, ...showing(filled, on.goTo), revise),
        ),
      );
    },
    noted(sentence) {
      root.replaceChildren(element("div", { class: "banner noted" }, element("p", {}, sentence)));
    },
    failed(sentence) {
      root.replaceChildren(element("div", { class: "banner failed" }, element("p", {}, sentence)));
    },
    clear() {
      root.replaceChildren();
    },
  };
}

/** Buttons to a quote's sheets. */
function showing(filled: Filled, goTo: (sheet: string) => void): HTMLElement[] {
  const sheets = [
    [make.showQuote, filled.quoteSheet],
    [make.showJob, filled.jobSheet],
    [make.showTickets, filled.ticketsSheet],
  ] as const;
  return sheets.map(([label, sheet]) => button(label, "outline", () => goTo(sheet)).root);
}
