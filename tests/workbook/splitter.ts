const LEAST = 260;

/** Lets the person set the task pane's width: by dragging, by the arrow keys, or by ?pane=320 in the address. */
export function watchSplitter(splitter: HTMLElement, pane: HTMLElement, width: number): void {
  let current = 0;
  const set = (wanted: number) => {
    current = Math.round(Math.min(Math.max(wanted || LEAST, LEAST), window.innerWidth - 320));
    pane.style.setProperty("--pane", `${current}px`);
    splitter.setAttribute("aria-valuenow", String(current));
  };
  set(width);
  splitter.addEventListener("pointerdown", (event) => {
    const { pageX } = event;
    const before = current;
    splitter.setPointerCapture(event.pointerId);
    document.body.classList.add("dragging");
    const move = (moved: PointerEvent) => set(before + pageX - moved.pageX);
    splitter.addEventListener("pointermove", move);
    splitter.addEventListener(
      "lostpointercapture",
      () => {
        splitter.removeEventListener("pointermove", move);
        document.body.classList.remove("dragging");
      },
      { once: true },
    );
  });
  splitter.addEventListener("keydown", (event) => {
    const step = event.key === "ArrowLeft" ? 20 : event.key === "ArrowRight" ? -20 : 0;
    if (step === 0) return;
    event.preventDefault();
    set(current + step);
  });
}
