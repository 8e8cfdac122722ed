/** The words of an order: what the form, the faults and the headers of a row call its fields, and what may be chosen. */

export const ORDER_LENGTH_UNITS = ["in", "cm", "mm"] as const;
export const LINKS_PER_UNITS = ["in", "cm"] as const;
export const PIECE_KINDS = ["chain", "bracelet"] as const;
export const LENGTH_GIVEN = ["finished length", "neck", "wrist"] as const;
export const SOLIDITIES = ["solid", "hollow"] as const;
export const PLATING_CHOICES = ["as usual", "plated", "not plated"] as const;
/** Closed and open in turn: every second link is cast open, to join the closed ones; a chain begins with a closed one. */
export const LINK_CASTINGS = ["closed and open in turn", "all open", "all closed"] as const;
export const STONES_ON = ["no links", "all links", "every n-th link", "a number of links"] as const;
export const STONE_SHAPES = ["round", "rectangular"] as const;
export const STONE_PRICED = ["a stone", "a carat"] as const;
export const LINE_PRICE_BY = ["as the quote", "markup", "margin", "premium", "own price"] as const;
export const ORDER_PRICE_BY = ["as Rates", "markup", "margin", "premium"] as const;
export const SETTLEMENTS = ["fixed", "by final weight"] as const;
export const OWN_GOLD_USES = ["credited", "used"] as const;
export const YES_NO = ["no", "yes"] as const;

/** What an order says once. */
export const ORDER_LABELS = {
  customer: "Customer",
  spot: "Spot",
  spotShown: "Spot on the quote",
  priceBy: "Price by",
  priceFigure: "Markup, margin or premium",
  discount: "Discount",
  shipping: "Shipping",
  deposit: "Deposit",
  settled: "Price settled",
  tolerance: "Weight tolerance",
  ownGoldWeight: "Customer's gold",
  ownGoldMark: "Mark of the customer's gold",
  ownGoldUse: "Customer's gold is",
  ownGoldShare: "Share of its melt value",
} as const;
export type OrderKey = keyof typeof ORDER_LABELS;
export const ORDER_KEYS = Object.keys(ORDER_LABELS) as readonly OrderKey[];

/** What each line of an order says: one design, so many pieces. */
export const LINE_LABELS = {
  design: "Design",
  kind: "Kind of piece",
  mark: "Mark",
  colour: "Colour",
  colourName: "Name of the colour",
  composition: "Composition",
  pattern: "Colour pattern",
  solidity: "Solid or hollow",
  plated: "Plating",
  platingMetal: "Plating metal",
  quantity: "Quantity",
  lengthGiven: "Length given as",
  length: "Length",
  lengthUnit: "Length unit",
  ease: "Ease",
  linksPer: "Links per length",
  linksPerUnit: "Links counted per",
  linkWeight: "Weight of one link",
  linkWeightYellow: "Weight of one yellow link",
  linkWeightRose: "Weight of one rose link",
  linkWeightWhite: "Weight of one white link",
  linkWeightGreen: "Weight of one green link",
  linkCasting: "Links are cast",
  clasp: "Clasp",
  claspLength: "Clasp length",
  claspWeight: "Clasp weight",
  claspCost: "Clasp cost",
  stonesOn: "Links with stones",
  stoneEvery: "Every how many links",
  stoneCount: "How many links",
  stonesPerLink: "Stones per link",
  stoneKind: "Kind of stone",
  stoneShape: "Stone shape",
  stoneDiameter: "Stone diameter",
  stoneLength: "Stone length",
  stoneWidth: "Stone width",
  stoneDepth: "Stone depth",
  stoneGravity: "Specific gravity of the stone",
  stoneCarat: "Carat of one stone",
  stonePrice: "Price of one stone",
  stonePriced: "Stones priced by",
  settingFee: "Setting fee",
  claspStoneCount: "Stones on the clasp",
  claspStoneKind: "Kind of clasp stone",
  claspStoneShape: "Clasp stone shape",
  claspStoneDiameter: "Clasp stone diameter",
  claspStoneLength: "Clasp stone length",
  claspStoneWidth: "Clasp stone width",
  claspStoneDepth: "Clasp stone depth",
  claspStoneGravity: "Specific gravity of the clasp stone",
  claspStoneCarat: "Carat of one clasp stone",
  claspStonePrice: "Price of one clasp stone",
  claspStonePriced: "Clasp stones priced by",
  claspSettingFee: "Setting fee on the clasp",
  breakage: "Stone breakage",
  findings: "Other findings",
  findingsWeight: "Weight of other findings",
  findingsCost: "Cost of other findings",
  engraving: "Engraving",
  engravingCost: "Engraving cost",
  setup: "Model and mould share",
  linePriceBy: "This line's price by",
  linePriceFigure: "This line's figure",
} as const;
export type LineKey = keyof typeof LINE_LABELS;
export const LINE_KEYS = Object.keys(LINE_LABELS) as readonly LineKey[];

/** The fields of a set of stones by what they say, for the stones in the links and those on the clasp. */
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
    breakage: "breakage",
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
    breakage: "breakage",
  },
} as const satisfies Readonly<Record<"links" | "clasp", Readonly<Record<string, LineKey>>>>;

/** A free line: what the customer reads, what it adds to the total (below zero takes off), and what it costs the workshop. */
export const EXTRA_LABELS = {
  text: "Free line",
  amount: "Amount",
  cost: "Cost to you",
} as const;
export type ExtraKey = keyof typeof EXTRA_LABELS;
export const EXTRA_KEYS = Object.keys(EXTRA_LABELS) as readonly ExtraKey[];
