/** What a person is asked before something that cannot be undone. */
export interface Question {
  readonly title: string;
  readonly body: readonly (string | readonly string[])[];
  /** The words of the button that goes on. */
  readonly go: string;
}

/**
 * Asks within the page; resolves to true only where the person pressed the button that goes on. Esc and "Cancel", which has the
 * focus, change nothing.
 */
export function ask(dialog: HTMLDialogElement, { title, body, go }: Question): Promise<boolean> {
  const heading = made("h2", title);
  heading.id = "question-title";
  const cancel = made("button", "Cancel");
  const goOn = made("button", go);
  goOn.className = "go";
  for (const button of [cancel, goOn]) button.type = "button";
  const row = made("div", "");
  row.className = "answers";
  row.append(cancel, goOn);
  dialog.replaceChildren(heading, ...body.map(paragraph), row);
  const answered = new Promise<boolean>((resolve) => {
    goOn.addEventListener("click", () => {
      dialog.close();
      resolve(true);
    });
    cancel.addEventListener("click", () => dialog.close());
    dialog.addEventListener("close", () => resolve(false), { once: true });
  });
  dialog.showModal();
  cancel.focus();
  return answered;
}

function paragraph(text: string | readonly string[]): HTMLElement {
  if (typeof text === "string") return made("p", text);
  const list = made("ul", "");
  list.append(...text.map((item) => made("li", item)));
  return list;
}

function made<K extends keyof HTMLElementTagNameMap>(tag: K, text: string): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  element.textContent = text;
  return element;
}
