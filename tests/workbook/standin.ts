import { fileURLToPath } from "node:url";
import type { Browser, Frame, Page } from "playwright-core";
import { launch } from "./browser.mjs";
import { openBook, paneFrame } from "./person.mjs";
import { type Served, serve } from "./server.mjs";

/** The workbook page with an add-in made for testing the page itself, on a blank workbook. */
export class StandIn {
  private constructor(
    private readonly server: Served,
    private readonly browser: Browser,
    readonly page: Page,
    readonly pane: Frame,
    /** Addresses requested from other servers than the local one. */
    readonly outside: readonly string[],
  ) {}

  static async open(query = "book=blank"): Promise<StandIn> {
    const server = await serve({ addin: fileURLToPath(new URL("manners", import.meta.url)) });
    const browser = await launch();
    const page = await browser.newPage({ viewport: { width: 1400, height: 900 } });
    const outside: string[] = [];
    page.on("request", (request) => {
      if (/^(https?|wss?):/.test(request.url()) && !request.url().startsWith(server.url)) outside.push(request.url());
    });
    await openBook(page, `${server.url}/?paint=200&${query}`);
    return new StandIn(server, browser, page, await paneFrame(page), outside);
  }

  /** Runs a batch, with a text given to it, in the pane through the real office.js; its failure comes back as a record instead. */
  run<T>(batch: (context: Excel.RequestContext, given: string) => Promise<T>, given = ""): Promise<T> {
    return this.pane.evaluate(`Excel.run((context) => (${batch})(context, ${JSON.stringify(given)}))`) as Promise<T>;
  }

  /** The failure of a batch as the add-in sees it. */
  async failure(batch: (context: Excel.RequestContext) => Promise<unknown>) {
    const caught = await this.pane.evaluate(
      `Excel.run(${batch}).then(() => null, (error) => ({ code: error.code, message: error.message, location: error.debugInfo?.errorLocation }))`,
    );
    return caught as { code: string; message: string; location: string } | null;
  }

  /** Another page in the same browser, such as one that shows what is printed. */
  async show(html: string): Promise<Page> {
    const page = await this.browser.newPage();
    await page.setContent(html);
    return page;
  }

  read(sheet: string, address: string) {
    return this.page.evaluate(
      async ([name = "", cells = ""]) => {
        await window.workbookPage.settled();
        return window.workbookPage.read(name, cells);
      },
      [sheet, address],
    );
  }

  async values(sheet: string, address: string) {
    return (await this.read(sheet, address)).map((row) => row.map(({ value }) => value));
  }

  async close(): Promise<void> {
    await this.browser.close();
    await this.server.close();
  }
}
