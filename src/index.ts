export {
  alloyDensity,
  assayPasses,
  COLOURS,
  type Colour,
  METALS,
  type Metal,
  type Part,
  STANDARD_MARKS,
  standardMark,
} from "./alloy";
export { type Output, Plans, settle, type Taker } from "./column";
export { BLOCK, Block, type Column, type Line, type Rows } from "./columnblock";
export { readColumnMark, readColumnMarks } from "./columnmark";
export type { Input, Plan } from "./columnplan";
export { type ColumnRule, cellOf, columnNumber, columnRule, type Place, readColumnNumbers } from "./columnread";
export { traced, type Value } from "./columntrace";
export {
  COST_BASES,
  type CostBasis,
  landedCost,
  type Making,
  perGramOf,
  stoneCost,
} from "./costing";
export {
  COST_LINES,
  type CostLine,
  type CostSheet,
  costOrder,
  forAll,
  type PieceCosts,
} from "./costsheet";
export {
  type Currency,
  minorDigits,
  NO_CURRENCY,
  parseCurrency,
} from "./currency";
export {
  crossingWeight,
  floorSpot,
  type MarginPoint,
  marginCurve,
  type SourcingPoint,
  sourcingCurve,
} from "./curve";
export type { Decimal, Rounding } from "./decimal";
export {
  CostingError,
  type CostingErrorCode,
  type Fault,
  found,
} from "./errors";
export type { Parsed } from "./form";
export {
  inLengthUnit,
  type Length,
  type LengthUnit,
  lengthIn,
  MILLIMETRES_PER,
} from "./length";
export {
  chainLength,
  chainWeight,
  FITS,
  type Fit,
  linkCount,
  pitchOf,
  recastWeight,
  resizedLink,
} from "./link";
export { fineness, fineShare, karats, type Mark, markOfFineness, markOfShare, parseMark } from "./mark";
export {
  addMoney,
  type Money,
  money,
  roundToCurrency,
  roundUpToStep,
  subtractMoney,
  timesMoney,
} from "./money";
export { isBlank, type NumberRule, readNumber } from "./number";
export {
  LINKS_PER_UNITS,
  ORDER_KEYS,
  ORDER_LABELS,
  ORDER_LENGTH_UNITS,
  type Order,
  type OrderKey,
  type OrderLine,
  PLATING_CHOICES,
  parseOrder,
} from "./order";
export { readOrderText, type TypedOrder, writeOrderText } from "./ordertext";
export {
  castWeight,
  finishedWeight,
  LOSS_BASES,
  type Loss,
  type LossBasis,
} from "./piece";
export {
  type AskingCheck,
  askingCheck,
  margin,
  markup,
  premium,
  priceAtMargin,
  priceAtMarkup,
  priceAtPremium,
  spotLimit,
} from "./price";
export {
  makeQuote,
  type Quote,
  type QuoteLine,
  type QuoteWatch,
} from "./quote";
export {
  nextQuoteNumber,
  nextRevision,
  type QuoteNumber,
  readQuoteNumber,
  showQuoteNumber,
} from "./quotenumber";
export { Quotient } from "./quotient";
export { fineGold, meltValue, metalRate, perGram, type Rate } from "./rate";
export {
  PRICE_METHODS,
  parseRates,
  RATE_KEYS,
  RATE_ROWS,
  type RateKey,
  type RateRow,
  type Rates,
} from "./rates";
export { crossoverWeight, type MakeOrBuy, makeOrBuy } from "./sourcing";
export { STANDINGS, type Standing, standingOf } from "./standing";
export {
  GRAMS_PER,
  grams,
  inWeightUnit,
  type Weight,
  type WeightUnit,
  weightIn,
} from "./weight";
export { readWord } from "./word";
