/**
 * Takes the README's picture: the workbook page with a quote made from the demo's second order.
 * Run after `npm run build` and a first `npm start`: node tests/workbook/picture.mjs
 */
import { fileURLToPath } from "node:url";
import { launch } from "./browser.mjs";
import { clickCell, openBook, paneFrame, settled } from "./person.mjs";
import { serve } from "./server.mjs";

const server = await serve();
const browser = await launch();
try {
  const page = await browser.newPage({ viewport: { width: 1400, height: 860 } });
  // A few days after the demo's spot, whenever the picture is taken.
  await openBook(page, `${server.url}/?clock=2026-07-06T09:00:00`);
  const pane = await paneFrame(page);
  await clickCell(page, "Orders", "B6");
  await pane.getByRole("button", { name: "Take from the selected row" }).click();
  await settled(page);
  await pane.getByRole("button", { name: "Make the quote" }).click();
  await pane.getByText("are in the workbook").waitFor();
  await settled(page);
  await pane.evaluate(() => window.scrollTo(0, 0));
  await page.screenshot({ path: fileURLToPath(new URL("picture.png", import.meta.url)) });
} finally {
  await browser.close();
  await server.close();
}
