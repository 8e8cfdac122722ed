import { BUDGET_LABELS, type Budget, type BudgetKey, parseBudget } from "../../src/index";
import { answerBox } from "../controls/answerbox";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { countsOf, wayTo, wrote } from "../controls/ended";
import { stepEnding } from "../controls/ending";
import { type SpokenNote, spokenNote } from "../controls/note";
import { whileWorking } from "../controls/pressstep";
import { atRates, readForm } from "../controls/readform";
import { table } from "../controls/table";
import { putBudget } from "../excel/cashplan/budgetsheet";
import { takeOut } from "../excel/tables/additions";
import { askedPiece, type DecideEvents } from "../views/askedpiece";
import type { Working } from "../views/lazypart";
import { cautionsAt } from "../wording/cautions";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { BUDGET_GROUPS } from "./budgetfields";
import { budgetWords, pieceRows, stepRows } from "./budgetmessages";
import { isAsTaken, type TakenBudget, takenBudget, withTaken } from "./budgetorder";

const { budget: texts } = DECIDE_TEXTS;

/** Cash before the first sale, what the cash at hand carries, the first pieces; and all of it on a sheet. */
export function openBudget(place: HTMLElement, on: DecideEvents): Working {
  const note = spokenNote();
  const answer = budgetAnswer();
  const form = readForm<BudgetKey, Budget>(
    {
      name: "budget",
      title: texts.form,
      groups: BUDGET_GROUPS,
      labels: BUDGET_LABELS,
      parse: atRates(on.rates, parseBudget),
    },
    { changed, submitted: () => void form.ask(), lacking: note.say },
  );
  const fromOrder = button(texts.take, "outline", fill, "small");
  const put = budgetPut(on, note, () => {
    const budget = form.ask();
    const typed = form.counted();
    const metal = isAsTaken(taken, typed, "metal") ? taken?.metal : undefined;
    return budget && { budget: withTaken(budget, taken, typed), metal };
  });
  const cautions = cautionsAt("cash plan", ["tax"]).map((words) => element("p", { class: "caution" }, words));
  let taken: TakenBudget | undefined;
  place.replaceChildren(
    element(
      "div",
      { class: "decidepart" },
      element("div", { class: "actions" }, fromOrder.root),
      form.root,
      note.root,
      answer.root,
      ...put.parts,
      element("div", { class: "cautions" }, ...cautions),
    ),
  );

  function changed(): void {
    note.say("");
    show();
  }

  function show(): void {
    const budget = form.read();
    put.offer(budget !== undefined);
    answer.show(budget && withTaken(budget, taken, form.counted()));
  }

  function fill(): void {
    const piece = askedPiece(on);
    if (!piece) {
      note.failed(texts.notTaken);
      return;
    }
    const typed = form.counted();
    const isModelTyped = typed.models.trim() !== "" && !isAsTaken(taken, typed, "models");
    taken = takenBudget(piece);
    const { models, ...others } = taken.texts;
    form.fill(isModelTyped ? others : { models, ...others });
    show();
    note.say(texts.took(piece.sheet.line.design));
  }

  return {
    follow() {
      const { rates } = on.rates();
      if (rates) form.adapt(rates);
      show();
    },
  };
}

/** What a budget comes to, the first pieces, and every step folded away. */
function budgetAnswer() {
  const { pieces, line } = texts;
  const said = answerBox();
  const stepsTitle = element("summary");
  const firstPieces = table("", [pieces.piece, pieces.carried, pieces.spread, pieces.left]);
  const steps = table("", [line.step, line.change, line.cash]);
  // One element for all answers: it stays as unfolded as a person left it.
  const fold = element("details", { class: "steps" }, stepsTitle, steps.root);
  return {
    root: said.root,
    show(budget: Budget | undefined): void {
      if (!budget) {
        said.show([]);
        return;
      }
      const { currency } = budget.price;
      setText(stepsTitle, line.title(currency));
      firstPieces.name(pieces.title(currency));
      firstPieces.show(pieceRows(budget).map((cells) => ({ cells })));
      steps.name(line.title(currency));
      steps.show(stepRows(budget).map((cells) => ({ cells })));
      said.show(budgetWords(budget), element("h4", {}, pieces.title(currency)), firstPieces.root, fold);
    },
  };
}

/** Puts a budget on a sheet of its own, and takes it out again. */
function budgetPut(
  on: DecideEvents,
  note: SpokenNote,
  asked: () => { readonly budget: Budget; readonly metal: TakenBudget["metal"] | undefined } | undefined,
) {
  const ending = stepEnding();
  const put = button(texts.put, "outline", () => void on.attempt(write), "small");

  async function write(): Promise<void> {
    const wanted = asked();
    if (!wanted) return;
    return whileWorking(put, texts.putting, async () => {
      const { id, sheet, looked } = await putBudget(wanted.budget, wanted.metal);
      const out = { words: texts.takeOut, press: () => void on.attempt(() => takeSheetOut(id, sheet)) };
      ending.show(wrote(texts.made(sheet), countsOf(looked), { ways: [wayTo(sheet, on.goTo), out] }));
    });
  }

  async function takeSheetOut(id: string, sheet: string): Promise<void> {
    await takeOut(id);
    ending.clear();
    note.say(texts.taken(sheet));
  }

  return {
    parts: [element("div", { class: "actions" }, put.root), ending.root],
    offer(isThere: boolean): void {
      put.root.hidden = !isThere;
    },
  };
}
