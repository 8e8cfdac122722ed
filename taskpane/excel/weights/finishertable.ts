import { ownCell, type TablePlan } from "../tables/tableplan";
import { LEFT_OUT } from "./linktable";
import { allowedShare, linkKey, weighIns } from "./weighingtable";

/** The name of the table of those who polish and finish, as formulas use it. */
export const FINISHER_TABLE = "Finishers";

const HEADERS = {
  who: "Who",
  passages: "Passages",
  out: "Went out g",
  back: "Came back g",
  loss: "Loss",
  spread: "Spread",
  allowed: "Allowed",
  remark: "Remark",
  finisher: "Finisher",
} as const;
type Column = keyof typeof HEADERS;
export type FinisherColumn = Column;

const own = (key: Column) => ownCell(FINISHER_TABLE, HEADERS[key]);
/** Conditions for the weighings of this row's finisher. */
const theirs = `${weighIns("passage")},${own("finisher")}`;
/** Weighings that cannot be and that nobody confirmed. */
const leftOut = `(COUNTIFS(${weighIns("finisher")},${own("finisher")})-N(${own("passages")}))`;
const sum = (key: Parameters<typeof weighIns>[0]) => `SUMIFS(${weighIns(key)},${theirs})`;
const anything = `N(${own("passages")})>0`;

const GRAMS = "#,##0.000";
const SHARE = "0.0%;-0.0%;0.0%";

/** Each row is a finisher: what went out to them and what came back, over all jobs. */
export const FINISHER_PLAN: TablePlan<Column> = {
  name: FINISHER_TABLE,
  sheet: "Finisher losses",
  lead: [
    "One row a finisher, over all weigh-ins of polished and finished pieces whose job was weighed before. The pane adds new names; so may you.",
    "Loss: the share of what went out that did not come back. Spread: one standard deviation of single passages. Allowed: Polish loss on Rates, as a share of the cast weight.",
  ],
  columns: {
    who: { header: HEADERS.who, width: 120, look: "input" },
    passages: {
      header: HEADERS.passages,
      width: 66,
      look: "number",
      format: "#,##0",
      formula: `=IF(${own("finisher")}="","",COUNTIFS(${theirs}))`,
    },
    out: {
      header: HEADERS.out,
      width: 84,
      look: "number",
      format: GRAMS,
      formula: `=IF(${anything},${sum("out")},"")`,
    },
    back: {
      header: HEADERS.back,
      width: 90,
      look: "number",
      format: GRAMS,
      formula: `=IF(${anything},${sum("weight")},"")`,
    },
    loss: {
      header: HEADERS.loss,
      width: 60,
      look: "number",
      format: SHARE,
      formula: `=IF(${anything},(${own("out")}-${own("back")})/${own("out")},"")`,
    },
    spread: {
      header: HEADERS.spread,
      width: 60,
      look: "number",
      format: "0.00%",
      formula: `=IF(N(${own("passages")})>1,SQRT(MAX(0,${sum("lossSquares")}-${sum("loss")}^2/${own("passages")})/(${own("passages")}-1)),"")`,
    },
    allowed: {
      header: HEADERS.allowed,
      width: 60,
      look: "number",
      format: SHARE,
      formula: `=IF(TRIM(${own("who")})="","",${allowedShare()})`,
    },
    remark: {
      header: HEADERS.remark,
      width: 320,
      look: "unit",
      formula: `=IF(${own("finisher")}="","",TRIM(IF(${anything},IF(ROUND(${own("loss")},9)<0,"More back than went out. ",IF(ISNUMBER(${own("allowed")}),IF(ROUND(${own("loss")},9)>ROUND(${own("allowed")},9),"Loss above the allowed share. ",""),"")&IF(${own("passages")}<3,"Few passages: still a guess. ","")),"")&IF(${leftOut}>0,"${LEFT_OUT} "&${leftOut}&".","")))`,
    },
    finisher: {
      header: HEADERS.finisher,
      width: 56,
      look: "quiet",
      formula: `=IF(TRIM(${own("who")})="","",${linkKey(own("who"))})`,
    },
  },
};
