import { PRICE_COLUMN_KEYS } from "../../src/index";
import { button } from "../button";
import { element } from "../element";
import type { Addition } from "../excel/catalogue/additions";
import { putPriceList, SHORT_COLUMNS } from "../excel/catalogue/pricelist";
import { field } from "../field";
import { TEXTS } from "../texts";
import type { Chosen } from "./chosen";

const texts = TEXTS.catalogue.list;

export interface ListPart {
  readonly root: HTMLElement;
  show(chosen: Chosen): void;
}

/** A price list in the workbook, which follows the designs and Rates. */
export function listPart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly chosen: () => Promise<Chosen | undefined>;
  readonly added: (addition: Addition) => Promise<void>;
  readonly done: (sentence: string, sheet?: string) => void;
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
  const root = element(
    "details",
    { class: "task" },
    element("summary", {}, texts.title),
    element("p", { class: "help" }, texts.about),
    renamed,
    columns.root,
    element("div", { class: "actions" }, make.root),
  );

  async function put(): Promise<void> {
    make.work(texts.making);
    try {
      const chosen = await on.chosen();
      if (!chosen) return;
      const { designs, headers, direct } = chosen;
      const shown = columns.control.value === "all" ? PRICE_COLUMN_KEYS : SHORT_COLUMNS;
      const addition = await putPriceList({ designs, headers, direct, columns: shown });
      await on.added(addition);
      on.done(texts.made(addition.sheet), addition.sheet);
    } finally {
      make.rest();
    }
  }

  return {
    root,
    show({ direct }) {
      renamed.hidden = direct;
    },
  };
}
