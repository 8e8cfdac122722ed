import { ASKED_PER, SEEN_LABELS, SOLIDITIES, WEIGHT_CLASSES } from "../../../src/index";
import { WEIGHT_CLASS_WORDS } from "../../wording/askingtitles";
import { rateSays } from "../rates/ratewords";
import { ownCell, type TablePlan } from "../tables/tableplan";

/** The name of the table of asking prices, as formulas use it. */
export const ASKING_TABLE = "AskingPrices";

const HEADERS = {
  date: SEEN_LABELS.date,
  source: SEEN_LABELS.source,
  kind: SEEN_LABELS.kind,
  mark: SEEN_LABELS.mark,
  solidity: SEEN_LABELS.solidity,
  weight: "Weight g",
  price: SEEN_LABELS.price,
  per: SEEN_LABELS.per,
  currency: SEEN_LABELS.currency,
  exchange: SEEN_LABELS.exchange,
  spot: SEEN_LABELS.spot,
  asked: "Asked per g",
  melt: "Melt per g",
  premium: "Premium per g",
  above: "Above melt",
  weightClass: "Weight class",
  month: "Month",
  remark: "Remark",
  list: "List",
  taken: "As taken",
} as const;
type Column = keyof typeof HEADERS;
export type AskingTableColumn = Column;

const own = (key: Column) => ownCell(ASKING_TABLE, HEADERS[key]);
const isNumber = (key: Column) => `ISNUMBER(${own(key)})`;

/** Of the workbook's currency for one of the row's; 1 where it is the same, and nothing where nobody said. */
const exchange = `IF(OR(TRIM(${own("currency")})="",UPPER(TRIM(${own("currency")}))=${rateSays("currency")}),1,${own("exchange")})`;
const hasExchange = `ISNUMBER(${exchange})`;
const askedInOwn = `${own("price")}*${exchange}`;
/** WEIGHTIN calls the avoirdupois ounce "oz". In a row "oz" alone may be either ounce and is not read. */
const unit = `IF(${own("per")}="oz av","oz",${own("per")})`;
const weightClass = WEIGHT_CLASSES.slice(1).reduceRight<string>(
  (rest, next, at) => `IF(${own("weight")}<${next},"${WEIGHT_CLASS_WORDS[at]}",${rest})`,
  `"${WEIGHT_CLASS_WORDS[WEIGHT_CLASSES.length - 1]}"`,
);
const isStarted = `TRIM(${own("price")}&${own("mark")}&${own("weight")})<>""`;

const MONEY = "#,##0.00;-#,##0.00";

/** Each row is an asking price that was seen somewhere. Its formulas are our worksheet functions over the row and Rates. */
export const ASKING_PLAN: TablePlan<Column> = {
  name: ASKING_TABLE,
  sheet: "Asking prices",
  lead: [
    "One row an asking price, typed here or taken in by the pane. Cream columns are yours; the others are formulas over them and Rates. Sort, filter, add columns.",
    "Spot: of that day, money per troy ounce; without it melt follows Rates. Rate of exchange: of your currency for one of the row's. The last two columns serve the pane.",
  ],
  columns: {
    date: { header: HEADERS.date, width: 72, look: "inputStart", format: "yyyy-mm-dd" },
    source: { header: HEADERS.source, width: 120, look: "input" },
    kind: { header: HEADERS.kind, width: 92, look: "input" },
    mark: { header: HEADERS.mark, width: 44, look: "inputStart" },
    solidity: { header: HEADERS.solidity, width: 86, look: "input", choices: SOLIDITIES },
    weight: { header: HEADERS.weight, width: 62, look: "inputRight", format: "#,##0.00#" },
    price: { header: HEADERS.price, width: 76, look: "inputRight", format: "#,##0.00" },
    per: { header: HEADERS.per, width: 66, look: "inputAfterNumber", choices: ASKED_PER },
    currency: { header: HEADERS.currency, width: 58, look: "input" },
    exchange: { header: HEADERS.exchange, width: 102, look: "inputRight", format: "General" },
    spot: { header: HEADERS.spot, width: 66, look: "inputRight", format: "#,##0.00" },
    asked: {
      header: HEADERS.asked,
      width: 76,
      look: "number",
      format: MONEY,
      formula: `=IF(AND(${isNumber("price")},${hasExchange},${own("per")}<>"oz"),IF(OR(TRIM(${own("per")})="",${own("per")}="piece"),IF(${isNumber("weight")},CURB.ASKINGPERGRAM(${askedInOwn},${own("weight")}),""),CURB.ASKINGPERGRAM(${askedInOwn},1,${unit})),"")`,
    },
    melt: {
      header: HEADERS.melt,
      width: 70,
      look: "number",
      format: MONEY,
      formula: `=IF(TRIM(${own("mark")})="","",CURB.METALRATE(IF(${isNumber("spot")},${own("spot")},Rate_Spot),${own("mark")}))`,
    },
    premium: {
      header: HEADERS.premium,
      width: 88,
      look: "number",
      format: MONEY,
      formula: `=IF(AND(${isNumber("asked")},${isNumber("melt")}),CURB.PREMIUM(${own("asked")},${own("melt")}),"")`,
    },
    above: {
      header: HEADERS.above,
      width: 70,
      look: "number",
      format: "0.0%;-0.0%;0.0%",
      formula: `=IF(${isNumber("premium")},${own("premium")}/${own("melt")},"")`,
    },
    weightClass: {
      header: HEADERS.weightClass,
      width: 84,
      look: "startAfterNumber",
      formula: `=IF(N(${own("weight")})>0,${weightClass},"")`,
    },
    month: {
      header: HEADERS.month,
      width: 56,
      look: "start",
      format: "yyyy-mm",
      formula: `=IF(${isNumber("date")},DATE(YEAR(${own("date")}),MONTH(${own("date")}),1),"")`,
    },
    remark: {
      header: HEADERS.remark,
      width: 300,
      look: "unit",
      formula: `=IF(${isStarted},IF(NOT(${hasExchange}),"Give the rate of exchange.",IF(${own("per")}="oz","Asked for: give ozt or oz av.",IF(NOT(${isNumber("premium")}),"Give price, weight and mark, each as one figure.",TRIM(IF(ROUND(${own("premium")},9)<0,"Below melt: look at weight, mark, hollow, plating, stones. ","")&IF(${isNumber("spot")},"","Melt at the spot on Rates."))))),"")`,
    },
    list: { header: HEADERS.list, width: 34, look: "quiet", format: "0" },
    taken: { header: HEADERS.taken, width: 62, look: "quiet" },
  },
};
