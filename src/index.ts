export {
  BUDGET_LABELS,
  type Budget,
  type BudgetKey,
  EACH_KEYS,
  type EachKey,
  MOST_PIECES,
  ONCE_KEYS,
  type OnceKey,
  parseBudget,
} from "./cashplan/budget";
export {
  type CashLine,
  type CashNeeded,
  type CashStep,
  cashLine,
  cashNeeded,
  depositFor,
  type FirstPiece,
  firstPieces,
  paidBackWith,
  piecesCarried,
  piecesCost,
  type TakenOn,
  takenOn,
} from "./cashplan/cashplan";
export { type OrderBudgetKey, orderBudget } from "./cashplan/orderbudget";
export { ALL_DECIDED, type Output, type Value } from "./columns/answers";
export type { Block } from "./columns/block";
export { type ColumnRule, cellOf, columnRule, type RangePart } from "./columns/cells";
export { ColumnDriver, type ColumnInput, type RowSource, UNREAD, type Watch } from "./columns/driver";
export type { Line, Rows } from "./columns/lines";
export { type CellReading, type RangeColumn, readCell, readForAll, readRanges } from "./columns/ranges";
export { doubledHeaders, type FieldColumn, nthColumn, readHeaders, recordOf } from "./designs/headers";
export {
  FIELD_WORDS,
  keyOfHeader,
  ROW_KEYS,
  ROW_LABELS,
  type RowKey,
  unitNamedFor,
  unitOfHeader,
} from "./designs/headerwords";
export { LARGEST_MONTHLY_MOVES, type MonthlyMove, spotMovedAs } from "./designs/monthlymoves";
export {
  designColumns,
  figureOf,
  PRICE_COLUMN_KEYS,
  PRICE_COLUMNS,
  type PriceColumn,
  type PricedLine,
  priceDesign,
  type ReadDesign,
  ratesOfCells,
  ratesOfValues,
  readDesigns,
  readPriceColumns,
} from "./designs/pricelist";
export { type RateFigure, type RateFigures, rateFiguresOf } from "./designs/rateinputs";
export {
  joinRepricings,
  type RepricedLine,
  type Repricing,
  reprice,
  spotMove,
  spotsAround,
} from "./designs/repricing";
export { priceInColumns } from "./designs/tableformulas";
export type { LineTaker } from "./designs/tablerunner";
export type { Decimal, Rounding } from "./exact/decimal";
export {
  CostingError,
  type CostingErrorCode,
  type Fault,
  found,
  UnreadableCell,
} from "./exact/errors";
export { MARKUP_RULE, type NumberRule } from "./exact/numberrule";
export { Quotient } from "./exact/quotient";
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
} from "./gold/alloy";
export type { Composition } from "./gold/composition";
export type { Density } from "./gold/density";
export {
  costOf,
  fineGold,
  type MetalRate,
  meltValue,
  metalRate,
  metalRateOf,
  perGram,
  type Rate,
  spotOf,
} from "./gold/goldrate";
export { isHallmarkedInUk } from "./gold/hallmark";
export {
  fineness,
  fineShare,
  karats,
  type Mark,
  markOfShare,
  nameMark,
  parseMark,
  shareOfDigits,
  showMark,
} from "./gold/mark";
export { TYPICAL_ALLOYS, type TypicalAlloy } from "./gold/typicalalloy";
export { type BreakEven, breakEven } from "./makeorbuy/breakeven";
export {
  type AskedSellers,
  type Bid,
  type ChainChoice,
  type Comparison,
  cheaperLarger,
  compareSources,
  costByChoice,
  lineOfWeight,
  MAKER_OF_RATES,
  type SellersFrom,
  savedByChoice,
  sellersFor,
} from "./makeorbuy/chainchoice";
export { crossingWeight, HEAVIER_BY, type HeavierBy } from "./makeorbuy/crossover";
export {
  floorSpot,
  type MarginPoint,
  marginCurve,
  type PricePoint,
  priceCurve,
  type SourcingPoint,
  sourcingCurve,
} from "./makeorbuy/curve";
export { LEVERS, type Lever } from "./makeorbuy/figures";
export { type ListedKey, linkWeightOf, parseListedChain } from "./makeorbuy/listedchain";
export { bestMaker, type MakersRange, makersOfCells } from "./makeorbuy/makerlist";
export {
  EVERY_MARK,
  MAKER_LABELS,
  type MakerKey,
  type MakerOffer,
  MINIMUM_UNITS,
  type MinimumOrder,
  parseMakerOffer,
} from "./makeorbuy/makeroffer";
export {
  type MakerFault,
  type MakerRow,
  type PriceLists,
  readPriceLists,
  type Seller,
} from "./makeorbuy/makers";
export { type LeastOrder, leastOrder } from "./makeorbuy/minimumorder";
export { joinTornados, MOVED_BY, type Swing, type Tornado, tornado } from "./makeorbuy/tornado";
export {
  type LargerOrder,
  type MakerOrder,
  type ShortOfMinimum,
  type SourcingTotal,
  totalOf,
} from "./makeorbuy/totals";
export { makingRanges, offerStarts, type Winner, type WinningRange, winningRanges } from "./makeorbuy/winningranges";
export {
  ADDED_STONES_LABELS,
  ADDED_STONES_WHERE,
  type AddedStones,
  type AddedStonesKey,
  parseAddedStones,
  RISE_BY,
  type StonesPay,
  stonesPay,
} from "./margins/addedstones";
export {
  broughtAt,
  type EarningSpan,
  earningByLinks,
  earningByLinkWeight,
  marginAt,
  premiumFor,
  type Wanted,
} from "./margins/earning";
export { type OtherLengths, otherLengths } from "./margins/otherlengths";
export {
  MUST_BRING_LABELS,
  type MustBring,
  type MustBringKey,
  parseMustBring,
  usualMargin,
} from "./margins/targetprice";
export {
  ASKED_PIECE_LABELS,
  type AskedPiece,
  type AskedPieceKey,
  parseAskedPiece,
  usualPiece,
} from "./market/askedpiece";
export { type AskedUnit, splitWeight, unitsOfWord } from "./market/askedunit";
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
} from "./market/asking";
export type { AskingColumn, ListRow, ListSettings } from "./market/askingcells";
export { type AskingHeader, readAskingHeader, SEEN_WORDS } from "./market/askingheaders";
export { type ListQuestions, type ListReading, questionsOf, readAskingList } from "./market/askinglist";
export { compareAsking, type OwnComparison, ownLine } from "./market/comparison";
export {
  type MedianNear,
  type MedianPremium,
  medianNear,
  medianPremiums,
  type SeenPremium,
  seenPremium,
  WEIGHT_CLASSES,
} from "./market/premiums";
export { parseSeenAsking, SEEN_KEYS, SEEN_LABELS, type SeenAsking, type SeenKey, seenKey } from "./market/seenasking";
export { type Box, type Point, sizeOf } from "./mesh/box";
export { examineModel, type Model, type Solid, type SolidFault, type SolidFaultKind } from "./mesh/examine";
export type { Mesh } from "./mesh/mesh";
export {
  compoundShrinkage,
  cubicMillimetres,
  implausibleLink,
  MODEL_UNITS,
  type ModelUnit,
  modelMillimetres,
  modelWeight,
  type Scaling,
  scaleOf,
} from "./mesh/modelweight";
export type { Overlap } from "./mesh/overlap";
export { type Measure, measureStl } from "./mesh/quickmeasure";
export { readStl, refuseLargeStl, type StlModel } from "./mesh/stl";
export { type CashBuyer, cashBuyers } from "./openquotes/cashbuyers";
export { type BindingQuote, type OpenQuotes, openQuotes } from "./openquotes/openquotes";
export { type SpotLimit, type SpotRisk, spotRisk } from "./openquotes/spotrisk";
export type { Clasp, Links } from "./order/chain";
export { EXTRA_FIELDS, EXTRA_LABELS, type ExtraKey } from "./order/extrafields";
export type { Counts, OrderField } from "./order/fieldkinds";
export {
  type ChoiceWord,
  LINE_FIELDS,
  LINE_KEYS,
  LINE_LABELS,
  type LineKey,
  ORDER_FIELDS,
  ORDER_KEYS,
  ORDER_LABELS,
  type OrderKey,
  STONE_KEYS,
  standInFor,
} from "./order/fields";
export {
  type Extra,
  MOST_LINES,
  type Order,
  type OrderForm,
  parseNamelessOrder,
  parseOrder,
} from "./order/order";
export type { OrderLine } from "./order/orderline";
export {
  type KeptOrder,
  readOrderText,
  type TypedExtra,
  type TypedLine,
  type TypedOrder,
  writeOrderText,
} from "./order/ordertext";
export { type GoldBalance, goldCredit, goldUsed, type OwnGold } from "./order/owngold";
export type { Answer, Place, Question } from "./order/question";
export { type OrderQuestion, orderQuestions } from "./order/questions";
export {
  nextQuoteNumber,
  nextRevision,
  type QuoteNumber,
  readQuoteNumber,
  showQuoteNumber,
} from "./order/quotenumber";
export { QUOTE_STATUSES, type QuoteStatus, quoteStatusOf } from "./order/quotestatus";
export { DIAMOND_GRAVITY, type StoneSet } from "./order/stones";
export { type CostSheet, costOrder } from "./quote/costsheet";
export { heavierGram } from "./quote/heaviergram";
export {
  type AlloyPart,
  CASH_LINES,
  COST_LINES,
  type CostLine,
  costPiece,
  type PieceCosts,
  stonesToBuy,
} from "./quote/piececosts";
export { makeQuote, type Quote, type QuoteExtra, type QuoteWatch } from "./quote/quote";
export { type ColourRun, colourName, type QuotedPiece, quotedPiece } from "./quote/quotedpiece";
export type { QuotedStones, QuoteLine } from "./quote/quoteline";
export { atTerms, NOT_KNOWN, type QuotedTerms, type SpotRead, termsOf } from "./rates/quotedterms";
export { RATE_KEYS, RATE_ROWS, type RateKey, type RateRow } from "./rates/raterows";
export { parseLoss, parseRates, type Rates, readRate } from "./rates/rates";
export { type Doubled, doubledWords, doublesOf } from "./reading/doubles";
export { type DateOrder, readListDate } from "./reading/listdate";
export { type DecimalSign, readListFigure } from "./reading/listfigure";
export { isBlank, readNumber } from "./reading/number";
export {
  LINK_CASTINGS,
  LINKS_PER_UNITS,
  ORDER_LENGTH_UNITS,
  PIECE_KINDS,
  SOLIDITIES,
  YES_NO,
} from "./reading/orderwords";
export type { Parsed } from "./reading/parse";
export { readWord, wordsOf } from "./reading/words";
export { discountOn, overheadOn } from "./trade/amounts";
export { isCashReported } from "./trade/cashreport";
export { CLASPS, type ClaspKind } from "./trade/clasp";
export { countLinks, PATTERN_LETTERS, parsePattern } from "./trade/colourpattern";
export { cashBeforeSale, depositCovers, depositWanted, TAX_DUE } from "./trade/deposit";
export {
  COST_BASES,
  type CostBasis,
  castingCost,
  chargedWeight,
  labourCost,
  landedCost,
  lostWeight,
  type Making,
  perGramOf,
  stoneCost,
} from "./trade/landedcost";
export {
  chainLength,
  chainWeight,
  FITS,
  type Fit,
  linkCount,
  linksWithStones,
  pitchOf,
  recastWeight,
  resizedLink,
} from "./trade/link";
export { crossoverWeight, type MakeOrBuy, makeOrBuy } from "./trade/makeorbuy";
export { isPlated, isPlatingUnnamed, type Plating, platesWhiteLinks, platingOf } from "./trade/plating";
export { type LinksPolished, type PolishingOutcome, polishingOutcome, type SomeLinks } from "./trade/polishedlinks";
export {
  castWeight,
  finishedWeight,
  LOSS_BASES,
  type Loss,
  type LossBasis,
} from "./trade/polishloss";
export {
  type AskingCheck,
  askingCheck,
  margin,
  markup,
  premium,
  premiumOverMark,
  priceAtMargin,
  priceAtMarkup,
  priceAtPremium,
  priceOverMark,
  spotLimit,
} from "./trade/price";
export { type Pricing, pricingOf, RULE_OF } from "./trade/pricemethod";
export { netPrice, TAX_IS, taxOf } from "./trade/salestax";
export { askedPrice, partAtPremium, priceUpToStep, shownPrice } from "./trade/sellingprice";
export { goldOnScale, STATED_DECIMALS, settledPrice } from "./trade/settling";
export { atStage, castToFinished, type LossShare, STAGES, type Stage, type StagedWeight } from "./trade/stagedweight";
export {
  type Currency,
  minorDigits,
  NO_CURRENCY,
  parseCurrency,
} from "./units/currency";
export {
  inLengthUnit,
  type Length,
  type LengthUnit,
  lengthIn,
  MILLIMETRES_PER,
} from "./units/length";
export {
  addMoney,
  type Money,
  money,
  roundUpToStep,
  subtractMoney,
  timesMoney,
} from "./units/money";

