import type { Associated, ErrorCells } from "./functions";

/** The task pane's frame: the page that is also the runtime of the worksheet functions. */
export class Pane {
  private readonly typedInto = new Set<HTMLInputElement | HTMLTextAreaElement>();

  constructor(readonly frame: HTMLIFrameElement) {}

  /** Loads the pane as Excel would, and resolves when its page and its functions have loaded. */
  open(onBridge: (window: Window) => void): Promise<void> {
    return new Promise((resolve, reject) => {
      // Also where the pane reloads itself.
      this.frame.onload = () => {
        const { contentWindow } = this.frame;
        if (!contentWindow || contentWindow.location.href === "about:blank") return;
        if (!("_richApiNativeBridge" in contentWindow))
          return reject(new Error("The task pane did not load its bridge"));
        this.watchTyping(contentWindow);
        onBridge(contentWindow);
        resolve();
      };
      // What office.js reads in desktop Excel to recognize its host.
      this.frame.src = "/addin/taskpane.html?_host_Info=Excel$Win32$16.01$en-US$telemetry$$$1";
    });
  }

  /** Removes the pane's page, with all that runs in it. */
  close(): void {
    this.frame.src = "about:blank";
  }

  /** The function that functions.js gave to CustomFunctions.associate, by id in any case of letters. */
  readonly associated: Associated = (id) => {
    const mappings = associationOf(this.frame.contentWindow);
    const found = mappings?.[id.toUpperCase()];
    return typeof found === "function" ? (...values) => Reflect.apply(found, undefined, values) : undefined;
  };

  /** Whether a field of the pane holds what a person typed since the add-in last wrote into the workbook. */
  hasTyped(): boolean {
    return [...this.typedInto].some((field) => field.isConnected && field.value.trim() !== "");
  }

  /** Notes that the add-in has written into the workbook, so that what was typed is there now. */
  forgetTyped(): void {
    this.typedInto.clear();
  }

  /** Watches the document's `input` events, which do not happen for values that the add-in sets. */
  private watchTyping({ document }: Window): void {
    this.typedInto.clear();
    document.addEventListener("input", ({ target }) => {
      const field = target as Partial<HTMLInputElement> | null;
      // Not by instanceof: the pane's classes are another window's.
      if (field?.tagName === "TEXTAREA" || (field?.tagName === "INPUT" && !/^(checkbox|radio)$/.test(field.type ?? "")))
        this.typedInto.add(field as HTMLInputElement);
    });
  }

  /** An error cell as an object of the class with which the add-in's functions answer errors. */
  readonly errorAsClass: ErrorCells = (code) => {
    const functions: unknown = Reflect.get(this.frame.contentWindow ?? {}, "CustomFunctions");
    const made: unknown = functions && Reflect.get(functions, "Error");
    if (typeof made !== "function") throw new Error("The pane has no CustomFunctions.Error");
    return Reflect.construct(made, [code]);
  };

  hasFunctions(): boolean {
    return Object.keys(associationOf(this.frame.contentWindow) ?? {}).length > 0;
  }
}

function associationOf(window: Window | null): Record<string, unknown> | undefined {
  const functions: unknown = window ? Reflect.get(window, "CustomFunctions") : undefined;
  if (typeof functions !== "object" || functions === null) return undefined;
  const association: unknown = Reflect.get(functions, "_association");
  if (typeof association !== "object" || association === null) return undefined;
  const mappings: unknown = Reflect.get(association, "mappings");
  return typeof mappings === "object" && mappings !== null ? (mappings as Record<string, unknown>) : undefined;
}
