import type { Book } from "../book";
import type { Entity } from "./entity";

/** What the model needs from the host. */
export interface Host {
  registerEvent(eventType: number, targetId: string, on: boolean): void;
  enableEvents: boolean;
  release(reference: string): void;
  kept(reference: string): Entity | undefined;
}

const hosts = new WeakMap<Book, Host>();

export function setHost(book: Book, host: Host): void {
  hosts.set(book, host);
}

export function hostOf(book: Book): Host {
  const host = hosts.get(book);
  if (!host) throw new Error("The workbook has no host yet");
  return host;
}
