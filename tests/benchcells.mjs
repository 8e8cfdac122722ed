import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { runInThisContext } from "node:vm";
import { FOLDERS } from "./workbook/server.mjs";

/** The built functions by id, loaded as a browser loads them: a context of its own would make every global slow. */
export async function loadFunctions() {
  const bodies = new Map();
  globalThis.CustomFunctions = {
    associate: (id, body) => bodies.set(id, body),
    Error: class extends Error {},
    ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
  };
  // Where the parts of the pane are loaded from; no function asks for one.
  globalThis.self ??= { location: { href: "https://localhost:3000/taskpane.html" } };
  const source = await readFile(join(FOLDERS.addin, "functions.js"), "utf8");
  runInThisContext(source);
  return bodies;
}

/** One call of each function; the n-th differs from the others. */
export const CALLS = {
  FINENESS: (n) => [300 + (n % 700)],
  KARAT: (n) => [`${1 + (n % 24)}K`],
  STANDARDMARK: (n) => [340 + (n % 640)],
  ASSAYPASSES: (n) => [570 + (n % 40), "14K", 3],
  FINEGOLD: (n) => [2 + (n % 1000) / 8, "18K"],
  METALRATE: (n) => [1800 + (n % 1000) / 8, "18K"],
  MELTVALUE: (n) => [2 + (n % 1000) / 100, 585, 2000.5, 2],
  WEIGHTIN: (n) => [1 + (n % 1000) / 10, "dwt", "g"],
  LENGTHIN: (n) => [1 + (n % 1000) / 10, "in", "cm"],
  ALLOYDENSITY: (n) => [
    [["Au"], ["Ag"], ["Cu"]],
    [[585], [200 + (n % 50)], [215 - (n % 50)]],
  ],
  LINKCOUNT: (n) => [6 + (n % 1000) / 50, 4, 0.5],
  CHAINLENGTH: (n) => [40 + (n % 100), 4.5],
  CHAINWEIGHT: (n) => [40 + (n % 100), 1.37, 2.2],
  RESIZEDLINK: (n) => [1 + (n % 1000) / 100, 8, 6.5],
  RECASTWEIGHT: (n) => [1 + (n % 1000) / 100, 13.1, 15.6],
  METALFROMWAX: (n) => [1 + (n % 1000) / 100, 0.97, 15.6],
  CASTWEIGHT: (n) => [1 + (n % 1000) / 100, 0.025],
  FINISHEDWEIGHT: (n) => [1 + (n % 1000) / 100, 0.025],
  LANDEDCOST: (n) => [40 + (n % 1000) / 16, 60.5, 1.5, 50, 0.02],
  LANDEDPERGRAM: (n) => [40 + (n % 1000) / 16, 60.5, 1.5, 50, 0.02, null, null, null, 2],
  STONECOST: (n) => [1 + (n % 100), 9.5, 1.25, 0.05, 2],
  CROSSOVERWEIGHT: (n) => [1 + (n % 1000) / 100, 1.75, 3.25],
  MAKEORBUY: (n) => [1 + (n % 1000) / 100, 41.3, 1.5, 50, 0.02, 3.25],
  BESTMAKER: (n) => [1 + (n % 1000) / 10, "14K", MAKERS],
  PATTERNLINKS: (n) => [40 + (n % 100), "YYW", "white"],
  LABOURCOST: (n) => [40 + (n % 100), 41.3, 50, 0.35, 0.5, 120],
  CASTINGCOST: (n) => [1 + (n % 1000) / 100, 1.5, 25, 3],
  CHARGEDWEIGHT: (n) => [1 + (n % 1000) / 100, 0.025],
  LOSTWEIGHT: (n) => [1 + (n % 1000) / 100, 0.025],
  POLISHEDLINKS: (n) => [190 + (n % 1000) / 100, 173.81, 95, 91, 92],
  STONESTOBUY: (n) => [1 + (n % 100), 3, 0.05],
  SELLINGPRICE: (n) => [100 + (n % 1000) / 100, 12.5, "markup", 0.3, 12.5, 41.3, 0.08, "in the price", 5, 2],
  PARTATPREMIUM: (n) => [1 + (n % 1000) / 100, 41.3, 12.5, 90],
  NETPRICE: (n) => [100 + (n % 1000) / 100, 0.08, "in the price", 0.1],
  SALESTAX: (n) => [100 + (n % 1000) / 100, 0.08, "on top", 2],
  LINEAMOUNT: (n) => [100 + (n % 1000) / 100, 3, 2],
  DISCOUNT: (n) => [100 + (n % 1000) / 100, 0.125, 2],
  OVERHEAD: (n) => [100 + (n % 1000) / 100, 0.06],
  LINKSWITHSTONES: (n) => [10 + (n % 90), 7],
  GOLDUSED: (n) => [10 + (n % 1000) / 100, 15.5],
  GOLDCREDIT: (n) => [10 + (n % 1000) / 100, 2650, 0.95, 2],
  GOLDONSCALE: (n) => [10 + (n % 1000) / 100, 1.25, 2],
  SETTLEDPRICE: (n) => [1000 + (n % 1000) / 100, 41.3, 20, 20.1, 0.05, 2],
  RATEVALUE: (n) => ["Tax", (n % 50) / 100],
  PIECESCOST: (n) => [100 + (n % 1000) / 100, 20, 150, 4],
  CASHNEEDED: (n) => [100 + (n % 1000) / 100, 500, 300],
  MOSTPIECES: (n) => [5000 + (n % 1000) / 100, 500, 300, 20, 150, 100],
  FEWESTPIECES: (n) => [5000 + (n % 1000) / 100, 500, 300, 20, 150, 100],
  DEPOSITNEEDED: (n) => [500 + (n % 1000) / 100, 900, 20, 150, 1500],
  DEPOSITCOVERS: (n) => [500 + (n % 1000) / 100, 40.5, "with the deposit"],
  PAIDBACKWITH: (n) => [500 + (n % 1000) / 100, 90],
  MARKUP: (n) => [100 + (n % 1000) / 100, 160],
  MARGIN: (n) => [100 + (n % 1000) / 100, 160],
  PRICEATMARKUP: (n) => [100 + (n % 1000) / 100, 0.3, 5, 2],
  PRICEATMARGIN: (n) => [100 + (n % 1000) / 100, 0.35, 5, 2],
  PRICEATPREMIUM: (n) => [1 + (n % 1000) / 100, 41.3, 12.5],
  ASKINGPERGRAM: (n) => [100 + (n % 1000) / 100, 12.5, "dwt"],
  PREMIUM: (n) => [50 + (n % 1000) / 100, 41.3],
  ASKINGCHECK: (n) => [500 + (n % 1000), 12.5, "14K", 2000, 40.5],
  SPOTLIMIT: (n) => [900 + (n % 1000), 12.5, "14K", 120, 0.2],
};

