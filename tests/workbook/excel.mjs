import { spawn } from "node:child_process";
import { X509Certificate } from "node:crypto";
import { existsSync } from "node:fs";
import { readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import certificates from "office-addin-dev-certs";
import { BuildError, buildAddin } from "./build.mjs";
import { serveAddin } from "./server.mjs";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
// The port in manifest.xml, which names no other.
const PORT = 3000;
// office-addin-debugging installs hundreds of packages, one of them native. So npx fetches it when needed; it is not a dependency.
const SIDELOAD = [
  "--yes",
  "office-addin-debugging@6.0.3",
  "start",
  "manifest.xml",
  "desktop",
  "--app",
  "excel",
  "--no-debug",
];

const BY_HAND = {
  win32: `To load the add-in into Excel on Windows by hand:
  1. Share a folder (for instance C:\\addins) and copy manifest.xml into it.
  2. In Excel: File > Options > Trust Center > Trust Center Settings > Trusted Add-in Catalogs.
     Add the folder's network path (\\\\your-computer\\addins), tick "Show in Menu", and restart Excel.
  3. Home > Add-ins > More Add-ins (in older versions Insert > My Add-ins) > Shared Folder > Curbwright > Add.`,
  darwin: `To load the add-in into Excel on a Mac by hand:
  1. mkdir -p ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef
  2. cp manifest.xml ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef/curbwright.xml
  3. Restart Excel and open a workbook.
  4. Home > Add-ins (in older versions the small arrow of Insert > My Add-ins) > Developer Add-ins > Curbwright.`,
  web: `To load the add-in into Excel on the web, in a browser on this computer:
  1. Open https://localhost:${PORT}/taskpane.html there once, and let the browser trust the certificate.
  2. Open a workbook in Excel on the web.
  3. Home > Add-ins > More Add-ins (in older versions Insert > Office Add-ins) > My Add-ins > Manage My Add-ins >
     Upload My Add-in, and choose manifest.xml.
  4. The browser may ask whether the page may reach devices on your local network: allow it. This computer is meant.
     Once refused it stays refused until you change it in the browser's settings for that site.`,
};

try {
  // Before building, so that a port that is taken is told at once.
  const { url, close } = await serveAddin({
    port: PORT,
    https: await makeCertificates(),
  });
  console.log("Building the add-in…");
  const { warnings } = await buildAddin().catch(async (error) => {
    await close();
    throw error;
  });
  if (warnings) console.warn(warnings);
  console.log(`The add-in is served at ${url}/ as manifest.xml expects. Press Ctrl+C to stop.\n`);
  const sideload = process.platform === "linux" ? undefined : startExcel();
  if (!sideload) console.log(`Excel does not run on this system.\n\n${BY_HAND.web}`);
  for (const signal of ["SIGINT", "SIGTERM"]) {
    process.once(signal, async () => {
      sideload?.kill();
      await close();
      process.exit(0);
    });
  }
} catch (error) {
  console.error(explain(error));
  process.exitCode = 1;
}

/**
 * A certificate for https://localhost. On Windows and Mac its issuer is added to those that the person's system trusts, and the
 * system asks the person first. Elsewhere no Excel reads that store, so it is not changed.
 */
async function makeCertificates() {
  if (process.platform === "win32" || process.platform === "darwin") {
    try {
      return await certificates.getHttpsServerOptions();
    } catch (error) {
      throw new BuildError(`Could not make the certificate that Excel asks for: ${error.message}`);
    }
  }
  const folder = join(ROOT, ".cache/certificates");
  const [ca, cert, key] = ["ca.crt", "localhost.crt", "localhost.key"].map((name) => join(folder, name));
  if (![ca, cert, key].every((file) => existsSync(file)) || (await endsWithinADay(cert))) {
    // The package does not replace files that exist.
    await rm(folder, { recursive: true, force: true });
    await certificates.generateCertificates(ca, cert, key);
  }
  console.log(`The certificate's issuer is ${ca}; the browser must be told to trust it.`);
  return {
    ca: await readFile(ca),
    cert: await readFile(cert),
    key: await readFile(key),
  };
}

async function endsWithinADay(file) {
  const { validTo } = new X509Certificate(await readFile(file));
  return Date.parse(validTo) - Date.now() < 24 * 60 * 60 * 1000;
}

function startExcel() {
  console.log(
    `Starting Excel through npx ${SIDELOAD.slice(1).join(" ")}\nThe first time this downloads some hundred packages.\n`,
  );
  const npx = process.platform === "win32" ? "npx.cmd" : "npx";
  const child = spawn(npx, SIDELOAD, {
    cwd: ROOT,
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  const tellByHand = (why) => console.log(`\n${why}\n\n${BY_HAND[process.platform]}\n\n${BY_HAND.web}\n`);
  child.on("error", (error) => tellByHand(`Excel was not started (${error.message}).`));
  child.on("exit", (code) => {
    if (code === 0)
      console.log(
        "\nExcel should be open with Curbwright on the Home tab. This window serves it: leave it open.\nTo take it out of Excel again: npx office-addin-debugging@6.0.3 stop manifest.xml",
      );
    else if (code !== null) tellByHand(`Excel was not started (office-addin-debugging ended with ${code}).`);
  });
  return child;
}

function explain(error) {
  if (error.code === "EADDRINUSE")
    return `Port ${PORT} is taken, and manifest.xml names it. Stop what uses it and try again.`;
  return error instanceof BuildError ? error.message : error;
}
