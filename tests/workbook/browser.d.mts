import type { Browser } from "playwright-core";

export function launch(drawing?: "none" | "software"): Promise<Browser>;
export function installed(): string | undefined;
