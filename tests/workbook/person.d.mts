import type { Frame, Page } from "playwright-core";

/** The task pane's frame, once its page has loaded. */
export function paneFrame(page: Page): Promise<Frame>;
/** Opens the workbook page and waits until it is ready. */
export function openBook(page: Page, url: string): Promise<void>;
/** Clicks a cell, activating its sheet and scrolling to it where needed. */
export function clickCell(page: Page, sheet: string, address: string): Promise<void>;
/** Clicks a cell and types into it, ending with Enter. */
export function typeIn(page: Page, sheet: string, address: string, text: string): Promise<void>;
/** Resolves when no formula waits and no request of the pane is unanswered. */
export function settled(page: Page): Promise<void>;
