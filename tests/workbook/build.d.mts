export interface Built {
  readonly seconds: number;
  /** Empty when there are none. */
  readonly warnings: string;
}

export class BuildError extends Error {}
export function buildAddin(options?: {
  readonly base?: string;
  readonly support?: string;
  readonly output?: string;
}): Promise<Built>;
export function buildPage(): Promise<Built>;
