import { COLOURS, STAGES } from "../../../src/index";
import { nameOf } from "../rates/rates";
import { rateIs } from "../rates/ratewords";
import { ownCell, type TablePlan } from "../tables/tableplan";

/** The name of the table of weighings, as formulas use it. */
export const WEIGH_IN_TABLE = "WeighIns";

const HEADERS = {
  date: "Date",
  job: "Job",
  model: "Model",
  width: "Width mm",
  mark: "Mark",
  colour: "Colour",
  stage: "Stage",
  pieces: "Pieces",
  weight: "Weight g",
  who: "Who",
  note: "Note",
  one: "One piece g",
  out: "Went out g",
  loss: "Loss",
  sinceCast: "Since cast",
  allowed: "Allowed",
  usual: "Usual g",
  remark: "Remark",
  link: "Link",
  jobLink: "Job and link",
  squares: "Squares",
  finisher: "Finisher",
  lossSquares: "Loss squares",
} as const;
type Column = keyof typeof HEADERS;

const own = (key: Column) => ownCell(WEIGH_IN_TABLE, HEADERS[key]);
/** A whole column of the table, for formulas in it and over it. */
export const weighIns = (key: Column) => `${WEIGH_IN_TABLE}[${HEADERS[key]}]`;

/**
 * A text for SUMIFS that identifies a link. Case, extra spaces and the wildcards of SUMIFS do not count; it begins with a letter,
 * never with "<" or "=", which SUMIFS would read as comparisons.
 */
export const linkKey = (...cells: readonly string[]) => `"k "&${cells.map(foldedCell).join('&"|"&')}`;
const foldedCell = (cell: string) => `SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(LOWER(TRIM(${cell})),"~","-"),"*","+"),"?",".")`;

/** Sums a column over the weighings of this row's link at this row's stage. */
const alike = (key: Column) =>
  `SUMIFS(${weighIns(key)},${weighIns("link")},${own("link")},${weighIns("stage")},${own("stage")})`;
const countAlike = `COUNTIFS(${weighIns("link")},${own("link")},${weighIns("stage")},${own("stage")})`;
/** Sums a column over the weighings of this row's job and link at a stage. */
const atStage = (key: Column, stage: string) =>
  `SUMIFS(${weighIns(key)},${weighIns("jobLink")},${own("jobLink")},${weighIns("stage")},"${stage}")`;

const others = (key: Column) => `(${alike(key)}-${own(key)})`;
/** The variance of one piece among the other weighings: sum(weight²/pieces) - total²/pieces, over their number less one. */
const otherVariance = `MAX(0,${others("squares")}-${others("weight")}^2/${others("pieces")})/(${countAlike}-2)`;
/** Three of their spreads, for this number of pieces and theirs, as in isFarOff of src/weights/weighingmean.ts. */
const reach = `3*SQRT(${otherVariance}*(1/${own("pieces")}+1/${others("pieces")}))`;

const lossRemark = `IF(NOT(ISNUMBER(${own("loss")})),"",IF(ROUND(${own("loss")},9)<0,"More back than went out. ",IF(AND(ISNUMBER(${own("sinceCast")}),ISNUMBER(${own("allowed")})),IF(ROUND(${own("sinceCast")},9)>ROUND(${own("allowed")},9),"Loss above the allowed "&ROUND(100*${own("allowed")},2)&" %. ",""),"")))`;
const usualRemark = `IF(NOT(ISNUMBER(${own("usual")})),"",IF(ROUND(ABS(${own("one")}-${own("usual")}),9)>ROUND(${reach},9),"Far from the others. ",""))`;

const GRAMS = "#,##0.000";
const SHARE = "0.0%;-0.0%;0.0%";

