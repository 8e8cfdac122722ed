import { askingSections } from "./askingsections";
import { catalogueSection } from "./catalogue/section";
import { decideSections } from "./decidesections";
import type { BookedQuote } from "./excel/quotebook";
import { modelSection } from "./modelsection";
import type { OrderForm } from "./orderform";
import type { LazyPart, PartEvents } from "./part";
import { scaleSections } from "./scalesections";
import { sourcingSection } from "./sourcing/section";
import type { ViewName } from "./views";

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
  const fillLine: OrderForm["fillLine"] = (texts) => {
    form.fillLine(texts);
    on.filled();
  };
  const model = modelSection(
    {
      useLinkWeight: (grams) => fillLine({ linkWeight: grams }),
      alloyAsked: () => line() ?? { mark: "", colour: "" },
      say: on.say,
    },
    on.attempt,
  );
  return {
    check: askingSections(on),
    decide: [
      sourcingSection({ ...on, line: () => form.line }),
      ...decideSections({ ...on, line: () => ({ at: form.line, typed: line() }) }),
    ],
    links: [...scaleSections({ takeLink: fillLine, line: () => line() ?? {} }, on.attempt), model],
    catalogue: [catalogueSection(on)],
  };
}
