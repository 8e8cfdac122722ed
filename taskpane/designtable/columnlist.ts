import { LINE_KEYS, type LineKey, ROW_LABELS, wordsOf } from "../../src/index";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { columnLetters } from "../excel/address";
import type { Designs } from "../excel/designs/designs";
import { showList } from "../wording/display";
import { TEXTS } from "../wording/texts";
import {
  type ColumnMatch,
  doubledOf,
  followsLength,
  matchHeaders,
  missingOf,
  NEEDED,
  needsUnit,
  saidUnit,
  unitsOf,
} from "./columnmatching";

const texts = TEXTS.catalogue.columns;

export interface ColumnList {
  readonly root: HTMLDetailsElement;
  /** Offers what each column is likely to be. Where nothing is left to doubt it is used at once. */
  show(designs: Designs): void;
  hide(): void;
}

/** The columns of somebody's table, each with what it is taken for, to be confirmed or corrected. */
export function columnList(on: {
  readonly used: (matches: readonly ColumnMatch[]) => void;
  /** Something was changed that is not in use yet. */
  readonly unused: () => void;
}): ColumnList {
  const list = element("ul", { class: "columnlist" });
  const lead = element("p", { class: "help" });
  const fault = element("p", { class: "fault", role: "status" });
  const use = button(texts.use, "outline", () => confirm(), "small");
  const title = element("summary", {}, texts.title);
  const root = element("details", { class: "columns" }, title, lead, list, fault, use.root);
  root.hidden = true;
  let matches: readonly ColumnMatch[] = [];
  let addressOf: ((place: number) => string) | undefined;

  function judge(): boolean {
    const [missing, doubled] = [missingOf(matches), doubledOf(matches, addressOf)];
    const sentences = [
      ...(missing.length > 0 ? [texts.missing(showList(missing))] : []),
      ...doubled.map(texts.doubled),
    ];
    setText(fault, sentences.join(" "));
    fault.hidden = sentences.length === 0;
    return sentences.length === 0;
  }

  function confirm(): void {
    if (!judge()) {
      list.querySelector("select")?.focus();
      return;
    }
    setText(lead, texts.used);
    use.root.hidden = true;
    on.used(matches);
  }

  function change(place: number, changed: Partial<ColumnMatch>): void {
    matches = matches.map((match) => (match.place === place ? { ...match, ...changed, certainty: "known" } : match));
    setText(lead, texts.confirm);
    use.root.hidden = false;
    judge();
    on.unused();
  }

  return {
    root,
    show(designs) {
      matches = matchHeaders(designs.cells[0] ?? []);
      addressOf = (place) => `${columnLetters(designs.column + place)}${designs.row + 1}`;
      list.replaceChildren(...matches.map((match) => entry(match, designs, change)));
      root.hidden = false;
      const complete = judge();
      const doubtful = !complete || matches.some(({ certainty }) => certainty === "likely");
      root.open = doubtful;
      use.root.hidden = !doubtful;
      setText(lead, doubtful ? texts.confirm : texts.known);
      if (!doubtful) on.used(matches);
      else on.unused();
    },
    hide() {
      root.hidden = true;
    },
  };
}

function entry(
  match: ColumnMatch,
  designs: Designs,
  change: (place: number, changed: Partial<ColumnMatch>) => void,
): HTMLElement {
  const header = match.header || texts.noHeader(columnLetters(designs.column + match.place));
  const field = element(
    "select",
    { "aria-label": texts.is(header) },
    element("option", { value: "" }, texts.unused),
    group(texts.needed, NEEDED),
    group(
      texts.others,
      LINE_KEYS.filter((key) => !NEEDED.includes(key)),
    ),
  );
  field.value = match.key ?? "";
  const unit = element("select", { "aria-label": texts.unitOf(header) });
  const unitBox = element("div", { class: "box choice unitbox" }, unit);
  const offerUnits = (key: LineKey | undefined, chosen: string | undefined) => {
    const units = key ? unitsOf(key) : [];
    unitBox.hidden = units.length === 0;
    if (!key) return;
    const isAsked = needsUnit(key, match.header);
    const own = isAsked ? texts.ownUnit : followsLength(key) ? texts.asLength : (units[0] ?? "");
    const said = isAsked || followsLength(key) ? units : units.slice(1);
    unit.replaceChildren(
      element("option", { value: "" }, own),
      ...said.map((each) => element("option", { value: each }, each)),
    );
    unit.value = chosen !== undefined && said.includes(chosen) ? chosen : "";
  };
  offerUnits(match.key, match.unit);
  field.addEventListener("change", () => {
    const key = LINE_KEYS.find((each) => each === field.value);
    // The header's unit holds for whatever a person takes the column for.
    offerUnits(key, key && saidUnit(match.header, key));
    change(match.place, { key, unit: unit.value || undefined });
  });
  unit.addEventListener("change", () => change(match.place, { unit: unit.value || undefined }));
  const samples = samplesOf(designs, match.place);
  const badge = match.certainty === "likely" ? element("span", { class: "badge" }, texts.likely) : undefined;
  return element(
    "li",
    { class: match.certainty },
    element("p", { class: "theirs" }, header, " ", badge),
    samples.length > 0 ? element("p", { class: "help" }, texts.such(samples.join(", "))) : undefined,
    element("div", { class: "ours" }, element("div", { class: "box choice" }, field), unitBox),
  );
}

/** The first values of a column, by which a person knows its unit. */
function samplesOf({ cells }: Designs, place: number): readonly string[] {
  return cells
    .slice(1)
    .map((row) => wordsOf(row[place]))
    .filter((cell) => cell !== "")
    .slice(0, SAMPLES);
}

const SAMPLES = 3;

function group(label: string, keys: readonly LineKey[]): HTMLElement {
  return element("optgroup", { label }, ...keys.map((key) => element("option", { value: key }, ROW_LABELS[key])));
}
