import { appendFileSync } from "node:fs";
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { Agent, type IncomingHttpHeaders, request } from "node:http";
import { request as secureRequest } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import certificates from "office-addin-dev-certs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launch } from "./browser.mjs";
import { type Served, serve, serveAddin, withLocalOffice } from "./server.mjs";

const HOSTED = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";
const PANE = `<!doctype html><title>Pane</title><script src="${HOSTED}"></script><script src="taskpane.js"></script>`;
const HOST_QUERY = "?_host_Info=Excel$Win32$16.01$en-US$telemetry$$$1";

let folder = "";
let addin = "";
let served: Served;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "curbwright-"));
  addin = join(folder, "addin");
  const page = join(folder, "page");
  await Promise.all([mkdir(addin), mkdir(page)]);
  await writeFile(join(addin, "taskpane.html"), PANE);
  await writeFile(join(addin, "functions.json"), "{}");
  await writeFile(join(addin, "icon.png"), "");
  await writeFile(join(addin, "taskpane.js"), "document.title = 'Running';");
  await writeFile(join(page, "index.html"), "<!doctype html><h1>Workbook</h1>");
  await writeFile(join(page, "bridge.js"), "window.bridged = true;");
  await writeFile(join(folder, "secret.txt"), "not for the page");
  served = await serve({ addin, page });
});

afterAll(async () => {
  await served.close();
  await rm(folder, { recursive: true, force: true });
});

