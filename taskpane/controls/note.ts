import { element, say } from "./element";

/**
 * What a part says: a live region that shows one sentence, fault or not. A fault of reading goes with the next reading
 * that succeeds, and leaves anything else that is said in its place.
 */
export function spokenNote() {
  let unread = "";
  const root = element("p", { class: "help", role: "status", "aria-live": "polite" });
  root.hidden = true;
  const show = (sentence: string, isFault: boolean) => {
    say(root, sentence);
    root.classList.toggle("fault", isFault);
  };
  return {
    root,
    say: (sentence: string) => show(sentence, false),
    failed: (sentence: string) => show(sentence, true),
    /** @param sentence why the workbook could not be read; "" where it was */
    read(sentence: string) {
      if (sentence !== "") show(sentence, true);
      else if (unread !== "" && root.textContent === unread) show("", false);
      unread = sentence;
    },
  };
}

export type SpokenNote = ReturnType<typeof spokenNote>;
