import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect } from "vitest";
import { launch } from "./browser.mjs";
import type { Desk } from "./desk";
import { openBook, paneFrame } from "./person.mjs";
import { type Served, serve } from "./server.mjs";

/**
 * Milliseconds between two paintings of the grid. Nothing looks at it between two steps; to find a cell the page paints at once.
 */
const PAINTING = "paint=200";
const VIEWPORT = { width: 1400, height: 900 };

/**
 * Most files work in a blank workbook, so its page is kept open for the next file. Other pages would only use time while they
 * wait.
 */
const USUAL = "book=blank";

/** A browser and a server. Files that run one after the other in one process share them. */
export class Workshop {
  private static shared: Promise<Workshop> | undefined;
  private readonly desks = new Set<Desk>();
  /** Pages that are free, by their query. */
  private readonly free = new Map<string, Desk[]>();

  private constructor(
    private readonly server: Served,
    private readonly browser: Browser,
    private readonly isShared: boolean,
  ) {}

  /** @param drawing whether pages can draw in three dimensions; a workshop that can is not shared with other files */
  static async open(drawing: "none" | "software" = "none"): Promise<Workshop> {
    if (drawing === "software") return new Workshop(await serve(), await launch(drawing), false);
    Workshop.shared ??= Promise.all([serve(), launch()]).then(
      ([server, browser]) => new Workshop(server, browser, true),
    );
    return Workshop.shared;
  }

  /**
   * Opens a new workbook and pane.
   * @param query which workbook, and more of the page, such as "book=workshop&pane=320"
   */
  async sitDown(query: string): Promise<Desk> {
    // The demo may change freely: only tests of the demo itself may depend on it.
    if (!/(^|&)book=/.test(query)) throw new Error(`"${query}" says no workbook; give one such as book=workshop`);
    const free = this.free.get(query)?.pop();
    if (free) {
      await free.page.evaluate(() => window.workbookPage.renew());
      return free;
    }
    const page = await this.browser.newPage({ viewport: VIEWPORT });
    const crashes: string[] = [];
    page.on("pageerror", (error) => crashes.push(error.message));
    await openBook(page, `${this.server.url}/?${PAINTING}&${query}`);
    const leave = async () => {
      expect(crashes.splice(0)).toEqual([]);
      await page.unrouteAll();
      await page.setViewportSize(VIEWPORT);
      await page.emulateMedia({ reducedMotion: null, media: null });
      this.free.set(query, [...(this.free.get(query) ?? []), desk]);
    };
    const forgive = (pattern: RegExp) => {
      const others = crashes.filter((message) => !pattern.test(message));
      expect(others.length, `an error like ${pattern}`).toBeLessThan(crashes.length);
      crashes.splice(0, crashes.length, ...others);
    };
    const desk: Desk = { page, pane: await paneFrame(page), crashes, forgive, leave };
    this.desks.add(desk);
    return desk;
  }

  /** Ends a file's work; one page stays open and free for the next file. */
  async close(): Promise<void> {
    if (!this.isShared) {
      await this.browser.close();
      await this.server.close();
      return;
    }
    const kept = this.free.get(USUAL)?.[0];
    this.free.clear();
    for (const desk of this.desks) {
      if (desk === kept) continue;
      this.desks.delete(desk);
      await desk.page.close();
    }
    if (kept) this.free.set(USUAL, [kept]);
  }
}

/** The desk of a file's tests: always that of the running test. */
export interface UsedDesk extends Desk {
  /** Opens another desk, of another kind or a new one, for the rest of the test. */
  sit(down: SitDown): Promise<void>;
}

type SitDown = (workshop: Workshop) => Promise<Desk>;

/**
 * A desk for the tests of a file, each with a new workbook. Opens the workshop before them, opens a desk before each test, leaves
 * it after the test (which fails where something had crashed), and closes the workshop.
 * @param down opens the desk of every test; without it each test opens its own by `sit`
 * @param drawing whether pages can draw in three dimensions
 */
export function deskForEach(down?: SitDown, drawing?: "none" | "software"): UsedDesk {
  const desk = new CurrentDesk();
  beforeAll(() => desk.enter(drawing));
  beforeEach(async () => {
    if (down) await desk.sit(down);
  });
  afterEach(() => desk.leave());
  afterAll(() => desk.goHome());
  return desk;
}

/** One desk for all tests of a file or of a `describe`, which are a person's steps one after another. */
export function deskForAll(down: SitDown): Desk {
  const desk = new CurrentDesk();
  beforeAll(async () => {
    await desk.enter();
    await desk.sit(down);
  });
  afterAll(async () => {
    await desk.leave();
    await desk.goHome();
  });
  return desk;
}

class CurrentDesk implements UsedDesk {
  private workshop: Workshop | undefined;
  private current: Desk | undefined;

  get page() {
    return this.here.page;
  }

  get pane() {
    return this.here.pane;
  }

  get crashes() {
    return this.here.crashes;
  }

  forgive(pattern: RegExp): void {
    this.here.forgive(pattern);
  }

  async enter(drawing?: "none" | "software"): Promise<void> {
    this.workshop = await Workshop.open(drawing);
  }

  async sit(down: SitDown): Promise<void> {
    if (!this.workshop) throw new Error("The workshop is not open yet");
    await this.leave();
    this.current = await down(this.workshop);
  }

  async leave(): Promise<void> {
    const left = this.current;
    this.current = undefined;
    await left?.leave();
  }

  async goHome(): Promise<void> {
    await this.workshop?.close();
  }

  private get here(): Desk {
    if (!this.current) throw new Error("Nobody has sat down yet");
    return this.current;
  }
}
