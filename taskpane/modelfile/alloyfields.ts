import {
  alloyDensity,
  CostingError,
  fineness,
  METALS,
  type Part,
  parseMark,
  Quotient,
  TYPICAL_ALLOYS,
} from "../../src/index";
import { element, setText } from "../controls/element";
import { type Field, field } from "../controls/field";
import { showFixed, showNumber } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { numberField } from "./numberfield";

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

/** Asks for a density: a typical alloy's, the caster's figure, or one from a composition. Begins with the order's gold. */
export function alloyFields(asked: AlloyAsked): AlloyFields {
  const kind = field({
    id: "model-alloy",
    label: texts.label,
    start: startFor(asked),
    choices: [
      { value: "own", shown: texts.own },
      { value: "mixed", shown: texts.mixed },
      ...TYPICAL_ALLOYS.map(({ mark, colour, parts }, at) => ({
        value: String(at),
        shown: texts.typical(mark, TEXTS.form.choices[colour].toLowerCase(), showFixed(alloyDensity(parts), 2)),
      })),
    ],
  });
  const density = numberField(
    { id: "model-density", label: texts.density, unit: texts.densityUnit, help: texts.densityHelp, required: true },
    { right: "a density in g/cm³, such as 13.3", above: "0", most: "30" },
  );
  const parts = METALS.map((metal) => ({
    metal,
    ...numberField({ id: `model-part-${metal}`, label: metal }, { right: "parts by weight", least: "0" }),
  }));
  const note = element("p", { class: "help" });
  const fault = element("p", { class: "fault", role: "status" });
  const mixture = element("div", { class: "parts" }, ...parts.map((part) => part.field.root));
  const root = element(
    "fieldset",
    {},
    element("legend", {}, texts.title),
    element(
      "div",
      { class: "fields" },
      acrossForm(kind),
      acrossForm(density.field),
      acrossFormNode(mixture),
      acrossFormNode(note),
      acrossFormNode(fault),
    ),
  );
  return {
    root,
    density() {
      const chosen = kind.control.value;
      density.field.root.hidden = chosen !== "own";
      mixture.hidden = chosen !== "mixed";
      setText(fault, "");
      const typical = TYPICAL_ALLOYS[Number(chosen)];
      if (chosen === "own") return withNote(note, "", density.read());
      if (chosen === "mixed") return densityOfMixture(parts, note, fault);
      if (!typical) return undefined;
      return withNote(note, texts.typicalHelp(showParts(typical.parts)), alloyDensity(typical.parts));
    },
  };
}

interface PartField {
  readonly metal: Part["metal"];
  read(whenBlank?: Quotient): Quotient | undefined;
}

function densityOfMixture(fields: readonly PartField[], note: HTMLElement, fault: HTMLElement): Quotient | undefined {
  const parts: Part[] = [];
  for (const { metal, read } of fields) {
    const typed = read(Quotient.zero);
    if (!typed) return withNote(note, texts.mixedHelp, undefined);
    if (typed.isPositive()) parts.push({ metal, parts: typed });
  }
  if (parts.length === 0) return withNote(note, texts.mixedHelp, undefined);
  try {
    const density = alloyDensity(parts);
    return withNote(note, `${texts.computed(showFixed(density, 2))}. ${texts.mixedHelp}`, density);
  } catch (error) {
    if (!(error instanceof CostingError)) throw error;
    setText(fault, error.message);
    return withNote(note, texts.mixedHelp, undefined);
  }
}

function withNote(note: HTMLElement, sentence: string, density: Quotient | undefined): Quotient | undefined {
  setText(note, sentence);
  note.hidden = sentence === "";
  return density;
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

function acrossForm({ root }: Field): HTMLElement {
  return acrossFormNode(root);
}

function acrossFormNode(node: HTMLElement): HTMLElement {
  node.classList.add("whole");
  return node;
}
