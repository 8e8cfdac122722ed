import { button } from "./button";
import { element } from "./element";

/** What kind of file is asked for, in which words. */
export interface FileWords {
  readonly accept: string;
  readonly label: string;
  readonly choose: string;
  readonly another: string;
  readonly drop: string;
  readonly several: string;
  readonly none: string;
}

export interface FileDrop {
  readonly root: HTMLElement;
  /** After a file was taken the place shrinks to a button. */
  shrink(small: boolean): void;
  focus(): void;
}

/** Where a person chooses or drops a file. The input is native and hidden; the button opens it. */
export function fileDrop(texts: FileWords, taken: (file: File) => void, refused: (sentence: string) => void): FileDrop {
  const input = element("input", {
    type: "file",
    accept: texts.accept,
    class: "unseen",
    tabindex: "-1",
    "aria-label": texts.label,
  });
  const press = button(texts.choose, "outline", () => input.click());
  const hint = element("span", { class: "help" }, texts.drop);
  const root = element("div", { class: "drop" }, press.root, hint, input);
  input.addEventListener("change", () => {
    const [file] = input.files ?? [];
    // Emptied, so that the same file may be chosen again once it was mended.
    input.value = "";
    if (file) taken(file);
  });
  root.addEventListener("dragover", (event) => {
    event.preventDefault();
    root.classList.add("over");
  });
  root.addEventListener("dragleave", () => root.classList.remove("over"));
  root.addEventListener("drop", (event) => {
    event.preventDefault();
    root.classList.remove("over");
    const files = event.dataTransfer?.files ?? [];
    const [file] = files;
    if (files.length > 1) refused(texts.several);
    else if (file) taken(file);
    else refused(texts.none);
  });
  return {
    root,
    shrink(small) {
      root.classList.toggle("small", small);
      press.name(small ? texts.another : texts.choose);
    },
    focus: () => press.root.focus(),
  };
}
