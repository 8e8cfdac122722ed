import { RATE_KEYS, RATE_ROWS, type RateKey } from "../src/rates/raterows";

/** Rates whose cell counts something; a figure each, of an invented workshop, as plain digits. */
export const FIGURES: Readonly<Partial<Record<RateKey, string>>> = {
  spot: "2387.45",
  spotAge: "24",
  castingFee: "1.55",
  castingMinimum: "310",
  loss: "0.025",
  labourFlat: "21.5",
  labourPerLink: "0.35",
  labourPerGram: "0.45",
  labourMinimum: "62",
  settingFee: "1.25",
  breakage: "0.04",
  plating: "18.5",
  overhead: "0.06",
  surcharge: "3.25",
  markup: "0.35",
  margin: "0.42",
  premium: "17.5",
  leastMargin: "0.12",
  priceStep: "5",
  tax: "0.08",
  deposit: "0.45",
  tolerance: "0.03",
  ownGoldShare: "0.95",
  validity: "9",
  nextNumber: "1001",
};
export const FIGURE_KEYS = RATE_KEYS.filter((key) => FIGURES[key] !== undefined);
export const WORD_KEYS = RATE_KEYS.filter((key) => RATE_ROWS[key].shown === "word");
/** A blank of these counts as something, or as nothing asked for. */
export const OPTIONAL_KEYS: readonly RateKey[] = [
  "spotAge",
  "castingMinimum",
  "labourFlat",
  "labourPerLink",
  "labourPerGram",
  "labourMinimum",
  "settingFee",
  "breakage",
  "overhead",
  "leastMargin",
  "priceStep",
  "tax",
  "taxIs",
  "shippingTaxed",
  "deposit",
  "taxDue",
  "tolerance",
  "ownGoldShare",
];
/** A share may be written in per cent. */
const SHARES = FIGURE_KEYS.filter((key) => RATE_ROWS[key].shown === "share" || key === "loss");

export function wordsOf(key: RateKey): readonly string[] {
  const row: { readonly words?: readonly string[] } = RATE_ROWS[key];
  return row.words ?? [];
}

/** A word as people and other programs write it. */
export function wordWritings(word: string): readonly string[] {
  return [
    `${word} `,
    ` ${word}`,
    `\u00a0${word}\u00a0`,
    word.toUpperCase(),
    ` ${word.charAt(0).toUpperCase()}${word.slice(1)} `,
  ];
}

/** A figure as a text, as people and other programs write it. */
export function figureWritings(key: RateKey, figure: string): readonly string[] {
  const texts = [figure, ` ${figure} `, `${figure}\u00a0`];
  if (!SHARES.includes(key)) return texts;
  const perCent = String(Math.round(Number(figure) * 1e6) / 1e4);
  return [...texts, `${perCent} %`, `${perCent}%`, ` ${perCent} % `];
}
