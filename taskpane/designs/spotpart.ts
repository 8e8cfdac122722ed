import {
  joinRepricings,
  type Money,
  Quotient,
  type Rates,
  type Repricing,
  rateFiguresOf,
  ratesOfValues,
  reprice,
  spotMove,
} from "../../src/index";
import { button, linkButton } from "../controls/button";
import { element } from "../controls/element";
import type { DoneEvents } from "../controls/ended";
import { field } from "../controls/field";
import { whileWorking } from "../controls/pressstep";
import { progress } from "../controls/progress";
import { type Chosen, rowsOf } from "../designtable/chosendesigns";
import { writeSpot } from "../excel/rates/newspot";
import type { RateValues } from "../excel/rates/rates";
import { inSlices, type Slicing } from "../running/slices";
import type { PartEvents } from "../views/lazypart";
import { showMove, showShare, showSpot } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { readSpot, typedNow } from "./newspot";
import { repricingView } from "./repricingview";
import { sourcePart } from "./sourcepart";

const texts = TEXTS.catalogue.spot;

export interface SpotPart {
  readonly root: HTMLElement;
  ratesChanged(): void;
  /** Other designs were chosen: what was shown is no longer theirs. */
  forget(): void;
}

/** Spot, its time and its source. */
const SPOT_CELLS = 3;

/** A move beyond this share is asked about before it is taken over. */
const JUMP = Quotient.of("0.15");

