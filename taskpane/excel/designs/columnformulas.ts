import type { LineKey, RateKey } from "../../../src/index";
import { columnLetters } from "../address";
import { nameOf } from "../rates/rates";

/** A column that is added beside the designs. */
export interface AddedColumn {
  readonly header: string;
  readonly shown: "count" | "weight" | "money" | "share";
  /** @param row the sheet's row, counted from 1 */
  readonly formula: (row: number) => string;
}

/** Where a field stands, counted from the sheet's first column, and its unit where its header says one. */
export interface PlacedField {
  readonly column: number;
  readonly unit: string | undefined;
}

/** The fields that formulas in cells reckon with; the rest is for the price list, which reckons with all. */
export const RECKONED: readonly LineKey[] = [
  "design",
  "kind",
  "mark",
  "colour",
  "solidity",
  "plated",
  "platingMetal",
  "quantity",
  "length",
  "lengthUnit",
  "linksPer",
  "linksPerUnit",
  "linkWeight",
  "linkCasting",
  "clasp",
  "claspLength",
  "claspWeight",
  "claspCost",
  "findings",
  "findingsWeight",
  "findingsCost",
  "engraving",
  "engravingCost",
  "setup",
];

/**
 * Links, weights, landed cost, price and margin of one piece as formulas over a row and the rates' defined names: the same
 * reckoning as CURB.PRICELIST, term by term (see costPiece and costLine of the library).
 * @param first the column the first of them stands in, counted from 0
 * @param digits decimals of the currency
 */
