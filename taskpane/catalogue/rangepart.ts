import {
  CostingError,
  minorDigits,
  type NumberRule,
  type Quotient,
  type Rates,
  readNumber,
  spotMove,
} from "../../src/index";
import { button } from "../button";
import { showCellDate, showShare, showSpot, today } from "../display";
import { element } from "../element";
import type { Addition } from "../excel/catalogue/additions";
import { putValueSheet } from "../excel/catalogue/pricesheet";
import { dateSerial } from "../excel/fields";
import { field } from "../field";
import { figure } from "../plots/figure";
import { TEXTS } from "../texts";
import type { Chosen } from "./chosen";
import { progress } from "./progress";
import { rangePlot } from "./rangeplot";
import { Cancelled } from "./slices";
import { rangeInSlices, type SpotRange } from "./spotrange";

const texts = TEXTS.catalogue.range;

export interface RangePart {
  readonly root: HTMLElement;
  /** Rates or designs are others now: what was shown is no longer theirs. */
  forget(): void;
}

const STEP: NumberRule = { share: true, above: "0", most: "0.2", right: "a share up to 20 %, such as 0.05 or 5 %" };
/** To either side: four steps of the largest share still leave a spot above zero. */
const STEPS = 4;

/** The catalogue at a range of spots: a plot in the pane, and every price on a sheet. */
export function rangePart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly chosen: () => Promise<Chosen | undefined>;
  readonly rates: () => { readonly rates: Rates | undefined };
  readonly added: (addition: Addition) => Promise<void>;
  readonly done: (sentence: string, sheet?: string) => void;
}): RangePart {
  const step = field({ id: "range-step", label: texts.step, numeric: true, start: "5 %", help: texts.stepHelp });
  const see = button(texts.see, "outline", () => void on.attempt(reckon));
  const put = button(texts.put, "outline", () => void on.attempt(lay));
  const plot = figure();
  const shown = element("div", { class: "plots" }, plot.root, element("div", { class: "actions" }, put.root));
  shown.hidden = true;
  const working = progress(on.done);
  const root = element(
    "details",
    { class: "task" },
    element("summary", {}, texts.title),
    element("p", { class: "help" }, texts.about),
    step.root,
    element("div", { class: "actions" }, see.root),
    working.root,
    shown,
  );
  let current: { readonly range: SpotRange; readonly rates: Rates } | undefined;

  const draw = () => {
    if (current && shown.clientWidth > 0) plot.show(rangePlot(current.range, current.rates, shown.clientWidth));
  };
  new ResizeObserver(draw).observe(shown);
  step.control.addEventListener("input", () => step.setFault(""));

  function stepNow(): Quotient | undefined {
    try {
      return readNumber(step.control.value, texts.step, STEP);
    } catch (error) {
      if (!(error instanceof CostingError)) throw error;
      step.setFault(error.message);
      step.control.focus();
      return undefined;
    }
  }

  async function reckon(): Promise<void> {
    const { rates } = on.rates();
    if (!rates) return on.done(TEXTS.catalogue.ratesFirst);
    const share = stepNow();
    if (!share) return;
    see.work(texts.seeing);
    try {
      const chosen = await on.chosen();
      const range = chosen && (await working.follow((slicing) => rangeInSlices(chosen, rates, share, STEPS, slicing)));
      if (!range) return;
      if (range.lines.length === 0) return on.done(TEXTS.catalogue.spot.noLines);
      current = { range, rates };
      shown.hidden = false;
      draw();
    } finally {
      see.rest();
    }
  }

  async function lay(): Promise<void> {
    if (!current) return;
    const { range, rates } = current;
    const digits = minorDigits(rates.currency);
    put.work(texts.putting);
    try {
      const addition = await working.follow(({ progress: told, signal }) =>
        putValueSheet({
          what: "spots",
          name: texts.name,
          title: texts.name,
          notes: [texts.dated(showCellDate(dateSerial(today())), showSpot(rates.spot)), texts.belowNote],
          columns: [
            { head: TEXTS.catalogue.sheet.heads.design(), kind: "text", decimals: 0, width: 190 },
            ...range.at.map(({ spot }) => ({
              head: spot.amount.rounded(digits).toNumber(),
              kind: "figure" as const,
              decimals: digits,
              width: 82,
            })),
          ],
          rows: [
            [texts.change, ...range.at.map(({ spot }) => signed(spotMove(rates.spot, spot)))],
            [texts.belowHead, ...range.at.map(({ belowFloor }) => String(belowFloor))],
            ...range.lines.map(({ design, prices }) => [
              design,
              ...prices.map((price) => price.rounded(digits).toNumber()),
            ]),
          ],
          wrote: async (share) => {
            told(share);
            // The button is heard between two blocks.
            await new Promise((resolve) => setTimeout(resolve));
            if (signal.aborted) throw new Cancelled();
          },
        }),
      );
      if (!addition) return;
      await on.added(addition);
      on.done(TEXTS.catalogue.sheet.made(addition.sheet), addition.sheet);
    } finally {
      put.rest();
    }
  }

  return {
    root,
    forget() {
      current = undefined;
      shown.hidden = true;
    },
  };
}

function signed(share: Quotient): string {
  return share.isZero() ? texts.today : `${share.isNegative() ? "" : "+"}${showShare(share)}`;
}
