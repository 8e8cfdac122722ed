import { MONEY_AT_LEAST_0, type NumberRule } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import type { Colour } from "../gold/alloy";
import { bearsMark, type Composition, parseComposition } from "../gold/composition";
import { type Mark, markOfFineness, parseMark } from "../gold/mark";
import type { Rates } from "../rates/rates";
import { fieldsNamed } from "../reading/formfields";
import { isBlank, readNumber } from "../reading/number";
import { LINE_LABELS, LINE_PRICE_BY, PIECE_KINDS, PLATING_CHOICES, SOLIDITIES } from "../reading/orderwords";
import { accepted, attempt, faultOf, faultsOf, field, type Parsed, parseForm, refused } from "../reading/parse";
import { wordsOf } from "../reading/words";
import { type Pricing, pricingOf, RULE_OF } from "../trade/pricemethod";
import type { Currency } from "../units/currency";
import { type Money, money } from "../units/money";
import { grams, type Weight } from "../units/weight";
import { CHAIN_FIELDS, type ChainOrder, type ChainParts, makeChain, parseChain } from "./chain";
import type { StoneSet } from "./stones";
import { makeStoneSets, type ReadStoneSets, readStoneSets, type StoneSetsParts } from "./stonesets";

/** One design of an order, so many pieces of it. */
export interface OrderLine extends ChainOrder {
  readonly design: string;
  readonly kind: (typeof PIECE_KINDS)[number];
  readonly mark: Mark;
  /** The gold in it, for costs and weights: of an alloy of the workshop's own what its composition says, else what the mark does. */
  readonly gold: Mark;
  /** What an alloy of the workshop's own is called; empty for the usual colours. */
  readonly colourName: string;
  /** Of an alloy of the workshop's own. */
  readonly composition: Composition | undefined;
  readonly hollow: boolean;
  readonly plated: boolean;
  readonly quantity: Quotient;
  readonly stones: readonly StoneSet[];
  readonly findings: Findings;
  /** What is engraved; empty for nothing. */
  readonly engraving: string;
  readonly engravingCost: Money;
  /** This piece's share of the model and the mould. */
  readonly setup: Money;
  /** Undefined where the line is priced as the whole quote. */
  readonly pricing: Pricing | undefined;
}

/** Bought parts besides the clasp: jump rings, a safety chain. Their gold is in their cost. */
export interface Findings {
  readonly what: string;
  readonly weight: Weight;
  readonly cost: Money;
}

/** A line as an order gives it: what its texts or cells say, read, and nothing yet that follows from it. */
export interface LineParts
  extends ChainParts,
    Pick<
      OrderLine,
      | "design"
      | "kind"
      | "mark"
      | "colourName"
      | "composition"
      | "hollow"
      | "quantity"
      | "findings"
      | "engraving"
      | "engravingCost"
      | "setup"
      | "pricing"
    > {
  readonly plated: (typeof PLATING_CHOICES)[number];
  readonly stones: StoneSetsParts;
}

/** Whether a line needs the name of its design, which no cost rests on. */
export type Naming = "named" | "may be nameless";

type Row = Readonly<Record<string, unknown>>;

export const QUANTITY: NumberRule = {
  least: "1",
  most: "1000",
  whole: true,
  right: "a whole number of pieces from 1 to 1000",
};
const WEIGHT: NumberRule = { least: "0", most: "1000", right: "grams from 0, such as 0.4" };

