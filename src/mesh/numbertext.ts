const POWERS = Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));
/** A whole number of this many digits always fits exactly in a double. */
const EXACT_DIGITS = 15;
/** In characters. Anything longer is not read as a number. */
const LONGEST = 400;
const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

/** Reads numbers from the bytes of a text, each as the double nearest to what is written. */
export class NumberText {
  constructor(private readonly bytes: Uint8Array) {}

  /** The number from one place up to another; undefined where it is none. */
  read(start: number, end: number): number | undefined {
    const { bytes } = this;
    let at = start;
    const sign = bytes[at];
    if (sign === 45 || sign === 43) at += 1;
    let digits = 0;
    let seen = 0;
    let whole = 0;
    let behind = 0;
    let pointed = false;
    for (; at < end; at += 1) {
      const byte = bytes[at] ?? 0;
      if (byte >= 48 && byte <= 57) {
        seen += 1;
        if (digits > 0 || byte > 48) digits += 1;
        whole = 10 * whole + (byte - 48);
        if (pointed) behind += 1;
      } else if (byte === 46 && !pointed) pointed = true;
      else break;
    }
    let exponent = 0;
    if (seen > 0 && at < end && ((bytes[at] ?? 0) | 0x20) === 101) {
      at += 1;
      const down = bytes[at] === 45;
      if (down || bytes[at] === 43) at += 1;
      const first = at;
      for (; at < end; at += 1) {
        const byte = bytes[at] ?? 0;
        if (byte < 48 || byte > 57) return undefined;
        if (exponent < 10000) exponent = 10 * exponent + (byte - 48);
      }
      if (at === first) return undefined;
      if (down) exponent = -exponent;
    }
    if (at < end || seen === 0) return undefined;
    const power = exponent - behind;
    const scale = POWERS[Math.abs(power)];
    // Both exact: one division or multiplication rounds once, so this is the nearest double.
    if (digits > EXACT_DIGITS || scale === undefined) return this.readSlowly(start, end);
    const size = power < 0 ? whole / scale : whole * scale;
    return sign === 45 ? -size : size;
  }

  private readSlowly(start: number, end: number): number | undefined {
    if (end - start > LONGEST) return undefined;
    const text = String.fromCharCode(...this.bytes.subarray(start, end));
    return PLAIN.test(text) ? Number(text) : undefined;
  }
}
