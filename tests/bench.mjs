import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { createContext, Script } from "node:vm";
import { buildAddin } from "./workbook/build.mjs";
import { FOLDERS } from "./workbook/server.mjs";

// Asserts nothing. It times our functions as Excel would call them cell by cell, against the same sum in plain doubles:
// the price of exact decimals, of reading cells and of the sentences in errors.
const CALLS = 100_000;
const ROUNDS = 9;
// One pass of the plain loop is too short for the clock.
const PLAIN_PASSES = 20;

if (process.env.CURBWRIGHT_BUILT !== "1") await buildAddin();
const functions = await loadFunctions();

console.log(
  `${CALLS.toLocaleString("en-US")} single-cell calls, medians of ${ROUNDS} rounds in one process (Node ${process.versions.node})`,
);
console.log("function       a call     in plain doubles   times as long");
report(
  "METALRATE",
  (i) => [1800 + (i % 1000) / 8, "18K"],
  (i) => ((1800 + (i % 1000) / 8) * 0.75) / 31.1034768,
);
report(
  "LANDEDCOST",
  (i) => [40 + (i % 1000) / 16, 60.5, 1.5, 50, 0.02],
  (i) => ((40 + (i % 1000) / 16) / (1 - 0.02)) * (60.5 + 1.5) + 50,
);

function report(id, cellsOf, plain) {
  const call = callerOf(id);
  const cells = Array.from({ length: CALLS }, (_, i) => cellsOf(i));
  const check = call(cells[7]);
  if (!(Math.abs(check - plain(7)) < 1e-9 * plain(7)))
    throw new Error(`${id} gave ${check}, not ${plain(7)}: nothing to compare`);
  const rounds = Array.from({ length: ROUNDS }, () => {
    const ours = time(() => {
      let sum = 0;
      for (let i = 0; i < CALLS; i += 1) sum += call(cells[i]);
      return sum;
    });
    const bare =
      time(() => {
        let sum = 0;
        for (let pass = 0; pass < PLAIN_PASSES; pass += 1) for (let i = 0; i < CALLS; i += 1) sum += plain(i + pass);
        return sum;
      }) / PLAIN_PASSES;
    return { ours, bare, ratio: ours / bare };
  });
  const of = (key) => median(rounds.map((round) => round[key]));
  const perCall = (ms) => `${((ms * 1e6) / CALLS).toFixed(ms < 10 ? 2 : 0)} ns`;
  console.log(
    `${id.padEnd(12)} ${perCall(of("ours")).padStart(9)} ${perCall(of("bare")).padStart(20)} ${of("ratio").toFixed(0).padStart(15)}`,
  );
}

function time(work) {
  const started = performance.now();
  const sum = work();
  const spent = performance.now() - started;
  // A sum that is used keeps the engine from dropping the loop.
  if (!Number.isFinite(sum)) throw new Error("a call gave something that is no number");
  return spent;
}

function median(numbers) {
  return numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];
}

/** One call as Excel makes it: a matrix for a range parameter, null for what is left out. */
function callerOf(id) {
  const body = functions.bodies.get(id);
  const described = functions.metadata.find((item) => item.id === id);
  if (!body || !described) throw new Error(`dist/ has no function ${id}`);
  const shapes = described.parameters.map((parameter) => parameter.dimensionality === "matrix");
  return (cells) => {
    const result = body(...shapes.map((matrix, i) => (i >= cells.length ? null : matrix ? [[cells[i]]] : cells[i])));
    return Array.isArray(result) ? result[0][0] : result;
  };
}

async function loadFunctions() {
  const bodies = new Map();
  const ErrorCode = {
    invalidValue: "#VALUE!",
    notAvailable: "#N/A",
    invalidNumber: "#NUM!",
    divisionByZero: "#DIV/0!",
  };
  class CustomFunctionsError extends Error {
    constructor(code, message) {
      super(message);
      this.code = code;
    }
  }
  const CustomFunctions = { associate: (id, body) => bodies.set(id, body), Error: CustomFunctionsError, ErrorCode };
  new Script(await readFile(join(FOLDERS.addin, "functions.js"), "utf8")).runInContext(
    createContext({ CustomFunctions }),
  );
  const { functions: metadata } = JSON.parse(await readFile(join(FOLDERS.addin, "functions.json"), "utf8"));
  return { bodies, metadata };
}
