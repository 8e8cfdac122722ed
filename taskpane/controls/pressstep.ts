import { isRefusal, sentenceOf } from "../excel/run";
import type { Button } from "./button";
import type { SpokenNote } from "./note";

export interface PressSteps {
  readonly isBusy: boolean;
  /** Runs a step that a button begins; nothing while another still runs. */
  run(by: Button, words: string, act: () => Promise<void>): Promise<void>;
}

/**
 * Steps in the workbook that a part's buttons begin, one at a time. What the workbook refuses is told in the part's note, and
 * what was typed stays; anything else is told too, and stays an error.
 */
export function pressSteps(note: SpokenNote): PressSteps {
  let isBusy = false;
  return {
    get isBusy() {
      return isBusy;
    },
    async run(by, words, act) {
      if (isBusy) return;
      isBusy = true;
      note.say("");
      try {
        await whileWorking(by, words, act);
      } catch (error) {
        note.failed(sentenceOf(error));
        if (!isRefusal(error)) throw error;
      } finally {
        isBusy = false;
      }
    },
  };
}

/** Runs a step while its button says so; the button rests however it ends. */
export async function whileWorking<T>(by: Button, words: string, act: () => Promise<T>): Promise<T> {
  by.work(words);
  try {
    return await act();
  } finally {
    by.rest();
  }
}
