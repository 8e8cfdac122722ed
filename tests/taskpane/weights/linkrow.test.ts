import { describe, expect, test } from "vitest";
import type { LinkRow } from "../../../taskpane/excel/weights/scalebook";
import { lineTextsOf } from "../../../taskpane/order/linkoffer";
import { chosenLink } from "../../../taskpane/weights/linkrow";

const row: LinkRow = {
  model: "Ada curb",
  width: 8,
  linksPer: 4,
  linksPerUnit: "in",
  mark: "14K",
  colour: "yellow",
  estimate: 2.1,
  weight: 2.0512345678,
  basis: "weighed",
  weighings: 3,
  pieces: 30,
  spread: 0.01,
  within: 0.0049,
  estimateOff: 0.02,
  remark: "",
  file: "",
  mould: "",
  written: "",
  date: 46351,
  link: "k ada curb|8|14k|yellow",
};
const said = (changes: Partial<LinkRow>) => (chosenLink({ ...row, ...changes })?.said ?? "").replaceAll("\u00a0", " ");

describe("a link of the table as an order takes it", () => {
  const taken = (changes: Partial<LinkRow> = {}) => {
    const chosen = chosenLink({ ...row, ...changes });
    if (!chosen?.weight) throw new Error("The link has no weight");
    return lineTextsOf({ weight: chosen.weight, texts: chosen.texts });
  };

  test("brings alloy, links in the length, and the finished weight to six figures", () => {
    expect(taken()).toEqual({
      mark: "14K",
      colour: "yellow",
      linksPer: "4",
      linksPerUnit: "in",
      linkWeight: "2.05123",
    });
    expect(chosenLink(row)?.weight?.stage).toBe("finished");
    expect(chosenLink(row)?.name).toBe("Ada curb 8 mm 14K yellow");
  });

  test("says that it used the mean of weighings, how good that is, and what was estimated", () => {
    expect(said({})).toBe(
      "Weight of one link: 2.051 g, the mean of 3 weighings of 30 finished pieces, give or take 0.005 g. The estimate was 2.100 g.",
    );
    expect(said({ weighings: 1, pieces: 10, within: "", spread: "", estimate: "" })).toBe(
      "Weight of one link: 2.051 g, the mean of one weighing of 10 finished pieces. It is still a guess.",
    );
    expect(said({ within: 0.05 })).toContain("It is still a guess.");
  });

  test("says that it is an estimate where nothing was weighed", () => {
    expect(said({ weight: 2.1, basis: "estimate", weighings: 0, pieces: 0, within: "" })).toBe(
      "Weight of one link: 2.100 g, an estimate: no finished ones of it were weighed yet.",
    );
  });

  test("without a weight is not taken, and says what to do", () => {
    const chosen = chosenLink({ ...row, weight: "", basis: "" });
    expect(chosen?.weight).toBe(undefined);
    expect(chosen?.said).toContain("Fill its Estimate g");
  });

  test("leaves out what a person wrote in words of their own, and rows without a model are theirs", () => {
    expect(taken({ colour: "greenish", linksPerUnit: "hand", mark: "" })).toEqual({ linkWeight: "2.05123" });
    expect(chosenLink({ ...row, model: " " })).toBe(undefined);
    expect(chosenLink({ ...row, linksPer: "four" })?.texts.linksPerUnit).toBe(undefined);
  });
});