/** Each row is a weighing: a count of pieces and what they weigh is enough. Its formulas need only Excel's own functions. */
export const WEIGH_IN_PLAN: TablePlan<Column> = {
  name: WEIGH_IN_TABLE,
  sheet: "Weigh-ins",
  lead: [
    "One row a weighing, typed here or in the pane. Cream columns are yours; the others are formulas. Sort, filter, add columns.",
    "Went out: these pieces at the stage before, in the same job. Usual: the mean of the other weighings, from three on. The last five columns serve the formulas.",
  ],
  columns: {
    date: { header: HEADERS.date, width: 72, look: "inputStart", format: "yyyy-mm-dd" },
    job: { header: HEADERS.job, width: 50, look: "inputStart" },
    model: { header: HEADERS.model, width: 92, look: "input" },
    width: { header: HEADERS.width, width: 62, look: "inputRight", format: "General" },
    mark: { header: HEADERS.mark, width: 50, look: "inputAfterNumber" },
    colour: { header: HEADERS.colour, width: 52, look: "input", choices: COLOURS },
    stage: { header: HEADERS.stage, width: 58, look: "input", choices: STAGES },
    pieces: { header: HEADERS.pieces, width: 50, look: "inputRight", format: "#,##0" },
    weight: { header: HEADERS.weight, width: 66, look: "inputRight", format: GRAMS },
    who: { header: HEADERS.who, width: 96, look: "inputAfterNumber" },
    note: { header: HEADERS.note, width: 84, look: "input" },
    one: {
      header: HEADERS.one,
      width: 78,
      look: "number",
      format: "#,##0.0000",
      formula: `=IF(AND(ISNUMBER(${own("pieces")}),ISNUMBER(${own("weight")}),N(${own("pieces")})>0,N(${own("weight")})>0),${own("weight")}/${own("pieces")},"")`,
    },
    out: {
      header: HEADERS.out,
      width: 76,
      look: "number",
      format: GRAMS,
      formula: `=IF(OR(${own("jobLink")}="",AND(${own("stage")}<>"polished",${own("stage")}<>"finished")),"",IF(AND(${own("stage")}="finished",${atStage("pieces", "polished")}>0),${own("pieces")}*${atStage("weight", "polished")}/${atStage("pieces", "polished")},IF(${atStage("pieces", "cast")}>0,${own("pieces")}*${atStage("weight", "cast")}/${atStage("pieces", "cast")},"")))`,
    },
    loss: {
      header: HEADERS.loss,
      width: 48,
      look: "number",
      format: SHARE,
      formula: `=IF(ISNUMBER(${own("out")}),(${own("out")}-${own("weight")})/${own("out")},"")`,
    },
    sinceCast: {
      header: HEADERS.sinceCast,
      width: 66,
      look: "number",
      format: SHARE,
      formula: `=IF(ISNUMBER(${own("out")}),IF(${atStage("pieces", "cast")}>0,1-${own("one")}*${atStage("pieces", "cast")}/${atStage("weight", "cast")},""),"")`,
    },
    allowed: {
      header: HEADERS.allowed,
      width: 54,
      look: "number",
      format: SHARE,
      formula: `=IF(ISNUMBER(${own("out")}),${allowedShare()},"")`,
    },
    usual: {
      header: HEADERS.usual,
      width: 60,
      look: "number",
      format: "#,##0.0000",
      formula: `=IF(${own("link")}="","",IF(${countAlike}>3,${others("weight")}/${others("pieces")},""))`,
    },
    remark: {
      header: HEADERS.remark,
      width: 260,
      look: "unit",
      formula: `=IF(ISNUMBER(${own("one")}),IF(${own("link")}="","Give model and stage.",TRIM(${lossRemark}&${usualRemark})),IF(TRIM(${own("model")}&${own("stage")}&${own("pieces")}&${own("weight")})="","","Give pieces and weight, both above 0."))`,
    },
    link: {
      header: HEADERS.link,
      width: 44,
      look: "quiet",
      formula: `=IF(AND(ISNUMBER(${own("one")}),TRIM(${own("model")})<>"",TRIM(${own("stage")})<>""),${linkKey(own("model"), own("width"), own("mark"), own("colour"))},"")`,
    },
    jobLink: {
      header: HEADERS.jobLink,
      width: 72,
      look: "quiet",
      formula: `=IF(OR(${own("link")}="",TRIM(${own("job")})=""),"",${linkKey(own("job"))}&"|"&${own("link")})`,
    },
    squares: {
      header: HEADERS.squares,
      width: 56,
      look: "quiet",
      format: "0.00",
      formula: `=IF(ISNUMBER(${own("one")}),${own("weight")}^2/${own("pieces")},"")`,
    },
    finisher: {
      header: HEADERS.finisher,
      width: 56,
      look: "quiet",
      formula: `=IF(AND(ISNUMBER(${own("loss")}),TRIM(${own("who")})<>""),${linkKey(own("who"))},"")`,
    },
    lossSquares: {
      header: HEADERS.lossSquares,
      width: 70,
      look: "quiet",
      format: "0.000000",
      formula: `=IF(ISNUMBER(${own("loss")}),${own("loss")}^2,"")`,
    },
  },
};
export type WeighInColumn = Column;

/** The polish loss that Rates allows as a share of the cast weight; nothing where it is in grams or there are no Rates. */
export function allowedShare(): string {
  const kept = `CURB.FINISHEDWEIGHT(1,${nameOf("loss")},${nameOf("lossBasis")})`;
  const share = `IF(${rateIs("lossBasis", "grams")},"",ROUND(1-${kept},12))`;
  return `IF(ISERROR(${nameOf("lossBasis")}),"",${share})`;
}
