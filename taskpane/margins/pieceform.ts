import type { AnswerBox } from "../controls/answerbox";
import type { ReadForm } from "../controls/readform";
import { type AskedPiece, askedPiece, type DecideEvents } from "../views/askedpiece";
import { DECIDE_TEXTS } from "../wording/decidetexts";

/** What is asked of which piece; undefined where that cannot be answered yet: then the box says why, or nothing. */
export function askedOf<K extends string, T>(
  on: DecideEvents,
  form: ReadForm<K, T>,
  said: AnswerBox,
): { readonly wanted: T; readonly piece: AskedPiece } | undefined {
  const piece = askedPiece(on);
  const wanted = form.read();
  if (piece && wanted) return { wanted, piece };
  said.show(piece || !on.rates().rates ? [] : [{ text: DECIDE_TEXTS.noOrder }]);
  return undefined;
}
