import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { isBuiltIn, TEMPLATE_SHEET } from "../excel/template/template";
import { addTemplate, readTemplates, type Templates } from "../excel/template/templatelist";
import { TEXTS } from "../wording/texts";

const { template: texts } = TEXTS;

export interface TemplateChoice {
  readonly root: HTMLDetailsElement;
  /** The sheet that quotes are copied from. */
  readonly name: string;
}

/** Chooses the template that quotes are made from. Folded at first, since the usual one is right for most. */
export function templateChoice(attempt: (step: () => Promise<void>) => Promise<void>): TemplateChoice {
  let name: string = TEMPLATE_SHEET;
  let templates: Templates = { there: [], offered: [] };
  const chosenName = element("span", { class: "holds" });
  const select = element("select", { id: "template" });
  const add = button(texts.add, "outline", () => attempt(addAsSheet), "small");
  const help = element("p", { class: "help" });
  const root = element(
    "details",
    { class: "template" },
    element("summary", {}, texts.title, " ", chosenName),
    element("p", { class: "help" }, texts.about),
    element(
      "div",
      { class: "field whole" },
      element("div", { class: "label" }, element("label", { for: "template" }, texts.choose)),
      element("div", { class: "box choice" }, select),
    ),
    help,
    element("div", { class: "actions" }, add.root),
  );

  function show(): void {
    const isNew = !templates.there.includes(name);
    setText(chosenName, name);
    setText(help, isNew ? texts.willBeAdded(name) : "");
    add.root.hidden = !(isNew && isBuiltIn(name));
    const options = (names: readonly string[]) => names.map((each) => element("option", { value: each }, each));
    const offered = templates.offered.length > 0 ? element("optgroup", { label: texts.builtIn }) : undefined;
    offered?.append(...options(templates.offered));
    select.replaceChildren(...options(templates.there), ...(offered ? [offered] : []));
    select.value = name;
  }

  async function read(): Promise<void> {
    templates = await readTemplates();
    // A template that was deleted or renamed since is no longer chosen.
    if (![...templates.there, ...templates.offered].includes(name)) name = TEMPLATE_SHEET;
    show();
  }

  async function addAsSheet(): Promise<void> {
    if (!isBuiltIn(name)) return;
    await addTemplate(name);
    await read();
  }

  root.addEventListener("toggle", () => {
    if (root.open) void attempt(read);
  });
  select.addEventListener("change", () => {
    name = select.value;
    show();
  });
  show();
  return {
    root,
    get name() {
      return name;
    },
  };
}
