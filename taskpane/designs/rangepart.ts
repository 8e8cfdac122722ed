import { minorDigits, type Quotient, type Rates, spotMove } from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { countsOf, type DoneEvents } from "../controls/ended";
import { whileWorking } from "../controls/pressstep";
import { progress } from "../controls/progress";
import type { Chosen } from "../designtable/chosendesigns";
import { putValueSheet } from "../excel/designs/pricesheet";
import type { Addition } from "../excel/tables/additions";
import { dateSerial } from "../excel/template/fields";
import { figure } from "../plots/figure";
import { pause } from "../running/slices";
import { showCellDate, showMove, showSpot, today } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { rangePlot } from "./rangeplot";
import { rangeSpots } from "./rangespots";
import { rangeInSlices, type SpotRange } from "./spotrange";

const texts = TEXTS.catalogue.range;

export interface RangePart {
  readonly root: HTMLElement;
  /** Rates or designs are others now: what was shown is no longer theirs. */
  forget(): void;
}

/** The catalogue at a range of spots: a plot in the pane, and every price on a sheet. */
export function rangePart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly chosen: () => Promise<Chosen | undefined>;
  readonly rates: () => { readonly rates: Rates | undefined };
  readonly added: (addition: Addition) => Promise<void>;
  readonly done: DoneEvents["done"];
  readonly note: DoneEvents["note"];
}): RangePart {
  const spots = rangeSpots(() => forget());
  const see = button(texts.see, "outline", () => void on.attempt(reckon));
  const put = button(texts.put, "outline", () => void on.attempt(lay));
  const plot = figure();
  const shown = element("div", { class: "plots" }, plot.root, element("div", { class: "actions" }, put.root));
  shown.hidden = true;
  const working = progress(on.note);
  const root = element(
    "details",
    { class: "task" },
    element("summary", {}, texts.title),
    element("p", { class: "help" }, texts.about),
    spots.root,
    element("div", { class: "actions" }, see.root),
    working.root,
    shown,
  );
  let current: { readonly range: SpotRange; readonly rates: Rates } | undefined;

  const draw = () => {
    if (current && shown.clientWidth > 0) plot.show(rangePlot(current.range, current.rates, shown.clientWidth));
  };
  new ResizeObserver(draw).observe(shown);
  function forget(): void {
    current = undefined;
    shown.hidden = true;
  }

  async function reckon(): Promise<void> {
    const { rates } = on.rates();
    if (!rates) return on.note(TEXTS.catalogue.ratesFirst);
    const asked = spots.read(rates);
    if (!asked) return;
    return whileWorking(see, texts.seeing, async () => {
      const chosen = await on.chosen();
      const range = chosen && (await working.follow((slicing) => rangeInSlices(chosen, rates, asked, slicing)));
      if (!range) return;
      if (range.lines.length === 0) return on.note(TEXTS.catalogue.spot.noLines);
      current = { range, rates };
      shown.hidden = false;
      draw();
    });
  }

  async function lay(): Promise<void> {
    if (!current) return;
    const { range, rates } = current;
    const digits = minorDigits(rates.currency);
    return whileWorking(put, texts.putting, async () => {
      const addition = await working.follow(({ progress: told, signal }) =>
        putValueSheet({
          what: "spots",
          name: texts.name,
          title: texts.name,
          notes: [
            texts.dated(showCellDate(dateSerial(today())), showSpot(rates.spot)),
            texts.belowNote,
            ...(range.as.length > 0 ? [texts.monthsNote] : []),
          ],
          columns: [
            { head: TEXTS.catalogue.sheet.heads.design(), kind: "text", decimals: 0, width: 190 },
            ...range.at.map(({ spot }) => ({
              head: spot.amount.rounded(digits).toNumber(),
              kind: "figure" as const,
              decimals: digits,
              width: range.as.length > 0 ? 170 : 82,
            })),
          ],
          rows: [
            [texts.change, ...range.at.map(({ spot }) => signed(spotMove(rates.spot, spot)))],
            ...(range.as.length > 0 ? [[texts.asIn, ...range.as]] : []),
            [texts.belowHead, ...range.at.map(({ belowFloor }) => String(belowFloor))],
            ...range.lines.map(({ design, prices }) => [
              design,
              ...prices.map((price) => price.rounded(digits).toNumber()),
            ]),
          ],
          wrote: async (share) => {
            told(share);
            await pause(signal);
          },
        }),
      );
      if (!addition) return;
      const left = range.refused > 0 ? [TEXTS.catalogue.sheet.leftOut(range.refused)] : [];
      const counts = countsOf(addition.looked, { rows: range.refused, sentences: left });
      on.done(TEXTS.catalogue.sheet.made(addition.sheet), counts, addition.sheet);
      await on.added(addition);
    });
  }

  return {
    root,
    forget,
  };
}

function signed(share: Quotient): string {
  return share.isZero() ? texts.today : showMove(share);
}
