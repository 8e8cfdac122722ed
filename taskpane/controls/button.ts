import { element, setText } from "./element";

export type ButtonLook = "primary" | "outline";

export interface Button {
  readonly root: HTMLButtonElement;
  /** Shows the spinner and other words, and takes no press until the work is done. The focus stays where it is. */
  work(words: string): void;
  rest(): void;
  /** Gives it other words. */
  name(words: string): void;
}

/** While it works it is disabled by aria alone: a disabled button would lose the focus, and nobody would hear its words. */
export function button(
  words: string,
  look: ButtonLook,
  pressed: () => void,
  size: "small" | "medium" = "medium",
): Button {
  let shown = words;
  const label = element("span", {}, words);
  const spinner = element("span", { class: "spinner", "aria-hidden": "true" });
  const root = element("button", { type: "button", class: `button ${look} ${size}` }, label);
  let working = false;
  root.addEventListener("click", () => {
    if (!working) pressed();
  });
  return {
    root,
    work(busyWords) {
      working = true;
      root.setAttribute("aria-disabled", "true");
      root.prepend(spinner);
      setText(label, busyWords);
    },
    rest() {
      working = false;
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

/** A button that reads as a link inside a sentence. */
export function linkButton(words: string, pressed: () => void): HTMLButtonElement {
  const made = element("button", { type: "button", class: "link" }, words);
  made.addEventListener("click", pressed);
  return made;
}
