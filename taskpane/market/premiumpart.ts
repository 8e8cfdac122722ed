import {
  lengthIn,
  type Mark,
  nearestLink,
  type OwnLink,
  ownLine,
  Quotient,
  type Rates,
  seenPremium,
} from "../../src/index";
import { element, say } from "../controls/element";
import { field } from "../controls/field";
import { type AskingBook, readAskingBook } from "../excel/market/askingbook";
import { keptAskings } from "../excel/market/seenaskings";
import { figure } from "../plots/figure";
import { oneAtATime } from "../running/oneatatime";
import type { PartEvents, Working } from "../views/lazypart";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { today } from "../wording/display";
import { linkName } from "../wording/shownweight";
import { medianTable } from "./mediantable";
import { marksOf, type OwnPrice, premiumPlot, type Seen } from "./premiumplot";
import { type KeptLinks, keptLinks, linkChoices } from "./pricecheck";

const { premiums: texts, check } = ASKING_TEXTS;

/** What was asked over the metal so far: a plot against weight, and the middle of each class month by month. */
export function openPremiums(place: HTMLElement, on: PartEvents): Working {
  const note = element("p", { class: "help", role: "status" });
  const mark = field({ id: "premium-mark", label: texts.mark, choices: [] });
  const link = field({ id: "premium-link", label: texts.link, choices: [{ value: "", shown: check.nearest }] });
  const choices = element("div", { class: "fields" }, mark.root, link.root);
  const plot = figure();
  const table = element("div", { class: "plot" });
  const medians = element(
    "section",
    { class: "plot" },
    element("h3", {}, texts.medians.title),
    element("p", {}, texts.medians.about),
    table,
  );
  const shown = element("div", { class: "plots" }, choices, plot.root, medians);
  for (const each of [mark, link]) {
    each.root.classList.add("half");
    each.control.addEventListener("change", draw);
  }
  place.replaceChildren(note, shown);
  shown.hidden = true;
  let all: readonly Seen[] = [];
  let links: KeptLinks = { links: [], kept: 0 };
  let drawnWidth = 0;
  new ResizeObserver(() => {
    if (shown.clientWidth !== drawnWidth) draw();
  }).observe(shown);

  const read = oneAtATime(async () => {
    const { rates } = on.rates();
    if (!rates) return say(note, check.ratesFirst);
    show(await readAskingBook(), rates);
  });

  function show({ askings, links: rows }: AskingBook, rates: Rates): void {
    const kept = keptAskings(askings.ok ? askings.rows : [], rates.currency, today());
    all = kept.seen.flatMap((seen) => {
      const premium = seenPremium(seen, rates.spot);
      return premium ? [{ seen, premium }] : [];
    });
    links = keptLinks(rows.ok ? rows.rows : []);
    const weightless = kept.seen.length - all.length;
    say(
      note,
      [
        ...(askings.ok ? [] : [askings.sentence]),
        ...(rows.ok ? [] : [rows.sentence]),
        ...(askings.ok && all.length === 0 ? [texts.none] : []),
        ...(kept.unread > 0 ? [texts.unread(kept.unread)] : []),
        ...(weightless > 0 ? [texts.weightless(weightless)] : []),
      ].join(" "),
    );
    shown.hidden = all.length === 0;
    mark.offer(marksOf(all).map((each) => ({ value: each.mark, shown: each.mark })));
    link.offer(linkChoices(links));
    table.replaceChildren(
      medianTable(
        all.map(({ premium }) => premium),
        rates,
      ),
    );
    draw();
  }

  function draw(): void {
    const { rates } = on.rates();
    drawnWidth = shown.clientWidth;
    const chosen = marksOf(all).find((each) => each.mark === mark.control.value);
    const sample = chosen?.seen[0]?.seen;
    if (!rates || !sample || drawnWidth === 0) return;
    const own = ownPrice(sample.mark, chosen.seen, rates);
    plot.show(premiumPlot(all, chosen.mark, own, rates, drawnWidth));
  }

  /** Our price in a mark, of the link that was chosen, else the one nearest to the middle piece of that mark. */
  function ownPrice(of: Mark, seen: readonly Seen[], rates: Rates): OwnPrice {
    const found = links.links.find(({ name }) => linkName(name) === link.control.value) ?? nearestTo(of, seen);
    if (typeof found === "string") return { found: false, sentence: found };
    const line = ownLine(found, { mark: of, hollow: found.hollow, colour: undefined, kind: "chain" }, rates);
    if (line.ok) return { found: true, line: line.value };
    return { found: false, sentence: line.faults.map(({ sentence }) => sentence).join(" ") };
  }

  function nearestTo(of: Mark, seen: readonly Seen[]): OwnLink | string {
    const hollow = seen.some(({ premium }) => premium.hollow);
    const weights = seen.map(({ premium }) => premium.weight).sort((a, b) => a.grams.compare(b.grams));
    const weight = weights[Math.floor(weights.length / 2)];
    if (!weight) throw new Error("A mark that was seen has no weight");
    const sought = { weight, mark: of, hollow, colour: undefined, length: lengthIn(Quotient.of(22), "in") };
    const nearest = nearestLink(links.links, links.kept, sought);
    return nearest.found ? nearest.match.link : check.lacks[nearest.lacks];
  }

  return { follow: () => void on.attempt(read) };
}
