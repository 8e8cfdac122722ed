import { isBlank } from "../../src/index";
import { element } from "./element";
import type { Field } from "./field";

/** Words offered while a field is typed into; anything else may be typed all the same. */
export function suggestions(field: Field): (cells: readonly unknown[]) => void {
  const id = `${field.control.id}-words`;
  const list = element("datalist", { id });
  field.control.setAttribute("list", id);
  field.root.append(list);
  let shown = "";
  return (cells) => {
    const words = [...new Set(cells.filter((cell) => !isBlank(cell)).map((cell) => String(cell).trim()))];
    if (words.join("\n") === shown) return;
    shown = words.join("\n");
    list.replaceChildren(...words.map((value) => element("option", { value })));
  };
}
