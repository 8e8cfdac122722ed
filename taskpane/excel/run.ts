import { TEXTS } from "../wording/texts";

/** Something about the workbook that the person can put right; the message is a sentence for them. */
export class WorkbookFault extends Error {
  override readonly name = "WorkbookFault";
}

const TOO_LARGE =
  "The sheet is too large to be read at once. Delete the rows and columns beyond what you use (Home, Delete) and try again.";

/**
 * Source of the codes: Excel.ErrorCodes of office.js, and "Error handling with the application-specific JavaScript APIs"
 * of the Office Add-ins documentation.
 */
const SENTENCES: Readonly<Record<string, string>> = {
  AccessDenied:
    "A sheet or the workbook is protected. Take the protection off (Review, Unprotect Sheet or Protect Workbook) and try again.",
  ApiNotFound: "This Excel is too old for Curbwright. It needs Excel 2021 or later, Microsoft 365 or Excel on the web.",
  FilteredRangeConflict: "A filter stands in the way. Clear it (Data, Clear) and try again.",
  InactiveWorkbook: "Another workbook is in front. Go back to this one and try again.",
  InsertDeleteConflict:
    "Rows cannot be added there: a table, an array formula or merged cells stand in the way. Keep those out of the template's repeated rows and try again.",
  InvalidOperationInCellEditMode: "A cell is being edited. Press Enter or Esc in the sheet and try again.",
  ItemAlreadyExists: "A sheet or name with that name is there already. Rename it and try again.",
  ItemNotFound: "A sheet or name that was there a moment ago is gone. Try again.",
  MergedRangeConflict:
    "Merged cells stand in the way. Unmerge those that reach beyond the template's repeated rows and try again.",
  NonBlankCellOffSheet:
    "There is no room for more rows: the sheet is filled down to its last row. Clear what stands there and try again.",
  PivotTableRangeConflict: "A PivotTable stands in the way. Move it to another sheet and try again.",
  RangeExceedsLimit: TOO_LARGE,
  RequestAborted: "Excel stopped in the middle of it. Try again.",
  RequestPayloadSizeLimitExceeded: TOO_LARGE,
  ResponsePayloadSizeLimitExceeded: TOO_LARGE,
};

/** One conversation with Excel, for the press of a button. What the person can put right is thrown as a WorkbookFault. */
export async function run<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
  return converse({ delayForCellEdit: false }, batch);
}

/**
 * One conversation that changes no cell, after something happened in the workbook. The person may be typing into the next cell by
 * then. It waits until they have finished, where Excel would refuse any other conversation.
 */
export async function readAfterEdit<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
  return converse({ delayForCellEdit: true }, batch);
}

async function converse<T>(
  options: Excel.RunOptions,
  batch: (context: Excel.RequestContext) => Promise<T>,
): Promise<T> {
  try {
    return await Excel.run(options, batch);
  } catch (error) {
    throw refusalOf(error);
  }
}

/** What the workbook refused, as the sentence that a person can put right; any other error as it is. */
export function refusalOf(error: unknown): unknown {
  const sentence = error instanceof OfficeExtension.Error ? SENTENCES[error.code] : undefined;
  return sentence ? new WorkbookFault(sentence, { cause: error }) : error;
}

/** The sentence about an error that a person reads. */
export function sentenceOf(error: unknown): string {
  return isRefusal(error) ? error.message : TEXTS.unforeseen(error instanceof Error ? error.message : String(error));
}

/** Whether it is something that the person can put right. */
export function isRefusal(error: unknown): error is WorkbookFault {
  return error instanceof WorkbookFault;
}
