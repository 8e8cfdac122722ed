/**
 * What a person does at the workbook page, with the real mouse and keyboard.
 * Every call ends when no formula is waiting and every request of the pane is answered.
 */

/**
 * The task pane's frame, once its page has loaded.
 * @param {import("playwright-core").Page} page
 * @returns {Promise<import("playwright-core").Frame>}
 */
export async function paneFrame(page) {
  await page.evaluate(() => window.workbookPage.ready);
  const frame = await (await page.waitForSelector("#pane")).contentFrame();
  if (!frame) throw new Error("The task pane has no page");
  return frame;
}

/**
 * Opens the workbook page and waits until it is ready.
 * @param {import("playwright-core").Page} page
 * @param {string} url the server's address; a query such as "?pane=320" may follow
 */
export async function openBook(page, url) {
  await page.goto(url);
  await page.waitForFunction(() => "workbookPage" in window);
  await page.evaluate(() => window.workbookPage.ready);
}

let side = 0.4;

/**
 * Clicks a cell, activating its sheet and scrolling to it where needed.
 * @param {import("playwright-core").Page} page
 * @param {string} sheet
 * @param {string} address one cell, as "B2"
 */
export async function clickCell(page, sheet, address) {
  const box = await page.evaluate(([name, cell]) => window.workbookPage.cellBox(name, cell), [sheet, address]);
  // Two clicks at one point soon after each other would open the cell's editor, so no click goes where the last one did.
  side = side === 0.4 ? 0.6 : 0.4;
  await page.mouse.click(box.x + box.width * side, box.y + box.height / 2);
  await settled(page);
  const active = await page.evaluate(() => window.workbookPage.active());
  if (!active.endsWith(`!${address.replaceAll("$", "")}`))
    throw new Error(`Clicked ${address}, but ${active} is active`);
}

/**
 * Clicks a cell and types into it, ending with Enter. Where the grid took that Enter for its own list of functions and still edits
 * the cell, it is left by Esc and typed once more.
 * @param {import("playwright-core").Page} page
 * @param {string} sheet
 * @param {string} address one cell, as "B2"
 * @param {string} text
 */
export async function typeIn(page, sheet, address, text) {
  const type = async () => {
    await clickCell(page, sheet, address);
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
    await settled(page);
  };
  await type();
  if (!(await page.evaluate(() => window.workbookPage.isEditing))) return;
  await page.keyboard.press("Escape");
  await settled(page);
  await type();
}

/**
 * @param {import("playwright-core").Page} page
 */
export function settled(page) {
  return page.evaluate(() => window.workbookPage.settled());
}
