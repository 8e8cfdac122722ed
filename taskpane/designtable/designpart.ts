import { button, linkButton } from "../controls/button";
import { element, setText } from "../controls/element";
import { countsOf, type DoneEvents } from "../controls/ended";
import { field } from "../controls/field";
import { whileWorking } from "../controls/pressstep";
import { beginCatalogue, CATALOGUE_TABLE } from "../excel/designs/blankcatalogue";
import { type Designs, type DesignsChoice, listTables, readChosen } from "../excel/designs/designs";
import type { Addition } from "../excel/tables/additions";
import { TEXTS } from "../wording/texts";
import { type Chosen, chosenOf } from "./chosendesigns";
import { columnList } from "./columnlist";

const texts = TEXTS.catalogue.designs;

export interface DesignPart {
  readonly root: HTMLElement;
  /** Offers the tables there are now. */
  refresh(): Promise<void>;
  /** Reads the designs chosen before anew, with the columns as they were confirmed. */
  readAgain(): Promise<Chosen | undefined>;
}

/**
 * Where the designs are, and what their columns are.
 * @param name begins the ids of its elements, so that two views may have one each
 */
export function designPart(
  on: {
    readonly attempt: (step: () => Promise<void>) => Promise<void>;
    readonly chosen: (chosen: Chosen | undefined) => void;
    readonly added: (addition: Addition) => Promise<void>;
    readonly done: DoneEvents["done"];
    readonly note: DoneEvents["note"];
  },
  name = "designs",
): DesignPart {
  const from = field({ id: `${name}-from`, label: texts.from, choices: [] });
  const summary = element("p", { class: "summaryline", role: "status" });
  summary.hidden = true;
  let read: Designs | undefined;
  let chosen: Chosen | undefined;
  const columns = columnList({
    used: (matches) => choose(read && chosenOf(read, matches)),
    unused: () => choose(undefined),
  });
  const reading = button(texts.read, "outline", () => void on.attempt(take));
  const blank = linkButton(texts.blank, () => void on.attempt(begin));
  const root = element(
    "section",
    { class: "designs", "aria-labelledby": `${name}-title` },
    element("h3", { id: `${name}-title` }, texts.title),
    element("p", { class: "help" }, texts.help),
    from.root,
    element("div", { class: "actions" }, reading.root, blank),
    summary,
    columns.root,
  );

  function choose(now: Chosen | undefined): void {
    chosen = now;
    on.chosen(now);
  }

  function choice(): DesignsChoice {
    const { value } = from.control;
    return value === "" ? { kind: "selection" } : { kind: "table", name: value };
  }

  async function take(): Promise<void> {
    return whileWorking(reading, texts.reading, async () => {
      const designs = await readChosen(choice());
      read = designs;
      setText(summary, texts.summary(texts.rows(designs.cells.length - 1), designs.table ?? designs.sheet));
      summary.hidden = false;
      columns.show(designs);
    });
  }

  async function begin(): Promise<void> {
    blank.disabled = true;
    setText(blank, texts.beginning);
    try {
      const addition = await beginCatalogue();
      on.done(texts.begun(addition.sheet), countsOf(addition.looked), addition.sheet);
      await on.added(addition);
      await refresh();
      from.fill(CATALOGUE_TABLE);
      await take();
    } finally {
      blank.disabled = false;
      setText(blank, texts.blank);
    }
  }

  async function refresh(): Promise<void> {
    const tables = await listTables();
    from.offer([
      ...tables.map((table) => ({ value: table, shown: texts.table(table) })),
      { value: "", shown: texts.selection },
    ]);
  }

  return {
    root,
    refresh,
    async readAgain() {
      if (!read || !chosen) return undefined;
      // A selection moves on: the cells read then are read again by their place.
      const designs = await readChosen(
        read.table === undefined ? { kind: "range", of: read } : { kind: "table", name: read.table },
      );
      const same = JSON.stringify(designs.cells[0]) === JSON.stringify(read.cells[0]);
      read = designs;
      if (!same) {
        columns.show(designs);
        return chosen;
      }
      chosen = chosenOf(designs, chosen.matches);
      setText(summary, texts.summary(texts.rows(designs.cells.length - 1), designs.table ?? designs.sheet));
      return chosen;
    },
  };
}
