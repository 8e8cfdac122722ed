export const RATES: unknown[][];
export function designs(count: number): unknown[][];
