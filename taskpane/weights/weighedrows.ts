import { grams, isBlank, Quotient, STAGES, sameText, type Weighed, type WeighIn } from "../../src/index";
import type { WeighInRow } from "../excel/weights/scalebook";

/** The rows of the table that its own formulas count too: a model, a stage, pieces and a weight above zero. */
export function weighedOf(rows: readonly WeighInRow[]): readonly Weighed[] {
  return rows.flatMap((row): Weighed[] => {
    const { job, model, width, mark, colour, pieces, weight, sent, confirmed } = row;
    const stage = STAGES.find((known) => known === String(row.stage).toLowerCase());
    if (!stage || isBlank(model) || !isAboveZero(pieces) || !isAboveZero(weight)) return [];
    return [
      {
        job: isBlank(job) ? "" : String(job),
        link: { model, width, mark, colour },
        stage,
        pieces: Quotient.of(plain(pieces)),
        weight: grams(Quotient.of(plain(weight))),
        sent: isAboveZero(sent) ? Quotient.of(plain(sent)) : undefined,
        isConfirmed: sameText(confirmed, "yes"),
      },
    ];
  });
}

/** A weigh-in as one weighing among others. */
export function weighedFrom(weighIn: WeighIn): Weighed {
  const { job, stage, model, width, mark, colour, pieces, weight, sent } = weighIn;
  return { job, stage, pieces, weight, sent, link: { model, width: width?.toNumber() ?? "", mark, colour } };
}

function isAboveZero(cell: unknown): cell is number {
  return typeof cell === "number" && cell > 0;
}

/** As the 15 digits say that a person sees. */
function plain(cell: number): string {
  return cell.toPrecision(15);
}