describe("the workbook page's server", () => {
  test("answers on 127.0.0.1 at a free port", () => {
    expect(served.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
  });

  test("serves the page, the bridge, the add-in and office.js with the right content types", async () => {
    expect(await get("/")).toMatchObject({ status: 200, type: "text/html;charset=utf-8" });
    expect(await get("/bridge.js")).toMatchObject({ status: 200, type: "text/javascript;charset=utf-8" });
    expect(await get("/addin/taskpane.js")).toMatchObject({ status: 200, type: "text/javascript;charset=utf-8" });
    expect(await get("/office/office.js")).toMatchObject({ status: 200, type: "text/javascript;charset=utf-8" });
  });

  test("puts the bridge and the local office.js in place of the hosted one, and changes nothing else", async () => {
    const { body } = await get(`/addin/taskpane.html${HOST_QUERY}`);
    expect(body).toBe(
      '<!doctype html><title>Pane</title><script src="/bridge.js"></script><script src="/office/office.js"></script>' +
        '<script src="taskpane.js"></script>',
    );
  });

  test("finds the tag however it is quoted, and refuses a page without it", () => {
    const local = '<script src="/bridge.js"></script><script src="/office/office.js"></script>';
    for (const tag of [
      `<script src=${HOSTED}></script>`,
      `<script type="text/javascript" src='${HOSTED}'></script>`,
      `<SCRIPT defer src="${HOSTED}"> </SCRIPT>`,
    ]) {
      expect(withLocalOffice(`a${tag}b`)).toBe(`a${local}b`);
    }
    expect(() => withLocalOffice("<h1>Pane</h1>")).toThrow("exactly once; found 0");
    expect(() => withLocalOffice(`<script src="${HOSTED}x"></script>`)).toThrow("found 0");
    expect(() => withLocalOffice(PANE + PANE)).toThrow("found 2");
  });

  test("says in plain text what it does not have", async () => {
    expect(await get("/addin/none.js")).toEqual({
      status: 404,
      type: "text/plain;charset=utf-8",
      cache: "no-store",
      body: "Not found: /addin/none.js\n",
    });
    expect(await get("/addin/taskpane")).toMatchObject({ status: 404 });
  });

  test.each([
    "/addin/../secret.txt",
    "/../secret.txt",
    "/addin/%2e%2e/secret.txt",
    "/addin/..%2fsecret.txt",
    "/addin/..%5csecret.txt",
    "/%2e%2e%2fsecret.txt",
  ])("refuses %s, which leads outside", async (path) => {
    const { status, body } = await get(path);
    expect(status).toBe(403);
    expect(body).not.toContain("not for the page");
  });

  test("refuses a malformed address and every method but GET and HEAD", async () => {
    expect(await get("/%zz")).toMatchObject({ status: 400 });
    expect(await get("/%00")).toMatchObject({ status: 400 });
    expect(await get("/", "POST")).toMatchObject({ status: 405 });
    expect(await get("/addin/taskpane.html", "HEAD")).toMatchObject({ status: 200, body: "" });
  });

  test("serves a rebuilt file at once, and lets no browser keep the old one", async () => {
    await writeFile(join(addin, "changing.js"), "1");
    expect(await get("/addin/changing.js")).toMatchObject({ body: "1", cache: "no-store" });
    await writeFile(join(addin, "changing.js"), "22");
    expect(await get("/addin/changing.js")).toMatchObject({ body: "22" });
    expect(await get("/addin/taskpane.html")).toMatchObject({ cache: "no-store" });
  });

  test("a file that grows while it is sent puts nothing into the next answer of the connection", async () => {
    const file = join(addin, "growing.js");
    await writeFile(file, "1".repeat(4e6));
    const connection = new Agent({ keepAlive: true, maxSockets: 1 });
    try {
      const { body } = await get("/addin/growing.js", "GET", connection, () => appendFileSync(file, "2".repeat(4e6)));
      expect(body).toBe("1".repeat(4e6));
      expect(await get("/addin/taskpane.html", "GET", connection)).toMatchObject({ status: 200 });
    } finally {
      connection.destroy();
    }
  });

  test("says so when the port is taken", async () => {
    await expect(serve({ addin, port: Number(new URL(served.url).port) })).rejects.toMatchObject({
      code: "EADDRINUSE",
    });
  });

  test("serves the add-in at the root over https, as the manifest expects, with a certificate for localhost", async () => {
    const [ca, cert, key] = ["ca.crt", "localhost.crt", "localhost.key"].map((name) => join(folder, name));
    if (!ca || !cert || !key) throw new Error("unreachable");
    await certificates.generateCertificates(ca, cert, key);
    const https = { ca: await readFile(ca), cert: await readFile(cert), key: await readFile(key) };
    const secure = await serveAddin({ addin, https });
    try {
      expect(secure.url).toMatch(/^https:\/\/localhost:\d+$/);
      const fetched = (path: string) =>
        new Promise<{ body: string; headers: IncomingHttpHeaders }>((fulfil, reject) => {
          // Node looks "localhost" up as either family; the server listens on the older one.
          const call = secureRequest(`${secure.url}${path}`, { ca: https.ca, family: 4 }, (response) => {
            response.setEncoding("utf8");
            let body = "";
            response.on("data", (part: string) => {
              body += part;
            });
            response.on("end", () => fulfil({ body, headers: response.headers }));
          });
          call.on("error", reject);
          call.end();
        });
      expect((await fetched("/taskpane.html")).body).toBe(PANE);
      // Source: "Publish an add-in" and "Office Add-ins manifest" of the documentation.
      expect((await fetched("/functions.json")).headers).toMatchObject({
        "access-control-allow-origin": "*",
        "content-type": "application/json;charset=utf-8",
      });
      expect((await fetched("/taskpane.js")).headers["access-control-allow-origin"]).toBe("*");
      expect((await fetched("/icon.png")).headers["cache-control"]).not.toMatch(/no-store|no-cache/);
    } finally {
      await secure.close();
    }
  });
});

describe("the tests' browser", () => {
  test("runs the pane with the true office.js, in English, at one pixel a pixel, with web security on", async () => {
    const browser = await launch();
    const other = await serve({ addin });
    try {
      const page = await browser.newPage();
      const asked: string[] = [];
      page.on("request", (call) => asked.push(call.url()));
      await page.goto(`${served.url}/addin/taskpane.html${HOST_QUERY}`);
      expect(await page.title()).toBe("Running");
      expect(await page.evaluate("[typeof Office, window.bridged, navigator.language, devicePixelRatio]")).toEqual([
        "object",
        true,
        "en-US",
        1,
      ]);
      expect(asked.filter((url) => !url.startsWith(served.url))).toEqual([]);
      const outcome = await page.evaluate(
        (url) =>
          fetch(url).then(
            () => "read",
            () => "refused",
          ),
        `${other.url}/addin/taskpane.js`,
      );
      expect(outcome).toBe("refused");
    } finally {
      await browser.close();
      await other.close();
    }
  });
});

interface Answer {
  readonly status: number | undefined;
  readonly type: string | undefined;
  readonly cache: string | undefined;
  readonly body: string;
}

/** fetch would resolve ".." before sending it; this sends the path as it is written. */
function get(path: string, method = "GET", agent?: Agent, whenBegun?: () => void): Promise<Answer> {
  const { hostname, port } = new URL(served.url);
  return new Promise((fulfil, reject) => {
    const call = request({ hostname, port, path, method, agent }, (response) => {
      whenBegun?.();
      response.setEncoding("utf8");
      let body = "";
      response.on("data", (part: string) => {
        body += part;
      });
      response.on("end", () =>
        fulfil({
          status: response.statusCode,
          type: response.headers["content-type"],
          cache: response.headers["cache-control"],
          body,
        }),
      );
    });
    call.on("error", reject);
    call.end();
  });
}
