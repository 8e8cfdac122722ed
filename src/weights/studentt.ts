/** Halvings of the span that t lies in: what is left is less than a double can tell apart. */
const HALVINGS = 60;
/** Above t of one degree of freedom, 12.706, the largest there is. */
const HIGHEST = 16;

/**
 * Student's t for 95 % both ways: 19 times in 20 a mean lies within so many of its standard errors. 12.706 at one degree of freedom,
 * 1.960 at very many. To 12 digits.
 * @param freedom degrees of freedom, a whole number from 1
 */
export function studentT95(freedom: number): number {
  const wanted = 19 / 20;
  let [low, high] = [0, HIGHEST];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (shareWithin(middle, freedom) < wanted) low = middle;
    else high = middle;
  }
  return Number(high.toPrecision(12));
}

/**
 * The share of Student's distribution that lies from -t to t, a sum of as many terms as half its degrees of freedom.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 (odd) and 26.7.4 (even): from memory.
 */
function shareWithin(t: number, freedom: number): number {
  const angle = Math.atan(t / Math.sqrt(freedom));
  const cosine = Math.cos(angle);
  const isOdd = freedom % 2 === 1;
  let term = isOdd ? cosine : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let factor = isOdd ? 3 : 2; factor < freedom - 1; factor += 2) {
    term *= (cosine * cosine * (factor - 1)) / factor;
    sum += term;
  }
  return isOdd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}
