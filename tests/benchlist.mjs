import { chance } from "./benchcells.mjs";

/** Invented rates of an invented workshop, as its sheet has them. */
export const RATES = [
  ["Currency", "USD"],
  ["Spot", 2387.45],
  ["Casting fee", 1.5],
  ["Casting minimum", 25],
  ["Polish loss", 0.025],
  ["Loss counted from", "cast"],
  ["Cost basis", "finished"],
  ["Labour, flat", 20],
  ["Labour per link", 0.35],
  ["Labour per gram", 0.5],
  ["Labour minimum", 60],
  ["Maker's surcharge", 3.25],
  ["Setting fee", 1.25],
  ["Stone breakage", 0.04],
  ["Plating", 18],
  ["Overhead", 0.06],
  ["Price by", "markup"],
  ["Markup", 0.35],
  ["Least margin", 0.1],
  ["Price step", 5],
  ["Tax", 0.08],
  ["Tax is", "on top"],
  ["Quote valid for", 7],
  ["Next quote number", 1001],
];

const HEADERS = [
  "Design",
  "Mark",
  "Colour",
  "Length (in)",
  "Links per in",
  "Weight of one link",
  "Clasp",
  "Clasp length",
  "Clasp weight",
  "Clasp cost",
  "How many links",
  "Price of one stone",
  "Model and mould share",
];
const MARKS = ["9K", "14K", "18K", 585, 750];
const SHARES = new Map([
  ["9K", 9 / 24],
  ["14K", 14 / 24],
  ["18K", 18 / 24],
  [585, 0.585],
  [750, 0.75],
]);
const COLOURS = ["yellow", "rose", "white"];
const CLASPS = ["bought lobster clasp", "cast box clasp", "none"];

/** Invented designs, with their row of headers. */
export function designs(count) {
  const random = chance(count);
  const between = (least, most, places) =>
    Math.round((least + random() * (most - least)) * 10 ** places) / 10 ** places;
  const one = (list) => list[Math.floor(random() * list.length)];
  const rows = Array.from({ length: count }, (_, at) => {
    const clasp = one(CLASPS);
    const stones = one([0, 0, 0, 12]);
    return [
      `Design ${at}`,
      one(MARKS),
      one(COLOURS),
      between(6, 30, 1),
      between(2, 6, 1),
      between(0.2, 3, 2),
      clasp,
      clasp === "none" ? "" : between(0.2, 0.6, 1),
      clasp === "none" ? "" : between(1, 5, 2),
      // More than the gold in 5 g of 750 at any spot that is asked of it.
      clasp === "none" ? "" : between(320, 380, 2),
      stones,
      stones === 0 ? "" : between(2, 20, 2),
      between(0, 40, 2),
    ];
  });
  return [HEADERS, ...rows];
}

/** The same list in bare doubles: the same reading of headers, cells and rates, the same formula, the columns asked for. */
export function barePrices([headers, ...rows], rates, asked = TITLES) {
  const place = new Map(headers.map((header, at) => [header, at]));
  const said = new Map(rates);
  const at = (header) => place.get(header) ?? -1;
  const [design, mark, colour, length, linksPer, linkWeight] = HEADERS.slice(0, 6).map(at);
  const [clasp, claspLength, claspWeight, claspCost, stoneCount, stonePrice, setup] = HEADERS.slice(6).map(at);
  const loss = said.get("Polish loss");
  const figure = (cell) => (typeof cell === "number" ? cell : 0);
  const from = asked.map((title) => TITLES.indexOf(title));
  const out = [asked];
  for (const row of rows) {
    const rate = (said.get("Spot") * SHARES.get(row[mark])) / 31.1034768;
    const pitch = 25.4 / row[linksPer];
    const links = Math.floor((row[length] * 25.4 - figure(row[claspLength]) * 25.4) / pitch + 0.5);
    const chain = links * row[linkWeight];
    const weight = figure(row[claspWeight]);
    const castParts = row[clasp] === "cast box clasp" ? chain + weight : chain;
    const cast = castParts / (1 - loss);
    const metal = castParts * rate;
    const lost = (cast - castParts) * rate;
    const casting = Math.max(cast * said.get("Casting fee"), said.get("Casting minimum"));
    const worked = said.get("Labour, flat") + links * said.get("Labour per link") + chain * said.get("Labour per gram");
    const labour = Math.max(worked, said.get("Labour minimum"));
    const count = figure(row[stoneCount]);
    const stones = count * figure(row[stonePrice]) * (1 + said.get("Stone breakage"));
    const setting = count * said.get("Setting fee");
    const plating = row[colour] === "white" ? said.get("Plating") : 0;
    const cost = figure(row[claspCost]);
    const mould = figure(row[setup]);
    const direct = metal + lost + casting + labour + cost + 0 + stones + setting + 0 + plating + mould;
    const overhead = direct * said.get("Overhead");
    const landed = direct + overhead;
    const finished = chain + weight;
    const step = Math.max(said.get("Price step"), 0.01);
    const wanted = landed * (1 + said.get("Markup"));
    const price = Math.round(Math.ceil(wanted / step) * step * 100) / 100;
    const all = [
      row[design],
      links,
      finished,
      cast,
      finished * SHARES.get(row[mark]),
      metal,
      lost,
      casting,
      labour,
      cost,
      0,
      stones,
      setting,
      0,
      plating,
      mould,
      overhead,
      landed,
      landed / finished,
      price,
      (price - landed) / price,
    ];
    const cells = new Array(asked.length);
    for (let column = 0; column < cells.length; column += 1) cells[column] = all[from[column]];
    out.push(cells);
  }
  return out;
}

const TITLES = [
  "Design",
  "Links",
  "Finished weight",
  "Cast weight",
  "Fine gold",
  "Metal in the cast parts",
  "Metal lost in polishing",
  "Casting",
  "Labour",
  "Clasp",
  "Other findings",
  "Stones",
  "Setting",
  "Engraving",
  "Plating",
  "Model and mould share",
  "Overhead",
  "Landed cost",
  "Landed cost per gram",
  "Price",
  "Margin",
];
