import type { Book } from "./book";
import type { Faults } from "./faults";
import type { PaneHost } from "./host";
import type { LastSave } from "./lastsave";
import type { Pane } from "./pane";

/** All parts of the page. */
export interface State {
  readonly book: Book;
  readonly host: PaneHost;
  readonly pane: Pane;
  readonly faults: Faults;
  readonly lastSave: LastSave;
  reset(): Promise<void>;
  renew(): Promise<void>;
}

/** Resolves when every message is answered and no formula is waiting, and this stays so for a turn. */
export async function settled({ book, host }: State): Promise<void> {
  for (;;) {
    await host.idle();
    await book.settled();
    // Events are sent in a turn of their own, and the pane may answer them with requests.
    await new Promise((resolve) => setTimeout(resolve));
    if (host.isIdle() && book.calculation.isSettled()) return;
  }
}
