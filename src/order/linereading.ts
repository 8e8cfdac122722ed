import type { Rates } from "../rates/rates";
import { accepted, attempt, faultsOf, field, type Parsed, parseForm, refused } from "../reading/parse";
import { readOptionalText, wordsOf } from "../reading/words";
import { type Pricing, pricingOf } from "../trade/pricemethod";
import type { Currency } from "../units/currency";
import { money } from "../units/money";
import { grams } from "../units/weight";
import { parseChain } from "./chain";
import { formOf } from "./fieldkinds";
import { LINE_FIELDS, LINE_LABELS } from "./fields";
import { lineOf, type OrderLine, type ReadLine } from "./orderline";
import { readPartCost } from "./partcost";
import { readStoneSets } from "./stonesets";

/** Whether a line needs the name of its design, which no cost rests on. */
export type Naming = "named" | "may be nameless";

type Row = Readonly<Record<string, unknown>>;

const NAMES = formOf(LINE_FIELDS, "design", "kind", "mark", "colourName", "solidity", "quantity");
const NAMELESS = { ...NAMES, design: field((value) => readOptionalText(value, LINE_LABELS.design)) };
const WORK = formOf(LINE_FIELDS, "findings", "findingsWeight", "findingsMark", "engraving", "engravingCost", "setup");
const MARK_AND_COLOUR = formOf(LINE_FIELDS, "mark", "colour");
const COLOURS_OF_LINKS = formOf(LINE_FIELDS, "colour", "pattern");
const PLATED = formOf(LINE_FIELDS, "plated");
const PRICED = formOf(LINE_FIELDS, "linePriceBy", "linePriceFigure");

/** Reads one line of an order; gathers the faults of all its fields. */
export function parseLine(record: Row, rates: Rates, naming: Naming = "named"): Parsed<OrderLine> {
  return lineOf(
    {
      names: readNames(record, naming),
      chain: parseChain(record, rates.currency),
      work: readWork(record, rates.currency),
      ...readAlloy(record),
      ...readPlating(record),
      stones: readStoneSets(record, rates.currency),
      pricing: readLinePricing(record, rates.currency),
    },
    rates,
  );
}

function readNames(record: Row, naming: Naming): ReadLine["names"] {
  const read = parseForm(naming === "named" ? NAMES : NAMELESS, record);
  if (!read.ok) return read;
  const { solidity, ...names } = read.value;
  return accepted({ ...names, hollow: solidity === "hollow" });
}

function readWork(record: Row, currency: Currency): ReadLine["work"] {
  const read = parseForm(WORK, record);
  const cost = readPartCost("findings", record, currency);
  if (!read.ok || !cost.ok) return refused(faultsOf(read, cost));
  const { findings, findingsWeight, findingsMark, engraving, engravingCost, setup } = read.value;
  return accepted({
    findings: Object.freeze({
      what: findings,
      weight: grams(findingsWeight),
      mark: findingsMark,
      cost: cost.value,
    }),
    engraving,
    engravingCost: money(engravingCost, currency),
    setup: money(setup, currency),
  });
}

/** Told of a mark or a colour that cannot be read is only the reading of the other fields. */
const TOLD_ELSEWHERE = refused([]);

function readAlloy(record: Row): Pick<ReadLine, "alloyed" | "composition"> {
  const read = parseForm(MARK_AND_COLOUR, record);
  const alloyed = read.ok ? accepted({ ...read.value, colourName: wordsOf(record.colourName) }) : TOLD_ELSEWHERE;
  return { alloyed, composition: attempt("composition", () => LINE_FIELDS.composition.read(record.composition)) };
}

function readPlating(record: Row): Pick<ReadLine, "plated" | "platingMetal" | "colours"> {
  const asked = parseForm(PLATED, record);
  const colours = parseForm(COLOURS_OF_LINKS, record);
  return {
    plated: asked.ok ? accepted(asked.value.plated) : asked,
    platingMetal: attempt("platingMetal", () => LINE_FIELDS.platingMetal.read(record.platingMetal)),
    colours: colours.ok ? accepted([colours.value.colour, ...colours.value.pattern]) : TOLD_ELSEWHERE,
  };
}

function readLinePricing(record: Row, currency: Currency): Parsed<Pricing | undefined> {
  const read = parseForm(PRICED, record);
  if (!read.ok) return read;
  const { linePriceBy: by, linePriceFigure } = read.value;
  if (by === "as the quote") return accepted(undefined);
  return attempt("linePriceFigure", () => pricingOf(by, linePriceFigure(by), currency));
}
