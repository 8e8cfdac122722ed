import {
  type EarningSpan,
  earningByLinks,
  earningByLinkWeight,
  HEAVIER_BY,
  MUST_BRING_LABELS,
  type MustBring,
  type MustBringKey,
  parseMustBring,
  type Rates,
  usualMargin,
} from "../../src/index";
import { element } from "../controls/element";
import { figureForm } from "../controls/figureform";
import { saidBox } from "../controls/messagebox";
import { type SmallField, spokenNote } from "../controls/smallform";
import { oneAtATime } from "../running/oneatatime";
import type { AskedPiece, DecideEvents } from "../views/askedpiece";
import type { Working } from "../views/lazypart";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { shareText } from "../wording/sharetext";
import { medianOffer } from "./medianoffer";
import { pieceForm } from "./pieceform";
import { plotFold } from "./plotfold";
import { mustBringWords } from "./targetmessages";

const { mustBring: texts } = DECIDE_TEXTS;

const FIELDS: Readonly<Record<MustBringKey, SmallField>> = {
  premium: {
    plan: { label: MUST_BRING_LABELS.premium, numeric: true, help: texts.help.premium },
    width: "half",
  },
  margin: {
    plan: { label: MUST_BRING_LABELS.margin, required: true, numeric: true, help: texts.help.margin },
    width: "half",
  },
  heavierBy: {
    plan: {
      label: MUST_BRING_LABELS.heavierBy,
      help: texts.help.heavierBy,
      choices: HEAVIER_BY.map((value) => ({ value, shown: texts.heavier[value] })),
    },
    width: "whole",
  },
};

/** Market premium and wanted margin in, the weights that earn it out. */
export function openMustBring(place: HTMLElement, on: DecideEvents): Working {
  const said = saidBox();
  const note = spokenNote();
  const form = figureForm<MustBringKey>("mustbring", texts.form, FIELDS, {
    changed,
    submitted: () => answers.demand(),
  });
  const answers = pieceForm(on, { form, said, note, labels: MUST_BRING_LABELS, parse: parseMustBring });
  const plot = plotFold();
  const offer = medianOffer({
    ...on,
    used(premium) {
      form.fill({ premium });
      changed();
    },
  });
  const read = oneAtATime(offer.read);
  let isStarted = false;

  function changed(): void {
    note.say("");
    show();
  }

  function show(): void {
    plot.show(undefined);
    offer.show();
    const asked = answers.asked();
    if (!asked) return;
    const { wanted, piece } = asked;
    const spans = spansOf(wanted, piece);
    const { premium } = wanted;
    said.show(mustBringWords(wanted, spans, piece));
    plot.show(premium && { piece, spans, wanted: { ...wanted, premium } });
  }

  /** The margin that Rates price at stands there to begin with; whoever types another keeps it. */
  function start(rates: Rates): void {
    if (isStarted) return;
    isStarted = true;
    if (form.typed().margin.trim() === "") form.fill({ margin: shareText(usualMargin(rates)) });
  }

  place.replaceChildren(
    element("div", { class: "decidepart" }, form.root, offer.root, note.root, said.root, plot.root),
  );
  return {
    follow() {
      const { rates } = on.rates();
      if (rates) {
        start(rates);
        form.fields.premium.setUnit(DECIDE_TEXTS.perGram(rates.currency));
      }
      show();
      void on.attempt(read);
    },
  };
}

function spansOf({ premium, margin, heavierBy }: MustBring, { sheet, costed }: AskedPiece): readonly EarningSpan[] {
  if (!premium) return [];
  const { order, rates } = costed;
  return heavierBy === "more links"
    ? earningByLinks(sheet.line, order.spot, { premium, margin }, rates)
    : earningByLinkWeight(sheet.line, order.spot, { premium, margin }, rates);
}
