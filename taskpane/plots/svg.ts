export type SvgAttributes = Readonly<Record<string, string | number>>;

/** An element of SVG with its attributes and children; strings become text, never markup. */
export function svg<Tag extends keyof SVGElementTagNameMap>(
  tag: Tag,
  attributes: SvgAttributes = {},
  ...children: readonly (Node | string)[]
): SVGElementTagNameMap[Tag] {
  const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  made.append(...children);
  return made;
}
