import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { field } from "../controls/field";
import { whileWorking } from "../controls/pressstep";
import { keepSource, readKeptSource } from "../excel/designs/keptsource";
import { TEXTS } from "../wording/texts";
import { readSource, type SpotSource } from "./spotsource";

const texts = TEXTS.catalogue.source;

export interface SourcePart {
  readonly root: HTMLElement;
}

/** An address that the person has the right to read a spot from; what it says is put into the form, never on Rates. */
export function sourcePart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly read: (amount: string, host: string) => Promise<void>;
}): SourcePart {
  const url = field({ id: "source-url", label: texts.url, help: texts.urlHelp });
  const kind = field({
    id: "source-kind",
    label: texts.kind,
    choices: [
      { value: "json", shown: "JSON" },
      { value: "csv", shown: "CSV" },
    ],
  });
  const place = field({ id: "source-place", label: texts.place, help: texts.placeHelp });
  for (const each of [url, place]) each.root.classList.add("whole");
  const fault = element("p", { class: "fault", role: "status" });
  fault.hidden = true;
  const get = button(texts.get, "outline", () => void on.attempt(fetchIt), "small");
  const root = element(
    "details",
    { class: "source" },
    element("summary", {}, texts.title),
    element("div", { class: "fields spotfields" }, url.root, kind.root, place.root),
    fault,
    element("div", { class: "actions" }, get.root),
  );
  root.addEventListener("toggle", () => {
    if (root.open && url.control.value === "") void on.attempt(recall);
  });

  async function recall(): Promise<void> {
    const kept = sourceIn(await readKeptSource());
    if (!kept) return;
    url.fill(kept.url);
    kind.fill(kept.kind);
    place.fill(kept.place);
  }

  async function fetchIt(): Promise<void> {
    const source: SpotSource = {
      url: url.control.value.trim(),
      kind: kind.control.value === "csv" ? "csv" : "json",
      place: place.control.value.trim(),
    };
    return whileWorking(get, texts.getting, async () => {
      const reading = await readSource(source);
      setText(fault, reading.ok ? "" : reading.sentence);
      fault.hidden = reading.ok;
      if (!reading.ok) return;
      await keepSource(JSON.stringify(source));
      await on.read(reading.amount, reading.host);
    });
  }

  return { root };
}

function sourceIn(value: unknown): SpotSource | undefined {
  try {
    const parsed: unknown = typeof value === "string" ? JSON.parse(value) : undefined;
    if (typeof parsed !== "object" || parsed === null) return undefined;
    const [url, kind, place] = ["url", "kind", "place"].map((key): unknown => Reflect.get(parsed, key));
    if (typeof url !== "string" || typeof place !== "string" || (kind !== "json" && kind !== "csv")) return undefined;
    return { url, kind, place };
  } catch {
    return undefined;
  }
}
