import { afterEach, expect, test, vi } from "vitest";
import { run, WorkbookFault } from "../../../taskpane/excel/run";

class OfficeError extends Error {
  constructor(readonly code: string) {
    super(code);
  }
}

afterEach(() => vi.unstubAllGlobals());

/** A conversation in which Excel answers a code. */
function answering(code: string): Promise<unknown> {
  vi.stubGlobal("OfficeExtension", { Error: OfficeError });
  vi.stubGlobal("Excel", { run: () => Promise.reject(new OfficeError(code)) });
  return run(async () => undefined);
}

// Codes: Excel.ErrorCodes of office.js 1.1.110.
test.each([
  ["AccessDenied", /Unprotect Sheet or Protect Workbook/],
  ["ApiNotFound", /too old/],
  ["FilteredRangeConflict", /filter/],
  ["InsertDeleteConflict", /template's repeated rows/],
  ["InvalidOperationInCellEditMode", /Press Enter or Esc/],
  ["MergedRangeConflict", /Merged cells/],
  ["NonBlankCellOffSheet", /last row/],
  ["PivotTableRangeConflict", /PivotTable/],
  ["RequestAborted", /Try again/],
  ["ResponsePayloadSizeLimitExceeded", /too large/],
])("%s is told as something to put right", async (code, words) => {
  const told = await answering(code).catch((error: unknown) => error);
  expect(told).toBeInstanceOf(WorkbookFault);
  expect(String(told)).toMatch(words);
});

test("a code that a person can do nothing about stays the error it is", async () => {
  await expect(answering("InvalidArgument")).rejects.toBeInstanceOf(OfficeError);
});
