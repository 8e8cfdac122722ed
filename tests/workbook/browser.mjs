import { createReadStream, createWriteStream, existsSync } from "node:fs";
import { mkdir, mkdtemp, readFile, rename, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { homedir } from "node:os";
import { dirname, join } from "node:path";
import { pipeline } from "node:stream/promises";
import { fileURLToPath } from "node:url";
import { createBrotliDecompress } from "node:zlib";
import { chromium } from "playwright-core";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const CACHE = join(ROOT, ".cache/chromium");

// Not the list of @sparticuz/chromium: that one switches web security off, and no test may pass because of that.
const FLAGS = [
  "--no-sandbox",
  "--no-zygote",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--font-render-hinting=none",
];

/** Either nothing draws in three dimensions, or software does that needs no graphics card. */
const DRAWING = {
  none: ["--disable-gpu", "--disable-3d-apis"],
  software: [
    "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
    "--disable-gpu-compositing",
    "--disable-accelerated-2d-canvas",
  ],
};

/**
 * Starts a headless Chromium: CURBWRIGHT_BROWSER when set, else a Chrome, Chromium or Edge installed in a usual place,
 * else the one inside the @sparticuz/chromium package (Linux x64, needs nothing installed).
 * New contexts and pages have the language en-US and one pixel per CSS pixel, unless other options are given.
 * @param {"none" | "software"} [drawing] whether pages can draw in three dimensions
 * @returns {Promise<import("playwright-core").Browser>}
 */
export async function launch(drawing = "none") {
  const args = [...FLAGS, ...DRAWING[drawing]];
  const chosen = process.env.CURBWRIGHT_BROWSER;
  if (chosen) return withDefaults(await start({ executablePath: chosen, args }));
  const found = installed();
  if (!found) return withDefaults(await startPacked(args));
  try {
    return withDefaults(await start({ executablePath: found, args }));
  } catch (error) {
    // Some distributions put a placeholder at the usual path that only says how to install the browser.
    if (!canStartPacked()) throw error;
    console.warn(`${found} did not start (${firstLine(error)}); using the packed Chromium instead.`);
    return withDefaults(await startPacked(args));
  }
}

/**
 * The first Chrome, Chromium or Edge at a usual place, or undefined.
 * @returns {string | undefined}
 */
export function installed() {
  return usualPlaces().find((place) => existsSync(place));
}

function usualPlaces() {
  if (process.platform === "darwin") {
    const bundles = ["Google Chrome", "Chromium", "Microsoft Edge"].map((name) => `${name}.app/Contents/MacOS/${name}`);
    return ["/Applications", join(homedir(), "Applications")].flatMap((folder) =>
      bundles.map((bundle) => join(folder, bundle)),
    );
  }
  if (process.platform === "win32") {
    const folders = ["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"].map((name) => process.env[name]);
    const programs = [
      "Google\\Chrome\\Application\\chrome.exe",
      "Chromium\\Application\\chrome.exe",
      "Microsoft\\Edge\\Application\\msedge.exe",
    ];
    return folders.filter(Boolean).flatMap((folder) => programs.map((program) => join(folder, program)));
  }
  return [
    "/usr/bin/google-chrome-stable",
    "/usr/bin/google-chrome",
    "/opt/google/chrome/chrome",
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/usr/bin/microsoft-edge-stable",
    "/usr/bin/microsoft-edge",
    "/opt/microsoft/msedge/msedge",
  ];
}

function canStartPacked() {
  return process.platform === "linux" && process.arch === "x64";
}

async function startPacked(args) {
  if (!canStartPacked()) {
    throw new Error(
      "No Chrome, Chromium or Edge was found. Install one, or set CURBWRIGHT_BROWSER to the path of its program.",
    );
  }
  const folder = await unpack();
  const env = {
    ...process.env,
    HOME: process.env.HOME ?? CACHE,
    // nss, nspr and expat, which a minimal Debian lacks. All three come from one build, so they go before the system's.
    LD_LIBRARY_PATH: [join(folder, "lib"), process.env.LD_LIBRARY_PATH].filter(Boolean).join(":"),
    FONTCONFIG_PATH: folder,
  };
  return start({ executablePath: join(folder, "chromium"), env, args });
}

function start(options) {
  return chromium.launch({ headless: true, ...options });
}

function withDefaults(browser) {
  const newContext = browser.newContext.bind(browser);
  browser.newContext = (options = {}) =>
    // Playwright refuses a scale where the viewport is left to the window.
    newContext({
      locale: "en-US",
      ...(options.viewport === null ? {} : { deviceScaleFactor: 1 }),
      ...options,
    });
  return browser;
}

/**
 * Unpacks the package's browser, libraries and fonts once into .cache/chromium/<version>-drawing/ and gives that folder.
 * Renamed into place when complete, so that two test processes that start together never see half a browser.
 */
async function unpack() {
  const packed = join(dirname(createRequire(import.meta.url).resolve("@sparticuz/chromium")), "../..");
  const { version } = JSON.parse(await readFile(join(packed, "package.json"), "utf8"));
  const folder = join(CACHE, `${version}-drawing`);
  if (existsSync(folder)) return folder;
  await mkdir(CACHE, { recursive: true });
  const draft = await mkdtemp(join(CACHE, "unpacking-"));
  try {
    const { extract } = createRequire(join(packed, "package.json"))("tar-fs");
    const open = (name, target) =>
      pipeline(createReadStream(join(packed, "bin", name)), createBrotliDecompress({ chunkSize: 2 ** 21 }), target);
    await Promise.all([
      open("chromium.br", createWriteStream(join(draft, "chromium"), { mode: 0o755 })),
      open("al2023.tar.br", extract(draft)),
      open("swiftshader.tar.br", extract(draft)),
      open("fonts.tar.br", extract(draft)),
    ]);
    await writeFile(join(draft, "fonts.conf"), fontsConf());
    await rename(draft, folder);
  } catch (error) {
    await rm(draft, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
  return folder;
}

/** The package's fonts.conf names folders of a cloud service; this one names the folder beside it. */
function fontsConf() {
  const families = ["sans-serif", "serif", "system-ui", "Segoe UI", "Arial", "Helvetica", "Calibri"];
  const aliases = families.map(
    (family) => `  <alias binding="same"><family>${family}</family><prefer><family>Open Sans</family></prefer></alias>`,
  );
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir prefix="relative">fonts</dir>
  <dir>/usr/share/fonts</dir>
  <dir>/usr/local/share/fonts</dir>
  <cachedir prefix="xdg">fontconfig</cachedir>
${aliases.join("\n")}
  <alias><family>monospace</family><prefer><family>DejaVu Sans Mono</family><family>Open Sans</family></prefer></alias>
</fontconfig>
`;
}

function firstLine(error) {
  return String(error.message).split("\n", 1)[0];
}
