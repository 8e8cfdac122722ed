import { catalogue, loadFunctions, rest } from "./benchcells.mjs";

// A process of its own, so that its peak is that of this one case. `bare` as argument: everything but our computing.
const ROWS = 1_048_576;
const MB = 2 ** 20;
const peak = () => process.resourceUsage().maxRSS / 1024;

const landedCost = (await loadFunctions()).get("LANDEDCOST");
landedCost(...catalogue(4096, "spot"), ...rest(2));
globalThis.gc();
const started = process.memoryUsage();
const cells = catalogue(ROWS, "spot");
globalThis.gc();
const inputs = process.memoryUsage().heapUsed - started.heapUsed;
const before = peak();
const costs = landedCost(...cells, ...rest(2));
const after = peak();
globalThis.gc();
const both = process.memoryUsage().heapUsed - started.heapUsed;
if (costs.length !== cells[0].length) throw new Error("rows are missing");
const whole = after - started.rss / MB;
console.log(
  `inputs ${(inputs / MB).toFixed(0)} MB, with outputs ${(both / MB).toFixed(0)} MB; peak of the process above its start ${whole.toFixed(0)} MB (before the call ${(before - started.rss / MB).toFixed(0)} MB): ${((whole * MB) / both).toFixed(2)} times inputs and outputs`,
);
