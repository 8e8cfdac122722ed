import type { Quotient } from "../exact/quotient";
import type { Colour } from "../gold/alloy";
import { bearsMark, type Composition, parseComposition } from "../gold/composition";
import { type Mark, markOfFineness } from "../gold/mark";
import type { Rates } from "../rates/rates";
import { isBlank } from "../reading/number";
import type { PIECE_KINDS, PLATING_CHOICES } from "../reading/orderwords";
import { accepted, attempt, faultOf, faultsOf, type Parsed, refused } from "../reading/parse";
import type { BoughtPart } from "../trade/boughtpart";
import { isPlated } from "../trade/plating";
import type { Pricing } from "../trade/pricemethod";
import type { Money } from "../units/money";
import type { ChainOrder, ChainParts } from "./chain";
import { LINE_LABELS } from "./fields";
import { checkPart } from "./partcost";
import type { StoneSet } from "./stones";
import { makeStoneSets, type ReadStoneSets, type StoneSetsParts } from "./stonesets";

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
export interface Findings extends BoughtPart {
  readonly what: string;
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
  /** "" where Rates name it. */
  readonly platingMetal: string;
  readonly stones: StoneSetsParts;
}

/** What is known of a line, each part for itself: where one cannot be read, the faults of the others are still found. */
export interface ReadLine {
  readonly names: Parsed<Pick<LineParts, "design" | "kind" | "mark" | "colourName" | "hollow" | "quantity">>;
  readonly chain: Parsed<ChainOrder>;
  readonly work: Parsed<Pick<LineParts, "findings" | "engraving" | "engravingCost" | "setup">>;
  readonly alloyed: Parsed<Alloyed>;
  readonly composition: Parsed<Composition | undefined>;
  readonly plated: Parsed<LineParts["plated"]>;
  readonly platingMetal: Parsed<string>;
  readonly colours: Parsed<readonly Colour[]>;
  readonly stones: ReadStoneSets;
  readonly pricing: Parsed<Pricing | undefined>;
}

type Alloyed = Pick<LineParts, "mark" | "colour" | "colourName">;

/** A line from what is known of it. */
export function lineOf(read: ReadLine, rates: Rates): Parsed<OrderLine> {
  const { names, chain, pricing } = read;
  const work = read.work.ok ? withFindings(read.work.value) : read.work;
  const composition = compositionOf(read.alloyed, read.composition);
  const plated = platedOf(read, rates);
  const stones = makeStoneSets(read.stones, chain.ok ? chain.value.links : undefined, rates);
  if (!names.ok || !chain.ok || !work.ok || !composition.ok || !plated.ok || !stones.ok || !pricing.ok) {
    return refused(faultsOf(names, chain, work, composition, plated, stones, pricing));
  }
  return accepted({
    ...names.value,
    ...chain.value,
    composition: composition.value,
    gold: composition.value ? markOfFineness(composition.value.fineness) : names.value.mark,
    ...plated.value,
    stones: stones.value,
    ...work.value,
    pricing: pricing.value,
  });
}

function withFindings<W extends Pick<LineParts, "findings">>(work: W): Parsed<W> {
  const findings = checkPart("findings", work.findings);
  return findings.ok ? accepted(work) : findings;
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

/** Whether the piece is plated, whether Rates say what that costs, and with which metal: the line's own, else that of Rates. */
function platedOf(read: ReadLine, rates: Rates): Parsed<Pick<OrderLine, "plated" | "platingMetal">> {
  const { plated: asked, colours, platingMetal } = read;
  if (!asked.ok || !colours.ok) return refused(faultsOf(asked, colours));
  const plated = isPlated(asked.value, colours.value);
  // A metal beside a piece that is not plated says nothing of it: a sheet may have it in every row.
  if (!plated) return accepted({ plated, platingMetal: "" });
  if (rates.plating !== undefined) {
    return platingMetal.ok
      ? accepted({ plated, platingMetal: platingMetal.value || rates.platingMetal })
      : platingMetal;
  }
  const said = "found no plating cost on Rates; give it there, or choose not plated";
  return refused([faultOf("plated", LINE_LABELS.plated, "blank", said), ...faultsOf(platingMetal)]);
}
