import {
  COST_LINES,
  type CostSheet,
  inLengthUnit,
  minorDigits,
  type Order,
  type Quote,
  type RateKey,
  type Rates,
  showMark,
  showQuoteNumber,
} from "../../src/index";
import { dateSerial, numberFormat } from "./fields";
import { cellsOf, entry, formula, type JobRow, type Ref, section, text } from "./jobrow";
import { asText, type Paper } from "./paper";
import { nameOf } from "./rates";

const WEIGHT = "#,##0.00##";

/** What the bench works from: one line of an order with every weight and cost line a live formula over the rates. */
export function jobPaper(order: Order, sheet: CostSheet, quote: Quote, rates: Rates): Paper {
  const rows = [
    ...heading(quote, sheet),
    ...asked(order, sheet, rates),
    ...weights(),
    ...costs(sheet, rates),
    ...selling(order, sheet, quote, rates),
    ...cautions(sheet),
  ];
  return { widths: [175, 95, 95, 95, 95], rows: cellsOf(rows), titleRows: "$1:$1" };
}

function heading(quote: Quote, { line }: CostSheet): JobRow[] {
  return [
    text(`Job ${showQuoteNumber(quote.number)}`, "title"),
    text(asText(`${line.design}, for ${quote.customer}`), "label"),
    text("For the bench, not for the customer: it shows cost. Figures follow the Rates sheet.", "small"),
  ];
}

function asked({ spot }: Order, { line }: CostSheet, rates: Rates): JobRow[] {
  const sameSpot = spot.amount.equals(rates.spot.amount);
  const [stones] = line.stones;
  const [links] = line.linkGroups;
  const sameFee = !stones || stones.settingFee.amount.equals(rates.settingFee.amount);
  return [
    section("Asked for"),
    entry("mark", "Mark", asText(showMark(line.mark)), "", "input"),
    entry("colour", "Colour", asText(line.colour), "", "input"),
    entry("quantity", "Pieces", line.quantity.toNumber(), "", "input", "#,##0"),
    entry("length", "Length", inLengthUnit(line.length, line.lengthUnit).toNumber(), line.lengthUnit, "input"),
    entry("linksPer", "Links to each", line.linksPer.toNumber(), line.linksPerUnit, "input"),
    entry("linkWeight", "Weight of one link", links?.linkWeight.grams.toNumber() ?? 0, "g", "input"),
    entry(
      "claspLength",
      "Clasp length",
      inLengthUnit(line.clasp.length, line.lengthUnit).toNumber(),
      line.lengthUnit,
      "input",
    ),
    entry("claspWeight", "Clasp weight, bought", line.clasp.weight.grams.toNumber(), "g", "input"),
    entry("claspCost", "Clasp cost", line.clasp.cost.amount.toNumber(), "a piece", "input", cents(rates)),
    entry("stones", "Stones", stones?.count.toNumber() ?? 0, "a piece", "input", "#,##0"),
    entry("stonePrice", "Price of one stone", stones?.price.amount.toNumber() ?? 0, "", "input", cents(rates)),
    entry(
      "settingFee",
      "Setting fee",
      sameFee ? `=${nameOf("settingFee")}` : (stones?.settingFee.amount.toNumber() ?? 0),
      "a stone",
      "input",
      cents(rates),
    ),
    entry(
      "spot",
      "Spot",
      sameSpot ? `=${nameOf("spot")}` : spot.amount.toNumber(),
      sameSpot ? "from Rates" : "typed for this order",
      "input",
      cents(rates),
    ),
  ];
}

