/**
 * Many names of a sheet as one mutation. The grid's own sets one name at a time and then sorts all names of the
 * workbook anew, which takes seconds where there are many sheets.
 */
import { CommandType, ICommandService, type IAccessor, type IMutation } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { IDefinedNamesService, type IDefinedNamesServiceParam } from "@univerjs/engine-formula";
import { injectorOf } from "./book";
import type { Mutation } from "./undo-step";

export type GridName = IDefinedNamesServiceParam;

interface Params {
  readonly unitId: string;
  readonly names: readonly GridName[];
}

const change = (
  id: string,
  changed: (all: ReadonlyMap<string, GridName>, names: readonly GridName[]) => Map<string, GridName>,
): IMutation<Params> => ({
  id,
  type: CommandType.MUTATION,
  handler: (accessor: IAccessor, { unitId, names }: Params) => {
    const service = accessor.get(IDefinedNamesService);
    const all = new Map(Object.entries(service.getDefinedNameMap(unitId) ?? {}));
    const now = changed(all, names);
    if (now.size === 0) service.removeUnitDefinedName(unitId);
    else service.registerDefinedNames(unitId, Object.fromEntries(now));
    return true;
  },
});

const SET_NAMES = change("mousse.mutation.set-names", (all, names) => {
  return new Map([...all, ...names.map((each) => [each.id, each] as const)]);
});
const REMOVE_NAMES = change("mousse.mutation.remove-names", (all, names) => {
  const gone = new Set(names.map(({ id }) => id));
  return new Map([...all].filter(([id]) => !gone.has(id)));
});

/** To set names, and to take them away again. */
export function settingNames(api: FUniver, params: Params): readonly [doIt: Mutation, back: Mutation] {
  const commands = injectorOf(api).get(ICommandService);
  for (const each of [SET_NAMES, REMOVE_NAMES])
    if (!commands.hasCommand(each.id)) commands.registerCommand(each);
  return [
    { id: SET_NAMES.id, params },
    { id: REMOVE_NAMES.id, params },
  ];
}
