import { SEEN_KEYS, SEEN_LABELS } from "../../src/index";
import { element, setText } from "../controls/element";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { showList } from "../wording/display";
import { type ColumnMatch, doubledOf, matchAskingHeaders, missingOf } from "./askingcolumns";

const { list: texts } = ASKING_TEXTS;

export interface ListColumns {
  readonly root: HTMLElement;
  readonly matches: readonly ColumnMatch[];
  /** Takes each header for what it says; what is doubtful is unfolded. */
  show(headers: readonly unknown[]): void;
  /** Says what is missing. @param byPiece whether any price is for the whole piece. @returns whether the columns will do */
  judge(byPiece: boolean): boolean;
}

/** What each column of a list is, for the person to correct. */
export function listColumns(changed: () => void): ListColumns {
  const lead = element("p", { class: "help" });
  const list = element("ul", { class: "columnlist" });
  const fault = element("p", { class: "fault", role: "status" });
  const root = element("details", { class: "columns" }, element("summary", {}, texts.columns), lead, list, fault);
  let matches: readonly ColumnMatch[] = [];
  root.hidden = true;

  function entry(match: ColumnMatch): HTMLElement {
    const header = match.header || texts.noHeader(match.place + 1);
    const choice = element(
      "select",
      { "aria-label": texts.is(header) },
      element("option", { value: "" }, texts.unused),
      ...SEEN_KEYS.map((key) => element("option", { value: key }, SEEN_LABELS[key])),
    );
    choice.value = match.key ?? "";
    choice.addEventListener("change", () => {
      const key = SEEN_KEYS.find((each) => each === choice.value);
      matches = matches.map((each) => (each.place === match.place ? { ...each, key, certainty: "known" } : each));
      changed();
    });
    const badge = match.certainty === "likely" ? element("span", { class: "badge" }, texts.likely) : undefined;
    return element(
      "li",
      {},
      element("p", { class: "theirs" }, header, " ", badge),
      element("div", { class: "box choice" }, choice),
    );
  }

  return {
    root,
    get matches() {
      return matches;
    },
    show(headers) {
      matches = matchAskingHeaders(headers);
      list.replaceChildren(...matches.map(entry));
      root.hidden = false;
      const doubtful =
        missingOf(matches, true).length > 0 ||
        doubledOf(matches).length > 0 ||
        matches.some(({ certainty }) => certainty === "likely");
      root.open = doubtful;
      setText(lead, doubtful ? texts.look : texts.allKnown);
    },
    judge(byPiece) {
      const [missing, doubled] = [missingOf(matches, byPiece), doubledOf(matches)];
      const sentences = [
        ...(missing.length > 0 ? [texts.missing(showList(missing))] : []),
        ...doubled.map(texts.doubled),
      ];
      setText(fault, sentences.join(" "));
      fault.hidden = sentences.length === 0;
      if (sentences.length > 0) root.open = true;
      return sentences.length === 0;
    },
  };
}
