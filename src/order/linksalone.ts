import { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import type { Parsed } from "../reading/parse";
import { moneyEach } from "../trade/boughtpart";
import { money } from "../units/money";
import { grams, type Weight } from "../units/weight";
import { makeLine } from "./linemaking";
import type { LineParts, OrderLine } from "./orderline";
import type { StoneParts } from "./stones";

/** What is said of links alone. */
export interface LinksAlone
  extends Pick<LineParts, "design" | "kind" | "mark" | "colour" | "hollow" | "plated" | "quantity"> {
  /** Of one link, finished. */
  readonly linkWeight: Weight;
}

/**
 * A line of one link, with no clasp, stones or work beside it: what a chain of such links costs follows from it at every weight,
 * which says how many they are.
 */
export function lineOfLinks(links: LinksAlone, rates: Rates): Parsed<OrderLine> {
  const none = money(Quotient.zero, rates.currency);
  const noPart = { weight: grams(Quotient.zero), mark: undefined, cost: moneyEach(none) };
  return makeLine(
    {
      ...links,
      ...ONE_LINK,
      colourName: "",
      platingMetal: "",
      composition: undefined,
      clasp: { kind: "none", length: Quotient.zero, ...noPart },
      stones: noStones(),
      findings: { what: "", ...noPart },
      engraving: "",
      engravingCost: none,
      setup: none,
      pricing: undefined,
    },
    rates,
  );
}

/** An inch long, of one link by the inch. */
const ONE_LINK = {
  pattern: [],
  lengthGiven: "finished length",
  measured: Quotient.one,
  ease: undefined,
  lengthUnit: "in",
  linksPer: Quotient.one,
  linksPerUnit: "in",
  linkCasting: "closed and open in turn",
  otherLinkWeights: {},
} as const;

function noStones(): LineParts["stones"] {
  return {
    counts: {
      stonesOn: undefined,
      stoneEvery: undefined,
      stoneCount: Quotient.zero,
      stonesPerLink: Quotient.one,
      claspStoneCount: Quotient.zero,
    },
    breakage: undefined,
    inLinks: NO_STONE,
    onClasp: NO_STONE,
  };
}

const NO_STONE: StoneParts = {
  kind: "",
  shape: "round",
  diameter: undefined,
  length: undefined,
  width: undefined,
  depth: undefined,
  gravity: undefined,
  carat: undefined,
  price: undefined,
  priced: "a stone",
  settingFee: undefined,
};
