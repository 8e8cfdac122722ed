import { MONEY_AT_LEAST_0, type NumberRule, SHARE, SPOT_RULE, WHOLE_SHARE } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { COLOURS } from "../gold/alloy";
import type { Rates } from "../rates/rates";
import {
  LENGTH_GIVEN,
  LINE_PRICE_BY,
  LINK_CASTINGS,
  LINKS_PER_UNITS,
  ORDER_LENGTH_UNITS,
  ORDER_PRICE_BY,
  OWN_GOLD_USES,
  PIECE_KINDS,
  PLATING_CHOICES,
  SETTLEMENTS,
  SOLIDITIES,
  STONE_PRICED,
  STONE_SHAPES,
  STONES_ON,
  YES_NO,
} from "../reading/orderwords";
import { CLASPS } from "../trade/clasp";
import { RULE_OF } from "../trade/pricemethod";
import {
  choice,
  choiceOr,
  composition,
  figure,
  figureBy,
  figureOr,
  keysOf,
  labelsOf,
  mark,
  type OrderField,
  optionalChoice,
  optionalFigure,
  optionalMark,
  optionalText,
  pattern,
  platingMetal,
  text,
} from "./fieldkinds";

const { zero, one } = Quotient;

const QUANTITY: NumberRule = {
  least: "1",
  most: "1000",
  whole: true,
  right: "a whole number of pieces from 1 to 1000",
};
const LENGTH: NumberRule = { above: "0", most: "100000", right: "a length above 0, such as 24" };
const EASE: NumberRule = { least: "0", most: "10000", right: "what the piece is longer than the measure, such as 1.5" };
const LINKS_PER: NumberRule = { above: "0", most: "1000", right: "links in one inch or centimetre, such as 4" };
const LINK_WEIGHT: NumberRule = { above: "0", most: "1000000", right: "grams above 0, such as 2.05" };
const CLASP_LENGTH: NumberRule = { least: "0", most: "100000", right: "a length from 0, in the unit of the chain" };
const CLASP_WEIGHT: NumberRule = { least: "0", most: "1000", right: "grams from 0, such as 3.4" };
const FINDINGS_WEIGHT: NumberRule = { least: "0", most: "1000", right: "grams from 0, such as 0.4" };
const STONE_COUNT: NumberRule = { least: "0", most: "10000", whole: true, right: "a whole number from 0, such as 12" };
const EVERY: NumberRule = { least: "1", most: "5000", whole: true, right: "a whole number from 1, such as 3" };
const SIZE: NumberRule = { above: "0", most: "50", right: "millimetres above 0, such as 2" };
const GRAVITY: NumberRule = { above: "0", most: "20", right: "how many times heavier than water it is, such as 4" };
const CARAT: NumberRule = { above: "0", most: "1000", right: "carats above 0, such as 0.03" };
const DISCOUNT: NumberRule = { ...SHARE, right: "a share from 0 to below 1, such as 0.05 or 5 %" };
const OWN_GOLD: NumberRule = { above: "0", most: "100000", right: "the grams the customer brings, such as 12.5" };

const IN_GRAMS = { counts: "weight" } as const;
const IN_MILLIMETRES = { counts: "size" } as const;
const IN_MONEY = { counts: "money" } as const;
const IN_MONEY_A_GRAM = { counts: "money a gram" } as const;
const IN_LENGTH_UNIT = { counts: "length", saidBy: "lengthUnit" } as const;
/** Of a colour that a pattern has beside the line's own. */
const OTHER_LINK = { ...IN_GRAMS, needed: true } as const;

