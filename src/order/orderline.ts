import { MONEY_AT_LEAST_0, type NumberRule } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { bearsMark, type Composition, parseComposition } from "../gold/composition";
import { type Mark, markOfFineness, parseMark } from "../gold/mark";
import type { Rates } from "../rates/rates";
import { fieldsNamed } from "../reading/formfields";
import { isBlank, readNumber } from "../reading/number";
import { LINE_LABELS, LINE_PRICE_BY, PIECE_KINDS, PLATING_CHOICES, SOLIDITIES } from "../reading/orderwords";
import { accepted, attempt, faultOf, faultsOf, field, type Parsed, parseForm, refused } from "../reading/parse";
import { isPlated, readPlatingMetal } from "../trade/plating";
import { type Pricing, pricingOf, RULE_OF } from "../trade/pricemethod";
import { type Money, money } from "../units/money";
import { grams, type Weight } from "../units/weight";
import { CHAIN_FIELDS, type ChainOrder, parseChain } from "./chain";
import type { StoneSet } from "./stones";
import { parseStoneSets } from "./stonesets";

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
  /** What it is plated with; "" where it is not, or nobody has named the metal. */
  readonly platingMetal: string;
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

type Row = Readonly<Record<string, unknown>>;

const QUANTITY: NumberRule = {
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

/** Reads one line of an order; gathers the faults of all its fields. */
export function parseLine(record: Row, rates: Rates): Parsed<OrderLine> {
  const names = parseForm(NAMES, record);
  const chain = parseChain(record, rates.currency);
  const work = parseForm(WORK, record);
  const alloy = parseAlloy(record);
  const plating = parsePlating(record, rates);
  const stones = parseStoneSets(record, chain.ok ? chain.value.links : undefined, rates);
  const pricing = parseLinePricing(record, rates);
  if (!names.ok || !chain.ok || !work.ok || !alloy.ok || !plating.ok || !stones.ok || !pricing.ok) {
    return refused(faultsOf(names, chain, work, alloy, plating, stones, pricing));
  }
  const cash = (amount: Quotient) => money(amount, rates.currency);
  const { solidity, ...called } = names.value;
  return accepted({
    ...called,
    ...chain.value,
    ...alloy.value,
    gold: alloy.value.composition ? markOfFineness(alloy.value.composition.fineness) : called.mark,
    hollow: solidity === "hollow",
    ...plating.value,
    stones: stones.value,
    findings: Object.freeze({
      what: work.value.findings,
      weight: grams(work.value.findingsWeight),
      cost: cash(work.value.findingsCost),
    }),
    engraving: work.value.engraving,
    engravingCost: cash(work.value.engravingCost),
    setup: cash(work.value.setup),
    pricing: pricing.value,
  });
}

/** The composition of an alloy of the workshop's own, which must bear the mark; other colours have none. */
function parseAlloy(record: Row): Parsed<Pick<OrderLine, "composition">> {
  const read = parseForm(MARK_AND_COLOUR, record);
  if (!read.ok) return refused([]);
  const { mark, colour } = read.value;
  if (colour !== "own") {
    if (isBlank(record.composition)) return accepted({ composition: undefined });
    const said = `found a composition beside the colour ${colour}; empty it, or choose own as the colour`;
    return refused([faultOf("composition", LINE_LABELS.composition, "unknownWord", said)]);
  }
  const nameless = isBlank(record.colourName)
    ? [
        faultOf(
          "colourName",
          LINE_LABELS.colourName,
          "blank",
          "found nothing; give what the customer reads, such as champagne",
        ),
      ]
    : [];
  const composition = attempt("composition", () => {
    const parsed = parseComposition(record.composition ?? "", LINE_LABELS.composition);
    bearsMark(parsed, mark, LINE_LABELS.composition);
    return { composition: parsed };
  });
  return nameless.length > 0 ? refused([...nameless, ...faultsOf(composition)]) : composition;
}

/** Whether the piece is plated, whether Rates say what that costs, and with which metal: the line's own, else that of Rates. */
function parsePlating(record: Row, rates: Rates): Parsed<Pick<OrderLine, "plated" | "platingMetal">> {
  const asked = parseForm(PLATED, record);
  const colours = parseForm(COLOURS_OF_LINKS, record);
  if (!asked.ok || !colours.ok) return refused(faultsOf(asked));
  const plated = isPlated(asked.value.plated, [colours.value.colour, ...colours.value.pattern]);
  // A metal beside a piece that is not plated says nothing of it: a sheet may have it in every row.
  if (!plated) return accepted({ plated, platingMetal: "" });
  const metal = attempt("platingMetal", () => ({
    plated,
    platingMetal: readPlatingMetal(record.platingMetal, LINE_LABELS.platingMetal) || rates.platingMetal,
  }));
  if (rates.plating !== undefined) return metal;
  const said = "found no plating cost on Rates; give it there, or choose not plated";
  return refused([faultOf("plated", LINE_LABELS.plated, "blank", said), ...faultsOf(metal)]);
}

function parseLinePricing(record: Row, rates: Rates): Parsed<Pricing | undefined> {
  const read = parseForm(PRICED, record);
  if (!read.ok) return read;
  const { linePriceBy: by } = read.value;
  if (by === "as the quote") return accepted(undefined);
  return attempt("linePriceFigure", () =>
    pricingOf(by, readNumber(record.linePriceFigure, LINE_LABELS.linePriceFigure, RULE_OF[by]), rates.currency),
  );
}
