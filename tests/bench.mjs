import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { bareCosts, CALLS, catalogue, EXACT_CALLS, loadFunctions, rest } from "./benchcells.mjs";
import { barePrices, designs, RATES } from "./benchlist.mjs";
import { buildAddin } from "./workbook/build.mjs";

// Asserts nothing. It times our functions as Excel calls them, with inputs and outputs as Excel hands them, against bare
// doubles and against our own exact way, in time of the processor; each ratio is of two runs one after the other, and the
// median of all is told.
const ROWS = 1_048_576;
const ROUNDS = 9;
const SINGLE_CALLS = 100_000;
const EXACT_ROWS = 20_000;
const LIST_ROWS = 100_000;
const CELL_COLUMNS = 18;

if (process.env.CURBWRIGHT_BUILT !== "1") await buildAddin();
const functions = await loadFunctions();
const landedCost = functions.get("LANDEDCOST");
console.log(`Medians of ${ROUNDS} rounds in one process, Node ${process.versions.node}`);

wholeColumns();
againstExact();
rowsAndTime();
priceLists();
priceCells();
singleCalls();
console.log("\nMemory, 1,048,576 rows of LANDEDCOST to cents, in a process of its own");
console.log(
  execFileSync(process.execPath, ["--expose-gc", fileURLToPath(new URL("benchmemory.mjs", import.meta.url))], {
    encoding: "utf8",
  }).trim(),
);

function wholeColumns() {
  console.log(`\n${ROWS.toLocaleString("en-US")} rows of LANDEDCOST against a bare loop of doubles`);
  for (const [what, kind, decimals] of [
    ["rates from spot, to cents", "spot", 2],
    ["round figures, to cents", "ties", 2],
    ["rates from spot, nearest double", "spot", null],
    ["round figures, nearest double", "ties", null],
  ]) {
    const cells = catalogue(ROWS, kind);
    const ours = () => landedCost(...cells, ...rest(decimals));
    const bare = () => bareCosts(cells, decimals !== null);
    const { first, second, ratio } = paired(ours, bare, ROUNDS);
    const perRow = (ms) => `${((ms * 1e6) / ROWS).toFixed(0)} ns`;
    const halves = decimals === null ? "" : `; ${shareOfTies(cells)} % exact half cents`;
    console.log(
      `${what.padEnd(34)} ${perRow(first)} a row, bare ${perRow(second)}: ${ratio.toFixed(2)} times${halves}`,
    );
  }
}

function priceLists() {
  const priceList = functions.get("PRICELIST");
  console.log("\nPRICELIST, all its columns, against the same list in bare doubles");
  for (const count of [2_000, LIST_ROWS]) {
    const cells = designs(count);
    const started = time(() => priceList(cells, RATES));
    const { first, second, ratio } = paired(
      () => priceList(cells, RATES),
      () => barePrices(cells, RATES),
      ROUNDS,
    );
    const links = wrongLinks(priceList(cells, RATES), barePrices(cells, RATES));
    const perLine = (ms) => `${((ms * 1e3) / count).toFixed(2)} µs`;
    console.log(
      `${count.toLocaleString("en-US").padStart(10)} lines  ${perLine(first)} a line (${perLine(started)} when first called), bare ${perLine(second)}: ${ratio.toFixed(2)} times; bare doubles count ${links} of the chains a link wrong`,
    );
  }
}

/** A catalogue of added columns: one call a cell, all of them asked again when spot changes. */
function priceCells() {
  const priceLine = functions.get("PRICELINE");
  const [headers, ...lines] = designs(2_000);
  const [, ...asked] = functions.get("PRICELIST")([headers], RATES)[0];
  const columns = asked.slice(-CELL_COLUMNS);
  const askAll = (spot) => {
    for (const line of lines) {
      for (const column of columns) {
        // Excel hands arrays of its own to every call.
        const rates = RATES.map(([name, value]) => [name, name === "Spot" ? spot : value]);
        priceLine([[...headers]], [[...line]], rates, [[column]]);
      }
    }
  };
  const first = time(() => askAll(2300));
  const times = Array.from({ length: ROUNDS }, (_, round) => time(() => askAll(2301 + round)));
  console.log(
    `\nPRICELINE, 2,000 designs of ${CELL_COLUMNS} columns, a call a cell: ${median(times).toFixed(0)} ms at a new spot (${first.toFixed(0)} ms when first called)`,
  );
}

