/**
 * Changes to the grid that belong together: all of them or none, and one step to undo.
 */
import { IUndoRedoService } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { injectorOf } from "./book";

export interface Mutation {
  readonly id: string;
  readonly params: object;
}

/** Does a mutation and remembers how it is taken back. */
export type Do = (mutation: Mutation, back: Mutation) => void;

export function inOneStep(api: FUniver, unitId: string, change: (doIt: Do) => void): void {
  const done: Mutation[] = [];
  const backs: Mutation[] = [];
  try {
    change((mutation, back) => {
      // noted first: what fails half-way is taken back too
      backs.unshift(back);
      if (!execute(api, mutation)) throw new Error(`The spreadsheet refused ${mutation.id}.`);
      done.push(mutation);
    });
  } catch (error) {
    for (const back of backs) execute(api, back);
    throw error;
  }
  const undoSteps = injectorOf(api).get(IUndoRedoService);
  undoSteps.pushUndoRedo({ unitID: unitId, undoMutations: backs, redoMutations: done });
}

const execute = (api: FUniver, { id, params }: Mutation) => api.syncExecuteCommand(id, params);
