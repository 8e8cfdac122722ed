import { plainHeader, unitOfHeader } from "../designs/headerwords";
import { CostingError } from "../exact/errors";
import { type Currency, parseCurrency } from "../units/currency";
import { unitsOfWord } from "./askedunit";
import { SEEN_KEYS, SEEN_LABELS, type SeenKey } from "./seenasking";

/** What a header of a list of asking prices says beside the field it names. */
export interface AskingHeader {
  /** Undefined where it is none of the words known here. */
  readonly key: SeenKey | undefined;
  /** In plain words, for finding the nearest to a misspelt one. */
  readonly words: string;
  /** The word of a weight's unit: "Weight (dwt)". It may be of two units: "oz". */
  readonly unit: string | undefined;
  /** The word of what a price is for: "Price per gram", "Asked, EUR/g". */
  readonly per: string | undefined;
  readonly currency: Currency | undefined;
  readonly sign: string | undefined;
}

/** What lists call the same things. Common practice. */
const OTHER_WORDS: Readonly<Record<string, SeenKey>> = {
  "seen on": "date",
  "date seen": "date",
  day: "date",
  when: "date",
  source: "source",
  "source note": "source",
  note: "source",
  "seen at": "source",
  where: "source",
  shop: "source",
  seller: "source",
  website: "source",
  kind: "kind",
  chain: "kind",
  style: "kind",
  type: "kind",
  item: "kind",
  description: "kind",
  design: "kind",
  karat: "mark",
  carat: "mark",
  fineness: "mark",
  purity: "mark",
  hollow: "solidity",
  solid: "solidity",
  solidity: "solidity",
  wt: "weight",
  grams: "weight",
  "weight of the piece": "weight",
  asked: "price",
  ask: "price",
  asking: "price",
  "asking price": "price",
  price: "price",
  amount: "price",
  per: "per",
  "price per": "per",
  "price for": "per",
  unit: "per",
  basis: "per",
  ccy: "currency",
  exchange: "exchange",
  "exchange rate": "exchange",
  fx: "exchange",
  "gold spot": "spot",
  "spot price": "spot",
  "gold price": "spot",
};

/** Every word that names a field, plain: for finding the nearest to a misspelt one. */
export const SEEN_WORDS: readonly { readonly words: string; readonly key: SeenKey }[] = [
  ...SEEN_KEYS.map((key) => ({ words: plainHeader(SEEN_LABELS[key]), key })),
  ...Object.entries(OTHER_WORDS).map(([words, key]) => ({ words, key })),
];

/** Reads a header of a list: the field it names, and unit and currency in it. */
export function readAskingHeader(cell: unknown): AskingHeader {
  const header = typeof cell === "string" ? cell.trim() : "";
  const { per, rest } = withoutPer(header);
  const currency = rest
    .split(/[^\p{L}]+/u)
    .map(currencyOf)
    .find((code) => code !== undefined);
  const sign = /[€£$¥₹₺]/.exec(rest)?.[0];
  const bare = plainHeader(rest).split(" ");
  const lastWord = bare.at(-1) ?? "";
  const behind = bare.length > 1 && unitsOfWord(lastWord).length > 0 ? lastWord : undefined;
  const bracketed = unitOfHeader(rest);
  const unit = bracketed !== undefined && unitsOfWord(bracketed).length > 0 ? bracketed : behind;
  const words = bare
    .filter((word, at) => !(behind && at === bare.length - 1) && word !== currency?.toLowerCase())
    .join(" ");
  return { key: keyOf(words), words, unit, per, currency, sign };
}

/** A header without what a price is for: "Price per gram" is "Price", "Asked (EUR/g)" is "Asked (EUR)". */
function withoutPer(header: string): { readonly per: string | undefined; readonly rest: string } {
  for (const match of header.matchAll(/(?:\bper\s+|\/\s*)(?:a\s+|one\s+)?(\p{L}+(?:\s+\p{L}+)?)/giu)) {
    const words = (match[1] ?? "").split(/\s+/);
    for (const per of [words.join(" "), words[0] ?? ""]) {
      if (unitsOfWord(per).length === 0 && !/^(piece|pc|pcs|item|chain)$/i.test(per)) continue;
      return { per, rest: header.replace(match[0], words.length > 1 && per === words[0] ? ` ${words[1]}` : "") };
    }
  }
  return { per: undefined, rest: header };
}

function keyOf(words: string): SeenKey | undefined {
  return SEEN_WORDS.find((known) => known.words === words)?.key;
}

/** Three capitals that are a currency. */
function currencyOf(word: string): Currency | undefined {
  if (!/^[A-Z]{3}$/.test(word)) return undefined;
  try {
    return parseCurrency(word);
  } catch (error) {
    if (error instanceof CostingError) return undefined;
    throw error;
  }
}
