/** Seeded chance, so that a failure comes again. Source: mulberry32, public domain. */
export function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A number of so many decimals, as the double a cell would hold. */
export function decimal(random: () => number, least: number, most: number, places: number): number {
  const scale = 10 ** places;
  return Math.round((least + random() * (most - least)) * scale) / scale;
}

/** A whole number over a power of ten: what a number cell counts as, by its 15 significant digits. */
export interface Scaled {
  readonly digits: bigint;
  readonly places: number;
}

const TENS = Array.from({ length: 400 }, (_, power) => 10n ** BigInt(power));

export function ten(power: number): bigint {
  return TENS[power] ?? 10n ** BigInt(power);
}

/** Read from the text of JavaScript's own 15 digits. */
export function scaled(cell: number): Scaled {
  const [mantissa = "0", exponent = "0"] = cell.toExponential(14).split("e");
  const places = 14 - Number(exponent);
  const digits = BigInt(mantissa.replace(".", ""));
  return places >= 0 ? { digits, places } : { digits: digits * ten(-places), places: 0 };
}

/** The decimal of a cell as a text too long to be read in columns: the same value by the exact way. */
export function longText(cell: number): string {
  const { digits, places } = scaled(cell);
  const text = (digits < 0n ? -digits : digits).toString().padStart(places + 1, "0");
  const whole = text.slice(0, text.length - places);
  return `${cell < 0 ? "-" : ""}${whole}.${text.slice(text.length - places)}${"0".repeat(20)}`;
}

/** over / under rounded half away from zero to so many decimals, as the double nearest to that decimal. @param under above 0 */
export function roundedRatio(
  over: bigint,
  under: bigint,
  decimals: number,
): { readonly value: number; readonly tie: boolean } {
  const size = (over < 0n ? -over : over) * ten(decimals) * 2n;
  const count = (size + under) / (2n * under);
  const text = count.toString().padStart(decimals + 1, "0");
  const point = text.length - decimals;
  const value = Number(`${text.slice(0, point)}.${text.slice(point)}`);
  return { value: over < 0n ? 0 - value : value, tie: (size + under) % (2n * under) === 0n };
}

/** Whether a double is the nearest to over / under: no neighbour is nearer. @param under above 0 */
export function isNearest(double: number, over: bigint, under: bigint): boolean {
  const apart = (to: number): bigint => {
    const { mantissa, power } = binary(to);
    // |to - over / under| x under x 2^1200, whole.
    const difference = mantissa * under * 2n ** BigInt(1200 + power) - over * 2n ** 1200n;
    return difference < 0n ? -difference : difference;
  };
  return apart(double) <= apart(neighbour(double, 1n)) && apart(double) <= apart(neighbour(double, -1n));
}

const view = new DataView(new ArrayBuffer(8));

function binary(double: number): { mantissa: bigint; power: number } {
  view.setFloat64(0, double);
  const bits = view.getBigUint64(0);
  const exponent = Number((bits >> 52n) & 2047n);
  const fraction = bits & ((1n << 52n) - 1n);
  const mantissa = exponent === 0 ? fraction : fraction | (1n << 52n);
  return { mantissa: bits >> 63n ? -mantissa : mantissa, power: (exponent === 0 ? 1 : exponent) - 1075 };
}

function neighbour(double: number, step: bigint): number {
  view.setFloat64(0, double);
  view.setBigUint64(0, view.getBigUint64(0) + step);
  return view.getFloat64(0);
}
