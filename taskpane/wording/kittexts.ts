/** What the pane's own parts say wherever they stand: forms, endings, bars. */
export const KIT_TEXTS = {
  toFill: (labels: string) => `Still to fill: ${labels}.`,
  show: (sheet: string) => `Show ${sheet}`,
  cancel: "Cancel",
  cancelled: "Called off. The workbook is as it was.",
  howFar: "How far the work is",
  done: (share: string) => `${share} done`,
} as const;
