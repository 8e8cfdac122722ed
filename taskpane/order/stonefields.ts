import { type LineKey, type Rates, STONE_KEYS, STONE_PRICED, STONE_SHAPES, STONES_ON } from "../../src/index";
import type { At, PlannedField, PlannedGroup } from "../controls/formplan";
import { TEXTS } from "../wording/texts";
import { planOf, shownWord } from "./choices";

const { form } = TEXTS;
const { groups, holds } = form;

const { words, figure, money, choice, group } = planOf<LineKey>(form.help);
const millimetres = () => form.millimetres;
const inLinks = (at: At<LineKey>) => at("stonesOn") !== "no links";
const onClasp = (at: At<LineKey>) => at("clasp") !== "none" && !/^\s*0*\s*$/.test(at("claspStoneCount"));

/** The stones in the links of a line. */
export function stonesGroup(): PlannedGroup<LineKey> {
  return group(
    "stones",
    groups.stones,
    [
      choice("stonesOn", "whole", STONES_ON),
      figure("stoneEvery", "half", { required: true, isAsked: (at) => at("stonesOn") === "every n-th link" }),
      figure("stoneCount", "half", { required: true, isAsked: (at) => at("stonesOn") === "a number of links" }),
      figure("stonesPerLink", "half", { isAsked: inLinks }),
      ...oneStone(STONE_KEYS.links, inLinks),
      figure("breakage", "half", {
        isAsked: (at) => inLinks(at) || onClasp(at),
        usual: (rates) => rates.breakage,
      }),
    ],
    stonesHeld,
  );
}

/** The stones on the clasp of a line; none where there is no clasp. */
export function claspStonesGroup(): PlannedGroup<LineKey> {
  return group(
    "clasp-stones",
    groups.claspStones,
    [figure("claspStoneCount", "whole"), ...oneStone(STONE_KEYS.clasp, onClasp)],
    (at) => (onClasp(at) ? holds.stones(at("claspStoneCount").trim()) : holds.none),
    (at) => at("clasp") !== "none",
  );
}

/** The fields of one stone; the share broken is one for both sets and stands apart. */
function oneStone(
  keys: (typeof STONE_KEYS)[keyof typeof STONE_KEYS],
  isThere: (at: At<LineKey>) => boolean,
): readonly PlannedField<LineKey>[] {
  const isRound = (at: At<LineKey>) => isThere(at) && at(keys.shape) === "round";
  const isRectangular = (at: At<LineKey>) => isThere(at) && at(keys.shape) === "rectangular";
  return [
    words(keys.kind, "half", { isAsked: isThere }),
    choice(keys.shape, "half", STONE_SHAPES, { isAsked: isThere }),
    figure(keys.diameter, "half", { unit: millimetres, isAsked: isRound }),
    figure(keys.length, "half", { unit: millimetres, isAsked: isRectangular }),
    figure(keys.width, "half", { unit: millimetres, isAsked: isRectangular }),
    figure(keys.depth, "half", { unit: millimetres, isAsked: isThere }),
    figure(keys.gravity, "half", { isAsked: (at) => isThere(at) && at(keys.kind).trim() !== "" }),
    figure(keys.carat, "half", { unit: () => form.carats, isAsked: isThere }),
    money(keys.price, "half", { isAsked: isThere }),
    choice(keys.priced, "half", STONE_PRICED, { isAsked: isThere }),
    money(keys.fee, "half", { isAsked: isThere, usual: (rates: Rates) => rates.settingFee.amount }),
  ];
}

function stonesHeld(at: At<LineKey>): string {
  const each = at("stonesPerLink").trim();
  switch (at("stonesOn")) {
    case "no links":
      return holds.none;
    case "a number of links":
      return counted(at("stoneCount").trim(), each);
    case "every n-th link":
      return holds.stonesOn(holds.everyLink(at("stoneEvery").trim()), each);
    default:
      return holds.stonesOn(shownWord(at("stonesOn")).toLowerCase(), each);
  }
}

/** The stones of one piece where both are plain small counts. */
function counted(links: string, each: string): string {
  if (!/^\d{1,5}$/.test(links) || !/^\d{0,5}$/.test(each)) return shownWord("a number of links").toLowerCase();
  return holds.stones(String(Number(links) * (each === "" ? 1 : Number(each))));
}
