/** Whether a finger or a mouse button is down anywhere in the pane. */
let isDown = false;
const waiting: (() => void)[] = [];

for (const name of ["pointerup", "pointercancel"]) {
  document.addEventListener(
    name,
    () => {
      isDown = false;
      // The click follows in the same turn, and must find everything where it was pressed.
      window.setTimeout(() => {
        for (const step of waiting.splice(0)) step();
      });
    },
    true,
  );
}
document.addEventListener(
  "pointerdown",
  () => {
    isDown = true;
  },
  true,
);

/** Runs a step that moves what is on the screen: at once, or once the press that goes on has ended where it began. */
export function afterPress(step: () => void): void {
  if (isDown) waiting.push(step);
  else step();
}
