/** The words around the questions that are asked before a quote is made. Questions and answers are the library's. */
export const QUESTION_TEXTS = {
  title: (count: number) => (count === 1 ? "1 question before the quote" : `${count} questions before the quote`),
  /** Before a question of some of several lines. */
  ofLines: (lines: readonly string[], list: string) => `${lines.length === 1 ? "Line" : "Lines"} ${list}:`,
  answered: "No question is open. Press “Make the quote” again.",
} as const;
