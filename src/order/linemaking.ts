import type { Rates } from "../rates/rates";
import { accepted, type Parsed, refused } from "../reading/parse";
import { makeChain } from "./chain";
import { figureFaults } from "./linefigures";
import { type LineParts, lineOf, type OrderLine } from "./orderline";

/** One line of an order from its parts, or every fault in and between them, each naming its field. */
export function makeLine(parts: LineParts, rates: Rates): Parsed<OrderLine> {
  const { design, kind, mark, colour, colourName, hollow, joining, quantity } = parts;
  const { findings, platingPlace, platingThickness, engraving, engravingPlace, engravingCost, setup, stones } = parts;
  const faults = figureFaults(parts);
  if (faults.length > 0) return refused(faults);
  return lineOf(
    {
      names: accepted({ design, kind, mark, colourName, hollow, joining, quantity }),
      chain: makeChain(parts),
      work: accepted({
        findings,
        platingPlace,
        platingThickness,
        engraving,
        engravingPlace,
        engravingCost,
        setup,
      }),
      alloyed: accepted({ mark, colour, colourName }),
      composition: accepted(parts.composition),
      plated: accepted(parts.plated),
      platingMetal: accepted(parts.platingMetal),
      colours: accepted([colour, ...parts.pattern]),
      stones: {
        counts: accepted({ ...stones.counts }),
        breakage: accepted(stones.breakage),
        inLinks: accepted({ ...stones.inLinks }),
        onClasp: accepted({ ...stones.onClasp }),
      },
      pricing: accepted(parts.pricing),
    },
    rates,
  );
}
