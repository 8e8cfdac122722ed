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
export { type Box, type Point, sizeOf } from "./box";
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
export { fineness, karats, type Mark, markOfFineness, parseMark } from "./mark";
export { type Measure, measureStl } from "./measure";
export type { Mesh } from "./mesh";
export { examineModel, type Model, type Solid, type SolidFault, type SolidFaultKind } from "./model";
export {
  compoundShrinkage,
  cubicMillimetres,
  implausibleLink,
  MODEL_UNITS,
  type ModelUnit,
  modelMillimetres,
  modelWeight,
  PLAUSIBLE_LINK,
  type Scaling,
  scaleOf,
} from "./modelweight";
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
export type { Overlap } from "./overlap";
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
export { LARGEST_STL, type Progress, readStl, refuseLargeStl, type StlModel } from "./stl";
export { TYPICAL_ALLOYS, type TypicalAlloy } from "./typicalalloy";
export {
  GRAMS_PER,
  grams,
  inWeightUnit,
  type Weight,
  type WeightUnit,
  weightIn,
} from "./weight";
export { readWord } from "./word";
