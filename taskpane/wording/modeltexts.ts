import type { ModelUnit, SolidFaultKind } from "../../src/index";

/** The sentences about a link's model. */
export const MODEL_TEXTS = {
  title: "Link from a model",

  file: {
    intro: "What a link will weigh, from its STL file. The file stays on this computer.",
    choose: "Choose an STL file",
    another: "Choose another file",
    drop: "or drop it here",
    label: "STL file of the link",
    several: "Several files were dropped; drop one STL file.",
    none: "What was dropped is no file; drop an STL file.",
  },

  work: {
    opening: (name: string) => `Reading ${name}…`,
    examining: (name: string) => `Examining ${name}…`,
    first: (x: string, y: string, z: string, isClosed: boolean) =>
      `${x} × ${y} × ${z} in the file's unit, ${isClosed ? "closed" : "not closed at first sight"}. Looking at every edge…`,
    label: "How far the model is examined",
    cancelled: "Cancelled. Nothing was changed.",
    broken: (said: string) => `The model could not be examined: ${said}. Try once more, or export the file again.`,
    done: (name: string, solids: number) => `${name}: ${solids === 1 ? "one solid" : `${solids} solids`}.`,
  },

  about: (name: string, triangles: string) => `${name}, ${triangles} triangles`,

  unit: {
    title: "Which unit was it drawn in?",
    why: "An STL file does not say.",
    names: { mm: "Millimetres", in: "Inches" } satisfies Record<ModelUnit, string>,
    size: (x: string, y: string, z: string) => `${x} × ${y} × ${z} mm`,
    small: (side: string) =>
      `The largest side would be ${side}: too small for a link, which has 1 to 60 mm (common practice).`,
    large: (side: string) =>
      `The largest side would be ${side}: too large for a link, which has 1 to 60 mm (common practice).`,
    ask: "Choose the unit first.",
  },

  solids: {
    title: "Solids in the file",
    help: "Tick what is metal in the finished piece. Leave sprues unticked.",
    name: (number: number) => `Solid ${number}`,
    size: (x: string, y: string, z: string) => `${x} × ${y} × ${z} mm`,
    unknownSize: "size once the unit is chosen",
    hollows: (count: number) => (count === 1 ? "one hollow" : `${count} hollows`),
    volume: (volume: string) => `${volume} mm³`,
    noVolume: "no volume",
    more: (count: number) => (count === 1 ? "Show 1 more" : `Show ${count} more`),
  },

  faults: {
    open: (count: number) => (count === 1 ? "Not closed: 1 edge is open" : `Not closed: ${count} edges are open`),
    turned: (count: number) =>
      count === 1
        ? "1 edge lies between triangles that look to opposite sides"
        : `${count} edges lie between triangles that look to opposite sides`,
    crowded: (count: number) =>
      count === 1 ? "1 edge belongs to more than two triangles" : `${count} edges belong to more than two triangles`,
    insideOut: () => "Inside out: its triangles look inwards. Its volume is right",
    flat: () => "Empty: it closes around nothing",
    throughItself: () => "It passes through itself; what overlaps counts twice",
  } satisfies Record<SolidFaultKind, (count: number) => string>,
  /** A fault and where it is, in the file's own numbers. */
  faultAt: (fault: string, x: string, y: string, z: string) => `${fault}, first at ${x}, ${y}, ${z}.`,
  overlap: (one: number, other: number, x: string, y: string, z: string) =>
    `Solids ${one} and ${other} overlap, first found at ${x}, ${y}, ${z}: what they share counts twice.`,
  moreOverlaps: (count: number) => `${count} more pairs of solids overlap.`,
  entangled: "The model is too entangled to look for all overlaps; there may be more.",
  folded: (count: number, all: string) =>
    count === 1
      ? `1 of ${all} triangles is folded to a line and was left out.`
      : `${count} of ${all} triangles are folded to a line and were left out.`,
  joined: (count: number, tolerance: string) =>
    count === 1
      ? `1 corner met another only to within ${tolerance} of the file's unit; they were taken as one.`
      : `${count} corners met others only to within ${tolerance} of the file's unit; they were taken as one.`,

  alloy: {
    title: "Alloy",
    label: "Density taken from",
    typical: (mark: string, colour: string, density: string) => `${mark} ${colour}, typical: ${density} g/cm³`,
    own: "The caster or a test",
    mixed: "Its composition",
    density: "Density",
    densityUnit: "g/cm³",
    densityHelp: "A mark alone does not fix it: 14K yellow is printed from 13.07 to 14.1.",
    typicalHelp: (parts: string) => `A typical mix, common practice: ${parts}. Your caster's own density is better.`,
    mixedHelp: "Parts by weight that sum to 1, 100 or 1000. A measured density may differ by about a per cent.",
    computed: (density: string) => `${density} g/cm³`,
  },

  scale: {
    title: "Size",
    label: "Cast it",
    asDrawn: "As drawn",
    toWidth: "To a width",
    byPercent: "By per cent",
    side: "Width is the side",
    sides: ["x", "y", "z"],
    sideOf: (axis: string, length: string) => `${axis}, ${length} as drawn`,
    width: "Wanted width",
    percent: "Per cent of the drawn size",
    seats: "The model has seats for stones",
    result: (percent: string) =>
      `Every length is ${percent} of the drawn one, the pitch too; the weight goes by its cube.`,
  },

  shrinkage: {
    title: "Shrinkage",
    help: "Of each length, where the caster does not allow for it. Empty is none.",
    mould: "Mould",
    wax: "Wax",
    metal: "Metal",
    percent: "%",
    result: (share: string) => `${share} of each length together.`,
  },

  links: { label: "Links among the ticked", help: "The weight is shared among them." },

  result: {
    title: "Weight",
    ofOne: "One link, cast weight",
    ticked: "All ticked solids",
    withSprue: "With what is not ticked",
    alike: (solids: number) =>
      `The ${solids} ticked solids are alike, and count as one link. If each is a link, type ${solids} for the links.`,
    unlike: (solids: number) =>
      `The ${solids} ticked solids differ in volume, so one link is their average. If they are parts of one link, type 1.`,
    stillOpen: "Tick at least one solid, and give a density, a size and a number of links above.",
    faulty: (solids: string) =>
      `No weight: ${solids} has no volume. Untick it, or repair the model and export it again.`,
    faultyMany: (solids: string) =>
      `No weight: ${solids} have no volume. Untick them, or repair the model and export it again.`,
    formula: "Volume × scale³ × density × (1 − shrinkage)³. Polishing takes some of it.",
  },

  picture: {
    title: "Picture",
    loading: "Loading the picture…",
    notLoaded: "The picture could not be loaded. Close it and open it again.",
    noDrawing: "This computer draws no pictures in three dimensions here. The figures do not need one.",
    keys: "Drag or use the arrow keys to turn it, + and − to come nearer or go back, Home to start again.",
    said: (solids: number, ticked: number, size: string) =>
      `Picture of the model: ${solids === 1 ? "one solid" : `${solids} solids`}, ${ticked} ticked as metal, ${size}.`,
    unknownSize: "size not known before the unit is chosen",
    legend: { metal: "metal", sprue: "not ticked", faulty: "faulty" },
  },
} as const;
