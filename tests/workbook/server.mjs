import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { createServer as createSecureServer } from "node:https";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import send from "send";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** The folders of the built add-in, Microsoft's office.js, the built workbook page and the kept workbooks. */
export const FOLDERS = Object.freeze({
  addin: join(ROOT, "dist"),
  office: join(ROOT, "node_modules/@microsoft/office-js/dist"),
  page: join(ROOT, ".cache/workbook"),
  kept: join(ROOT, "tests/workbook/kept"),
});

// The quotes are optional: webpack's minimizer drops them.
const HOSTED_OFFICE =
  /<script\b[^>]*\bsrc\s*=\s*(["']?)https:\/\/appsforoffice\.microsoft\.com\/lib\/1\/hosted\/office\.js\1(?=[\s>])[^>]*>\s*<\/script\s*>/gi;
const LOCAL_OFFICE = '<script src="/bridge.js"></script><script src="/office/office.js"></script>';

/**
 * Serves the workbook page at /, the add-in at /addin/, office.js at /office/ and kept workbooks at /kept/, on 127.0.0.1 only.
 * The task pane's page is sent with the workbook page's bridge and the local office.js in place of the hosted one.
 * Errors: rejects when the port is taken.
 * @param {{ port?: number, https?: { key: string | Buffer, cert: string | Buffer, ca?: string | Buffer },
 *   addin?: string, office?: string, page?: string }} [options]
 * @returns {Promise<{ url: string, close: () => Promise<void> }>} url without a slash at its end
 */
export function serve({ port = 0, https, addin = FOLDERS.addin, office = FOLDERS.office, page = FOLDERS.page } = {}) {
  const addinFiles = files(addin);
  const officeFiles = files(office);
  const pageFiles = files(page, { extensions: ["html"] });
  const keptFiles = files(FOLDERS.kept);
  return listen({ port, https }, async (request, response, path) => {
    if (path === "/addin/taskpane.html") return sendTaskPane(resolve(addin, "taskpane.html"), request, response);
    if (path.startsWith("/addin/")) return addinFiles(request, response, path.slice("/addin".length));
    if (path.startsWith("/office/")) return officeFiles(request, response, path.slice("/office".length));
    if (path.startsWith("/kept/")) return keptFiles(request, response, path.slice("/kept".length));
    pageFiles(request, response, path);
  });
}

/**
 * Serves the built add-in unchanged at /, as manifest.xml expects it at https://localhost:3000, with the headers that Excel asks
 * for of any server: scripts and metadata may be read from other origins, and icons may be kept.
 * @param {{ port?: number, https?: { key: string | Buffer, cert: string | Buffer, ca?: string | Buffer },
 *   addin?: string }} [options]
 * @returns {Promise<{ url: string, close: () => Promise<void> }>}
 */
export function serveAddin({ port = 0, https, addin = FOLDERS.addin } = {}) {
  return listen({ port, https }, files(addin, { headersOf: headersForExcel }));
}

/**
 * The task pane's page with its hosted office.js replaced by the bridge and the local one.
 * @param {string} html
 * @returns {string}
 */
export function withLocalOffice(html) {
  const found = html.match(HOSTED_OFFICE)?.length ?? 0;
  if (found !== 1) throw new Error(`taskpane.html must load the hosted office.js exactly once; found ${found} times`);
  return html.replace(HOSTED_OFFICE, LOCAL_OFFICE);
}

async function sendTaskPane(file, request, response) {
  let html;
  try {
    html = await readFile(file, "utf8");
  } catch (error) {
    if (error.code !== "ENOENT") throw error;
    return refuse(response, 404, `Not found: ${request.url} (is the add-in built? npm run build)`);
  }
  const body = Buffer.from(withLocalOffice(html));
  response.writeHead(200, {
    "Content-Type": "text/html;charset=utf-8",
    "Content-Length": body.length,
    "Cache-Control": "no-store",
  });
  response.end(request.method === "HEAD" ? undefined : body);
}

/**
 * The files of a folder, read at every request and never kept by a browser, so a rebuilt file is never stale. A file is sent as
 * long as it was when the answer began: one that grows meanwhile puts no byte of its own into the next answer.
 */
function files(folder, { extensions = false, headersOf = () => ({}) } = {}) {
  return (request, response, path) =>
    send(request, encodeURI(path), {
      root: folder,
      extensions,
      index: "index.html",
      dotfiles: "allow",
      acceptRanges: false,
      etag: false,
      lastModified: false,
      cacheControl: false,
    })
      .on("error", (error) => {
        if (error.status !== 404) console.error(`${request.url}: ${error.message}`);
        refuse(response, error.status, error.status === 404 ? `Not found: ${request.url}` : error.message);
      })
      .on("headers", (sent, file) => {
        sent.setHeader("Cache-Control", "no-store");
        const type = TEXT_TYPES[file.slice(file.lastIndexOf(".") + 1)];
        if (type !== undefined) sent.setHeader("Content-Type", `${type};charset=utf-8`);
        for (const [name, value] of Object.entries(headersOf(file))) sent.setHeader(name, value);
      })
      .pipe(response);
}

/** Sources: "Publish an add-in" (CORS of functions.json) and "Office Add-ins manifest" (images must be cacheable) of the documentation. */
function headersForExcel(file) {
  if (/\.(js|json)$/.test(file)) return { "Access-Control-Allow-Origin": "*" };
  return file.endsWith(".png") ? { "Cache-Control": "public, max-age=86400" } : {};
}

const TEXT_TYPES = {
  html: "text/html",
  js: "text/javascript",
  mjs: "text/javascript",
  css: "text/css",
  json: "application/json",
  map: "application/json",
  svg: "image/svg+xml",
  xml: "application/xml",
  txt: "text/plain",
};

function listen({ port, https }, answer) {
  const handle = async (request, response) => {
    try {
      const path = readPath(request.url);
      if (request.method !== "GET" && request.method !== "HEAD") {
        response.setHeader("Allow", "GET, HEAD");
        return refuse(response, 405, `${request.method} is not answered here`);
      }
      if (path === undefined) return refuse(response, 400, "The address is malformed");
      if (path.split(/[\\/]/).includes("..")) return refuse(response, 403, "The address leads outside the folder");
      await answer(request, response, path);
    } catch (error) {
      console.error(`${request.url}: ${error.message}`);
      if (response.headersSent) response.destroy();
      else refuse(response, 500, error.message);
    }
  };
  const server = https ? createSecureServer(https, handle) : createServer(handle);
  return new Promise((fulfil, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", () => {
      server.off("error", reject);
      const host = https ? "localhost" : "127.0.0.1";
      fulfil({
        url: `${https ? "https" : "http"}://${host}:${server.address().port}`,
        close: () =>
          new Promise((closed) => {
            server.close(() => closed());
            server.closeAllConnections();
          }),
      });
    });
  });
}

/** The decoded path of a request, or undefined when it cannot be read. Not through URL, which would resolve "..". */
function readPath(url) {
  const path = url.split(/[?#]/, 1)[0];
  if (!path.startsWith("/")) return undefined;
  try {
    const decoded = decodeURIComponent(path);
    return decoded.includes("\0") ? undefined : decoded;
  } catch {
    return undefined;
  }
}

function refuse(response, status, sentence) {
  const body = Buffer.from(`${sentence}\n`);
  response.writeHead(status, {
    "Content-Type": "text/plain;charset=utf-8",
    "Content-Length": body.length,
    "Cache-Control": "no-store",
    "X-Content-Type-Options": "nosniff",
  });
  response.end(body);
}