function weights(): JobRow[] {
  const lossIs = (basis: string) => `${nameOf("lossBasis")}="${basis}"`;
  return [
    section("Links and weights, one piece"),
    formula(
      "links",
      "Links",
      (at) => {
        // Multiplied before the unit is changed, so that a half link stays a half.
        const inLinks = (length: string) =>
          `CURB.LENGTHIN(${at(length)}*${at("linksPer")},${at("length", "C")},${at("linksPer", "C")})`;
        return `CURB.LINKCOUNT(${inLinks("length")},1,${inLinks("claspLength")})`;
      },
      "",
      "#,##0",
    ),
    formula("chain", "Links, finished", (at) => `CURB.CHAINWEIGHT(${at("links")},${at("linkWeight")})`, "g", WEIGHT),
    formula(
      "finished",
      "Piece, finished",
      (at) => `CURB.CHAINWEIGHT(${at("links")},${at("linkWeight")},${at("claspWeight")})`,
      "g",
      WEIGHT,
    ),
    formula(
      "cast",
      "Links to cast",
      (at) => `CURB.CASTWEIGHT(${at("chain")},${nameOf("loss")},${nameOf("lossBasis")})`,
      "g",
      WEIGHT,
    ),
    formula(
      "lost",
      "Lost in polishing, as charged",
      (at) =>
        `IF(${isQuick},IF(${lossIs("grams")},${nameOf("loss")},${at("chain")}*${nameOf("loss")}),${at("cast")}-${at("chain")})`,
      "g",
      WEIGHT,
    ),
    formula("fine", "Fine gold, finished", (at) => `CURB.FINEGOLD(${at("finished")},${at("mark")})`, "g", WEIGHT),
    formula("fineCast", "Fine gold to cast", (at) => `CURB.FINEGOLD(${at("cast")},${at("mark")})`, "g", WEIGHT),
  ];
}

const isQuick = `${nameOf("costBasis")}="quick"`;

function costs({ line }: CostSheet, rates: Rates): JobRow[] {
  const money = cents(rates);
  const casting = (at: Ref) => `IF(${isQuick},${at("chain")},${at("cast")})*${nameOf("castingFee")}`;
  const labour = (at: Ref) =>
    `${figureOf("labourFlat")}+${at("links")}*${figureOf("labourPerLink")}+${at("chain")}*${figureOf("labourPerGram")}`;
  return [
    section(`Cost of one piece, ${rates.currency}`),
    formula("metalRate", "Metal rate", (at) => `CURB.METALRATE(${at("spot")},${at("mark")})`, "a gram", money),
    formula("metal", COST_LINES.metal, (at) => `CURB.MELTVALUE(${at("chain")},${at("mark")},${at("spot")})`, "", money),
    formula("lostCost", COST_LINES.lost, (at) => `${at("lost")}*${at("metalRate")}`, "", money),
    formula(
      "casting",
      COST_LINES.casting,
      (at) => `MAX(${casting(at)}*${at("quantity")},${figureOf("castingMinimum")})/${at("quantity")}`,
      "",
      money,
    ),
    formula("labour", COST_LINES.labour, (at) => `MAX(${labour(at)},${figureOf("labourMinimum")})`, "", money),
    formula("clasp", COST_LINES.clasp, (at) => at("claspCost"), "", money),
    formula("stoneCost", COST_LINES.stones, (at) => `CURB.STONECOST(${at("stones")},${at("stonePrice")},0)`, "", money),
    formula("setting", COST_LINES.setting, (at) => `CURB.STONECOST(${at("stones")},0,${at("settingFee")})`, "", money),
    formula(
      "plating",
      COST_LINES.plating,
      () => (line.plated ? `${figureOf("plating")}` : "0"),
      line.plated ? "" : "not plated",
      money,
    ),
    formula("landed", "Landed cost", (at) => `SUM(${at("metal")}:${at("plating")})`, "", money, "total"),
    formula(
      "perGram",
      "Landed cost per gram",
      (at) => `${at("landed")}/${at("finished")}`,
      `=${nameOf("costBasis")}&" basis"`,
      money,
    ),
    {
      cells: () =>
        ["Make or buy, the plain chain", "Made, a gram", "Bought, a gram", "Making saves", "So"].map(
          (content, index) => ({ content, look: index === 0 ? "heading" : "headingRight" }),
        ),
    },
    {
      key: "makeOrBuy",
      cells: (at) => [
        { content: "" },
        {
          content: `=CURB.MAKEORBUY(${at("chain")},${at("metalRate")},${nameOf("castingFee")},${at("labour")},${nameOf("loss")},${nameOf("surcharge")},${nameOf("lossBasis")},${at("casting")}-${casting(at)},${nameOf("costBasis")})`,
          format: money,
        },
        { content: "", format: money },
        { content: "", format: money },
        { content: "", look: "end" },
      ],
    },
  ];
}

