import type { Book } from "./book";
export function printHtml(_book: Book, _sheetId: string): string { throw new Error("later"); }
export function printSheet(_book: Book, _sheetId: string): void { throw new Error("later"); }
