import type { DecideEvents } from "./decide/asked";
import type { SpotRiskEvents } from "./decide/spotriskpart";
import { type LazyPart, lazyPart } from "./part";
import { DECIDE_PARTS } from "./texts/decideparts";

/** What a piece must bring, open quotes, a budget, stones: folded parts of the view Decide, loaded together. */
export function decideSections(on: DecideEvents & SpotRiskEvents): readonly LazyPart[] {
  const { mustBring, risk, budget, stones } = DECIDE_PARTS;
  const name = "decide";
  const part = ({ title, about }: { readonly title: string; readonly about: string }, load: LoadPart) =>
    lazyPart({ title, name, about }, load, on.attempt);
  return [
    part(mustBring, async (place) => (await chunk()).openers.openMustBring(place, on)),
    part(risk, async (place) => (await chunk()).openers.openSpotRisk(place, on)),
    part(stones, async (place) => (await chunk()).openers.openStones(place, on)),
    part(budget, async (place) => (await chunk()).openers.openBudget(place, on)),
  ];
}

type LoadPart = Parameters<typeof lazyPart>[1];

const chunk = () => import(/* webpackChunkName: "decide" */ "./decide/desk");
