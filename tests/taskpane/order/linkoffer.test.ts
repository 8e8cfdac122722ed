import { describe, expect, test } from "vitest";
import { atStage, grams, Quotient, RATE_KEYS, type RateKey } from "../../../src/index";
import type { RatesReading } from "../../../taskpane/excel/rates/rates";
import { lineTextsOf, offerOf } from "../../../taskpane/order/linkoffer";

const read = (values: Partial<Record<RateKey, unknown>>): RatesReading => ({
  found: true,
  spotRead: { time: undefined, timeWords: "", source: "", ofAnother: undefined },
  isTimeFormula: false,
  spotNote: undefined,
  sheet: "Rates",
  sheetIds: ["1"],
  values: { ...(Object.fromEntries(RATE_KEYS.map((key) => [key, ""])) as Record<RateKey, unknown>), ...values },
  missing: [],
});
const link = (stage: "cast" | "finished", weight: string) =>
  stage === "cast" ? atStage("cast", grams(Quotient.of(weight))) : atStage("finished", grams(Quotient.of(weight)));
const said = (stage: "cast" | "finished", weight: string, rates: RatesReading) => {
  const offer = offerOf(link(stage, weight), rates);
  const words = offer.finished ? offer.words : offer.sentence;
  const filled = offer.finished && lineTextsOf({ weight: offer.finished, texts: {} }).linkWeight;
  return [words.replaceAll("\u00a0", " "), filled];
};

// Hand arithmetic: 1.1423 x 0.955 = 1.0908965; 1.1423 / 1.045 = 1.09311004…; 0.0456 x 0.9775 = 0.044574; 12.345 x 0.98 = 12.0981.
describe("a cast weight is offered to the order finished, by the loss on Rates", () => {
  test.each([
    ["1.1423", 0.045, "cast", "Use in the order: 1.09 g finished (1.14 g cast less 4.5% loss)", "1.0909"],
    [
      "1.1423",
      0.045,
      "finished",
      "Use in the order: 1.09 g finished (1.14 g cast less a loss of 4.5% of the finished weight)",
      "1.09311",
    ],
    ["0.0456", 0.0225, "cast", "Use in the order: 0.0446 g finished (0.0456 g cast less 2.25% loss)", "0.044574"],
    ["12.345", 0.02, "cast", "Use in the order: 12.10 g finished (12.35 g cast less 2% loss)", "12.0981"],
    ["2", 0, "cast", "Use in the order: 2.00 g finished (2.00 g cast less 0% loss)", "2"],
  ])("%s g at a loss of %s of the %s weight", (weight, loss, lossBasis, words, filled) => {
    expect(said("cast", weight, read({ loss, lossBasis }))).toEqual([words, filled]);
  });

  test("whatever else is missing on Rates", () => {
    expect(said("cast", "1.1423", read({ loss: 0.045, lossBasis: "cast", spot: "" }))[1]).toBe("1.0909");
  });
});

describe("a cast weight is not offered", () => {
  const ORDER = "an order takes the finished weight";

  test("where the loss is in grams per piece: of one link it is not known", () => {
    const [sentence, filled] = said("cast", "1.1423", read({ loss: 1.2, lossBasis: "grams" }));
    expect(filled).toBe(undefined);
    expect(sentence).toContain(ORDER);
    expect(sentence).toContain("in grams per piece");
    expect(sentence).toContain("Type the finished weight of one link in the order.");
  });

  test.each([
    ["the loss", { loss: "", lossBasis: "cast" }, "Polish loss: found nothing"],
    ["what it is counted from", { loss: 0.02, lossBasis: "" }, "Loss counted from: found nothing"],
    ["a loss that is one", { loss: "some", lossBasis: "cast" }, 'Polish loss: found "some"'],
  ])("without %s on Rates, which is named", (_what, values, named) => {
    const [sentence, filled] = said("cast", "1.1423", read(values));
    expect([filled, sentence?.includes(ORDER), sentence?.includes(named)]).toEqual([undefined, true, true]);
  });

  test("without Rates", () => {
    expect(said("cast", "1.1423", { found: false })).toEqual([expect.stringContaining("The Rates sheet"), undefined]);
  });
});

test("a finished weight needs no loss", () => {
  expect(said("finished", "1.35", { found: false })).toEqual(["Use in the order: 1.35 g finished", "1.35"]);
  expect(said("finished", "1.35", read({ loss: 1.2, lossBasis: "grams" }))[1]).toBe("1.35");
});