export function columnFormulas(
  fields: ReadonlyMap<LineKey, PlacedField>,
  first: number,
  digits: number,
): readonly AddedColumn[] {
  const ref = (key: LineKey, row: number) => {
    const field = fields.get(key);
    return field && `$${columnLetters(field.column)}${row}`;
  };
  const own = (index: number, row: number) => `$${columnLetters(first + index)}${row}`;
  const cash = (key: LineKey, row: number) => ref(key, row) ?? "0";
  const weight = (key: LineKey, row: number) => {
    const cell = ref(key, row);
    const unit = fields.get(key)?.unit ?? "g";
    return cell === undefined ? "0" : unit === "g" ? cell : `CURB.WEIGHTIN(${cell},"${unit}","g")`;
  };
  const unitOf = (key: "length" | "linksPer", unitKey: "lengthUnit" | "linksPerUnit", row: number) => {
    const said = fields.get(key)?.unit;
    const cell = ref(unitKey, row);
    if (cell === undefined) return `"${said ?? "in"}"`;
    return said === undefined ? `TRIM(${cell})` : `IF(TRIM(${cell})="","${said}",TRIM(${cell}))`;
  };
  const inLinks = (length: string, unit: string, row: number) => {
    const per = unitOf("linksPer", "linksPerUnit", row);
    const product = `${length}*${ref("linksPer", row)}`;
    // Multiplied before the unit is changed, so that a half link stays a half.
    return unit === per ? product : `CURB.LENGTHIN(${product},${unit},${per})`;
  };
  const links = (row: number) => {
    const unit = unitOf("length", "lengthUnit", row);
    const length = inLinks(ref("length", row) ?? "0", unit, row);
    const clasp = ref("claspLength", row);
    if (clasp === undefined) return `CURB.LINKCOUNT(${length},1)`;
    const claspUnit = fields.get("claspLength")?.unit;
    return `CURB.LINKCOUNT(${length},1,${inLinks(clasp, claspUnit === undefined ? unit : `"${claspUnit}"`, row)})`;
  };
  const castClasp = (row: number) => {
    const clasp = ref("clasp", row);
    return clasp === undefined ? "0" : `IF(LEFT(TRIM(${clasp}),5)="cast ",${weight("claspWeight", row)},0)`;
  };
  const quantity = (row: number) => {
    const cell = ref("quantity", row);
    return cell === undefined ? "1" : `IF(${cell}="",1,${cell})`;
  };
  const plating = (row: number) => {
    const usual = `TRIM(${ref("colour", row)})="white"`;
    const cell = ref("plated", row);
    const plated =
      cell === undefined ? usual : `IF(TRIM(${cell})="plated",TRUE,IF(TRIM(${cell})="not plated",FALSE,${usual}))`;
    return `IF(${plated},IF(${nameOf("plating")}="",NA(),${nameOf("plating")}),0)`;
  };
  const chain = (row: number) => `CURB.CHAINWEIGHT(${own(LINKS, row)},${weight("linkWeight", row)})`;
  const metalRate = (row: number) => `CURB.METALRATE(${nameOf("spot")},${ref("mark", row)})`;
  const quick = `${nameOf("costBasis")}="quick"`;
  const landed = (row: number) => {
    const labour = `MAX(${rate("labourFlat")}+${own(LINKS, row)}*${rate("labourPerLink")}+${chain(row)}*${rate("labourPerGram")},${rate("labourMinimum")})`;
    const charged = `IF(${quick},${own(PARTS, row)},${own(CAST, row)})`;
    const toMinimum = `MAX(0,${rate("castingMinimum")}/${quantity(row)}-${charged}*${nameOf("castingFee")})`;
    const others = (["claspCost", "findingsCost", "engravingCost", "setup"] as const)
      .filter((key) => fields.has(key))
      .map((key) => cash(key, row));
    const other = [toMinimum, plating(row), ...others].join("+");
    return (
      `CURB.LANDEDCOST(${own(PARTS, row)},${metalRate(row)},${nameOf("castingFee")},${labour},${nameOf("loss")},` +
      `${nameOf("lossBasis")},${other},${nameOf("costBasis")})*(1+${rate("overhead")})`
    );
  };
  const taxed = `IF(${nameOf("taxIs")}="in the price",1+${rate("tax")},1)`;
  const price = (row: number) => {
    const ending = `MAX(${rate("priceStep")},${10 ** -digits}),${digits}`;
    // Beyond eight decimals a cell's own arithmetic is noise, which would lift a whole step.
    const cost = `ROUND(${own(LANDED, row)}*${taxed},8)`;
    const over = `(${metalRate(row)}+${nameOf("premium")})`;
    const bought = (weightKey: LineKey, costKey: LineKey) =>
      `MAX(${weight(weightKey, row)}*${over},${cash(costKey, row)})`;
    const atPremium =
      `${chain(row)}*${over}+${bought("claspWeight", "claspCost")}+${bought("findingsWeight", "findingsCost")}` +
      `+${cash("engravingCost", row)}+${plating(row)}`;
    return (
      `IF(${nameOf("priceBy")}="markup",CURB.PRICEATMARKUP(${cost},${nameOf("markup")},${ending}),` +
      `IF(${nameOf("priceBy")}="margin",CURB.PRICEATMARGIN(${cost},${nameOf("margin")},${ending}),` +
      `CURB.PRICEATMARKUP(ROUND((${atPremium})*${taxed},8),0,${ending})))`
    );
  };
  return [
    { header: "Links", shown: "count", formula: (row) => `=${links(row)}` },
    {
      header: "Cast parts (g)",
      shown: "weight",
      formula: (row) => `=CURB.CHAINWEIGHT(${own(LINKS, row)},${weight("linkWeight", row)},${castClasp(row)})`,
    },
    {
      header: "Finished weight (g)",
      shown: "weight",
      formula: (row) =>
        `=CURB.CHAINWEIGHT(${own(LINKS, row)},${weight("linkWeight", row)},${weight("claspWeight", row)}+${weight("findingsWeight", row)})`,
    },
    {
      header: "Cast weight (g)",
      shown: "weight",
      formula: (row) => `=CURB.CASTWEIGHT(${own(PARTS, row)},${nameOf("loss")},${nameOf("lossBasis")})`,
    },
    { header: "Landed cost", shown: "money", formula: (row) => `=${landed(row)}` },
    { header: "Price", shown: "money", formula: (row) => `=${price(row)}` },
    {
      header: "Margin",
      shown: "share",
      formula: (row) => `=CURB.MARGIN(${own(LANDED, row)},${own(PRICE, row)}/${taxed})`,
    },
  ];
}

/** Places of the columns among those added. */
export const LINKS = 0;
const PARTS = 1;
export const FINISHED = 2;
export const CAST = 3;
export const LANDED = 4;
export const PRICE = 5;

/** A rate that may be left blank, as a figure. */
function rate(key: RateKey): string {
  return `IF(${nameOf(key)}="",0,1*${nameOf(key)})`;
}
