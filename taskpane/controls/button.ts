import "@fluentui/web-components/button.js";
import "@fluentui/web-components/spinner.js";
import { element, fluent, setText } from "./element";

export type ButtonLook = "primary" | "outline";

export interface Button {
  readonly root: HTMLElement;
  /** Shows the spinner and other words, and takes no press until the work is done. The focus stays where it is. */
  work(words: string): void;
  rest(): void;
  /** Gives it other words. */
  name(words: string): void;
}

/**
 * A Fluent button. The role is also said as an attribute: Fluent keeps it in ElementInternals, which some screen readers'
 * older bridges and most test tools do not see.
 */
export function button(
  words: string,
  look: ButtonLook,
  pressed: () => void,
  size: "small" | "medium" = "medium",
): Button {
  let shown = words;
  const label = element("span", {}, words);
  const spinner = fluent("fluent-spinner", { slot: "start", size: "tiny", "aria-hidden": "true" });
  const root = fluent("fluent-button", { role: "button", type: "button", appearance: look, size }, label);
  let working = false;
  root.addEventListener("click", () => {
    if (!working) pressed();
  });
  return {
    root,
    work(busyWords) {
      working = true;
      root.toggleAttribute("disabled-focusable", true);
      root.setAttribute("aria-disabled", "true");
      root.prepend(spinner);
      setText(label, busyWords);
    },
    rest() {
      working = false;
      root.toggleAttribute("disabled-focusable", false);
      root.removeAttribute("aria-disabled");
      spinner.remove();
      setText(label, shown);
    },
    name(now) {
      shown = now;
      if (!working) setText(label, now);
    },
  };
}

/** A button that reads as a link inside a sentence; native, since Fluent's link wants an address. */
export function linkButton(words: string, pressed: () => void): HTMLButtonElement {
  const made = element("button", { type: "button", class: "link" }, words);
  made.addEventListener("click", pressed);
  return made;
}
