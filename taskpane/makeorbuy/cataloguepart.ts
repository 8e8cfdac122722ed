import {
  type ChainChoice,
  compareSources,
  joinTornados,
  type MakerFault,
  type Rates,
  type ReadDesign,
  tornado,
} from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import type { DoneEvents } from "../controls/ended";
import { faultList } from "../controls/faultlist";
import { whileWorking } from "../controls/pressstep";
import { progress } from "../controls/progress";
import { type Chosen, readInSlices } from "../designtable/chosendesigns";
import { designPart } from "../designtable/designpart";
import { inSlices, type Slicing } from "../running/slices";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { type ManyChains, manyView, type WorkingButton } from "./manyview";
import { askedMakers, type ReadMakers, unreadOf } from "./readmakers";

const { catalogue: texts } = SOURCING_TEXTS;

export interface CataloguePart {
  readonly root: HTMLElement;
  /** It has come to be seen: offers the tables there are now. */
  opened(): Promise<void>;
  /** Rates or price lists may be others: what was compared by the ones before is taken away. */
  follow(rates: Rates | undefined, makers: ReadMakers): void;
  draw(): void;
}

/** Every design of a catalogue: the same designs that the view Catalogue reads. */
export function cataloguePart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly done: DoneEvents["done"];
  readonly note: DoneEvents["note"];
  readonly put: (chains: ManyChains, working: WorkingButton) => void;
}): CataloguePart {
  const designs = designPart(
    { attempt: on.attempt, chosen: choose, added: async () => {}, done: on.done, note: on.note },
    "sourcing-designs",
  );
  const press = button(texts.press, "outline", () => void on.attempt(compare));
  const actions = element("div", { class: "actions" }, press.root);
  const working = progress(on.note);
  const refused = faultList();
  const view = manyView(texts.nameHead, on.put);
  let rates: Rates | undefined;
  let makers: ReadMakers = { lists: undefined, refused: "" };
  let basis = "";
  actions.hidden = true;

  function choose(chosen: Chosen | undefined): void {
    actions.hidden = chosen === undefined;
    forget();
  }

  function forget(): void {
    view.show(undefined);
    refused.show([]);
  }

  async function compare(): Promise<void> {
    const now = rates;
    if (!now) return on.note(SOURCING_TEXTS.ratesFirst);
    return whileWorking(press, texts.pressing, async () => {
      const chosen = await designs.readAgain();
      if (!chosen) return;
      const made = await working.follow((slicing) => compareInSlices(chosen, now, makers, slicing));
      if (!made) return;
      refused.show(made.refused.slice(0, MOST_FAULTS), texts.refused(made.refused.length));
      view.show(made.chains);
      if (!made.chains) on.note(texts.noLines);
    });
  }

  return {
    root: element(
      "div",
      { class: "listpart" },
      designs.root,
      element("p", { class: "help" }, texts.quantityNote),
      actions,
      working.root,
      refused.root,
      view.root,
    ),
    opened: designs.refresh,
    follow(nowRates, nowMakers) {
      const before = basis;
      basis = JSON.stringify([nowRates, nowMakers]);
      [rates, makers] = [nowRates, nowMakers];
      if (basis !== before) forget();
    },
    draw: view.draw,
  };
}

/** More sentences than these say no more. */
const MOST_FAULTS = 20;

interface Compared {
  readonly chains: ManyChains | undefined;
  readonly refused: readonly string[];
}

/** Reads and compares the designs, a slice at a time. Errors: Cancelled. */
async function compareInSlices(
  chosen: Chosen,
  rates: Rates,
  makers: ReadMakers,
  { progress: told, signal }: Slicing,
): Promise<Compared> {
  const read = await readInSlices(chosen, rates, { progress: (share) => told(share / 4), signal });
  const choices = read.flatMap((design) => choiceOf(design, rates, makers));
  const parts = await inSlices(
    choices,
    (slice) => ({
      all: slice.map(({ name, choice }) => ({ name, said: compareSources(choice) })),
      tornado: tornado(
        slice.map(({ choice }) => choice),
        rates,
      ),
    }),
    { progress: (share) => told((1 + 3 * share) / 4), signal },
  );
  const refused = read.flatMap((design, row) =>
    design.kind === "refused" ? [`${texts.row(row + 1, design.design)}: ${design.error.message}`] : [],
  );
  if (parts.length === 0) return { chains: undefined, refused };
  return {
    chains: {
      all: parts.flatMap(({ all }) => all),
      tornado: joinTornados(parts.map((part) => part.tornado)),
      rates,
      unread: unreadOf(
        makers,
        choices.flatMap(({ unreadRows }) => unreadRows),
      ),
      skipped: refused.length,
    },
    refused,
  };
}

function choiceOf(
  design: ReadDesign,
  rates: Rates,
  makers: ReadMakers,
): readonly {
  readonly name: string;
  readonly choice: ChainChoice;
  readonly unreadRows: readonly MakerFault[];
}[] {
  if (design.kind !== "read") return [];
  const { line } = design;
  const { sellers, unreadRows } = askedMakers(makers, line, rates);
  return [{ name: design.design, choice: { line, sellers, spot: rates.spot, rates }, unreadRows }];
}
