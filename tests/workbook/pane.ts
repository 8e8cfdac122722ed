import type { Associated } from "./functions";

/** The task pane's frame: the page that is also the runtime of the worksheet functions. */
export class Pane {
  constructor(readonly frame: HTMLIFrameElement) {}

  /** Loads the pane as Excel would, and resolves when its page and its functions have loaded. */
  open(onBridge: (window: Window) => void): Promise<void> {
    return new Promise((resolve, reject) => {
      // Also where the pane loads itself anew.
      this.frame.onload = () => {
        const { contentWindow } = this.frame;
        if (!contentWindow || contentWindow.location.href === "about:blank") return;
        if (!("_richApiNativeBridge" in contentWindow))
          return reject(new Error("The task pane did not load its bridge"));
        onBridge(contentWindow);
        resolve();
      };
      // What office.js reads of its surroundings in desktop Excel.
      this.frame.src = "/addin/taskpane.html?_host_Info=Excel$Win32$16.01$en-US$telemetry$$$1";
    });
  }

  /** Takes the pane's page away, with all that runs in it. */
  close(): void {
    this.frame.src = "about:blank";
  }

  /** What functions.js handed to CustomFunctions.associate, by id in any case of letters. */
  readonly associated: Associated = (id) => {
    const mappings = associationOf(this.frame.contentWindow);
    const found = mappings?.[id.toUpperCase()];
    return typeof found === "function" ? (...values) => Reflect.apply(found, undefined, values) : undefined;
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
