import { intersect } from "../address";
import type { Validation } from "../extras";
import { denied } from "../failure";
import { type Calls, Entity, flag, type Reads, record, type Writes } from "./entity";
import { RangeEntity } from "./range";

/** What Excel gives for cells without a rule. */
const NO_ALERT = { message: "", showAlert: true, style: "Stop", title: "" };
const NO_PROMPT = { message: "", showPrompt: true, title: "" };

export class ValidationEntity extends Entity {
  readonly type = "DataValidation";

  constructor(private readonly range: RangeEntity) {
    super(range.book);
  }

  override readonly reads: Reads = {
    rule: () => this.found?.rule ?? {},
    errorAlert: () => this.found?.errorAlert ?? NO_ALERT,
    prompt: () => this.found?.prompt ?? NO_PROMPT,
    ignoreBlanks: () => this.found?.ignoreBlanks ?? true,
    type: () => typeOf(this.found?.rule),
  };

  override readonly writes: Writes = {
    rule: (value) => this.change({ rule: ruleOf(value) }),
    errorAlert: (value) => this.change({ errorAlert: { ...NO_ALERT, ...record(value) } }),
    prompt: (value) => this.change({ prompt: { ...NO_PROMPT, ...record(value) } }),
    ignoreBlanks: (value) => this.change({ ignoreBlanks: flag(value) }),
  };

  override readonly calls: Calls = {
    clear: () => {
      this.checkUnprotected();
      const extras = this.book.extrasOf(this.range.sheetId);
      extras.validations = extras.validations.filter(({ rect }) => !intersect(rect, this.range.rect));
    },
  };

  private get found(): Validation | undefined {
    const { validations } = this.book.extrasOf(this.range.sheetId);
    return validations.find(({ rect }) => intersect(rect, this.range.rect));
  }

  private change(change: Partial<Validation>): void {
    this.checkUnprotected();
    const extras = this.book.extrasOf(this.range.sheetId);
    const { rect } = this.range;
    const old = extras.validations.find((each) => JSON.stringify(each.rect) === JSON.stringify(rect));
    const base = old ?? { rect, rule: {}, errorAlert: NO_ALERT, prompt: NO_PROMPT, ignoreBlanks: true };
    extras.validations = [{ ...base, ...change }, ...extras.validations.filter((each) => each !== old)];
  }

  private checkUnprotected(): void {
    if (this.book.extrasOf(this.range.sheetId).protection.on) throw denied();
  }
}

/** A rule as Excel keeps it: a range given as a list's source becomes its formula. */
function ruleOf(value: unknown): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(record(value)).map(([kind, rule]) => {
      if (typeof rule !== "object" || rule === null) return [kind, rule];
      const parts = Object.entries(record(rule)).map(([key, part]) => [
        key,
        part instanceof RangeEntity ? formulaOf(part) : part,
      ]);
      return [kind, Object.fromEntries(parts)];
    }),
  );
}

function formulaOf(range: RangeEntity): string {
  return `=${range.book.names.print(range.sheetId, range.rect)}`;
}

function typeOf(rule: Record<string, unknown> | undefined): string {
  const kind = Object.keys(rule ?? {})[0];
  if (!kind) return "None";
  return kind.charAt(0).toUpperCase() + kind.slice(1);
}
