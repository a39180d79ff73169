/**
 * What the Excel proxies send: objects as paths, and what is to be done with them.
 */
export interface PathInfo {
  readonly Id: number;
  /** 1 the workbook, 3 what a method gives, 4 a property, 5 an item by its key, 7 an object that is not there. */
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}
export interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  /** In the place of each argument that is itself an object, that object's path; 0 in the others'. */
  readonly ReferencedObjectPathIds?: readonly number[] | null;
}
export interface ActionInfo {
  readonly Id: number;
  /** 1 make the object, 2 load, 3 call, 4 set, 5 say how far it has come. */
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}
export interface RequestMessage {
  readonly Body: {
    readonly Actions: readonly ActionInfo[];
    readonly ObjectPaths: Readonly<Record<string, PathInfo>>;
  };
}
