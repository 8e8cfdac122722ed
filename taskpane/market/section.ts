import { type LazyPart, lazyPart, type PartEvents } from "../views/lazypart";
import { ASKING_TITLES } from "../wording/askingtitles";

/** What others ask: one price, a list of them, and what was seen so far. The drawing is a chunk of its own. */
export function askingSections(on: PartEvents): readonly LazyPart[] {
  const name = "asking";
  return [
    lazyPart(
      { title: ASKING_TITLES.check, name, isOpen: true },
      async (place) => {
        const { openPriceCheck } = await import(/* webpackChunkName: "asking" */ "./checkpart");
        return openPriceCheck(place, on);
      },
      on.attempt,
    ),
    lazyPart(
      { title: ASKING_TITLES.list, name, about: ASKING_TITLES.listAbout },
      async (place) => {
        const { openAskingList } = await import(/* webpackChunkName: "asking" */ "./listpart");
        return openAskingList(place, on);
      },
      on.attempt,
    ),
    lazyPart(
      { title: ASKING_TITLES.premiums, name, about: ASKING_TITLES.premiumsAbout },
      async (place) => {
        const { openPremiums } = await import(/* webpackChunkName: "premiums" */ "./premiumpart");
        return openPremiums(place, on);
      },
      on.attempt,
    ),
  ];
}