const named = fieldsNamed(LINE_LABELS);
const NAMES = {
  design: named.text("design", "the name of the design"),
  kind: named.wordOr("kind", PIECE_KINDS, "chain"),
  mark: field((value) => parseMark(value, LINE_LABELS.mark)),
  colourName: named.optionalText("colourName"),
  solidity: named.wordOr("solidity", SOLIDITIES, "solid"),
  quantity: named.number("quantity", QUANTITY),
};
const NAMELESS = { ...NAMES, design: named.optionalText("design") };
const WORK = {
  findings: named.optionalText("findings"),
  findingsWeight: named.numberOr("findingsWeight", WEIGHT, Quotient.zero),
  findingsCost: named.numberOr("findingsCost", MONEY_AT_LEAST_0, Quotient.zero),
  engraving: named.optionalText("engraving"),
  engravingCost: named.numberOr("engravingCost", MONEY_AT_LEAST_0, Quotient.zero),
  setup: named.numberOr("setup", MONEY_AT_LEAST_0, Quotient.zero),
};
const MARK_AND_COLOUR = { mark: NAMES.mark, colour: CHAIN_FIELDS.colour };
const COLOURS_OF_LINKS = { colour: CHAIN_FIELDS.colour, pattern: CHAIN_FIELDS.pattern };
const PLATED = { plated: named.wordOr("plated", PLATING_CHOICES, "as usual") };
const PRICED = { linePriceBy: named.wordOr("linePriceBy", LINE_PRICE_BY, "as the quote") };

/** One line of an order from its parts, or every fault between them, each naming its field. */
export function makeLine(parts: LineParts, rates: Rates): Parsed<OrderLine> {
  const { design, kind, mark, colour, colourName, hollow, quantity } = parts;
  const { findings, engraving, engravingCost, setup, stones } = parts;
  return lineOf(
    {
      names: accepted({ design, kind, mark, colourName, hollow, quantity }),
      chain: makeChain(parts),
      work: accepted({ findings, engraving, engravingCost, setup }),
      alloyed: accepted({ mark, colour, colourName }),
      composition: accepted(parts.composition),
      plated: accepted(parts.plated),
      colours: accepted([colour, ...parts.pattern]),
      stones: {
        counts: accepted({ ...stones.counts }),
        inLinks: accepted({ ...stones.inLinks }),
        onClasp: accepted({ ...stones.onClasp }),
      },
      pricing: accepted(parts.pricing),
    },
    rates,
  );
}

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

/** What is known of a line, each part for itself: where one cannot be read, the faults of the others are still found. */
interface ReadParts {
  readonly names: Parsed<Pick<LineParts, "design" | "kind" | "mark" | "colourName" | "hollow" | "quantity">>;
  readonly chain: Parsed<ChainOrder>;
  readonly work: Parsed<Pick<LineParts, "findings" | "engraving" | "engravingCost" | "setup">>;
  readonly alloyed: Parsed<Alloyed>;
  readonly composition: Parsed<Composition | undefined>;
  readonly plated: Parsed<LineParts["plated"]>;
  readonly colours: Parsed<readonly Colour[]>;
  readonly stones: ReadStoneSets;
  readonly pricing: Parsed<Pricing | undefined>;
}

type Alloyed = Pick<LineParts, "mark" | "colour" | "colourName">;

/** A line from what is known of it. */
function lineOf(read: ReadParts, rates: Rates): Parsed<OrderLine> {
  const { names, chain, work, pricing } = read;
  const composition = compositionOf(read.alloyed, read.composition);
  const plated = platedOf(read.plated, read.colours, rates);
  const stones = makeStoneSets(read.stones, chain.ok ? chain.value.links : undefined, rates);
  if (!names.ok || !chain.ok || !work.ok || !composition.ok || !plated.ok || !stones.ok || !pricing.ok) {
    return refused(faultsOf(names, chain, work, composition, plated, stones, pricing));
  }
  return accepted({
    ...names.value,
    ...chain.value,
    composition: composition.value,
    gold: composition.value ? markOfFineness(composition.value.fineness) : names.value.mark,
    plated: plated.value,
    stones: stones.value,
    ...work.value,
    pricing: pricing.value,
  });
}

function readNames(record: Row, naming: Naming): ReadParts["names"] {
  const read = parseForm(naming === "named" ? NAMES : NAMELESS, record);
  if (!read.ok) return read;
  const { solidity, ...names } = read.value;
  return accepted({ ...names, hollow: solidity === "hollow" });
}

