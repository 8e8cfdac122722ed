import { COLOURS, PENNYWEIGHT_DIGIT, STAGES } from "../../../src/index";
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
  sent: "Sent",
  who: "Who",
  note: "Note",
  confirmed: "Confirmed",
  one: "One piece g",
  out: "Went out g",
  loss: "Loss",
  sinceCast: "Since cast",
  allowed: "Allowed",
  missing: "Missing",
  missingWeight: "Missing g",
  missingWorth: "Missing at metal rate",
  usual: "Usual g",
  remark: "Remark",
  link: "Link",
  jobLink: "Job and link",
  digit: "Last digit g",
  finest: "Scale g",
  tenTimes: "Ten times",
  castOf: "Cast counted",
  polishedOf: "Polished counted",
  moreBack: "More back",
  counted: "Link counted",
  passage: "Finisher counted",
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

const ofAlike = `${weighIns("stage")},${own("stage")}`;
/** Sums a column over the weighings of this row's link at this row's stage that count. */
const alike = (key: Column) => `SUMIFS(${weighIns(key)},${weighIns("counted")},${own("link")},${ofAlike})`;
/** How many others of them count. */
const countOthers = `(COUNTIFS(${weighIns("counted")},${own("link")},${ofAlike})-IF(${own("counted")}="",0,1))`;
const others = (key: Column) => `(${alike(key)}-IF(${own("counted")}="",0,${own(key)}))`;
/** Sums a column over the weighings of this row's job and link at a stage that count. */
const castBefore = (key: Column) => `SUMIFS(${weighIns(key)},${weighIns("castOf")},${own("jobLink")})`;
const polishedBefore = (key: Column) => `SUMIFS(${weighIns(key)},${weighIns("polishedOf")},${own("jobLink")})`;
const isPolished = `AND(${own("stage")}="polished",${own("jobLink")}<>"")`;
const isFinished = `AND(${own("stage")}="finished",${own("jobLink")}<>"")`;
const isConfirmed = `TRIM(${own("confirmed")})="yes"`;
/** What these pieces weighed at a stage. */
const asBefore = (sum: (key: Column) => string) => `${own("pieces")}*${sum("weight")}/${sum("pieces")}`;
/** More than went out, by more than two in the scale's last digit, as in src/weights/lastdigit.ts. */
const isMoreThan = (out: string) => `ROUND(${own("weight")}-${out}-2*${own("finest")},9)>0`;

/** The variance of one piece among the other weighings: sum(weight²/pieces) - total²/pieces, over their number less one. */
const otherVariance = `MAX(0,${others("squares")}-${others("weight")}^2/${others("pieces")})/(${countOthers}-1)`;
/** Three of their spreads, for this number of pieces and theirs, as in isFarOff of src/weights/weighingmean.ts. */
const reach = `3*SQRT(${otherVariance}*(1/${own("pieces")}+1/${others("pieces")}))`;
const apart = `ABS(${own("one")}-${own("usual")})`;
const isFar = `AND(ROUND(${apart},9)>ROUND(${reach},9),ROUND(${apart}*${own("pieces")}-2*${own("finest")},9)>0)`;

/** Other weighings of this link at this stage whose piece weighs less than ten times this one's, and more than a tenth. */
const near = `(COUNTIFS(${weighIns("link")},${own("link")},${ofAlike},${weighIns("one")},">"&${own("one")}/10,${weighIns("one")},"<"&${own("one")}*10)-1)`;
const countAlike = `(COUNTIFS(${weighIns("link")},${own("link")},${ofAlike})-1)`;
const spare = `(${castBefore("pieces")}-SUMIFS(${weighIns("sent")},${weighIns("jobLink")},${own("jobLink")},${ofAlike}))`;

/** Sentences of a remark, each where it holds. */
const sentences = (...all: readonly (readonly [when: string, words: string])[]) =>
  `TRIM(${all.map(([when, words]) => `IF(${when},${words},"")`).join('&" "&')})`;
