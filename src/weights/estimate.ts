import type { NumberRule } from "../exact/numberrule";
import type { Quotient } from "../exact/quotient";
import { type Density, readDensity } from "../gold/density";
import { fieldsNamed } from "../reading/formfields";
import { YES_NO } from "../reading/orderwords";
import { accepted, faultOf, field, type Parsed, parseForm, refused } from "../reading/parse";
import { recastWeight, resizedLink } from "../trade/link";
import { atStage, type StagedWeight } from "../trade/stagedweight";
import { readScaleWeight } from "../units/scaleweight";
import type { Weight } from "../units/weight";

export const WAX_LABELS = {
  wax: "Weight of the wax or resin",
  waxDensity: "Density of the wax or resin",
  metalDensity: "Density of the metal",
} as const;
export type WaxKey = keyof typeof WAX_LABELS;

export const RECAST_LABELS = {
  weight: "Weight now",
  stage: "Weighed",
  fromDensity: "Density now",
  toDensity: "Density of the other alloy",
} as const;
export type RecastKey = keyof typeof RECAST_LABELS;

export const RESIZE_LABELS = {
  weight: "Weight of the link",
  stage: "Weighed",
  fromWidth: "Its width",
  toWidth: "Wanted width",
  linksPer: "Its links per length",
  seats: "Stone seats",
} as const;
export type ResizeKey = keyof typeof RESIZE_LABELS;

/** The stages at which a metal link may have been weighed. Another alloy or width does not change the stage. */
export const RECAST_STAGES = ["finished", "cast"] as const;
export type RecastStage = (typeof RECAST_STAGES)[number];

/** A piece of known weight in one material, and its weight in another. */
export interface MaterialChange<S extends RecastStage = RecastStage> {
  readonly known: Weight;
  readonly from: Density;
  readonly to: Density;
  /** Exact. */
  readonly weight: StagedWeight<S>;
}

/** A link at another width. */
export interface Resizing {
  readonly known: Weight;
  readonly fromWidth: Quotient;
  readonly toWidth: Quotient;
  /** By the cube of the widths; exact. */
  readonly weight: StagedWeight<RecastStage>;
  /** Links in the same length at the new width, since the pitch scales along; undefined where they were not given. */
  readonly linksPer: Quotient | undefined;
}

/** A link's or piece's weight in metal from its wax or resin: as cast, since wax and mould are what is cast. */
export function parseWax(record: Readonly<Record<WaxKey, string>>): Parsed<MaterialChange<"cast">> {
  const parsed = parseForm(
    {
      wax: scaleWeight(WAX_LABELS.wax),
      waxDensity: density(WAX_LABELS.waxDensity, "0.95", false),
      metalDensity: density(WAX_LABELS.metalDensity, "13.5", true),
    },
    record,
  );
  if (!parsed.ok) return parsed;
  return accepted(changed("cast", parsed.value.wax, parsed.value.waxDensity, parsed.value.metalDensity));
}

const weighed = fieldsNamed(RECAST_LABELS);

/** The same piece in another alloy. */
export function parseRecast(record: Readonly<Record<RecastKey, string>>): Parsed<MaterialChange> {
  const parsed = parseForm(
    {
      weight: scaleWeight(RECAST_LABELS.weight),
      stage: weighed.word("stage", RECAST_STAGES),
      fromDensity: density(RECAST_LABELS.fromDensity, "13.5", true),
      toDensity: density(RECAST_LABELS.toDensity, "15.5", true),
    },
    record,
  );
  if (!parsed.ok) return parsed;
  const { stage, weight, fromDensity, toDensity } = parsed.value;
  return accepted(changed(stage, weight, fromDensity, toDensity));
}

const WIDTH: NumberRule = { above: "0", right: "a width above 0, both widths in one unit, such as 8" };
const LINKS_PER: NumberRule = { above: "0", right: "links above 0, such as 4, or nothing" };
const named = fieldsNamed(RESIZE_LABELS);

/** A known link at another width. Models with stone seats are refused: scaled seats would not fit their stones. */
export function parseResizing(record: Readonly<Record<ResizeKey, string>>): Parsed<Resizing> {
  const parsed = parseForm(
    {
      weight: scaleWeight(RESIZE_LABELS.weight),
      stage: named.word("stage", RECAST_STAGES),
      fromWidth: named.number("fromWidth", WIDTH),
      toWidth: named.number("toWidth", WIDTH),
      linksPer: named.optional("linksPer", LINKS_PER),
      seats: named.word("seats", YES_NO),
    },
    record,
  );
  const seated = record.seats.trim().toLowerCase() === "yes";
  if (seated || !parsed.ok) return refused([...(parsed.ok ? [] : parsed.faults), ...(seated ? [SEATED] : [])]);
  const { weight, stage, fromWidth, toWidth, linksPer } = parsed.value;
  return accepted({
    known: weight,
    fromWidth,
    toWidth,
    weight: atStage(stage, resizedLink(weight, fromWidth, toWidth)),
    linksPer: linksPer?.times(fromWidth).dividedBy(toWidth),
  });
}

const SEATED = faultOf(
  "seats",
  RESIZE_LABELS.seats,
  "outOfRange",
  'found "yes"; when a model is scaled its seats would no longer fit their stones, so this model cannot be resized: have it drawn anew at the wanted width',
);

function changed<S extends RecastStage>(stage: S, known: Weight, from: Density, to: Density): MaterialChange<S> {
  return { known, from, to, weight: atStage(stage, recastWeight(known, from.value, to.value)) };
}

function scaleWeight(label: string) {
  return field((value) => readScaleWeight(value, label));
}

function density(label: string, example: string, fromComposition: boolean) {
  return field((value) => readDensity(value, label, example, fromComposition));
}
