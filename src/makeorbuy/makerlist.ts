import { CostingError } from "../exact/errors";
import { type Mark, nameMark } from "../gold/mark";
import { type Placed, refuseDoubles } from "../reading/doubles";
import { isBlank } from "../reading/number";
import { attempt } from "../reading/parse";
import { type Currency, NO_CURRENCY, parseCurrency } from "../units/currency";
import type { Weight } from "../units/weight";
import { MAKER_KEYS, MAKER_LABELS, type MakerKey, type MakerOffer } from "./makeroffer";
import { classAt, faultsAbout, type MakerRow, type PriceLists, readPriceLists, sellersOf } from "./makers";

/** The columns that a price list must have. */
const NEEDED = ["maker", "mark", "surcharge"] as const satisfies readonly MakerKey[];

/** Makers' price lists in a range, to be read in one currency. */
export interface MakersRange {
  /**
   * The price lists in a currency: rows that name another are at fault, since no price is ever converted. Undefined reads them
   * in the one currency that they name. Errors: currencyMismatch where they name several.
   */
  in(currency: Currency | undefined): PriceLists;
}

/**
 * Reads price lists from a range with its row of headers, in any order; other columns are ignored. Rows count from 1 under
 * the headers.
 * Errors: wrongShape where the first row names no Maker, Mark and Surcharge per g.
 */
export function makersOfCells([header = [], ...body]: readonly (readonly unknown[])[]): MakersRange {
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
  const placed = titles.flatMap((title, at): Placed[] => {
    const key = MAKER_KEYS.find((each) => MAKER_LABELS[each].toLowerCase() === title);
    return key ? [{ key, what: MAKER_LABELS[key], place: `column ${at + 1}` }] : [];
  });
  refuseDoubles(placed, "makers");
  const rows = body.map((cells, at): MakerRow => {
    const own = places.map(([key, place]) => [key, place < 0 ? "" : cells[place]]);
    return { row: at + 1, cells: Object.fromEntries(own) as MakerRow["cells"] };
  });
  const named = currenciesOf(rows);
  const read = new Map<Currency, PriceLists>();
  const inOne = (currency: Currency): PriceLists => {
    const lists = read.get(currency) ?? readPriceLists(rows, currency);
    read.set(currency, lists);
    return lists;
  };
  for (const { currency } of named) inOne(currency);
  return {
    in(currency) {
      const [first, ...others] = named;
      if (currency === undefined && first && others.length > 0) throw inSeveral(named, first.currency);
      return inOne(currency ?? first?.currency ?? NO_CURRENCY);
    },
  };
}

/**
 * The maker who asks least for one chain of a weight and mark; of equal ones the first. Who sells no fewer grams than a larger
 * weight cannot sell this one. Minimums in money are not looked at: they need the price of gold.
 * Errors: whatever is wrong with a row about that mark; neverReached where nobody sells the weight.
 */
export function bestMaker(lists: PriceLists, weight: Weight, mark: Mark): MakerOffer {
  const [fault] = faultsAbout(lists.faults, mark);
  if (fault) throw new CostingError(fault.code, "makers", fault.sentence);
  const all = sellersOf(lists, mark).flatMap((seller) => classAt(seller, weight) ?? []);
  const [first, ...others] = all.filter(({ minimum }) => {
    return minimum?.kind !== "weight" || !minimum.weight.grams.isGreaterThan(weight.grams);
  });
  const [larger] = all;
  if (!first && larger?.minimum?.kind === "weight") {
    const least = larger.minimum.weight.grams.value();
    const said = `found ${weight.grams.value()}; nobody on the price lists sells so little ${nameMark(mark)} at once: ${larger.maker} sells ${least} g or more`;
    throw new CostingError("neverReached", "weight", said);
  }
  if (!first) {
    const said = `found ${weight.grams.value()}; nobody on the price lists sells ${nameMark(mark)} of that weight`;
    throw new CostingError("neverReached", "weight", said);
  }
  return others.reduce((least, offer) => {
    return offer.surcharge.perGram.isLessThan(least.surcharge.perGram) ? offer : least;
  }, first);
}

interface NamedCurrency {
  readonly currency: Currency;
  /** The first row that names it. */
  readonly row: number;
}

function currenciesOf(rows: readonly MakerRow[]): readonly NamedCurrency[] {
  const named = rows.flatMap(({ row, cells }): readonly NamedCurrency[] => {
    if (isBlank(cells.currency)) return [];
    const said = attempt("currency", () => ({ currency: parseCurrency(cells.currency) }));
    return said.ok ? [{ currency: said.value.currency, row }] : [];
  });
  return named.filter(({ currency }, at) => named.findIndex((each) => each.currency === currency) === at);
}

function inSeveral(named: readonly NamedCurrency[], first: Currency): CostingError {
  const found = named.map(({ currency, row }) => `${currency} (row ${row})`).join(", ");
  const said = `found prices in ${found}; give the currency to compare in as the last argument, such as "${first}"`;
  return new CostingError("currencyMismatch", "makers", said);
}
