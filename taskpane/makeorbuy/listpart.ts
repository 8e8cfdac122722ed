import {
  type ChainChoice,
  compareSources,
  grams,
  type ListedKey,
  type ListedWeight,
  lineOfWeight,
  type OrderLine,
  parseListedChain,
  type Rates,
  readWeightList,
  tornado,
  winningRanges,
} from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { faultList } from "../controls/faultlist";
import { formElement, plannedForm } from "../controls/form";
import { formPlan, keysOf } from "../controls/formplan";
import { whileWorking } from "../controls/pressstep";
import { readSelectedWeights } from "../excel/makeorbuy/weightcells";
import { withLocalMark, withPoint } from "../wording/decimalmark";
import { showScale } from "../wording/shownweight";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { shownOfLine } from "./listline";
import { type ManyChains, manyView, type WorkingButton } from "./manyview";
import { askedMakers, type ReadMakers, unreadOf } from "./readmakers";

const { list: texts } = SOURCING_TEXTS;

/** The pane compares so many at once, while they are typed. */
const MOST = 60;

const { figure, mark, group } = formPlan<ListedKey>();
const GROUPS = [
  group("once", "", [mark("mark", "third"), mark("linkWeight", "third", { unit: "g" }), figure("quantity", "third")]),
];
const LABELS: Readonly<Record<ListedKey, string>> = texts;

export interface ListPart {
  readonly root: HTMLElement;
  /** @param ordered the open line of the order, where there is one */
  follow(rates: Rates | undefined, makers: ReadMakers, ordered: OrderLine | undefined): void;
  draw(): void;
}

/** A list of weights, typed or taken from the selected cells. */
export function listPart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly say: (sentence: string) => void;
  readonly put: (chains: ManyChains, working: WorkingButton) => void;
}): ListPart {
  const weights = element("textarea", { id: "sourcing-weights", rows: "3", spellcheck: "false" });
  const faults = faultList();
  const take = button(texts.take, "outline", () => void on.attempt(takeSelected), "small");
  const form = plannedForm({ name: "sourcing", groups: GROUPS, labels: LABELS }, { changed: show });
  const view = manyView(texts.nameHead, on.put);
  let rates: Rates | undefined;
  let makers: ReadMakers = { lists: undefined, refused: "" };
  let ordered: OrderLine | undefined;
  weights.addEventListener("input", show);

  function show(): void {
    if (!rates) return;
    const read = readWeightList(withPoint(weights.value, "figures"), texts.field);
    const line = read.length === 0 ? undefined : parseListedChain(form.counted(), ordered, rates);
    faults.show([
      ...read.flatMap((each) => (each.ok ? [] : [each.sentence])),
      ...(line && !line.ok ? line.faults.slice(0, 1).map(({ sentence }) => sentence) : []),
      ...(read.length > MOST ? [texts.tooMany(read.length, MOST)] : []),
    ]);
    view.show(line?.ok && read.length <= MOST ? chainsOf(line.value, read, rates, makers) : undefined);
  }

  async function takeSelected(): Promise<void> {
    return whileWorking(take, texts.taking, async () => {
      const cells = await readSelectedWeights();
      weights.value = cells.map((cell) => withLocalMark(String(cell), "figures")).join("\n");
      show();
      on.say(texts.taken(cells.length));
    });
  }

  return {
    root: element(
      "div",
      { class: "listpart" },
      element("div", { class: "label" }, element("label", { for: "sourcing-weights" }, texts.weights)),
      weights,
      element("p", { class: "help" }, texts.weightsHelp),
      element("div", { class: "actions" }, take.root),
      formElement({ class: "form", "aria-label": texts.fromOrder }, show, ...form.groups),
      element("p", { class: "help" }, texts.fromOrder),
      faults.root,
      view.root,
    ),
    follow(nowRates, nowMakers, nowOrdered) {
      [rates, makers, ordered] = [nowRates, nowMakers, nowOrdered];
      const usual = ordered && shownOfLine(ordered);
      for (const key of keysOf(GROUPS)) {
        form.field(key).setPlaceholder(usual ? withLocalMark(usual[key], "figure") : key === "quantity" ? "1" : "");
      }
      show();
    },
    draw: view.draw,
  };
}

/** The chains of a list that can be read, each compared; undefined where there are none. */
function chainsOf(
  line: OrderLine,
  read: readonly ListedWeight[],
  now: Rates,
  makers: ReadMakers,
): ManyChains | undefined {
  const { sellers, unreadRows } = askedMakers(makers, line, now);
  const named = read.flatMap((each) => {
    if (!each.ok) return [];
    const choice: ChainChoice = {
      line: lineOfWeight(line, each.weight, "more links"),
      sellers,
      spot: now.spot,
      rates: now,
    };
    return [{ name: showScale(grams(each.weight.grams)), choice }];
  });
  if (named.length === 0) return undefined;
  return {
    all: named.map(({ name, choice }) => ({ name, said: compareSources(choice) })),
    tornado: tornado(
      named.map(({ choice }) => choice),
      now,
    ),
    rates: now,
    unread: unreadOf(makers, unreadRows),
    skipped: read.length - named.length,
    ranges: winningRanges({ line, sellers, spot: now.spot, rates: now }, "more links"),
  };
}
