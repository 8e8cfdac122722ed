import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

/** Rooms whose sheets live by formulas. */
const ROOMS = ["job", "cashplan", "designs"];

/**
 * How a rule of the trade looks when it is spelled out in a formula: a share on or off a sum, whole parts of a count, the smaller
 * or larger of two, a rounding of money. A difference that is rounded to six or eight places only loses the noise of doubles.
 */
const RULES: Readonly<Record<string, RegExp>> = {
  "a share on or off a sum": /[*/]\(1[+-]/,
  "whole parts": /\b(?:INT|ROUNDUP|ROUNDDOWN|CEILING|FLOOR)\(/,
  "the smaller or larger of a figure and nothing": /\b(?:MIN|MAX)\((?:[^()]|\([^()]*\))*,0\)/,
  "the smaller of two": /\bMIN\(\$\{[^}]*\},/,
  "a rounding of money": /\bROUND\((?!.*,[68]\))/,
};

const sources = ROOMS.flatMap((room) =>
  readdirSync(`taskpane/excel/${room}`).map((file) => `taskpane/excel/${room}/${file}`),
);

test("each rule would be seen where it is spelled out", () => {
  const written = {
    // biome-ignore-start lint/suspicious/noTemplateCurlyInString: these are lines of source
    "a share on or off a sum": "SUM(${a})*(1+${rate})",
    "whole parts": "INT(${links}/7)",
    "the smaller or larger of a figure and nothing": "MAX(${together}-${spared},0)",
    "the smaller of two": 'MIN(${at("ownFine")},${needed})',
    "a rounding of money": 'ROUND(${pieces}*${at("discount")},${digits})',
    // biome-ignore-end lint/suspicious/noTemplateCurlyInString: these are lines of source
  };
  expect(Object.keys(written)).toEqual(Object.keys(RULES));
  for (const [rule, line] of Object.entries(written)) expect(line, rule).toMatch(RULES[rule] ?? /^$/);
});

test.each(sources)("%s asks worksheet functions and spells no rule of the trade out in a formula", (source) => {
  const lines = readFileSync(source, "utf8").split("\n");
  const spelled = lines.flatMap((line, index) =>
    line.includes("`")
      ? Object.keys(RULES).flatMap((rule) => (RULES[rule]?.test(line) ? [`${index + 1}: ${rule}`] : []))
      : [],
  );
  expect(spelled).toEqual([]);
});