/** What each line of an order says: one design, so many pieces. */
export const LINE_FIELDS = {
  design: text("Design", "the name of the design", { alsoCalled: ["name", "model"] }),
  kind: choiceOr("Kind of piece", PIECE_KINDS, "chain"),
  mark: mark("Mark", { needed: true, alsoCalled: ["karat", "fineness"] }),
  colour: choice("Colour", COLOURS, { alsoCalled: ["color"] }),
  colourName: optionalText("Name of the colour", { needed: true }),
  composition: composition("Composition"),
  pattern: pattern("Colour pattern"),
  solidity: choiceOr("Solid or hollow", SOLIDITIES, "solid"),
  plated: choiceOr("Plating", PLATING_CHOICES, "as usual"),
  platingMetal: platingMetal("Plating metal", { alsoCalled: ["plated with"], usual: "platingMetal" }),
  quantity: figure("Quantity", QUANTITY, { alsoCalled: ["qty", "pieces"] }),

  lengthGiven: choiceOr("Length given as", LENGTH_GIVEN, "finished length"),
  length: figure("Length", LENGTH, IN_LENGTH_UNIT),
  lengthUnit: choice("Length unit", ORDER_LENGTH_UNITS),
  ease: optionalFigure("Ease", EASE, { ...IN_LENGTH_UNIT, needed: true }),
  linksPer: figure("Links per length", LINKS_PER, {
    counts: "links per length",
    saidBy: "linksPerUnit",
    alsoCalled: ["links per in", "links per inch", "links per cm"],
  }),
  linksPerUnit: choice("Links counted per", LINKS_PER_UNITS),
  linkWeight: figure("Weight of one link", LINK_WEIGHT, {
    ...IN_GRAMS,
    alsoCalled: ["link weight", "weight per link"],
  }),
  linkWeightYellow: optionalFigure("Weight of one yellow link", LINK_WEIGHT, OTHER_LINK),
  linkWeightRose: optionalFigure("Weight of one rose link", LINK_WEIGHT, OTHER_LINK),
  linkWeightWhite: optionalFigure("Weight of one white link", LINK_WEIGHT, OTHER_LINK),
  linkWeightGreen: optionalFigure("Weight of one green link", LINK_WEIGHT, OTHER_LINK),
  linkCasting: choiceOr("Links are cast", LINK_CASTINGS, "closed and open in turn"),

  clasp: choiceOr("Clasp", CLASPS, "bought lobster clasp"),
  claspLength: figureOr("Clasp length", CLASP_LENGTH, zero, IN_LENGTH_UNIT),
  claspWeight: figureOr("Clasp weight", CLASP_WEIGHT, zero, IN_GRAMS),
  claspCost: figureOr("Clasp cost", MONEY_AT_LEAST_0, zero, IN_MONEY),
  claspPremium: optionalFigure("Clasp premium", MONEY_AT_LEAST_0, IN_MONEY_A_GRAM),
  claspMark: optionalMark("Mark of the clasp"),

  stonesOn: optionalChoice("Links with stones", STONES_ON),
  stoneEvery: optionalFigure("Every how many links", EVERY, { needed: true }),
  stoneCount: figureOr("How many links", STONE_COUNT, zero, { needed: true, alsoCalled: ["stones"] }),
  stonesPerLink: figureOr("Stones per link", EVERY, one),
  stoneKind: optionalText("Kind of stone"),
  stoneShape: choiceOr("Stone shape", STONE_SHAPES, "round"),
  stoneDiameter: optionalFigure("Stone diameter", SIZE, IN_MILLIMETRES),
  stoneLength: optionalFigure("Stone length", SIZE, IN_MILLIMETRES),
  stoneWidth: optionalFigure("Stone width", SIZE, IN_MILLIMETRES),
  stoneDepth: optionalFigure("Stone depth", SIZE, IN_MILLIMETRES),
  stoneGravity: optionalFigure("Specific gravity of the stone", GRAVITY),
  stoneCarat: optionalFigure("Carat of one stone", CARAT, { counts: "carats" }),
  stonePrice: optionalFigure("Price of one stone", MONEY_AT_LEAST_0, IN_MONEY),
  stonePriced: choiceOr("Stones priced by", STONE_PRICED, "a stone"),
  settingFee: optionalFigure("Setting fee", MONEY_AT_LEAST_0, { ...IN_MONEY, usual: "settingFee" }),

  claspStoneCount: figureOr("Stones on the clasp", STONE_COUNT, zero),
  claspStoneKind: optionalText("Kind of clasp stone"),
  claspStoneShape: choiceOr("Clasp stone shape", STONE_SHAPES, "round"),
  claspStoneDiameter: optionalFigure("Clasp stone diameter", SIZE, IN_MILLIMETRES),
  claspStoneLength: optionalFigure("Clasp stone length", SIZE, IN_MILLIMETRES),
  claspStoneWidth: optionalFigure("Clasp stone width", SIZE, IN_MILLIMETRES),
  claspStoneDepth: optionalFigure("Clasp stone depth", SIZE, IN_MILLIMETRES),
  claspStoneGravity: optionalFigure("Specific gravity of the clasp stone", GRAVITY),
  claspStoneCarat: optionalFigure("Carat of one clasp stone", CARAT, { counts: "carats" }),
  claspStonePrice: optionalFigure("Price of one clasp stone", MONEY_AT_LEAST_0, IN_MONEY),
  claspStonePriced: choiceOr("Clasp stones priced by", STONE_PRICED, "a stone"),
  claspSettingFee: optionalFigure("Setting fee on the clasp", MONEY_AT_LEAST_0, { ...IN_MONEY, usual: "settingFee" }),
  breakage: optionalFigure("Stone breakage", SHARE, { usual: "breakage" }),

  findings: optionalText("Other findings"),
  findingsWeight: figureOr("Weight of other findings", FINDINGS_WEIGHT, zero, IN_GRAMS),
  findingsCost: figureOr("Cost of other findings", MONEY_AT_LEAST_0, zero, IN_MONEY),
  findingsPremium: optionalFigure("Premium of other findings", MONEY_AT_LEAST_0, IN_MONEY_A_GRAM),
  findingsMark: optionalMark("Mark of other findings"),
  engraving: optionalText("Engraving"),
  engravingCost: figureOr("Engraving cost", MONEY_AT_LEAST_0, zero, IN_MONEY),
  setup: figureOr("Model and mould share", MONEY_AT_LEAST_0, zero, IN_MONEY),
  linePriceBy: choiceOr("This line's price by", LINE_PRICE_BY, "as the quote"),
  linePriceFigure: figureBy("This line's figure", "linePriceBy", RULE_OF),
} as const satisfies Fields;

