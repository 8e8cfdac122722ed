import { BUDGET_LABELS, type Budget, type BudgetKey, parseBudget } from "../../src/index";
import { answerBox } from "../controls/answerbox";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { stepEnding, wayTo } from "../controls/ending";
import { spokenNote } from "../controls/note";
import { readForm } from "../controls/readform";
import { table } from "../controls/table";
import { putBudget } from "../excel/cashplan/budgetsheet";
import { takeOut } from "../excel/tables/additions";
import { askedPiece, type DecideEvents } from "../views/askedpiece";
import type { Working } from "../views/lazypart";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { BUDGET_GROUPS } from "./budgetfields";
import { budgetWords, pieceRows, stepRows } from "./budgetmessages";
import { isAsTaken, type TakenBudget, takenBudget } from "./budgetorder";

const { budget: texts } = DECIDE_TEXTS;

/** Cash before the first sale, what the cash at hand carries, the first pieces; and all of it on a sheet. */
export function openBudget(place: HTMLElement, on: DecideEvents): Working {
  const said = answerBox();
  const note = spokenNote();
  const ending = stepEnding();
  const form = readForm<BudgetKey, Budget>(
    {
      name: "budget",
      title: texts.form,
      groups: BUDGET_GROUPS,
      labels: BUDGET_LABELS,
      parse(typed) {
        const { rates } = on.rates();
        return rates && parseBudget(typed, rates);
      },
    },
    { changed, submitted: () => void form.ask(), lacking: note.say },
  );
  const fromOrder = button(texts.take, "outline", fill, "small");
  const put = button(texts.put, "outline", () => void on.attempt(write), "small");
  let taken: TakenBudget | undefined;

  function changed(): void {
    note.say("");
    show();
  }

  function show(): void {
    const budget = form.read();
    put.root.hidden = budget === undefined;
    if (!budget) {
      said.show([]);
      return;
    }
    const { pieces, line } = texts;
    const { currency } = budget.price;
    said.show(
      budgetWords(budget),
      element("h4", {}, pieces.title(currency)),
      table(pieces.title(currency), [pieces.piece, pieces.carried, pieces.spread, pieces.left], pieceRows(budget)).root,
      element(
        "details",
        { class: "steps", open: below?.open ?? false },
        element("summary", {}, line.title(currency)),
        table(line.title(currency), [line.step, line.change, line.cash], stepRows(budget)).root,
      ),
    );
    below = said.root.querySelector<HTMLDetailsElement>("details.steps") ?? undefined;
  }
  /** The steps, as unfolded as a person left them. */
  let below: HTMLDetailsElement | undefined;

  function fill(): void {
    const piece = askedPiece(on);
    if (!piece) {
      note.failed(texts.notTaken);
      return;
    }
    taken = takenBudget(piece);
    form.fill(taken.texts);
    show();
    note.say(texts.took(piece.sheet.line.design));
  }

  async function write(): Promise<void> {
    const budget = form.ask();
    if (!budget) return;
    put.work(texts.putting);
    try {
      const metal = isAsTaken(taken, form.counted(), "metal") ? taken?.metal : undefined;
      const { id, sheet } = await putBudget(budget, metal);
      showMade(id, sheet);
    } finally {
      put.rest();
    }
  }

  function showMade(id: string, sheet: string): void {
    const out = () =>
      void on.attempt(async () => {
        await takeOut(id);
        ending.clear();
        note.say(texts.taken(sheet));
      });
    const sentence = texts.made(sheet);
    ending.show({ kind: "done", sentence, ways: [wayTo(sheet, on.goTo), { words: texts.takeOut, press: out }] });
  }

  place.replaceChildren(
    element(
      "div",
      { class: "decidepart" },
      element("div", { class: "actions" }, fromOrder.root),
      form.root,
      note.root,
      said.root,
      element("div", { class: "actions" }, put.root),
      ending.root,
      element(
        "div",
        { class: "cautions" },
        ...texts.cautions.map((words) => element("p", { class: "caution" }, words)),
      ),
    ),
  );
  return {
    follow() {
      const { rates } = on.rates();
      if (rates) form.adapt(rates);
      show();
    },
  };
}
