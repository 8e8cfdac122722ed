import { type CostSheet, colourName, type Rates } from "../../../src/index";
import { asText } from "../paper";
import { COUNT, cents, SCALE, SHARE } from "./figures";
import { castKey, polishedKey, sentKey } from "./readings";
import { type Column, type JobRow, type Ref, section } from "./row";

/** What polishing took, link by link: what went out, what is spare, and what is missing. Blank until it was weighed. */
export function polishing({ line, alloys }: CostSheet, rates: Rates): JobRow[] {
  return [
    section("Polishing, by the link", ["Went out, g", "Lost", "Spare", "Spare, g", "Missing", "Missing, g"]),
    ...alloys.flatMap(({ colour }, index) => [
      outcomeRow(index, alloys.length > 1 ? `Came back, ${colourName(colour, line)}` : "Came back"),
      missingRow(index, rates),
    ]),
  ];
}

/** A formula over what went out of all alloys together; blank until each of them was weighed. */
export function wentOut(alloys: number, at: Ref, write: (out: string) => string): string {
  const out = Array.from({ length: alloys }, (_, index) => at(outcomeKey(index)));
  return `IF(COUNT(${out.join(",")})=${alloys},${write(`(${out.join("+")})`)},"")`;
}

/** What the links weigh that were cast and not sent on: nothing where nobody wrote down how many were sent. */
export function spareWeight(alloys: number, at: Ref): string {
  return `SUM(${Array.from({ length: alloys }, (_, index) => at(outcomeKey(index), "E")).join(",")})`;
}

function outcomeKey(index: number): string {
  return `cameBack${index}`;
}

function outcomeRow(index: number, label: string): JobRow {
  const key = outcomeKey(index);
  return {
    key,
    cells: (at) => {
      const [castLinks, sentLinks, backLinks] = counts(index, at);
      const weights = [at(castKey(index), "E"), at(polishedKey(index), "E")];
      const given = [...weights, castLinks, backLinks, sentLinks].join(",");
      const isWeighed = `AND(COUNT(${weights.join(",")})=2,${countedWell(index, at)})`;
      const spilled = ([SHARE, COUNT, SCALE, COUNT, SCALE] as const).map((format) => ({
        content: "",
        look: "number" as const,
        format,
      }));
      return [
        { content: asText(label), look: "item" },
        { content: `=IF(${isWeighed},CURB.POLISHEDLINKS(${given}),"")`, look: "number", format: SCALE },
        ...spilled,
      ];
    },
  };
}

/** What the missing links cost, at the metal rate; or what is wrong with the counts. */
function missingRow(index: number, rates: Rates): JobRow {
  return {
    key: `missing${index}`,
    cells: (at) => {
      const missing = (column: Column) => at(outcomeKey(index), column);
      return [
        { content: "Missing, at the metal rate", look: "label" },
        {
          content: `=IF(N(${missing("F")})>0,${missing("G")}*${at("metalRate")},"")`,
          look: "number",
          format: cents(rates),
        },
        { content: `=${remark(index, at)}`, look: "aside" },
      ];
    },
  };
}

function counts(index: number, at: Ref): readonly [castLinks: string, sentLinks: string, backLinks: string] {
  return [at(castKey(index), "D"), at(sentKey(index), "D"), at(polishedKey(index), "D")];
}

/** Whether nothing was counted, or castings and what came back, and no step has more links than the one before. */
function countedWell(index: number, at: Ref): string {
  const [cast, sent, back] = counts(index, at);
  const steps = `MAX(${sent},${back})<=${cast},OR(COUNT(${sent})=0,N(${back})<=N(${sent}))`;
  return `OR(COUNT(${cast},${sent},${back})=0,AND(N(${cast})>0,N(${back})>0,${steps}))`;
}

function remark(index: number, at: Ref): string {
  const [cast, sent, back] = counts(index, at);
  const said = [
    [
      `AND(${countedWell(index, at)},COUNT(${sent})=0,N(${back})<N(${cast}))`,
      `${cast}-${back}&" did not come back: type how many were sent"`,
    ],
    [
      `AND(${countedWell(index, at)},N(${at(outcomeKey(index), "F")})>0)`,
      `${at(outcomeKey(index), "F")}&" sent and not returned"`,
    ],
    [countedWell(index, at), `""`],
    [`OR(COUNT(${cast})=0,COUNT(${back})=0)`, `"count the links cast and the links that came back"`],
  ] as const;
  return said.reduceRight(
    (otherwise, [when, words]) => `IF(${when},${words},${otherwise})`,
    `"more links than at the step before: count again"`,
  );
}
