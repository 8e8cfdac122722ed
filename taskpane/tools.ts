import { type CatalogueSection, catalogueSection } from "./catalogue/section";
import { modelSection } from "./modelsection";
import type { OrderForm } from "./orderform";
import { scaleSections } from "./scalesections";
import { type TemplateChoice, templateChoice } from "./templatechoice";

export interface ToolEvents {
  /** A tool put something into the order. */
  readonly changed: () => void;
  readonly goTo: (sheet: string) => void;
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly say: (sentence: string) => void;
}

/** What stands folded away below the order: links and the scale, a model file, the template, the catalogue. */
export interface Tools {
  readonly links: readonly HTMLElement[];
  readonly template: TemplateChoice;
  readonly catalogue: CatalogueSection;
  /** The workbook changed: what is open reads again. */
  follow(): void;
}

/** The tools, working on the open line of a form. */
export function toolsFor(form: OrderForm, on: ToolEvents): Tools {
  const line = () => form.typed().lines[form.line];
  const fillLine: OrderForm["fillLine"] = (texts) => {
    form.fillLine(texts);
    on.changed();
  };
  const scale = scaleSections({ takeLink: fillLine, line: () => line() ?? {} });
  const model = modelSection({
    useLinkWeight: (grams) => fillLine({ linkWeight: grams }),
    alloyAsked: () => line() ?? { mark: "", colour: "" },
    say: on.say,
  });
  return {
    links: [scale.root, model.root],
    template: templateChoice(on.attempt),
    catalogue: catalogueSection(on),
    follow: scale.follow,
  };
}
