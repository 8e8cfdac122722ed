import { readFile, writeFile } from "node:fs/promises";
import { launch } from "../../tests/workbook/browser.mjs";

/** Every size manifest.xml names, and the drawing it is made from: at 16 pixels the full drawing would blur. */
const DRAWINGS = { 16: "icon-16.svg", 32: "icon.svg", 64: "icon.svg", 80: "icon.svg" };

const here = new URL("./", import.meta.url);
const browser = await launch();
try {
  for (const [size, drawing] of Object.entries(DRAWINGS)) {
    const svg = await readFile(new URL(drawing, here), "utf8");
    const side = Number(size);
    const page = await browser.newPage({ viewport: { width: side, height: side } });
    await page.setContent(
      `<!doctype html><style>body { margin: 0 } svg { display: block; width: 100vw; height: 100vh }</style>${svg}`,
    );
    const png = await page.screenshot({ omitBackground: true });
    await writeFile(new URL(`icon-${size}.png`, here), png);
    await page.close();
    console.log(`icon-${size}.png from ${drawing}`);
  }
} finally {
  await browser.close();
}
