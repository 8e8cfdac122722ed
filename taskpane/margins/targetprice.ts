import {
  type EarningSpan,
  earningByLinks,
  earningByLinkWeight,
  HEAVIER_BY,
  MUST_BRING_LABELS,
  type MustBring,
  type MustBringKey,
  parseMustBring,
  type Quotient,
  type Rates,
  usualMargin,
} from "../../src/index";
import { answerBox } from "../controls/answerbox";
import { element } from "../controls/element";
import { choicesOf, formPlan } from "../controls/formplan";
import { spokenNote } from "../controls/note";
import { atRates, readForm } from "../controls/readform";
import { drawnFold } from "../plots/drawnfold";
import { oneAtATime } from "../running/oneatatime";
import type { AskedPiece, DecideEvents } from "../views/askedpiece";
import type { Working } from "../views/lazypart";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { shareText } from "../wording/sharetext";
import type { Drawn } from "./marginplot";
import { medianOffer } from "./medianoffer";
import { askedOf } from "./pieceform";
import { mustBringWords } from "./targetmessages";

const { mustBring: texts } = DECIDE_TEXTS;

const { figure, choice, group } = formPlan<MustBringKey>(texts.help);

const GROUPS = [
  group("target", "", [
    figure("premium", "half", { unit: (_, currency) => DECIDE_TEXTS.perGram(currency) }),
    figure("margin", "half", { required: true }),
    choice("heavierBy", "whole", choicesOf(HEAVIER_BY, texts.heavier)),
  ]),
];

/** Market premium and wanted margin in, the weights that earn it out. */
export function openMustBring(place: HTMLElement, on: DecideEvents): Working {
  const said = answerBox();
  const note = spokenNote();
  const form = readForm(
    {
      name: "mustbring",
      title: texts.form,
      groups: GROUPS,
      labels: MUST_BRING_LABELS,
      parse: atRates(on.rates, parseMustBring),
    },
    { changed, submitted: () => void form.ask(), lacking: note.say },
  );
  const plot = marginFold();
  const offer = medianOffer({
    ...on,
    used(premium) {
      form.fill({ premium });
      changed();
    },
  });
  const read = oneAtATime(offer.read);
  /** The margin that Rates price at, as it was put there: a field shows less of it than it counts. */
  let begun: { readonly text: string; readonly margin: Quotient } | undefined;

  function changed(): void {
    note.say("");
    show();
  }

  function show(): void {
    plot.show(undefined);
    offer.show();
    const asked = askedOf(on, form, said);
    if (!asked) return;
    const { piece } = asked;
    const wanted =
      begun?.text === form.counted().margin.trim() ? { ...asked.wanted, margin: begun.margin } : asked.wanted;
    const spans = spansOf(wanted, piece);
    const { premium } = wanted;
    said.show(mustBringWords(wanted, spans, piece));
    plot.show(premium && { piece, spans, wanted: { ...wanted, premium } });
  }

  /** The margin that Rates price at stands there to begin with; whoever types another keeps it. */
  function start(rates: Rates): void {
    if (begun) return;
    const margin = usualMargin(rates);
    begun = { text: shareText(margin), margin };
    if (form.counted().margin.trim() === "") form.fill({ margin: begun.text });
  }

  place.replaceChildren(
    element("div", { class: "decidepart" }, form.root, offer.root, note.root, said.root, plot.root),
  );
  return {
    follow() {
      const { rates } = on.rates();
      if (rates) {
        start(rates);
        form.adapt(rates);
      }
      show();
      void on.attempt(read);
    },
  };
}

/** The plot of it, hidden while there is none. */
function marginFold() {
  const { plot: words } = texts;
  const fold = drawnFold<Drawn>([words.fold], words, async (place) => {
    const { openMarginFigure } = await import(/* webpackChunkName: "decideplot" */ "./marginplot");
    const figure = openMarginFigure();
    place.replaceChildren(figure.root);
    return figure.show;
  });
  return {
    root: fold.root,
    show(drawn: Drawn | undefined): void {
      fold.root.hidden = drawn === undefined;
      fold.show(drawn);
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
