import { COLOURS, LINKS_PER_UNITS, YES_NO } from "../../../src/index";
import { ownCell, type TablePlan } from "../tables/tableplan";
import { linkKey, weighIns } from "./weighingtable";

/** The name of the table of links, as formulas use it. */
export const LINK_TABLE = "Links";

/** How a remark begins that says how many weighings are left out of a mean. */
export const LEFT_OUT = "Left out until confirmed:";

const HEADERS = {
  model: "Model",
  width: "Width mm",
  linksPer: "Links per length",
  linksPerUnit: "Per",
  mark: "Mark",
  colour: "Colour",
  estimate: "Estimate g",
  weight: "Weight of one link g",
  basis: "Basis",
  weighings: "Weighings",
  pieces: "Pieces weighed",
  spread: "Spread g",
  within: "Within g",
  estimateOff: "Estimate off",
  remark: "Remark",
  file: "Model file",
  mould: "Mould",
  written: "Weight written on",
  date: "Date",
  link: "Link",
} as const;
type Column = keyof typeof HEADERS;
export type LinkColumn = Column;

const own = (key: Column) => ownCell(LINK_TABLE, HEADERS[key]);
const finished = `${weighIns("counted")},${own("link")},${weighIns("stage")},"finished"`;
/** Weighings that cannot be and that nobody confirmed. */
const leftOut = `(COUNTIFS(${weighIns("link")},${own("link")},${weighIns("stage")},"finished")-N(${own("weighings")}))`;
const sumFinished = (key: Parameters<typeof weighIns>[0]) => `SUMIFS(${weighIns(key)},${finished})`;
const weighed = `N(${own("weighings")})>0`;

const GRAMS = "#,##0.0000";

/** Each row is a link. Its weight is the mean of its finished weighings where there are any, else the estimate. */
export const LINK_PLAN: TablePlan<Column> = {
  name: LINK_TABLE,
  sheet: "Link weights",
  lead: [
    "One row a link in one alloy. Cream columns are yours; the others are formulas over the table WeighIns, stage finished. Sort, filter, add columns.",
    "Spread: one standard deviation of single links. Within: the true mean lies within so much of this one, 19 times in 20. Estimate g is of a finished link. Estimate off: the estimate against the weighed mean.",
  ],
  columns: {
    model: { header: HEADERS.model, width: 100, look: "input" },
    width: { header: HEADERS.width, width: 62, look: "inputRight", format: "General" },
    linksPer: { header: HEADERS.linksPer, width: 94, look: "inputRight", format: "General" },
    linksPerUnit: { header: HEADERS.linksPerUnit, width: 40, look: "inputAfterNumber", choices: LINKS_PER_UNITS },
    mark: { header: HEADERS.mark, width: 44, look: "inputStart" },
    colour: { header: HEADERS.colour, width: 52, look: "input", choices: COLOURS },
    estimate: { header: HEADERS.estimate, width: 70, look: "inputRight", format: GRAMS },
    weight: {
      header: HEADERS.weight,
      width: 122,
      look: "number",
      format: GRAMS,
      formula: `=IF(${weighed},${sumFinished("weight")}/${own("pieces")},IF(ISNUMBER(${own("estimate")}),${own("estimate")},""))`,
    },
    basis: {
      header: HEADERS.basis,
      width: 60,
      look: "startAfterNumber",
      formula: `=IF(${weighed},"weighed",IF(ISNUMBER(${own("estimate")}),"estimate",""))`,
    },
    weighings: {
      header: HEADERS.weighings,
      width: 64,
      look: "number",
      format: "#,##0",
      formula: `=IF(${own("link")}="","",COUNTIFS(${finished}))`,
    },
    pieces: {
      header: HEADERS.pieces,
      width: 92,
      look: "number",
      format: "#,##0",
      formula: `=IF(${own("link")}="","",${sumFinished("pieces")})`,
    },
    spread: {
      header: HEADERS.spread,
      width: 60,
      look: "number",
      format: GRAMS,
      formula: `=IF(N(${own("weighings")})>1,SQRT(MAX(0,${sumFinished("squares")}-${own("pieces")}*${own("weight")}^2)/(${own("weighings")}-1)),"")`,
    },
    within: {
      header: HEADERS.within,
      width: 60,
      look: "number",
      format: GRAMS,
      formula: `=IF(ISNUMBER(${own("spread")}),T.INV.2T(0.05,${own("weighings")}-1)*${own("spread")}/SQRT(${own("pieces")}),"")`,
    },
    estimateOff: {
      header: HEADERS.estimateOff,
      width: 76,
      look: "number",
      format: "+0.0%;-0.0%;0.0%",
      formula: `=IF(AND(${weighed},ISNUMBER(${own("estimate")})),${own("estimate")}/${own("weight")}-1,"")`,
    },
    remark: {
      header: HEADERS.remark,
      width: 205,
      look: "unit",
      formula: `=IF(${own("link")}="","",TRIM(IF(${own("basis")}="","",IF(N(${own("weighings")})=0,"An estimate: weigh some.",IF(${own("weighings")}<3,"Still a guess: few weighings.",IF(${own("within")}>0.02*${own("weight")},"Still a guess: they differ by much.",""))))&IF(${leftOut}>0," ${LEFT_OUT} "&${leftOut}&".","")))`,
    },
    file: { header: HEADERS.file, width: 92, look: "input" },
    mould: { header: HEADERS.mould, width: 46, look: "input", choices: YES_NO },
    written: { header: HEADERS.written, width: 106, look: "input" },
    date: { header: HEADERS.date, width: 72, look: "inputStart", format: "yyyy-mm-dd" },
    link: {
      header: HEADERS.link,
      width: 44,
      look: "quiet",
      formula: `=IF(TRIM(${own("model")})="","",${linkKey(own("model"), own("width"), own("mark"), own("colour"))})`,
    },
  },
};
