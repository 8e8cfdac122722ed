import { CostingError } from "../exact/errors";
import { type Mark, nameMark } from "../gold/mark";
import { isBlank } from "../reading/number";
import { attempt } from "../reading/parse";
import { type Currency, NO_CURRENCY, parseCurrency } from "../units/currency";
import type { Weight } from "../units/weight";
import { MAKER_KEYS, MAKER_LABELS, type MakerKey, type MakerOffer } from "./makeroffer";
import { classAt, faultsAbout, type MakerRow, type PriceLists, readPriceLists, sellersOf } from "./makers";

/** The columns that a price list must have. */
const NEEDED = ["maker", "mark", "surcharge"] as const satisfies readonly MakerKey[];

/**
 * Reads price lists from a range with its row of headers, in any order; other columns are ignored. Rows count from 1 under
 * the headers. All amounts are in the currency of the first row that names one.
 * Errors: wrongShape where the first row names no Maker, Mark and Surcharge per g.
 */
export function priceListsOfCells([header = [], ...body]: readonly (readonly unknown[])[]): PriceLists {
  const titles = header.map((title) => String(title).trim().toLowerCase());
  const places = MAKER_KEYS.map((key) => [key, titles.indexOf(MAKER_LABELS[key].toLowerCase())] as const);
  if (NEEDED.some((needed) => places.some(([key, place]) => key === needed && place < 0))) {
    const headers = NEEDED.map((key) => MAKER_LABELS[key]).join(", ");
    throw new CostingError(
      "wrongShape",
      "makers",
      `found no first row with the headers ${headers}; give price lists with their headers, such as Makers[#All]`,
    );
  }
  const rows = body.map((cells, at): MakerRow => {
    const own = places.map(([key, place]) => [key, place < 0 ? "" : cells[place]]);
    return { row: at + 1, cells: Object.fromEntries(own) as MakerRow["cells"] };
  });
  return readPriceLists(rows, currencyOf(rows));
}

/**
 * The maker who asks least for a weight of a mark; of equal ones the first.
 * Errors: whatever is wrong with a row about that mark; neverReached where nobody sells the weight.
 */
export function bestMaker(lists: PriceLists, weight: Weight, mark: Mark): MakerOffer {
  const [fault] = faultsAbout(lists.faults, mark);
  if (fault) throw new CostingError(fault.code, "makers", fault.sentence);
  const offers = sellersOf(lists, mark).flatMap((seller) => classAt(seller, weight) ?? []);
  const [first, ...others] = offers;
  if (!first) {
    const said = `found ${weight.grams.value()}; nobody on the price lists sells ${nameMark(mark)} of that weight`;
    throw new CostingError("neverReached", "weight", said);
  }
  return others.reduce((least, offer) => {
    return offer.surcharge.perGram.isLessThan(least.surcharge.perGram) ? offer : least;
  }, first);
}

function currencyOf(rows: readonly MakerRow[]): Currency {
  for (const { cells } of rows) {
    if (isBlank(cells.currency)) continue;
    const said = attempt("currency", () => ({ currency: parseCurrency(cells.currency) }));
    if (said.ok) return said.value.currency;
  }
  return NO_CURRENCY;
}
