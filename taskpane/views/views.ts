import { element } from "../controls/element";
import { TEXTS } from "../wording/texts";

export const VIEWS = ["quote", "check", "decide", "links", "catalogue"] as const;

/** What the pane is used for, one at a time. */
export type ViewName = (typeof VIEWS)[number];

export interface Views {
  /** The row of tabs, and what is shown below it. */
  readonly tabs: HTMLElement;
  readonly panels: readonly HTMLElement[];
  readonly shown: ViewName;
  /** Shows a view, scrolled to where the person left it. */
  go(view: ViewName): void;
}

/**
 * The pane's views behind a row of tabs: arrows, Home and End go from tab to tab (WAI-ARIA, tabs pattern).
 * @param changed called when another view is shown
 */
export function viewsOf(
  parts: Readonly<Record<ViewName, readonly HTMLElement[]>>,
  changed: (view: ViewName) => void,
): Views {
  let shown: ViewName = "quote";
  const scrolledTo = new Map<ViewName, number>();
  const tabs = new Map(VIEWS.map((view) => [view, tab(view)]));
  const panels = new Map(VIEWS.map((view) => [view, panel(view, parts[view])]));
  const row = element("div", { class: "tabs", role: "tablist", "aria-label": TEXTS.views.label }, ...tabs.values());

  function mark(): void {
    for (const view of VIEWS) {
      const isShown = view === shown;
      const head = tabs.get(view);
      head?.setAttribute("aria-selected", String(isShown));
      if (head) head.tabIndex = isShown ? 0 : -1;
      const body = panels.get(view);
      if (body) body.hidden = !isShown;
    }
  }

  function go(view: ViewName): void {
    if (view === shown) return;
    scrolledTo.set(shown, window.scrollY);
    shown = view;
    mark();
    window.scrollTo({ top: scrolledTo.get(view) ?? 0 });
    changed(view);
  }

  for (const [view, head] of tabs) head.addEventListener("click", () => go(view));
  row.addEventListener("keydown", (event) => {
    const to = target(event.key, VIEWS.indexOf(shown));
    if (to === undefined) return;
    event.preventDefault();
    go(to);
    tabs.get(to)?.focus({ preventScroll: true });
  });
  mark();
  return {
    tabs: row,
    panels: [...panels.values()],
    get shown() {
      return shown;
    },
    go,
  };
}

function target(key: string, from: number): ViewName | undefined {
  const last = VIEWS.length - 1;
  if (key === "ArrowRight") return VIEWS[from === last ? 0 : from + 1];
  if (key === "ArrowLeft") return VIEWS[from === 0 ? last : from - 1];
  if (key === "Home") return VIEWS[0];
  if (key === "End") return VIEWS[last];
  return undefined;
}

function tab(view: ViewName): HTMLButtonElement {
  return element(
    "button",
    {
      type: "button",
      role: "tab",
      id: `tab-${view}`,
      "aria-controls": `view-${view}`,
      "data-word": TEXTS.views[view],
    },
    TEXTS.views[view],
  );
}

function panel(view: ViewName, parts: readonly HTMLElement[]): HTMLElement {
  return element(
    "div",
    { class: "view", role: "tabpanel", id: `view-${view}`, "aria-labelledby": `tab-${view}` },
    ...parts,
  );
}