/** Another spot: what it does to every price, and then taken over on Rates or not. */
export function spotPart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly chosen: () => Promise<Chosen | undefined>;
  readonly rates: PartEvents["rates"];
  /** A spot was taken over. */
  readonly took: () => Promise<void>;
  readonly done: DoneEvents["done"];
}): SpotPart {
  const amount = field({ id: "newspot", label: texts.amount, numeric: true, required: true });
  const per = field({
    id: "newspot-per",
    label: texts.per,
    choices: [
      { value: "ounce", shown: texts.ounce },
      { value: "gram", shown: texts.gram },
    ],
  });
  const mark = field({ id: "newspot-mark", label: texts.mark, start: "999" });
  const source = field({ id: "newspot-source", label: texts.source, help: texts.sourceHelp });
  const time = field({ id: "newspot-time", label: texts.time, start: "" });
  time.control.setAttribute("type", "datetime-local");
  for (const each of [per, time, source]) each.root.classList.add("whole");
  const fields = { amount, mark, time };
  const outcome = element("div", { class: "outcome", "aria-live": "polite" });
  const working = progress((sentence) => outcome.replaceChildren(element("p", { class: "help" }, sentence)));
  const see = button(texts.see, "outline", () => void on.attempt(reckon));
  const address = sourcePart({
    attempt: on.attempt,
    async read(found, host) {
      amount.fill(found);
      source.fill(host);
      time.fill(typedNow(new Date()));
      await reckon();
    },
  });
  const root = element(
    "details",
    { class: "task" },
    element("summary", {}, texts.title),
    element("p", { class: "help" }, texts.about),
    element("div", { class: "fields spotfields" }, amount.root, mark.root, per.root, time.root, source.root),
    address.root,
    element("div", { class: "actions" }, see.root),
    working.root,
    outcome,
  );
  /** What the outcome was reckoned from; other rates make it old. */
  let reckonedFrom: string | undefined;

  const adapt = () => {
    mark.root.hidden = per.control.value !== "gram";
    const { rates } = on.rates();
    amount.setUnit(rates ? `${rates.currency} / ${per.control.value === "gram" ? "g" : "ozt"}` : "");
  };
  per.control.addEventListener("change", adapt);
  root.addEventListener("toggle", () => {
    if (!root.open) return;
    adapt();
    if (time.control.value === "") time.fill(typedNow(new Date()));
  });
  for (const each of Object.values(fields)) each.control.addEventListener("input", () => each.setFault(""));

  async function reckon(): Promise<void> {
    const { reading, rates } = on.rates();
    outcome.replaceChildren();
    if (!reading?.found || !rates) {
      outcome.replaceChildren(element("p", { class: "fault" }, TEXTS.catalogue.ratesFirst));
      return;
    }
    const read = readSpot(
      {
        amount: amount.control.value,
        per: per.control.value === "gram" ? "gram" : "ounce",
        mark: mark.control.value,
        time: time.control.value,
      },
      rates.currency,
    );
    for (const each of Object.values(fields)) each.setFault("");
    if (!read.ok) {
      fields[read.field].setFault(read.sentence);
      fields[read.field].control.focus();
      return;
    }
    return whileWorking(see, texts.seeing, async () => {
      const chosen = await on.chosen();
      if (!chosen) return;
      const repricing = await working.follow((slicing) => repriceInSlices(chosen, reading.values, read.spot, slicing));
      if (!repricing) return;
      reckonedFrom = JSON.stringify(reading.values);
      show(repricing, chosen, rates, read.spot, read.time, reading.values.spot);
    });
  }

  function show(
    repricing: Repricing,
    chosen: Chosen,
    rates: Rates,
    spot: Money,
    readAt: number,
    before: unknown,
  ): void {
    const share = spotMove(rates.spot, spot);
    const far = share.isNegative() ? Quotient.zero.minus(share) : share;
    const jumps = far.isGreaterThan(JUMP);
    const accept = button(
      texts.accept,
      "primary",
      () =>
        void on.attempt(async () => {
          return whileWorking(accept, texts.accepting, async () => {
            const amountText = spot.amount.value().toFixed();
            const left = await writeSpot(
              { amount: amountText, source: source.control.value.trim(), time: readAt },
              { value: before, amount: rates.spot.amount.value().toFixed(), currency: rates.currency },
            );
            outcome.replaceChildren();
            reckonedFrom = undefined;
            const partly = left.length > 0 ? [texts.partly(left.join(", "))] : [];
            const of = SPOT_CELLS;
            on.done(texts.accepted(showSpot(spot)), { of, written: of - left.length, faults: partly });
            await on.took();
          });
        }),
      "small",
    );
    const leave = linkButton(texts.leave, () => {
      outcome.replaceChildren(element("p", { class: "help" }, texts.left));
      reckonedFrom = undefined;
    });
    const sure = element("input", { type: "checkbox", id: "newspot-sure" });
    const isSure = () => {
      accept.root.hidden = jumps && !sure.checked;
    };
    sure.addEventListener("change", isSure);
    isSure();
    outcome.replaceChildren(
      element("p", {}, texts.from(showSpot(rates.spot), showSpot(spot), showMove(share))),
      ...(jumps
        ? [
            element(
              "div",
              { class: "banner failed" },
              element("p", {}, texts.jump(showShare(far))),
              element("p", {}, sure, " ", element("label", { for: "newspot-sure" }, texts.stillTrue)),
            ),
          ]
        : []),
      repricingView(repricing, chosen.designs.row + 2),
      element("div", { class: "actions" }, accept.root, leave),
    );
    outcome.scrollIntoView({ block: "nearest" });
  }

  return {
    root,
    ratesChanged() {
      adapt();
      const { reading } = on.rates();
      if (reckonedFrom === undefined || (reading?.found && JSON.stringify(reading.values) === reckonedFrom)) return;
      reckonedFrom = undefined;
      outcome.replaceChildren(element("p", { class: "help" }, texts.changed));
    },
    forget() {
      reckonedFrom = undefined;
      outcome.replaceChildren();
    },
  };
}

/** Before and after of a whole catalogue. */
async function repriceInSlices(chosen: Chosen, values: RateValues, spot: Money, slicing: Slicing): Promise<Repricing> {
  const rates = rateFiguresOf(() => ratesOfValues(values));
  const parts = await inSlices(
    rowsOf(chosen),
    (rows) => ({ rows: rows.length, repricing: reprice([chosen.headers, ...rows], rates, spot) }),
    slicing,
  );
  return joinRepricings(parts);
}
