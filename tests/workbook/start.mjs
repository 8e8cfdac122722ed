import { spawn } from "node:child_process";
import { BuildError, buildAddin, buildPage } from "./build.mjs";
import { serve } from "./server.mjs";

const FIRST_PORT = 4173;

try {
  // Before building, so that a port that is taken is told at once.
  const { url, close } = await serveOnFreePort();
  try {
    await report("the add-in", buildAddin);
    await report("the workbook page", buildPage);
  } catch (error) {
    await close();
    throw error;
  }
  console.log(`
The workbook page is at ${url}/

This page stands in for Excel; to load the same add-in into Excel, run: npm run excel
Press Ctrl+C to stop.`);
  openBrowser(`${url}/`);
  for (const signal of ["SIGINT", "SIGTERM"]) {
    process.once(signal, async () => {
      await close();
      process.exit(0);
    });
  }
} catch (error) {
  console.error(isExpected(error) ? `\n${error.message}` : error);
  process.exitCode = 1;
}

async function report(what, build) {
  console.log(`Building ${what}…`);
  const { seconds, warnings } = await build();
  if (warnings) console.warn(warnings);
  console.log(`Built ${what} in ${seconds.toFixed(1)} s`);
}

async function serveOnFreePort() {
  if (process.env.PORT !== undefined) return serve({ port: readPort(process.env.PORT) });
  for (let port = FIRST_PORT; port < FIRST_PORT + 20; port += 1) {
    try {
      return await serve({ port });
    } catch (error) {
      if (error.code !== "EADDRINUSE") throw error;
    }
  }
  throw new BuildError(`Ports ${FIRST_PORT} to ${FIRST_PORT + 19} are all taken; choose one with PORT=…`);
}

function readPort(text) {
  const port = Number(text);
  if (/^\d+$/.test(text) && port <= 65535) return port;
  throw new BuildError(`PORT must be a whole number from 0 to 65535; found "${text}"`);
}

function isExpected(error) {
  if (error.code === "EADDRINUSE") error.message = `Port ${error.port} is taken; choose another with PORT=…`;
  return error instanceof BuildError || error.code === "EADDRINUSE";
}

/** Opens the person's browser where a screen is likely; the printed address is enough where this fails. */
function openBrowser(url) {
  if (process.env.CURBWRIGHT_OPEN === "0" || process.env.CI) return;
  const screen = process.platform !== "linux" || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  if (!screen) return;
  const [program, args] =
    process.platform === "darwin"
      ? ["open", [url]]
      : process.platform === "win32"
        ? ["cmd", ["/c", "start", "", url]]
        : ["xdg-open", [url]];
  const child = spawn(program, args, { stdio: "ignore", detached: true });
  child.on("error", () => console.log(`Could not open a browser; open ${url} yourself.`));
  child.unref();
}
