export interface Served {
  /** Without a slash at its end. */
  readonly url: string;
  close(): Promise<void>;
}

export interface ServeOptions {
  /** 0, the usual, takes a free one. */
  readonly port?: number;
  readonly https?: { readonly key: string | Buffer; readonly cert: string | Buffer; readonly ca?: string | Buffer };
  readonly addin?: string;
  readonly office?: string;
  readonly page?: string;
}

export const FOLDERS: Readonly<Record<"addin" | "office" | "page" | "kept", string>>;
export function serve(options?: ServeOptions): Promise<Served>;
export function serveAddin(options?: Pick<ServeOptions, "port" | "https" | "addin">): Promise<Served>;
export function withLocalOffice(html: string): string;