function wrongLinks(ours, bare) {
  const column = ours[0].indexOf("Links");
  return ours.filter((row, at) => row[column] !== bare[at][column]).length;
}

/** Our own exact way, asked for by weights as texts too long for columns. */
function againstExact() {
  const cells = catalogue(EXACT_ROWS, "spot");
  const [weight, ...others] = cells;
  const texts = [weight.map(([cell]) => [`${cell.toFixed(2)}${"0".repeat(20)}`]), ...others];
  const columns = () => landedCost(...cells, ...rest(2));
  const exact = () => landedCost(...texts, ...rest(2));
  if (JSON.stringify(columns()) !== JSON.stringify(exact())) throw new Error("columns and the exact way differ");
  const { ratio } = paired(exact, columns, ROUNDS);
  console.log(
    `\n${EXACT_ROWS.toLocaleString("en-US")} rows by decimals of 60 digits take ${ratio.toFixed(0)} times as long as in columns`,
  );
}

function rowsAndTime() {
  console.log("\nRows and time, LANDEDCOST to cents");
  for (const count of [1_000, 10_000, 100_000, ROWS]) {
    const cells = catalogue(count, "spot");
    const turns = Math.max(1, Math.round(200_000 / count));
    const times = Array.from({ length: ROUNDS }, () =>
      time(() => {
        for (let turn = 0; turn < turns; turn += 1) landedCost(...cells, ...rest(2));
      }),
    );
    console.log(
      `${count.toLocaleString("en-US").padStart(10)} rows  ${((median(times) * 1e6) / turns / count).toFixed(0)} ns a row`,
    );
  }
}

function singleCalls() {
  console.log(`\n${SINGLE_CALLS.toLocaleString("en-US")} single-cell calls of each function, on average`);
  const told = Object.entries(CALLS).map(([id, cellsOf]) => {
    const call = functions.get(id);
    const count = EXACT_CALLS.includes(id) ? SINGLE_CALLS / 50 : SINGLE_CALLS;
    const args = Array.from({ length: count }, (_, n) =>
      Array.from({ length: call.length }, (_, at) => asRange(cellsOf(n)[at] ?? null)),
    );
    const times = Array.from({ length: 5 }, () =>
      time(() => {
        for (const cells of args) call(...cells);
      }),
    );
    return `${id} ${((median(times) * 1e3) / count).toFixed(2)} µs`;
  });
  for (let at = 0; at < told.length; at += 4)
    console.log(
      told
        .slice(at, at + 4)
        .map((each) => each.padEnd(26))
        .join(""),
    );
}

function asRange(cell) {
  return Array.isArray(cell) ? cell : [[cell]];
}

function shareOfTies(cells) {
  // Half cents of the same catalogue, counted where a third decimal is 5 and no more follow, by whole numbers.
  const texts = landedCost(...cells, ...rest(10));
  let ties = 0;
  for (const [cost] of texts) {
    const thousandths = cost * 1000;
    if (Math.abs(thousandths - Math.round(thousandths)) < 1e-6 && Math.round(thousandths) % 10 === 5) ties += 1;
  }
  return ((100 * ties) / texts.length).toFixed(1);
}

function paired(one, other, rounds) {
  for (let warm = 0; warm < 2; warm += 1) {
    one();
    other();
  }
  const runs = Array.from({ length: rounds }, () => {
    const first = time(one);
    const second = time(other);
    return { first, second, ratio: first / second };
  });
  const of = (key) => median(runs.map((run) => run[key]));
  return { first: of("first"), second: of("second"), ratio: of("ratio") };
}

/** Milliseconds of the processor: others on the machine take turns, not time. */
function time(work) {
  const started = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(started);
  return (user + system) / 1000;
}

function median(numbers) {
  return numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];
}
