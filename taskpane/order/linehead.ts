import { element, setText } from "../controls/element";

/** A line of the order in the list: its place there, and the button that opens it. */
export interface LineHead {
  readonly item: HTMLElement;
  readonly root: HTMLButtonElement;
  show(open: boolean): void;
  /** @param standing what it comes to, or what is wrong with it */
  say(title: string, standing: string, faulty: boolean): void;
}

/** @param body id of what it opens */
export function lineHead(body: string, pressed: () => void): LineHead {
  const title = element("span", { class: "linetitle" });
  const standing = element("span", { class: "linesum" });
  const root = element("button", { type: "button", class: "linehead" }, title, " ", standing);
  root.addEventListener("click", pressed);
  return {
    item: element("li", {}, root),
    root,
    show(open) {
      root.setAttribute("aria-expanded", String(open));
      // One line is always open: the open one has nothing to press.
      if (open) {
        root.setAttribute("aria-disabled", "true");
        root.setAttribute("aria-controls", body);
      } else {
        root.removeAttribute("aria-disabled");
        root.removeAttribute("aria-controls");
      }
    },
    say(said, sum, faulty) {
      setText(title, said);
      setText(standing, sum);
      standing.classList.toggle("fault", faulty);
    },
  };
}
