/** Something about the workbook that the person can put right; the message is a sentence for them. */
export class WorkbookFault extends Error {
  override readonly name = "WorkbookFault";
}

const SENTENCES: Readonly<Record<string, string>> = {
  AccessDenied: "A sheet is protected. Take its protection off (Review, Unprotect Sheet) and try again.",
  InvalidOperationInCellEditMode: "A cell is being edited. Press Enter or Esc in the sheet and try again.",
  ItemNotFound: "A sheet or name that was there a moment ago is gone. Try again.",
  ItemAlreadyExists: "A sheet or name with that name is there already. Rename it and try again.",
};

/** One conversation with Excel; what the person can mend comes back as a WorkbookFault. */
export async function run<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
  try {
    return await Excel.run(batch);
  } catch (error) {
    const sentence = error instanceof OfficeExtension.Error ? SENTENCES[error.code] : undefined;
    throw sentence ? new WorkbookFault(sentence, { cause: error }) : error;
  }
}
