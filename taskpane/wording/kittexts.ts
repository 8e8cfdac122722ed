/** What the pane's own parts say wherever they stand: forms, endings, bars. */
export const KIT_TEXTS = {
  toFill: (labels: string) => `Still to fill: ${labels}.`,
  show: (sheet: string) => `Show ${sheet}`,
  cancel: "Cancel",
  cancelled: "Called off. The workbook is as it was.",
  faulty: (count: number, of: number, rows: string) =>
    count === 1
      ? `1 of ${of} rows shows an error: row ${rows}.`
      : `${count} of ${of} rows show an error: rows ${rows}.`,
  moreRows: (count: number) => `${count} more`,
  waiting: (count: number) =>
    count === 1
      ? "1 row has no value yet. Look at it before you use the sheet."
      : `${count} rows have no value yet. Look at them before you use the sheet.`,
  unseen: (said: string) => `It was written, and could not be looked at afterwards. ${said}`,
  unreadAdded: (said: string) => `The list of what was added could not be read. ${said}`,
  howFar: "How far the work is",
  done: (share: string) => `${share} done`,
} as const;
