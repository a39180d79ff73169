/**
 * One step to undo for all that a run does. Excel refuses a group in which anything cannot be undone: copying a
 * sheet anywhere, renaming one on Windows and Mac, many formulas at once.
 */
import type { Offered } from "./offered";

export class UndoGroups {
  #possible = true;

  /** `work` does all or nothing, so that it can be done once more where a group is refused. */
  async run<Result>(offered: Offered, work: (options: Excel.RunOptions) => Promise<Result>): Promise<Result> {
    if (!offered.undoGroups || !this.#possible) return work({});
    try {
      return await work({ mergeUndoGroup: true });
    } catch (error) {
      if (!isUndoRefused(error)) throw error;
      // it would be the same another time
      this.#possible = false;
      return work({});
    }
  }
}

/** The code that Excel gives then; its published types do not list it. */
export const isUndoRefused = (error: unknown) => (error as { code?: unknown }).code === "UndoNotSupported";
