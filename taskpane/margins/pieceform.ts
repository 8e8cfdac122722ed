import type { Parsed, Rates } from "../../src/index";
import type { FigureForm } from "../controls/figureform";
import type { SaidBox } from "../controls/messagebox";
import { stillToFill } from "../controls/smallform";
import { type AskedPiece, askedPiece, type DecideEvents } from "../views/askedpiece";
import { DECIDE_TEXTS } from "../wording/decidetexts";

/** The fields of a part that asks something about the order's piece. */
interface Asking<K extends string, T> {
  readonly form: FigureForm<K>;
  readonly said: SaidBox;
  readonly note: { say(sentence: string): void };
  readonly labels: Readonly<Record<K, string>>;
  readonly parse: (typed: Readonly<Record<K, string>>, rates: Rates) => Parsed<T>;
}

export interface PieceForm<T> {
  /** What is asked of which piece; undefined where that cannot be answered yet: then the box says why, or nothing. */
  asked(): { readonly wanted: T; readonly piece: AskedPiece } | undefined;
  /** Shows what is wrong in the fields, and goes to the first of it. */
  demand(): void;
}

/** Judges the fields of such a part against Rates and the order. */
export function pieceForm<K extends string, T>(
  on: DecideEvents,
  { form, said, note, labels, parse }: Asking<K, T>,
): PieceForm<T> {
  return {
    asked() {
      const { rates } = on.rates();
      if (!rates) {
        said.show([]);
        return undefined;
      }
      const piece = askedPiece(on);
      const parsed = parse(form.typed(), rates);
      const misread = form.misread();
      form.judge([...misread, ...(parsed.ok ? [] : parsed.faults)]);
      if (piece && parsed.ok && misread.length === 0) return { wanted: parsed.value, piece };
      said.show(piece ? [] : [{ text: DECIDE_TEXTS.noOrder }]);
      return undefined;
    },
    demand() {
      const { rates } = on.rates();
      const parsed = rates && parse(form.typed(), rates);
      if (!parsed || parsed.ok) return;
      form.demand([...form.misread(), ...parsed.faults]);
      note.say(stillToFill(parsed.faults, form.typed(), labels));
    },
  };
}
