export {
  ADDED_STONES_LABELS,
  ADDED_STONES_WHERE,
  type AddedStones,
  type AddedStonesKey,
  parseAddedStones,
  RISE_BY,
  type StonesPay,
  stonesPay,
} from "./addedstones";
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
export { ASKED_PIECE_LABELS, type AskedPiece, type AskedPieceKey, parseAskedPiece } from "./askedpiece";
export { type AskedUnit, oneOf, splitWeight, unitsOfWord } from "./askedunit";
export {
  ASKED_PER,
  ASKING_LABELS,
  type AskedPer,
  type Asking,
  type AskingKey,
  checkAsking,
  currencyNamed,
  type PriceCheck,
  parseAsking,
} from "./asking";
export type { AskingColumn, ListRow, ListSettings } from "./askingcells";
export { type AskingHeader, readAskingHeader, SEEN_WORDS } from "./askingheaders";
export { type ListQuestions, type ListReading, questionsOf, readAskingList } from "./askinglist";
export { type Box, type Point, sizeOf } from "./box";
export { type BreakEven, breakEven } from "./breakeven";
export {
  BUDGET_KEYS,
  BUDGET_LABELS,
  type Budget,
  type BudgetKey,
  EACH_KEYS,
  type EachKey,
  MOST_PIECES,
  ONCE_KEYS,
  type OnceKey,
  parseBudget,
} from "./budget";
export {
  type CashLine,
  type CashNeeded,
  type CashStep,
  cashLine,
  cashNeeded,
  depositFor,
  type FirstPiece,
  firstPieces,
  type TakenOn,
  takenOn,
} from "./cashplan";
export {
  type Bid,
  type ChainChoice,
  type Comparison,
  compareSources,
  lineOfWeight,
  MAKER_OF_RATES,
  type SellersFrom,
  savedByChoice,
  sellersFor,
} from "./chainchoice";
export type { Clasp, Links } from "./chainorder";
export { CLASP_PARTS, CLASPS, type ClaspKind } from "./clasp";
export { NONE, type Output, Plans, settle, settleAll, type Taker } from "./column";
export { BLOCK, Block, type Column, type Line, type Rows } from "./columnblock";
export { readColumnMark, readColumnMarks } from "./columnmark";
export type { Input } from "./columnplace";
export type { Plan } from "./columnplan";
export { type ColumnRule, cellOf, columnNumber, columnRule, type Place, type Reading, readColumns } from "./columnread";
export { traced, type Value } from "./columntrace";
export { compareAsking, type OwnComparison, ownLine } from "./comparison";
export type { Composition } from "./composition";
export {
  COST_BASES,
  type CostBasis,
  landedCost,
  type Making,
  perGramOf,
  stoneCost,
} from "./costing";
export { type CostSheet, costOrder, forAll } from "./costsheet";
export { chainWeightOf, crossingWeight } from "./crossingweight";
export {
  type Currency,
  minorDigits,
  NO_CURRENCY,
  parseCurrency,
} from "./currency";
export {
  floorSpot,
  type MarginPoint,
  marginCurve,
  type PricePoint,
  priceCurve,
  type SourcingPoint,
  sourcingCurve,
} from "./curve";
export type { Decimal, Rounding } from "./decimal";
export type { Density } from "./density";
export {
  broughtAt,
  type EarningSpan,
  earningByLinks,
  earningByLinkWeight,
  marginAt,
  premiumFor,
  type Wanted,
} from "./earning";
export {
  CostingError,
  type CostingErrorCode,
  type Fault,
  found,
} from "./errors";
export {
  type MaterialChange,
  parseRecast,
  parseResizing,
  parseWax,
  RECAST_LABELS,
  RESIZE_LABELS,
  type RecastKey,
  type ResizeKey,
  type Resizing,
  WAX_LABELS,
  type WaxKey,
} from "./estimate";
export type { Parsed } from "./form";
export { type FieldColumn, readHeaders, recordOf } from "./headers";
export {
  COUNTED,
  type Counted,
  FIELD_WORDS,
  keyOfHeader,
  ROW_KEYS,
  ROW_LABELS,
  type RowKey,
  unitOfHeader,
} from "./headerwords";
export { KEPT_LINK_LABELS, type KeptLink, type KeptLinkKey, parseKeptLink } from "./keptlink";
export { type LeastOrder, leastOrder } from "./leastorder";
export {
  inLengthUnit,
  type Length,
  type LengthUnit,
  lengthIn,
  MILLIMETRES_PER,
} from "./length";
export { LEVERS, type Lever, leverValue } from "./lever";
export type { LineTaker } from "./linecolumns";
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
export { type LinkName, markAsWritten, sameLink, sameText } from "./linkname";
export { type DateOrder, readListDate } from "./listdate";
export { type DecimalSign, readListFigure } from "./listfigure";
export { bestMaker, priceListsOfCells } from "./makerlist";
export {
  EVERY_MARK,
  MAKER_KEYS,
  MAKER_LABELS,
  type MakerKey,
  type MakerOffer,
  MINIMUM_UNITS,
  type MinimumOrder,
  parseMakerOffer,
} from "./makeroffer";
export {
  classAt,
  faultsAbout,
  type MakerFault,
  type MakerRow,
  type PriceLists,
  readPriceLists,
  type Seller,
  sellersOf,
} from "./makers";
export { fineness, fineShare, karats, type Mark, markOfFineness, markOfShare, parseMark, showMark } from "./mark";
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
export { LARGEST_MONTHLY_MOVES, type MonthlyMove, spotMovedAs } from "./monthlymoves";
export {
  MUST_BRING_LABELS,
  type MustBring,
  type MustBringKey,
  parseMustBring,
  usualMargin,
} from "./mustbring";
export { isBlank, type NumberRule, readNumber } from "./number";
export { type BindingQuote, type OpenQuotes, openQuotes, UNBOUGHT } from "./openquotes";
export {
  type Extra,
  MOST_LINES,
  type Order,
  type OrderForm,
  orderOfRow,
  parseOrder,
} from "./order";
export { type OrderBudgetKey, orderBudget } from "./orderbudget";
export type { OrderLine } from "./orderline";
export {
  blankOrder,
  readOrderText,
  type TypedExtra,
  type TypedLine,
  type TypedOrder,
  writeOrderText,
} from "./ordertext";
export {
  EXTRA_KEYS,
  EXTRA_LABELS,
  type ExtraKey,
  LENGTH_GIVEN,
  LINE_KEYS,
  LINE_LABELS,
  LINE_PRICE_BY,
  LINK_CASTINGS,
  LINKS_PER_UNITS,
  type LineKey,
  ORDER_KEYS,
  ORDER_LABELS,
  ORDER_LENGTH_UNITS,
  ORDER_PRICE_BY,
  type OrderKey,
  OWN_GOLD_USES,
  PIECE_KINDS,
  PLATING_CHOICES,
  SETTLEMENTS,
  SOLIDITIES,
  STONE_KEYS,
  STONE_PRICED,
  STONE_SHAPES,
  STONES_ON,
  YES_NO,
} from "./orderwords";
export { HEAVIER_BY, type HeavierBy, lineOfLinkWeight, type OtherLengths, otherLengths } from "./otherweight";
export type { Overlap } from "./overlap";
export type { GoldBalance, OwnGold } from "./owngold";
export {
  LINK_FIGURES,
  type LinkMatch,
  matchOf,
  type NearestLink,
  nearestLink,
  type OwnLink,
  type OwnLinkCells,
  readOwnLinks,
  type SoughtPiece,
} from "./ownlink";
export { PATTERN_LETTERS } from "./pattern";
export {
  castWeight,
  finishedWeight,
  LOSS_BASES,
  type Loss,
  type LossBasis,
} from "./piece";
export {
  type AlloyPart,
  COST_LINES,
  type CostLine,
  costPiece,
  type PieceCosts,
  stonesToBuy,
} from "./piececosts";
export {
  type MedianNear,
  type MedianPremium,
  medianNear,
  medianPremiums,
  type SeenPremium,
  seenPremium,
  WEIGHT_CLASSES,
  weightClass,
} from "./premiums";
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
export { priceInColumns } from "./pricecolumns";
export {
  designColumns,
  figureOf,
  PRICE_COLUMN_KEYS,
  PRICE_COLUMNS,
  type PriceColumn,
  type PricedLine,
  priceDesign,
  priceLines,
  type ReadDesign,
  ratesOfCells,
  ratesOfValues,
  readDesigns,
  readPriceColumns,
} from "./pricelist";
export { PRICE_METHODS, type Pricing } from "./pricing";
export { makeQuote, type Quote, type QuoteExtra, type QuoteWatch } from "./quote";
export { colourName, type QuoteLine } from "./quoteline";
export {
  nextQuoteNumber,
  nextRevision,
  type QuoteNumber,
  readQuoteNumber,
  showQuoteNumber,
} from "./quotenumber";
export { Quotient } from "./quotient";
export { fineGold, meltValue, metalRate, perGram, type Rate, spotOf } from "./rate";
export { type RateFigure, type RateFigures, rateFiguresOf } from "./ratefigures";
export { RATE_KEYS, RATE_ROWS, type RateKey, type RateRow } from "./raterows";
export { parseRates, type Rates } from "./rates";
export {
  joinRepricings,
  type RepricedLine,
  type Repricing,
  reprice,
  spotMove,
  spotsAround,
} from "./repricing";
export { SCALE_UNITS } from "./scaleweight";
export { parseSeenAsking, SEEN_KEYS, SEEN_LABELS, type SeenAsking, type SeenKey, seenKey } from "./seenasking";
export { crossoverWeight, type MakeOrBuy, makeOrBuy } from "./sourcing";
export { type MakerOrder, type ShortOfMinimum, type SourcingTotal, totalOf } from "./sourcingtotal";
export { type SpotLimit, type SpotRisk, spotRisk } from "./spotrisk";
export { STANDINGS, type Standing, standingOf } from "./standing";
export { LARGEST_STL, type Progress, readStl, refuseLargeStl, type StlModel } from "./stl";
export { DIAMOND_GRAVITY, rectangularCarats, roundCarats, type StoneSet } from "./stones";
export { wordsOf } from "./text";
export { joinTornados, MOVED_BY, type Swing, type Tornado, tornado } from "./tornado";
export { TYPICAL_ALLOYS, type TypicalAlloy } from "./typicalalloy";
export {
  allowedLossShare,
  FEWEST_WEIGHINGS,
  isGuess,
  judgeWeighed,
  type Weighed,
  type WeighedLoss,
  type WeighedVerdict,
} from "./weighed";
export {
  parseWeighIn,
  STAGES,
  type Stage,
  WEIGH_IN_KEYS,
  WEIGH_IN_LABELS,
  type WeighIn,
  type WeighInKey,
} from "./weighin";
export {
  isFarOff,
  type MeanWeight,
  meanLossShare,
  meanWeight,
  type Passage,
  type Weighing,
} from "./weighings";
export {
  GRAMS_PER,
  grams,
  inWeightUnit,
  type Weight,
  type WeightUnit,
  weightIn,
} from "./weight";
export { type ListedWeight, readWeightList } from "./weightlist";
export { makingRanges, type Winner, type WinningRange, winningRanges } from "./winningranges";
export { readWord } from "./word";
