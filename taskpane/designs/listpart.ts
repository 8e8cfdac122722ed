import { PRICE_COLUMN_KEYS, priceDesign, type Rates } from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { countsOf, type DoneEvents } from "../controls/ended";
import { field } from "../controls/field";
import { whileWorking } from "../controls/pressstep";
import { progress } from "../controls/progress";
import { type Chosen, readInSlices } from "../designtable/chosendesigns";
import { addColumns } from "../excel/designs/addcolumns";
import { putPriceList, SHORT_COLUMNS } from "../excel/designs/pricelist";
import type { Addition } from "../excel/tables/additions";
import { inSlices, pause } from "../running/slices";
import { TEXTS } from "../wording/texts";

const texts = TEXTS.catalogue.list;

export interface ListPart {
  readonly root: HTMLElement;
  show(chosen: Chosen): void;
}

/** A price list in the workbook, which follows the designs and Rates. */
export function listPart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly chosen: () => Promise<Chosen | undefined>;
  readonly rates: () => { readonly rates: Rates | undefined };
  readonly added: (addition: Addition) => Promise<void>;
  readonly done: DoneEvents["done"];
  readonly note: DoneEvents["note"];
}): ListPart {
  const columns = field({
    id: "list-columns",
    label: texts.columns,
    choices: [
      { value: "short", shown: texts.short },
      { value: "all", shown: texts.all },
    ],
  });
  const renamed = element("p", { class: "help" }, texts.renamed);
  const make = button(texts.make, "outline", () => void on.attempt(put));
  const beside = button(texts.beside, "outline", () => void on.attempt(add));
  const working = progress(on.note);
  const root = element(
    "details",
    { class: "task" },
    element("summary", {}, texts.title),
    element("p", { class: "help" }, texts.about),
    renamed,
    columns.root,
    element("div", { class: "actions" }, make.root),
    element("p", { class: "help apart" }, texts.besideAbout),
    element("div", { class: "actions" }, beside.root),
    working.root,
  );

  async function add(): Promise<void> {
    const { rates } = on.rates();
    if (!rates) return on.note(TEXTS.catalogue.ratesFirst);
    return whileWorking(beside, texts.adding, async () => {
      const chosen = await on.chosen();
      if (!chosen) return;
      const made = await working.follow(async ({ progress: told, signal }) => {
        const designs = await readInSlices(chosen, rates, { progress: (share) => told(share / 4), signal });
        const parts = await inSlices(designs, (slice) => slice.map((design) => priceDesign(design, rates)), {
          progress: (share) => told((1 + share) / 4),
          signal,
        });
        const priced = parts.flat();
        const addition = await addColumns({
          designs: chosen.designs,
          headers: chosen.headers,
          direct: chosen.direct,
          priced,
          rates,
          wrote: async (share) => {
            told((1 + share) / 2);
            await pause(signal);
          },
        });
        return { addition, priced };
      });
      if (!made) return;
      const { looked, sheet } = made.addition;
      const count = made.priced.filter(({ kind }) => kind === "priced").length;
      const refused = made.priced.filter(({ kind }) => kind === "refused").length;
      const left = { rows: 0, sentences: refused > 0 ? [texts.leftOut(refused)] : [] };
      on.done(texts.added(TEXTS.catalogue.designs.rows(count), sheet), countsOf(looked, left), sheet);
      await on.added(made.addition);
    });
  }

  async function put(): Promise<void> {
    return whileWorking(make, texts.making, async () => {
      const chosen = await on.chosen();
      if (!chosen) return;
      const { designs, headers, direct } = chosen;
      const shown = columns.control.value === "all" ? PRICE_COLUMN_KEYS : SHORT_COLUMNS;
      const addition = await putPriceList({ designs, headers, direct, columns: shown });
      on.done(texts.made(addition.sheet), countsOf(addition.looked), addition.sheet);
      await on.added(addition);
    });
  }

  return {
    root,
    show({ direct }) {
      renamed.hidden = direct;
    },
  };
}
