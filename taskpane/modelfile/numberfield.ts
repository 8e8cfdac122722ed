import { CostingError, isBlank, type NumberRule, type Quotient, readNumber } from "../../src/index";
import { type Field, type FieldPlan, field } from "../controls/field";

export interface NumberField {
  readonly field: Field;
  /** The number typed, or `whenBlank` where nothing is typed; undefined where it has a fault, which is then shown. */
  read(whenBlank?: Quotient): Quotient | undefined;
}

/** A field for one number that shows what is wrong with it, once the person has left it or typed something. */
export function numberField(plan: FieldPlan, rule: NumberRule): NumberField {
  const made = field({ ...plan, numeric: true });
  return {
    field: made,
    read(whenBlank) {
      const typed = made.control.value;
      if (isBlank(typed)) {
        made.setFault("");
        return whenBlank;
      }
      try {
        const value = readNumber(typed, plan.label, rule);
        made.setFault("");
        return value;
      } catch (error) {
        if (!(error instanceof CostingError)) throw error;
        made.setFault(error.message);
        return undefined;
      }
    },
  };
}
