import { budgetSection } from "./cashplan/section";
import { catalogueSection } from "./designs/section";
import type { BookedQuote } from "./excel/quote/quotebook";
import { sourcingSection } from "./makeorbuy/section";
import { stonesSection, targetPriceSection } from "./margins/section";
import { askingSections } from "./market/section";
import { modelSection } from "./modelfile/section";
import { spotRiskSection } from "./openquotes/section";
import { lineTextsOf, type TakeLink } from "./order/linkoffer";
import type { OrderForm } from "./order/orderform";
import type { LazyPart, PartEvents } from "./views/lazypart";
import type { ViewName } from "./views/views";
import { scaleSections } from "./weights/section";

export interface ToolEvents extends PartEvents {
  /** A tool put something into the order. */
  readonly filled: () => void;
  /** Makes an earlier quote anew at today's spot; answers whether one was made. */
  readonly revise: (quote: BookedQuote) => Promise<boolean>;
}

/** What a view holds beside the order itself. */
export type Tools = Readonly<Record<Exclude<ViewName, "quote">, readonly LazyPart[]>>;

/** The parts of the other views, working on the open line of a form. */
export function toolsFor(form: OrderForm, on: ToolEvents): Tools {
  const line = () => form.typed().lines[form.line];
  const takeLink: TakeLink = (link) => {
    form.fillLine(lineTextsOf(link));
    on.filled();
  };
  const ratesRead = () => on.rates().reading;
  const model = modelSection(
    {
      takeLink,
      rates: ratesRead,
      alloyAsked: () => line() ?? { mark: "", colour: "" },
      say: on.say,
    },
    on.attempt,
  );
  const deciding = { ...on, line: () => form.line };
  return {
    check: askingSections(on),
    decide: [
      sourcingSection(deciding),
      targetPriceSection(deciding),
      spotRiskSection(on),
      stonesSection(deciding),
      budgetSection(deciding),
    ],
    links: [...scaleSections({ takeLink, rates: ratesRead, line: () => line() ?? {} }, on.attempt), model],
    catalogue: [catalogueSection(on)],
  };
}
