import { countsOf, type Ended, type Way, wayTo, wrote } from "../controls/ended";
import type { Looked } from "../excel/looked";
import type { Filled } from "../excel/quote/fillquote";
import { showList } from "../wording/display";
import { TEXTS } from "../wording/texts";

const { make } = TEXTS;

/** A quote was made. */
export function quoteMade(filled: Filled, goTo: (sheet: string) => void): Ended {
  const unplaced = showList(filled.unplacedFields.map((each) => `{{${each}}}`));
  const counts = {
    of: SHEETS,
    written: SHEETS,
    faults: [
      ...filled.errors.map(make.errorValue),
      ...shownOn(filled.jobSheet, filled.looked.job),
      ...shownOn(filled.ticketsSheet, filled.looked.tickets),
    ],
  };
  return wrote(make.done(filled.quoteSheet, filled.jobSheet, filled.ticketsSheet), counts, {
    remarks: [
      ...(filled.isSigned ? [] : [make.unsigned]),
      ...filled.unknownFields.map(make.unknownField),
      ...(unplaced === "" ? [] : [make.unplaced(unplaced)]),
      ...filled.formulaFields.map(make.formulaField),
    ],
    ways: waysTo(filled, goTo),
  });
}

/** Quote, job and tickets. */
const SHEETS = 3;

/** What a sheet of formulas shows that is no figure, with the sheet's name before it. */
function shownOn(sheet: string, looked: Looked): readonly string[] {
  return countsOf(looked).faults.map((fault) => make.shownOn(sheet, fault));
}

/** A quote that was made before, with the way to its sheets and to a revision of it. */
export function quoteThere(
  filled: Filled,
  sentence: string,
  on: { readonly goTo: (sheet: string) => void; readonly revise: () => void },
): Ended {
  const revise: Way = { words: make.revise, press: on.revise };
  return { kind: "noted", sentence, ways: [...waysTo(filled, on.goTo), revise] };
}

function waysTo({ quoteSheet, jobSheet, ticketsSheet }: Filled, goTo: (sheet: string) => void): readonly Way[] {
  return [
    wayTo(quoteSheet, goTo, make.showQuote),
    wayTo(jobSheet, goTo, make.showJob),
    wayTo(ticketsSheet, goTo, make.showTickets),
  ];
}
