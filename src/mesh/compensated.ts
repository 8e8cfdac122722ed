/**
 * A sum of doubles that keeps what each addition loses, to give nearly the exact sum rounded once.
 * Source: A. Neumaier, Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen, ZAMM 54 (1974): from memory.
 */
export class CompensatedSum {
  private sum = 0;
  private lost = 0;

  add(value: number): void {
    const next = this.sum + value;
    this.lost += Math.abs(this.sum) >= Math.abs(value) ? this.sum - next + value : value - next + this.sum;
    this.sum = next;
  }

  value(): number {
    return this.sum + this.lost;
  }
}
