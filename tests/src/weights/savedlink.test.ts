import { expect, test } from "vitest";
import { type KeptLinkKey, parseKeptLink } from "../../../src/weights/savedlink";

const typed: Record<KeptLinkKey, string> = {
  model: " Ada curb ",
  width: "",
  mark: "14 ct",
  colour: "yellow",
  linksPer: "4",
  linksPerUnit: "in",
  linkWeight: "2.05",
};

test("a link is written down with its mark in one manner of writing and its weight in grams", () => {
  const parsed = parseKeptLink(typed);
  if (!parsed.ok) throw new Error(parsed.faults[0]?.sentence);
  const { model, width, mark, linkWeight } = parsed.value;
  expect([model, width, mark, linkWeight.grams.value().toString()]).toEqual(["Ada curb", undefined, "14K", "2.05"]);
});

test("every field that is missing or wrong is told", () => {
  const parsed = parseKeptLink({ ...typed, model: "", width: "0", mark: "", linksPer: "four", linkWeight: "" });
  expect(parsed.ok ? [] : parsed.faults.map(({ field, code }) => `${field} ${code}`)).toEqual([
    "model blank",
    "width outOfRange",
    "mark blank",
    "linksPer notANumber",
    "linkWeight blank",
  ]);
});