function selling({ spot, discount }: Order, { price }: CostSheet, quote: Quote, rates: Rates): JobRow[] {
  const money = cents(rates);
  const ending = `MAX(${figureOf("priceStep")},${10 ** -minorDigits(rates.currency)}),${minorDigits(rates.currency)}`;
  const claspPrice = (at: Ref) => `MAX(${at("claspWeight")}*(${at("metalRate")}+${nameOf("premium")}),${at("clasp")})`;
  const besides = (at: Ref) => `${claspPrice(at)}+${at("stoneCost")}+${at("setting")}+${at("plating")}`;
  return [
    section("Price of one piece"),
    entry("discount", "Discount", discount.toNumber(), "off the subtotal", "plain", "0.0#%"),
    entry("quoted", "Quoted", price.amount.toNumber(), rates.currency, "plain", money),
    entry("quotedOn", "Quoted on", dateSerial(quote.date), "", "plain", "d mmm yyyy"),
    entry("quotedSpot", "Spot it was quoted at", spot.amount.toNumber(), "", "plain", money),
    formula(
      "priceNow",
      "Price at today's rates",
      (at) =>
        `IF(${nameOf("priceBy")}="markup",CURB.PRICEATMARKUP(ROUND(${at("landed")},8),${nameOf("markup")},${ending}),` +
        `IF(${nameOf("priceBy")}="margin",CURB.PRICEATMARGIN(ROUND(${at("landed")},8),${nameOf("margin")},${ending}),` +
        `CURB.PRICEATMARKUP(ROUND(CURB.PRICEATPREMIUM(${at("chain")},${at("metalRate")},${nameOf("premium")})+${besides(at)},8),0,${ending})))`,
      rates.currency,
      money,
    ),
    formula(
      "margin",
      "Margin, discount taken off",
      (at) => `CURB.MARGIN(${at("landed")},${at("quoted")}*(1-${at("discount")}))`,
      "",
      "0.0%",
      "total",
    ),
    formula(
      "premium",
      "Premium over the metal rate",
      (at) => `CURB.PREMIUM(${at("quoted")}*(1-${at("discount")})/${at("finished")},${at("metalRate")})`,
      "a gram",
      money,
    ),
  ];
}

/** The usual cautions, where the work is sent out, in lines that fit the printed width. */
function cautions({ line }: CostSheet): JobRow[] {
  return [
    section("Take care"),
    text(
      "Casting and burnout: molten metal, fumes and silica dust. A ventilated workshop under local fire and",
      "small",
    ),
    text("emission codes, never indoors at home.", "small"),
    text(
      "Mark: the karat struck must be true and stand next to the word gold (16 CFR 23.3); your assay office or",
      "small",
    ),
    text("local law comes first.", "small"),
    ...(line.colour === "white"
      ? [
          text(
            "Nickel white gold: at most 0.5 µg/cm²/week released for chains and bracelets (REACH Annex XVII",
            "small",
          ),
          text("entry 27, EN 1811). Ask the caster which alloy it is.", "small"),
        ]
      : []),
    ...(line.stones.length === 0 ? [] : [text("Buy the stones only after the cast seats have been checked.", "small")]),
  ];
}

/** A rate that may be left blank, as a figure; a number kept as text counts as in the pane. */
function figureOf(key: RateKey): string {
  return `IF(${nameOf(key)}="",0,1*${nameOf(key)})`;
}

function cents(rates: Rates): string {
  return numberFormat(minorDigits(rates.currency));
}
