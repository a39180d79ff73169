/**
 * What each function is held against: its arithmetic written out by hand, without checks and without defaults, and
 * inputs that differ from call to call.
 */
export interface Varied {
  between(low: number, high: number): number;
  whole(low: number, high: number): number;
  one<T>(list: readonly T[]): T;
}

export interface Bare {
  readonly id: string;
  readonly bare: (...args: never[]) => unknown;
  /** The arguments of one call, every optional one given. */
  readonly inputs: (varied: Varied) => readonly unknown[];
}

/** The same inputs in every run. */
export function variedFrom(seed: number): Varied {
  let state = seed;
  const share = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (low: number, high: number) => low + Math.floor(share() * (high - low + 1));
  return {
    between: (low, high) => low + share() * (high - low),
    whole,
    one: (list) => list[whole(0, list.length - 1)]!,
  };
}
