import { button } from "../controls/button";
import { element, say } from "../controls/element";
import { steady } from "../controls/keepplace";
import { TEXTS } from "../wording/texts";
import { type LineHead, lineHead } from "./linehead";
import type { OrderLines } from "./orderlines";

const { form: texts } = TEXTS;
const BODY = "order-line";

export interface LineListView {
  readonly root: HTMLElement;
  /** Shows as many lines as there are, the open one unfolded. */
  show(lines: Pick<OrderLines, "all" | "open">): void;
  /** What a line is called and comes to. */
  title(line: number, said: { readonly title: string; readonly standing: string; readonly isFaulty: boolean }): void;
  /** Opens a line by a step that keeps its head where it is on the screen, and goes to the head. */
  goTo(line: number, step: () => void): void;
  /** Why there is no room for another line; "" where there is. */
  sayFull(sentence: string): void;
}

export interface LineListPresses {
  readonly open: (line: number) => void;
  readonly add: () => void;
  readonly copy: () => void;
  readonly remove: () => void;
}

/**
 * The lines of an order in a list.
 * @param fields of the open line @param removal the way back of a line that was taken out @param more further actions
 */
export function lineListView(
  fields: readonly HTMLElement[],
  on: LineListPresses,
  removal: HTMLElement,
  more: HTMLElement,
): LineListView {
  const heads: LineHead[] = [];
  const remove = button(texts.removeLine, "outline", on.remove, "small");
  const body = element(
    "div",
    { id: BODY, class: "linebody", role: "group" },
    ...fields,
    element("div", { class: "actions" }, remove.root),
  );
  const list = element("ol", { class: "linelist", "aria-label": texts.lines });
  const full = element("p", { class: "help", role: "status" });
  full.hidden = true;
  const add = button(texts.addLine, "outline", on.add, "small");
  const copy = button(texts.copyLine, "outline", on.copy, "small");
  const actions = element("div", { class: "actions" }, add.root, copy.root, more);
  const headAt = (line: number): LineHead => {
    const head = heads[line] ?? lineHead(BODY, () => on.open(line));
    heads[line] = head;
    return head;
  };
  return {
    root: element("div", { class: "lines" }, list, removal, full, actions),
    show({ all, open }) {
      const several = all.length > 1;
      const items = all.map((_, line) => {
        const head = headAt(line);
        head.show(line === open);
        head.root.hidden = !several;
        if (line === open) head.item.append(body);
        return head.item;
      });
      list.replaceChildren(...items);
      list.classList.toggle("several", several);
      body.setAttribute("aria-label", texts.line(open + 1));
      remove.root.hidden = !several;
    },
    title: (line, { title, standing, isFaulty }) => headAt(line).say(title, standing, isFaulty),
    goTo(line, step) {
      const { root } = headAt(line);
      const stay = steady(root);
      step();
      stay();
      root.focus({ preventScroll: true });
    },
    sayFull: (sentence) => say(full, sentence),
  };
}