export {
  GRAMS_PER,
  grams,
  inWeightUnit,
  type Weight,
  type WeightUnit,
  weightIn,
} from "./units/weight";
export { type ListedWeight, readWeightList } from "./units/weightlist";
export type { Doubt, Weighed } from "./weights/doubt";
export {
  type MaterialChange,
  parseRecast,
  parseResizing,
  parseWax,
  RECAST_LABELS,
  RECAST_STAGES,
  RESIZE_LABELS,
  type RecastKey,
  type RecastStage,
  type ResizeKey,
  type Resizing,
  WAX_LABELS,
  type WaxKey,
} from "./weights/estimate";
export { PENNYWEIGHT_DIGIT } from "./weights/lastdigit";
export { type LinkName, markAsWritten, sameLink, sameText } from "./weights/linkname";
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
} from "./weights/ownlink";
export { KEPT_LINK_LABELS, type KeptLink, type KeptLinkKey, parseKeptLink } from "./weights/savedlink";
export {
  parseWeighIn,
  WEIGH_IN_LABELS,
  type WeighIn,
  type WeighInKey,
} from "./weights/weighing";
export type {
  MeanWeight,
  Passage,
  Weighing,
} from "./weights/weighingmean";
export {
  allowedLossShare,
  isGuess,
  judgeWeighed,
  type WeighedLoss,
  type WeighedVerdict,
} from "./weights/weighingresult";