const remark = sentences(
  [`AND(${own("moreBack")}="yes",${isConfirmed})`, `"More back than went out, confirmed."`],
  [
    `AND(${own("moreBack")}="yes",NOT(${isConfirmed}))`,
    `"More back than went out: left out of averages until Confirmed says yes."`,
  ],
  [`AND(${own("tenTimes")}="yes",${isConfirmed})`, `"One piece weighs ten times another, confirmed."`],
  [
    `AND(${own("tenTimes")}="yes",NOT(${isConfirmed}))`,
    `"One piece weighs ten times another: left out of averages until Confirmed says yes."`,
  ],
  [
    `IF(COUNT(${own("sinceCast")},${own("allowed")})=2,AND(${own("moreBack")}="",ROUND(${own("sinceCast")},9)>ROUND(${own("allowed")},9)),FALSE)`,
    `"Loss above the allowed "&ROUND(100*${own("allowed")},2)&" %."`,
  ],
  [`N(${own("missing")})>0`, `"Sent and not returned: "&${own("missing")}&"."`],
  [`N(${own("missing")})<0`, `"More back than were sent: count again."`],
  [`IF(AND(${isPolished},ISNUMBER(${own("sent")})),${spare}>0,FALSE)`, `"Spare, not sent: "&${spare}&"."`],
  [
    `IF(AND(${isPolished},ISNUMBER(${own("sent")}),${castBefore("pieces")}>0),${spare}<0,FALSE)`,
    `"More were sent than were cast."`,
  ],
  [`IF(ISNUMBER(${own("usual")}),${isFar},FALSE)`, `"Far from the others."`],
);

const GRAMS = "#,##0.000";
const SHARE = "0.0%;-0.0%;0.0%";

