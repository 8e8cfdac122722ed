import type { Fault } from "../../src/index";
import { faultWithLocalMark, type Reads, twoReadings, withLocalMark, withPoint } from "../wording/decimalmark";
import { TEXTS } from "../wording/texts";
import { type SmallField, type SmallForm, type SmallFormEvents, smallForm } from "./smallform";

/** A small form whose figures are typed as the workbook writes them, 24.5 or 24,5. */
export interface FigureForm<K extends string> {
  readonly root: HTMLFormElement;
  readonly fields: SmallForm<K>["fields"];
  /** As the costing library reads it: figures with a point. */
  typed(): Record<K, string>;
  /** Puts the library's texts in. */
  fill(texts: Readonly<Partial<Record<K, string>>>): void;
  /** Keeps the library's faults, and shows those of fields that were left. */
  judge(faults: readonly Fault[]): void;
  demand(faults: readonly Fault[]): void;
  /** Faults of figures that two people would read as two numbers: nothing may be worked out with them. */
  misread(): readonly Fault[];
}

export function figureForm<K extends string>(
  name: string,
  label: string,
  plans: Readonly<Record<K, SmallField>>,
  on: SmallFormEvents,
): FigureForm<K> {
  const keys = Object.keys(plans) as K[];
  const form = smallForm(name, label, plans, on);
  const reads = (key: K): Reads => (plans[key].plan.choices ? "words" : "figure");
  const typed = () => {
    const texts = form.typed();
    return Object.fromEntries(keys.map((key) => [key, withPoint(texts[key], reads(key))])) as Record<K, string>;
  };
  const asTyped = (faults: readonly Fault[]): readonly Fault[] => {
    const [read, texts] = [typed(), form.typed()];
    return faults.map((fault) => {
      const key = keys.find((each) => each === fault.field);
      return key ? { ...fault, sentence: faultWithLocalMark(fault.sentence, read[key], texts[key]) } : fault;
    });
  };
  return {
    root: form.root,
    fields: form.fields,
    typed,
    fill(texts) {
      const local = keys.flatMap((key) => {
        const text = texts[key];
        return text === undefined ? [] : [[key, withLocalMark(text, reads(key))] as const];
      });
      form.fill(Object.fromEntries(local) as Partial<Record<K, string>>);
    },
    judge: (faults) => form.judge(asTyped(faults)),
    demand: (faults) => form.demand(asTyped(faults)),
    misread() {
      const texts = form.typed();
      return keys.flatMap((key): readonly Fault[] => {
        const readings = twoReadings(texts[key], reads(key));
        if (!readings) return [];
        const sentence = TEXTS.form.ambiguous(
          plans[key].plan.label,
          texts[key].trim(),
          readings.fraction,
          readings.whole,
        );
        return [{ field: key, code: "notANumber", sentence }];
      });
    },
  };
}
