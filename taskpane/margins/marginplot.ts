import {
  costPiece,
  type EarningSpan,
  grams,
  lineOfWeight,
  type MustBring,
  marginAt,
  otherLengths,
  type PieceCosts,
  type Quotient,
  type Rate,
  type Weight,
} from "../../src/index";
import { type Figure, figure, type Plot } from "../plots/figure";
import type { Flag } from "../plots/flag";
import { draw } from "../plots/picture";
import type { Point } from "../plots/points";
import { around, exactly, isInSight, type Span, showShares, showTicks } from "../plots/span";
import type { AskedPiece } from "../views/askedpiece";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { showGrams, showShare } from "../wording/display";

const { plot: texts } = DECIDE_TEXTS.mustBring;

/** Pieces from lightest to heaviest that are reckoned. */
const STEPS = 48;
/** Of those, rows of the table. */
const ROWS = 8;

/** What is drawn: a piece, what is wanted of it, and where that is earned. */
export interface Drawn {
  readonly piece: AskedPiece;
  readonly wanted: MustBring & { readonly premium: Rate };
  readonly spans: readonly EarningSpan[];
}

export function openMarginFigure(): { readonly root: HTMLElement; show(drawn: Drawn, width: number): void } {
  const shown: Figure = figure();
  return { root: shown.root, show: (drawn, width) => shown.show(marginPlot(drawn, width)) };
}

/** The margin of lighter and heavier pieces at the market's premium, with the wanted one and this piece. */
function marginPlot({ piece, wanted, spans }: Drawn, width: number): Plot {
  const { sheet, costed } = piece;
  const own = sheet.finishedWeight;
  const edges = spans.flatMap(({ from, to }) => [from, to]).filter((edge) => edge !== undefined);
  const near = edges.filter(({ grams: edge }) => isInSight(edge.toNumber(), own.grams.toNumber())).slice(0, 2);
  const numbers = [own, ...near].map((weight) => weight.grams.toNumber());
  const span = { from: Math.min(...numbers) * 0.6, to: Math.max(...numbers) * 1.4 };
  const marginOf = (costs: PieceCosts) => marginAt(costs, wanted.premium, costed.rates);
  const pieces = [...piecesBetween(piece, wanted, span), sheet].sort((a, b) =>
    a.finishedWeight.grams.compare(b.finishedWeight.grams),
  );
  const points = pieces.map((costs) => pointOf(costs.finishedWeight, marginOf(costs)));
  const least = wanted.margin.toNumber();
  const ownPoint = pointOf(own, marginOf(sheet));
  const weightText = (weight: Weight) => showGrams(weight, 1);
  const [light = sheet, heavy = sheet] = [pieces[0], pieces.at(-1)];
  return {
    title: texts.title,
    sentence: texts.sentence(
      weightText(own),
      showShare(marginOf(sheet)),
      weightText(light.finishedWeight),
      showShare(marginOf(light)),
      weightText(heavy.finishedWeight),
      showShare(marginOf(heavy)),
    ),
    picture: draw({
      width,
      x: { title: texts.weight, ...span, show: showTicks },
      y: { title: texts.margin, ...around([...points.map(({ y }) => y), least], 0.12), show: showShares },
      level: { text: texts.wanted(showShare(wanted.margin)), y: least, nameAt: "end" },
      curves: [{ name: texts.line, kind: "margin", points, nameAt: "end", nameSide: "above" }],
      flags: [
        ...near.map(
          (edge): Flag => ({
            x: edge.grams.toNumber(),
            dots: [],
            kind: "crossing",
            text: texts.edge(weightText(edge)),
          }),
        ),
        { x: ownPoint.x, dots: [ownPoint.y], kind: "order", text: texts.order(weightText(own)) },
      ],
    }),
    heads: [texts.weight, texts.margin],
    rows: thinned(pieces, sheet).map((costs) => [weightText(costs.finishedWeight), showShare(marginOf(costs))]),
  };
}

/** Pieces across the plot: of whole numbers of links, or of links of every weight. */
function piecesBetween({ sheet, costed }: AskedPiece, { heavierBy }: MustBring, span: Span): readonly PieceCosts[] {
  const { order, rates } = costed;
  const at = (step: number) => span.from + ((span.to - span.from) * step) / STEPS;
  const base = sheet.finishedWeight.grams.minus(sheet.chainWeight.grams).toNumber();
  const chains = Array.from({ length: STEPS + 1 }, (_, step) => at(step) - base).filter((chain) => chain > 0);
  if (heavierBy === "heavier links") {
    return chains.map((chain) =>
      costPiece(lineOfWeight(sheet.line, grams(exactly(chain)), "heavier links"), order.spot, rates),
    );
  }
  const lengths = otherLengths(sheet.line);
  const each = sheet.chainWeight.grams.dividedBy(sheet.line.links).toNumber();
  const counts = [...new Set(chains.map((chain) => Math.max(1, Math.round(chain / each))))];
  return counts.flatMap((links) => {
    const line = lengths.at(links);
    return line ? [costPiece(line, order.spot, rates)] : [];
  });
}

/** A few of the pieces for the table, this one among them. */
function thinned(pieces: readonly PieceCosts[], own: PieceCosts): readonly PieceCosts[] {
  const every = Math.max(1, Math.ceil(pieces.length / ROWS));
  return pieces.filter((piece, at) => piece === own || at % every === 0);
}

function pointOf(weight: Weight, margin: Quotient): Point {
  return { x: weight.grams.toNumber(), y: margin.toNumber() };
}