/** Functions that go the exact way for every call, which a sheet asks once or twice. */
export const EXACT_CALLS = ["RATEVALUE", "MOSTPIECES", "FEWESTPIECES", "DEPOSITNEEDED", "PAIDBACKWITH"];

/** Invented price lists. */
const MAKERS = [
  ["Maker", "Mark", "From g", "Surcharge per g"],
  ["Fennick", "14K", 2.5, 5.25],
  ["Fennick", "14K", 40, 3.1],
  ["Orrin", "all", "", 4.4],
];

/** Seeded chance. Source: mulberry32, public domain. */
export function chance(seed) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const SHARES = [9 / 24, 14 / 24, 18 / 24, 0.585, 0.75];

/** A catalogue as five ranges of LANDEDCOST: rates from spot with all their digits, or round figures with many half cents. */
export function catalogue(count, kind) {
  const random = chance(count);
  const between = (least, most, places) =>
    Math.round((least + random() * (most - least)) * 10 ** places) / 10 ** places;
  const one = (list) => list[Math.floor(random() * list.length)];
  const round = kind === "ties";
  const column = (cell) => Array.from({ length: count }, () => [cell()]);
  return [
    column(() => between(1, 200, round ? 1 : 2)),
    column(() => (round ? between(20, 90, 2) : (2387.45 * one(SHARES)) / 31.1034768)),
    column(() => between(0, 4, round ? 1 : 2)),
    column(() => between(0, 200, round ? 0 : 2)),
    column(() => (round ? one([0, 0, 0, 0.2, 0.04, 0.02, 0.2]) : between(0, 0.06, 3))),
  ];
}

/** What LANDEDCOST takes after a catalogue's ranges. */
export const rest = (decimals) => [null, null, null, decimals].map((cell) => [[cell]]);

/** The same in bare doubles: reading, formula, rounding, a row of cells for each. */
export function bareCosts([weight, rate, fee, labour, loss], rounds) {
  const out = new Array(weight.length);
  for (let i = 0; i < weight.length; i += 1) {
    const cost = (weight[i][0] / (1 - loss[i][0])) * (rate[i][0] + fee[i][0]) + labour[i][0];
    out[i] = [rounds ? Math.round(cost * 100) / 100 : cost];
  }
  return out;
}