function readWork(record: Row, currency: Currency): ReadParts["work"] {
  const read = parseForm(WORK, record);
  if (!read.ok) return read;
  const { findings, findingsWeight, findingsCost, engraving, engravingCost, setup } = read.value;
  return accepted({
    findings: Object.freeze({
      what: findings,
      weight: grams(findingsWeight),
      cost: money(findingsCost, currency),
    }),
    engraving,
    engravingCost: money(engravingCost, currency),
    setup: money(setup, currency),
  });
}

/** Told of a mark or a colour that cannot be read is only the reading of the other fields. */
const TOLD_ELSEWHERE = refused([]);

function readAlloy(record: Row): Pick<ReadParts, "alloyed" | "composition"> {
  const read = parseForm(MARK_AND_COLOUR, record);
  const alloyed = read.ok ? accepted({ ...read.value, colourName: wordsOf(record.colourName) }) : TOLD_ELSEWHERE;
  const text = record.composition;
  const composition = attempt("composition", () =>
    isBlank(text) ? undefined : parseComposition(text, LINE_LABELS.composition),
  );
  return { alloyed, composition };
}

/** The composition of an alloy of the workshop's own, which must bear the mark; other colours have none. */
function compositionOf(
  alloyed: Parsed<Alloyed>,
  given: Parsed<Composition | undefined>,
): Parsed<Composition | undefined> {
  if (!alloyed.ok) return alloyed;
  const { mark, colour, colourName } = alloyed.value;
  if (colour !== "own") {
    if (given.ok && given.value === undefined) return given;
    const said = `found a composition beside the colour ${colour}; empty it, or choose own as the colour`;
    return refused([faultOf("composition", LINE_LABELS.composition, "unknownWord", said)]);
  }
  const borne = given.ok ? attempt("composition", () => bearing(mark, given.value)) : given;
  if (!isBlank(colourName)) return borne;
  const said = "found nothing; give what the customer reads, such as champagne";
  return refused([faultOf("colourName", LINE_LABELS.colourName, "blank", said), ...faultsOf(borne)]);
}

function bearing(mark: Mark, composition: Composition | undefined): Composition {
  const parsed = composition ?? parseComposition("", LINE_LABELS.composition);
  bearsMark(parsed, mark, LINE_LABELS.composition);
  return parsed;
}

function readPlating(record: Row): Pick<ReadParts, "plated" | "colours"> {
  const asked = parseForm(PLATED, record);
  const colours = parseForm(COLOURS_OF_LINKS, record);
  return {
    plated: asked.ok ? accepted(asked.value.plated) : asked,
    colours: colours.ok ? accepted([colours.value.colour, ...colours.value.pattern]) : TOLD_ELSEWHERE,
  };
}

/** Whether the piece is plated, as usual where any of its links is white, and whether Rates say what that costs. */
function platedOf(asked: ReadParts["plated"], colours: ReadParts["colours"], rates: Rates): Parsed<boolean> {
  if (!asked.ok || !colours.ok) return refused(faultsOf(asked, colours));
  const isPlated = asked.value === "as usual" ? colours.value.includes("white") : asked.value === "plated";
  if (!isPlated || rates.plating !== undefined) return accepted(isPlated);
  const said = "found no plating cost on Rates; give it there, or choose not plated";
  return refused([faultOf("plated", LINE_LABELS.plated, "blank", said)]);
}

function readLinePricing(record: Row, currency: Currency): Parsed<Pricing | undefined> {
  const read = parseForm(PRICED, record);
  if (!read.ok) return read;
  const { linePriceBy: by } = read.value;
  if (by === "as the quote") return accepted(undefined);
  return attempt("linePriceFigure", () =>
    pricingOf(by, readNumber(record.linePriceFigure, LINE_LABELS.linePriceFigure, RULE_OF[by]), currency),
  );
}