/** Each row is a weighing: a count of pieces and what they weigh is enough. Its formulas need only Excel's own functions, but for what Rates say. */
export const WEIGH_IN_PLAN: TablePlan<Column> = {
  name: WEIGH_IN_TABLE,
  sheet: "Weigh-ins",
  lead: [
    "One row a weighing, typed here or in the pane. Cream columns are yours; the others are formulas. Sort, filter, add columns.",
    "Went out: these pieces at the stage before, in the same job. Usual: the mean of the other weighings, from three on. The narrow grey columns at the end serve the formulas.",
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
    sent: { header: HEADERS.sent, width: 44, look: "inputRight", format: "#,##0", isLater: true },
    who: { header: HEADERS.who, width: 96, look: "inputAfterNumber" },
    note: { header: HEADERS.note, width: 84, look: "input" },
    confirmed: { header: HEADERS.confirmed, width: 66, look: "input", choices: ["yes"], isLater: true },
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
      formula: `=IF(OR(${isPolished},${isFinished}),IF(AND(${isFinished},${polishedBefore("pieces")}>0),${asBefore(polishedBefore)},IF(${castBefore("pieces")}>0,${asBefore(castBefore)},"")),"")`,
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
      formula: `=IF(ISNUMBER(${own("out")}),IF(${castBefore("pieces")}>0,1-${own("one")}*${castBefore("pieces")}/${castBefore("weight")},""),"")`,
    },
    allowed: {
      header: HEADERS.allowed,
      width: 54,
      look: "number",
      format: SHARE,
      formula: `=IF(ISNUMBER(${own("out")}),${allowedShare()},"")`,
    },
    missing: {
      header: HEADERS.missing,
      width: 52,
      look: "number",
      format: "#,##0",
      formula: `=IF(AND(OR(${own("stage")}="polished",${own("stage")}="finished"),ISNUMBER(${own("sent")}),ISNUMBER(${own("pieces")})),${own("sent")}-${own("pieces")},"")`,
      isLater: true,
    },
    missingWeight: {
      header: HEADERS.missingWeight,
      width: 62,
      look: "number",
      format: GRAMS,
      formula: `=IF(AND(N(${own("missing")})>0,ISNUMBER(${own("out")})),${own("missing")}*${own("out")}/${own("pieces")},"")`,
      isLater: true,
    },
    missingWorth: {
      header: HEADERS.missingWorth,
      width: 118,
      look: "number",
      format: "#,##0.00",
      formula: `=IF(ISERROR(${nameOf("spot")}),"",IF(ISNUMBER(${own("missingWeight")}),CURB.MELTVALUE(${own("missingWeight")},${own("mark")},${nameOf("spot")}),""))`,
      isLater: true,
    },
    usual: {
      header: HEADERS.usual,
      width: 60,
      look: "number",
      format: "#,##0.0000",
      formula: `=IF(${own("link")}="","",IF(${countOthers}>2,${others("weight")}/${others("pieces")},""))`,
    },
    remark: {
      header: HEADERS.remark,
      width: 260,
      look: "unit",
      formula: `=IF(ISNUMBER(${own("one")}),IF(${own("link")}="","Give model and stage.",${remark}),IF(TRIM(${own("model")}&${own("stage")}&${own("pieces")}&${own("weight")})="","","Give pieces and weight, both above 0."))`,
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
    digit: {
      header: HEADERS.digit,
      width: 62,
      look: "quiet",
      format: "0.0###",
      formula: `=IF(${own("link")}="","",IF(ROUND(${own("weight")},4)<>ROUND(${own("weight")},10),${PENNYWEIGHT_DIGIT},IF(ROUND(${own("weight")},0)=ROUND(${own("weight")},4),1,IF(ROUND(${own("weight")},1)=ROUND(${own("weight")},4),0.1,IF(ROUND(${own("weight")},2)=ROUND(${own("weight")},4),0.01,IF(ROUND(${own("weight")},3)=ROUND(${own("weight")},4),0.001,0.0001))))))`,
      isLater: true,
    },
    finest: {
      header: HEADERS.finest,
      width: 50,
      look: "quiet",
      format: "0.0###",
      formula: `=IF(${own("link")}="","",MINIFS(${weighIns("digit")},${weighIns("link")},${own("link")}))`,
      isLater: true,
    },
    tenTimes: {
      header: HEADERS.tenTimes,
      width: 58,
      look: "quiet",
      formula: `=IF(${own("link")}="","",IF(${countAlike}>2*${near},"yes",""))`,
      isLater: true,
    },
    castOf: {
      header: HEADERS.castOf,
      width: 72,
      look: "quiet",
      formula: `=IF(AND(${own("stage")}="cast",OR(${own("tenTimes")}="",${isConfirmed})),${own("jobLink")},"")`,
      isLater: true,
    },
    polishedOf: {
      header: HEADERS.polishedOf,
      width: 88,
      look: "quiet",
      formula: `=IF(${isPolished},IF(${isConfirmed},${own("jobLink")},IF(${own("tenTimes")}="yes","",IF(${castBefore("pieces")}>0,IF(${isMoreThan(asBefore(castBefore))},"",${own("jobLink")}),${own("jobLink")}))),"")`,
      isLater: true,
    },
    moreBack: {
      header: HEADERS.moreBack,
      width: 58,
      look: "quiet",
      formula: `=IF(AND(ISNUMBER(${own("out")}),${own("tenTimes")}=""),IF(${isMoreThan(own("out"))},"yes",""),"")`,
      isLater: true,
    },
    counted: {
      header: HEADERS.counted,
      width: 72,
      look: "quiet",
      formula: `=IF(OR(${isConfirmed},AND(${own("tenTimes")}="",${own("moreBack")}="")),${own("link")},"")`,
      isLater: true,
      before: HEADERS.link,
    },
    passage: {
      header: HEADERS.passage,
      width: 88,
      look: "quiet",
      formula: `=IF(${own("counted")}="","",${own("finisher")})`,
      isLater: true,
      before: HEADERS.finisher,
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
