/** The shapes of office.js's requests and of the answers it expects. */

/** The numbers office.js writes into ObjectPathType and ActionType. */
export const PATH = { global: 1, newObject: 2, method: 3, property: 4, indexer: 5, reference: 6, nothing: 7 } as const;
export const ACTION = { instantiate: 1, query: 2, method: 3, set: 4, trace: 5 } as const;

/** The flag of a request by Excel.run({ delayForCellEdit: true }). */
export const WAITS_FOR_CELL_EDIT = 64;

export interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly unknown[];
}

export interface Path {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

export interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: {
    readonly Select?: readonly string[];
    readonly Expand?: readonly string[];
    readonly Top?: number;
    readonly Skip?: number;
  };
}

export interface Batch {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, Path>>;
}

export interface Answer {
  readonly Results: { ActionId: number; Value: unknown }[];
  readonly TraceIds?: number[];
  Error?: { Code: string; Message: string; Location: string; ActionIndex: number; HttpStatusCode: number };
}
