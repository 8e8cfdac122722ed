import { CostingError, type Fault, isBlank, type NumberRule, type Quotient, readNumber } from "../../src/index";
import type { Form } from "./form";

/**
 * The figures of a form, each by its rule; one that is blank is left out. Undefined where one cannot be read, which is shown
 * beside its field.
 */
export function readFigures<K extends string>(
  form: Form<K>,
  rules: Readonly<Partial<Record<K, NumberRule>>>,
): Readonly<Partial<Record<K, Quotient>>> | undefined {
  const typed = form.counted();
  const figures: Partial<Record<K, Quotient>> = {};
  const faults: Fault[] = [...form.misread()];
  for (const [key, rule] of Object.entries(rules) as [K, NumberRule][]) {
    if (isBlank(typed[key])) continue;
    try {
      figures[key] = readNumber(typed[key], form.labels[key], rule);
    } catch (error) {
      if (!(error instanceof CostingError)) throw error;
      faults.push({ field: key, code: error.code, sentence: error.message });
    }
  }
  form.judge(faults);
  return faults.length === 0 ? figures : undefined;
}
