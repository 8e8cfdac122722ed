import { type State, settled } from "./state";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** Saves the workbook as a file that the person downloads. */
export async function download(state: State): Promise<void> {
  const { saveXlsx } = await import("./xlsx");
  await settled(state);
  const contents = state.lastSave.now();
  const bytes = Uint8Array.from(atob(await saveXlsx(state.book)), (character) => character.charCodeAt(0));
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes], { type: XLSX }));
  link.download = "Curbwright.xlsx";
  link.click();
  URL.revokeObjectURL(link.href);
  // Noted before the file was made: changes made meanwhile are not in it.
  state.lastSave.note("saved", contents);
}
