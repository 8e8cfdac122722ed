import { checkAsking, type ListReading, Quotient, type Rates } from "../../src/index";
import { linkButton } from "../controls/button";
import { element, setText } from "../controls/element";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { showNumber } from "../wording/display";

const { list: texts } = ASKING_TEXTS;

export interface ListOutcome {
  readonly root: HTMLElement;
  /** @param taken rows of it that were taken in just now */
  show(reading: ListReading, rates: Rates, today: string, taken: ReadonlySet<number>): void;
  clear(): void;
}

/** A row of the list is counted with its headers, as the person counts. */
const FIRST_ROW = 2;
/** Rows told of before the others are asked for. */
const SHOWN = 6;

/** What can be taken in of a list, and row by row what cannot, and why. */
export function listOutcome(): ListOutcome {
  const headcount = element("p", { class: "headcount", role: "status" });
  const details = element("div", { class: "outcome" });
  const root = element("div", { class: "outcome" }, headcount, details);

  function told(
    entries: readonly { readonly row: number; readonly said: readonly string[] }[],
    lead: string,
  ): HTMLElement | undefined {
    if (entries.length === 0) return undefined;
    const list = element("ul", {});
    const fill = (count: number) =>
      list.replaceChildren(
        ...entries
          .slice(0, count)
          .map(({ row, said }) => element("li", {}, `${texts.row(row + FIRST_ROW)}: ${said.join(" ")}`)),
      );
    fill(SHOWN);
    const all = linkButton(texts.showAll(entries.length), () => {
      fill(entries.length);
      all.remove();
    });
    return element(
      "div",
      { class: "listed" },
      lead === "" ? undefined : element("p", {}, lead),
      list,
      entries.length > SHOWN ? all : undefined,
    );
  }

  return {
    root,
    show({ ready, refused, doubles: found }, rates, today, taken) {
      const doubles = found.filter(({ row }) => !taken.has(row));
      const all = ready.length + refused.length + doubles.length;
      const below = ready.filter(({ seen }) =>
        checkAsking(seen, seen.spot ?? rates.spot).premium.perGram.isNegative(),
      ).length;
      const spotless = ready.filter(({ seen }) => !seen.spot);
      const older = spotless.filter(({ seen }) => seen.date !== today).length;
      const sentences = [
        ready.length === 0
          ? taken.size > 0
            ? texts.stillOut(refused.length)
            : texts.none
          : texts.outcome(count(ready.length), texts.rows(all)),
        ...(below > 0 ? [texts.belowMelt(below)] : []),
        ...(older > 0 ? [texts.olderSpot(older)] : []),
        ...(spotless.length > older ? [texts.todaySpot] : []),
      ];
      const [first = "", ...others] = sentences;
      setText(headcount, first);
      headcount.hidden = false;
      details.replaceChildren(
        ...[
          ...others.map((sentence) => element("p", { class: "help" }, sentence)),
          told(
            refused.map(({ row, sentences: said }) => ({ row, said: said.map((each) => `${each}.`) })),
            ready.length === 0 && taken.size > 0 ? "" : texts.refused(refused.length),
          ),
          told(
            doubles.map(({ row, as }) => ({
              row,
              said: [as === undefined ? texts.doubleKept : texts.doubleOf(as + FIRST_ROW)],
            })),
            texts.doubles(doubles.length),
          ),
        ].filter((each) => each !== undefined),
      );
    },
    clear() {
      headcount.hidden = true;
      details.replaceChildren();
    },
  };
}

function count(whole: number): string {
  return showNumber(Quotient.of(whole));
}
