import type { Book } from "./book";
import type { Faults } from "./faults";
import type { PaneHost } from "./host";
import type { LastSave } from "./lastsave";
import type { Pane } from "./pane";

/** Everything the page is made of. */
export interface State {
  readonly book: Book;
  readonly host: PaneHost;
  readonly pane: Pane;
  readonly faults: Faults;
  readonly lastSave: LastSave;
  reset(): Promise<void>;
  renew(): Promise<void>;
}

/** Resolves when no message is unanswered and no formula waits, and stays so for a turn. */
export async function settled({ book, host }: State): Promise<void> {
  for (;;) {
    await host.idle();
    await book.settled();
    // Events go out in a turn of their own, and the pane may answer them with requests.
    await new Promise((resolve) => setTimeout(resolve));
    if (host.isIdle() && book.calculation.isSettled()) return;
  }
}
