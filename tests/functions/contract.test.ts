import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { associatedIds } from "./built";

interface Parameter {
  name: string;
  description?: string;
  type: string;
  dimensionality: string;
  optional?: boolean;
}
interface Metadata {
  functions: {
    id: string;
    name: string;
    description: string;
    parameters: Parameter[];
    result: { dimensionality: string };
  }[];
}

const written = readFileSync("dist/functions.json", "utf8");
const metadata = JSON.parse(written) as Metadata;

/** ../shared/functions.md, the contract: ids and argument order of its families. */
const CONTRACT = `
FINENESS mark
KARAT mark
STANDARDMARK fineness [standards]
ASSAYPASSES assay mark [tolerance]
FINEGOLD weight mark
METALRATE spot mark [decimals]
MELTVALUE weight mark spot [decimals]
WEIGHTIN amount from to
LENGTHIN amount from to
ALLOYDENSITY metals parts
LINKCOUNT length linksPerLength [claspLength] [fit] [multiple]
CHAINLENGTH links linksPerLength [claspLength]
CHAINWEIGHT links linkWeight [findingsWeight]
RESIZEDLINK linkWeight fromWidth toWidth
RECASTWEIGHT weight fromDensity toDensity
METALFROMWAX waxWeight waxDensity metalDensity
CASTWEIGHT finishedWeight loss [lossBasis]
FINISHEDWEIGHT castWeight loss [lossBasis]
LANDEDCOST weight metalRate castingFee labour loss [lossBasis] [other] [basis] [decimals]
LANDEDPERGRAM weight metalRate castingFee labour loss [lossBasis] [other] [basis] [decimals]
STONECOST count stonePrice settingFee [breakage] [decimals]
CROSSOVERWEIGHT flatCost addedPerGram surcharge [metalDifference]
MAKEORBUY weight metalRate castingFee labour loss surcharge [lossBasis] [other] [basis] [boughtRate]
BESTMAKER weight mark makers [currency]
PATTERNLINKS links pattern colour [casting] [cast]
LABOURCOST links weight [flat] [perLink] [perGram] [minimum]
CASTINGCOST castWeight fee [minimum] [pieces]
CHARGEDWEIGHT weight loss [lossBasis] [basis]
LOSTWEIGHT weight loss [lossBasis] [basis]
POLISHEDLINKS castWeight backWeight [castLinks] [backLinks] [sentLinks]
STONESTOBUY count [pieces] [breakage]
MARKUP cost price
MARGIN cost price
PRICEATMARKUP cost markup [step] [decimals]
PRICEATMARGIN cost margin [step] [decimals]
PRICEATPREMIUM weight metalRate premium [step] [decimals]
SELLINGPRICE cost apart by figure weight metalRate taxShare taxIs [step] [decimals]
PARTATPREMIUM weight metalRate premium [cost]
NETPRICE price taxShare taxIs [discount] [decimals]
SALESTAX amount taxShare taxIs [decimals]
GOLDONSCALE weight carats [decimals]
SETTLEDPRICE price perGram statedWeight goldWeight tolerance [decimals]
LINEAMOUNT price [pieces] [decimals]
DISCOUNT amount share [decimals]
OVERHEAD cost share
LINKSWITHSTONES links [every]
GOLDUSED brought needed
GOLDCREDIT fineGold spot [share] [decimals]
ASKINGPERGRAM price weight [unit]
PREMIUM pricePerGram metalRate
ASKINGCHECK price weight mark spot [landedPerGram]
SPOTLIMIT price castWeight mark otherCosts [leastMargin]
PRICELIST lines rates [columns]
PRICELINE headers line rates column
RATEVALUE rate value
PIECESCOST each casting castingMinimum [pieces]
CASHNEEDED once made [deposits]
MOSTPIECES cash once each casting castingMinimum [deposit]
FEWESTPIECES cash once each casting castingMinimum [deposit]
DEPOSITNEEDED room each casting castingMinimum price [pieces]
DEPOSITCOVERS deposit [tax] [taxDue]
PAIDBACKWITH once gain
`;

const signature = ({ id, parameters }: Metadata["functions"][number]) =>
  [id, ...parameters.map(({ name, optional }) => (optional ? `[${name}]` : name))].join(" ");

describe("functions.json, the contract of workbooks already saved", () => {
  test("has every id and every argument of the contract, in its order", () => {
    expect(metadata.functions.map(signature)).toEqual(CONTRACT.trim().split("\n"));
  });

  test("has a function associated for each id, and no other", () => {
    expect([...associatedIds].sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
  });

  test("explains every function and every argument in words", () => {
    for (const { id, description, parameters } of metadata.functions) {
      expect(description.length, id).toBeGreaterThan(30);
      for (const { name, description: said } of parameters)
        expect(said?.length ?? 0, `${id} ${name}`).toBeGreaterThan(10);
    }
  });

  test("lets error cells in by one flag, and bears the other nowhere: both together crash the volume edition of Excel 2021", () => {
    const { functions, ...flags } = metadata;
    expect(functions.length).toBeGreaterThan(0);
    expect(flags).toEqual({ allowErrorForDataTypeAny: true });
    expect(written.match(/allow\w*DataType\w*/gi)).toEqual(["allowErrorForDataTypeAny"]);
  });

  test("takes ranges everywhere and spills", () => {
    for (const { id, parameters, result } of metadata.functions) {
      expect(result.dimensionality, id).toBe("matrix");
      for (const { name, type, dimensionality } of parameters) {
        expect([type, dimensionality], `${id} ${name}`).toEqual(["any", "matrix"]);
      }
    }
  });

  test("is as it was: a change here is a change for workbooks already saved", () => {
    expect(metadata).toMatchSnapshot();
  });
});
