/** An attribute of undefined is left out; `true` sets it empty. */
export type Attributes = Readonly<Record<string, string | boolean | undefined>>;
/** Strings become text, never markup. */
export type Child = Node | string | undefined;

/** An element with its attributes and children. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined && value !== false) made.setAttribute(name, value === true ? "" : value);
  }
  made.append(...children.filter((child) => child !== undefined));
  return made;
}

/** Sets a text only when it differs, so that a live region does not speak it again. */
export function setText(node: Node, text: string): void {
  if (node.textContent !== text) node.textContent = text;
}

/** Shows a sentence in its place; none takes the place out of sight. */
export function say(place: HTMLElement, sentence: string): void {
  setText(place, sentence);
  place.hidden = sentence === "";
}
