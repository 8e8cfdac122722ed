import { EXTRA_LABELS, type Fault, LINE_LABELS, ORDER_LABELS, type OrderKey } from "../../src/index";
import { keysOf, type PlannedGroup } from "../controls/formplan";
import { TEXTS } from "../wording/texts";
import { lineGroups } from "./linefields";
import { EXTRA_GROUP, TERMS, WHO } from "./orderfields";
import type { Typed } from "./reckoning";

/** Where a fault is, as a key and the part of the order it belongs to. */
export type FaultPlace =
  | { readonly part: "order"; readonly key: OrderKey }
  | { readonly part: "line"; readonly line: number; readonly key: keyof typeof LINE_LABELS }
  | { readonly part: "extra"; readonly extra: number; readonly key: keyof typeof EXTRA_LABELS };

export function placeOf({ field, line, extra }: Fault): FaultPlace | undefined {
  if (line !== undefined) return isKeyOf(LINE_LABELS, field) ? { part: "line", line, key: field } : undefined;
  if (extra !== undefined) return isKeyOf(EXTRA_LABELS, field) ? { part: "extra", extra, key: field } : undefined;
  return isKeyOf(ORDER_LABELS, field) ? { part: "order", key: field } : undefined;
}

/** Faults in the order in which the form shows their fields. */
export function fromTop(faults: readonly Fault[]): readonly Fault[] {
  const lineKeys = keysOf(lineGroups());
  const rank = (fault: Fault): number => {
    const place = placeOf(fault);
    if (!place) return Number.MAX_SAFE_INTEGER;
    if (place.part === "line") return (place.line + 1) * 1000 + lineKeys.indexOf(place.key);
    if (place.part === "extra") return 1e6 + place.extra * 10 + rankIn([EXTRA_GROUP], place.key);
    const first = rankIn([WHO], place.key);
    return first >= 0 ? first : 2e6 + rankIn(TERMS, place.key);
  };
  return [...faults].sort((a, b) => rank(a) - rank(b));
}

/** The words of the fields with faults, for a sentence that lists them; where there are several lines, each with its line. */
export function labelsOf(faults: readonly Fault[], { lines, extras }: Typed): readonly string[] {
  const labelOf = (fault: Fault): string => {
    const place = placeOf(fault);
    if (!place) return fault.field;
    if (place.part === "order") return ORDER_LABELS[place.key];
    if (place.part === "line") {
      const label = LINE_LABELS[place.key];
      return lines.length > 1 ? TEXTS.form.lineLabel(place.line + 1, label) : label;
    }
    const label = EXTRA_LABELS[place.key];
    return extras.length > 1 ? TEXTS.form.extraLabel(place.extra + 1, label) : label;
  };
  return [...new Set(fromTop(faults).map(labelOf))];
}

function rankIn<K extends string>(groups: readonly PlannedGroup<K>[], key: string): number {
  const keys: readonly string[] = keysOf(groups);
  return keys.indexOf(key);
}

function isKeyOf<K extends string>(labels: Readonly<Record<K, string>>, field: string): field is K {
  return Object.hasOwn(labels, field);
}
