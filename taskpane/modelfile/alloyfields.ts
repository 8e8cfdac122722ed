import {
  alloyDensity,
  CostingError,
  fineness,
  METALS,
  type Part,
  parseMark,
  type Quotient,
  TYPICAL_ALLOYS,
} from "../../src/index";
import { element, say, setText } from "../controls/element";
import { plannedForm } from "../controls/form";
import { choicesOf, formPlan } from "../controls/formplan";
import { readFigures } from "../controls/readfigures";
import { showFixed, showNumber } from "../wording/display";
import { TEXTS } from "../wording/texts";

const { alloy: texts } = TEXTS.model;

/** The gold that the order asks for. */
export interface AlloyAsked {
  readonly mark: string;
  readonly colour: string;
}

export interface AlloyFields {
  readonly root: HTMLElement;
  /** g/cm³; undefined while nothing valid is given. */
  density(): Quotient | undefined;
}

type Key = "alloy" | "density";
type Metal = Part["metal"];

const DENSITY = { right: "a density in g/cm³, such as 13.3", above: "0", most: "30" };
const PARTS = Object.fromEntries(METALS.map((metal) => [metal, { right: "parts by weight", least: "0" }]));
const METAL_LABELS = Object.fromEntries(METALS.map((metal) => [metal, metal])) as Record<Metal, string>;

/** Asks for a density: of a typical alloy, as the caster says, or from a composition. Begins with the order's gold. */
export function alloyFields(asked: AlloyAsked): AlloyFields {
  const changed = () => undefined;
  const labels = { alloy: texts.label, density: texts.density };
  const form = plannedForm<Key>({ name: "model", groups: groupsFor(asked), labels }, { changed });
  const parts = plannedForm<Metal>({ name: "model-part", groups: partGroups(), labels: METAL_LABELS }, { changed });
  const mixture = element("div", {}, ...parts.groups);
  const note = element("p", { class: "help" });
  const fault = element("p", { class: "fault", role: "status" });
  for (const group of parts.groups) group.className = "parts";
  const said = (sentence: string, density: Quotient | undefined) => {
    say(note, sentence);
    return density;
  };
  const mixed = () => {
    const figures = readFigures(parts, PARTS);
    const shares = METALS.flatMap((metal) => {
      const share = figures?.[metal];
      return share?.isPositive() ? [{ metal, parts: share }] : [];
    });
    if (shares.length === 0) return said(texts.mixedHelp, undefined);
    try {
      const density = alloyDensity(shares);
      return said(`${texts.computed(showFixed(density, 2))}. ${texts.mixedHelp}`, density);
    } catch (error) {
      if (!(error instanceof CostingError)) throw error;
      setText(fault, error.message);
      return said(texts.mixedHelp, undefined);
    }
  };
  return {
    root: element("fieldset", {}, element("legend", {}, texts.title), ...form.groups, mixture, note, fault),
    density() {
      const { alloy } = form.counted();
      const typical = TYPICAL_ALLOYS[Number(alloy)];
      mixture.hidden = alloy !== "mixed";
      setText(fault, "");
      if (alloy === "own") return said("", readFigures(form, { density: DENSITY })?.density);
      if (alloy === "mixed") return mixed();
      return typical && said(texts.typicalHelp(showParts(typical.parts)), alloyDensity(typical.parts));
    },
  };
}

function groupsFor(asked: AlloyAsked) {
  const { figure, choice, group } = formPlan<Key>({ density: texts.densityHelp });
  const typical = TYPICAL_ALLOYS.map(({ mark, colour, parts }, at) => ({
    value: String(at),
    shown: texts.typical(mark, TEXTS.form.choices[colour].toLowerCase(), showFixed(alloyDensity(parts), 2)),
  }));
  return [
    group("alloy", "", [
      choice("alloy", "whole", [...choicesOf(["own", "mixed"], texts), ...typical], { start: startFor(asked) }),
      figure("density", "whole", {
        required: true,
        unit: texts.densityUnit,
        isAsked: (at) => at("alloy") === "own",
      }),
    ]),
  ];
}

function partGroups() {
  const { figure, group } = formPlan<Metal>();
  return [
    group(
      "parts",
      "",
      METALS.map((metal) => figure(metal, "third")),
    ),
  ];
}

/** The typical alloy of the order's mark and colour, where there is one. */
function startFor({ mark, colour }: AlloyAsked): string {
  const at = TYPICAL_ALLOYS.findIndex((each) => each.colour === colour && isSameGold(each.mark, mark));
  return at < 0 ? "own" : String(at);
}

/** 14K is 583.3 ‰ and is stamped 585: for a density they count as the same gold. */
function isSameGold(one: string, other: string): boolean {
  try {
    const apart = fineness(parseMark(one))
      .minus(fineness(parseMark(other)))
      .toNumber();
    return Math.abs(apart) < 3;
  } catch (error) {
    if (error instanceof CostingError) return false;
    throw error;
  }
}

function showParts(parts: readonly Part[]): string {
  return parts.map(({ metal, parts: share }) => `${metal} ${showNumber(share, 1)}`).join(", ");
}