/** What an order says once. */
export const ORDER_FIELDS = {
  customer: text("Customer", "the customer's name"),
  spot: optionalFigure("Spot", SPOT_RULE, { counts: "money an ounce", usual: "spot" }),
  spotShown: choiceOr("Spot on the quote", YES_NO, "no"),
  priceBy: choiceOr("Price by", ORDER_PRICE_BY, "as Rates"),
  priceFigure: figureBy("Markup, margin or premium", "priceBy", RULE_OF),
  discount: figureOr("Discount", DISCOUNT, zero),
  shipping: figureOr("Shipping", MONEY_AT_LEAST_0, zero, IN_MONEY),
  deposit: optionalFigure("Deposit", WHOLE_SHARE, { usual: "deposit" }),
  settled: choiceOr("Price settled", SETTLEMENTS, "fixed"),
  tolerance: optionalFigure("Weight tolerance", SHARE, { usual: "tolerance" }),
  ownGoldWeight: figure("Customer's gold", OWN_GOLD, { ...IN_GRAMS, needed: false }),
  ownGoldMark: mark("Mark of the customer's gold"),
  ownGoldUse: choiceOr("Customer's gold is", OWN_GOLD_USES, "credited"),
  ownGoldShare: optionalFigure("Share of its melt value", WHOLE_SHARE, { usual: "ownGoldShare" }),
} as const satisfies Fields;

type Fields = Readonly<Record<string, OrderField<unknown>>>;

export type LineKey = keyof typeof LINE_FIELDS;
export const LINE_KEYS = keysOf(LINE_FIELDS);
export const LINE_LABELS = labelsOf(LINE_FIELDS);

export type OrderKey = keyof typeof ORDER_FIELDS;
export const ORDER_KEYS = keysOf(ORDER_FIELDS);
export const ORDER_LABELS = labelsOf(ORDER_FIELDS);

/** Every word that may be chosen in an order. */
export type ChoiceWord = WordOf<(typeof LINE_FIELDS)[LineKey] | (typeof ORDER_FIELDS)[OrderKey]>;
type WordOf<F> = F extends { readonly words: readonly (infer W)[] } ? (string extends W ? never : W) : never;

/** The fields of a set of stones by what they say, in the links and on the clasp; the share broken is one for both. */
export const STONE_KEYS = {
  links: {
    kind: "stoneKind",
    shape: "stoneShape",
    diameter: "stoneDiameter",
    length: "stoneLength",
    width: "stoneWidth",
    depth: "stoneDepth",
    gravity: "stoneGravity",
    carat: "stoneCarat",
    price: "stonePrice",
    priced: "stonePriced",
    fee: "settingFee",
  },
  clasp: {
    kind: "claspStoneKind",
    shape: "claspStoneShape",
    diameter: "claspStoneDiameter",
    length: "claspStoneLength",
    width: "claspStoneWidth",
    depth: "claspStoneDepth",
    gravity: "claspStoneGravity",
    carat: "claspStoneCarat",
    price: "claspStonePrice",
    priced: "claspStonePriced",
    fee: "claspSettingFee",
  },
} as const satisfies Readonly<Record<"links" | "clasp", Readonly<Record<string, LineKey>>>>;

/** What Rates give for a field that is left empty, "" for a word that they do not have; undefined where nothing stands in for it. */
export function standInFor({ usual }: OrderField<unknown>, rates: Rates): Quotient | string | undefined {
  const rate = usual && rates[usual];
  return rate instanceof Quotient || typeof rate === "string" ? rate : rate?.amount;
}
