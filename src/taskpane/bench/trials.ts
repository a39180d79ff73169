/**
 * The list of sweetness to try. It follows the form until the user makes it their own; what was noted is never lost.
 */
import { fields, type BatchInputs } from "../../cellar/batch/fields";
import { usualTrialsGL } from "../../cellar/batch/what-if";

/** Besides zero dosage, which is always there. */
export const MOST_TRIALS = 12;

export interface Trial {
  readonly id: number;
  /** g/L of glucose + fructose; null while it is not a number that can be taken. */
  readonly targetGL: number | null;
  readonly note: string;
  /** Why it is in the list: usual for the rules, wanted by the form, or put there by the user. */
  readonly origin: "usual" | "wanted" | "theirs";
}

export const targetDomain = fields.dosage.target_gL.domain;

export class Trials {
  #list: Trial[] = [];
  #lastId = 0;
  #wanted: number | null = null;
  /** Whether the user added, removed or changed a trial: the usual ones are then not put in again. */
  #isTheirs = false;

  get list(): readonly Trial[] {
    return this.#list;
  }

  get isFull(): boolean {
    return this.#list.length >= MOST_TRIALS;
  }

  /** Whether a trial is at the sweetness that the form wants. */
  isWanted({ targetGL }: Trial): boolean {
    return targetGL !== null && targetGL === this.#wanted;
  }

  /** Takes the form's sweetness, and the usual ones around it while the list is still ours. */
  follow(inputs: BatchInputs): void {
    const { kind, target_gL } = inputs.dosage;
    this.#wanted = kind === "none" ? null : target_gL;
    const wanted = this.#wanted === null ? [] : [this.#wanted];
    const usual = this.#isTheirs ? [] : usualTrialsGL(inputs);
    const levels = [...usual, ...wanted];
    const stays = ({ origin, note, targetGL }: Trial) =>
      note !== "" ||
      origin === "theirs" ||
      (this.#isTheirs && origin === "usual") ||
      levels.includes(targetGL!);
    this.#list = this.#list.filter(stays);
    this.#fill(usual, "usual");
    this.#fill(wanted, "wanted");
    this.#list.sort((a, b) => (a.targetGL ?? Infinity) - (b.targetGL ?? Infinity));
  }

  /** A trial to be filled in; undefined where the list is full. */
  add(): Trial | undefined {
    if (this.isFull) return undefined;
    this.#isTheirs = true;
    return this.#put(null, "theirs");
  }

  remove(id: number): void {
    this.#isTheirs = true;
    this.#list = this.#list.filter((each) => each.id !== id);
  }

  setTarget(id: number, targetGL: number | null): void {
    this.#isTheirs = true;
    this.#change(id, { targetGL, origin: "theirs" });
  }

  setNote(id: number, note: string): void {
    this.#change(id, { note });
  }

  /** The usual list again; trials with a note stay. */
  restart(inputs: BatchInputs): void {
    this.#isTheirs = false;
    this.#list = this.#list.filter(({ note }) => note !== "");
    this.follow(inputs);
  }

  #change(id: number, changes: Partial<Trial>): void {
    this.#list = this.#list.map((each) => (each.id === id ? { ...each, ...changes } : each));
  }

  #fill(levels: readonly number[], origin: Trial["origin"]): void {
    for (const level of levels) {
      const isThere = this.#list.some(({ targetGL }) => targetGL === level);
      if (!isThere && (origin === "wanted" || !this.isFull)) this.#put(level, origin);
    }
  }

  #put(targetGL: number | null, origin: Trial["origin"]): Trial {
    this.#lastId += 1;
    const trial: Trial = { id: this.#lastId, targetGL, note: "", origin };
    this.#list.push(trial);
    return trial;
  }
}
