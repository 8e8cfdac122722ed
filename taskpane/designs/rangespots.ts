import {
  CostingError,
  LARGEST_MONTHLY_MOVES,
  type Money,
  type MonthlyMove,
  money,
  type NumberRule,
  Quotient,
  type Rates,
  readNumber,
  spotMove,
  spotMovedAs,
  spotsAround,
} from "../../src/index";
import { element } from "../controls/element";
import { field } from "../controls/field";
import { showMonth, showShare } from "../wording/display";
import { TEXTS } from "../wording/texts";
import type { SpotsAsked } from "./spotrange";

const texts = TEXTS.catalogue.range;

export interface RangeSpots {
  readonly root: HTMLElement;
  /** The spots asked for; undefined where the step is at fault, which is told at its field. */
  read(rates: Rates): SpotsAsked | undefined;
}

const STEP: NumberRule = { share: true, above: "0", most: "0.2", right: "a share up to 20 %, such as 0.05 or 5 %" };
/** To either side: four steps of the largest share still leave a spot above zero. */
const STEPS = 4;

/** Which spots a catalogue is reckoned at: even steps, or what gold's own months came to. */
export function rangeSpots(changed: () => void): RangeSpots {
  const kind = field({
    id: "range-spots",
    label: texts.spots,
    choices: [
      { value: "steps", shown: texts.steps },
      { value: "months", shown: texts.months },
    ],
  });
  const step = field({ id: "range-step", label: texts.step, numeric: true, start: "5 %", help: texts.stepHelp });
  const months = element("p", { class: "help" }, monthsHelp());
  const root = element("div", { class: "rangespots" }, kind.root, step.root, months);
  const isByMonths = () => kind.control.value === "months";
  const adapt = () => {
    step.root.hidden = isByMonths();
    months.hidden = !isByMonths();
  };
  kind.control.addEventListener("change", () => {
    adapt();
    changed();
  });
  step.control.addEventListener("input", () => step.setFault(""));
  adapt();

  return {
    root,
    read({ spot }) {
      if (isByMonths()) return spotsOfMonths(spot);
      try {
        const share = readNumber(step.control.value, texts.step, STEP);
        return { spots: spotsAround(spot, share, STEPS), present: STEPS, as: [] };
      } catch (error) {
        if (!(error instanceof CostingError)) throw error;
        step.setFault(error.message);
        step.control.focus();
        return undefined;
      }
    },
  };
}

const { up: UP, down: DOWN } = LARGEST_MONTHLY_MOVES;

function spotsOfMonths(spot: Money): SpotsAsked {
  const spots = [spotMovedAs(spot, DOWN), spot, spotMovedAs(spot, UP)];
  return { spots, present: 1, as: [monthsOf(DOWN), "", monthsOf(UP)] };
}

function monthsOf({ from, to }: MonthlyMove): string {
  return texts.monthToMonth(showMonth(from), showMonth(to));
}

function monthsHelp(): string {
  const [up, down] = [UP, DOWN].map(({ before, after }) => {
    const move = spotMove(money(Quotient.of(before), "USD"), money(Quotient.of(after), "USD"));
    return showShare(move.isNegative() ? Quotient.zero.minus(move) : move);
  });
  return texts.monthsHelp(up ?? "", monthsOf(UP), down ?? "", monthsOf(DOWN));
}
