/**
 * Circles in who reads from whom.
 */

interface Met {
  readonly id: number;
  readonly readers: Iterator<number>;
  readsItself: boolean;
}

/**
 * Those that need their own result, in the order given; each is asked once who reads it. Tarjan, Depth-first search
 * and linear graph algorithms, SIAM Journal on Computing 1 (1972) 146.
 */
export function inCircles<T extends { readonly treeId: number }>(
  all: readonly T[],
  readersOf: (one: T) => Iterable<number>,
): T[] {
  const byId = new Map(all.map((one) => [one.treeId, one]));
  /** When each was met, and the earliest of those that it leads back to. */
  const met = new Map<number, number>();
  const earliest = new Map<number, number>();
  /** Those met whose circle, if any, is not known yet. */
  const open: number[] = [];
  const isOpen = new Set<number>();
  const found = new Set<number>();
  const leadsTo = (id: number, time: number) => earliest.set(id, Math.min(earliest.get(id)!, time));

  for (const first of byId.keys()) {
    if (met.has(first)) continue;
    const path: Met[] = [];
    const meet = (id: number) => {
      earliest.set(id, met.size);
      met.set(id, met.size);
      open.push(id);
      isOpen.add(id);
      path.push({ id, readers: readersOf(byId.get(id)!)[Symbol.iterator](), readsItself: false });
    };
    meet(first);
    for (let last = path.at(-1); last; last = path.at(-1)) {
      const next = last.readers.next();
      if (next.done === true) {
        path.pop();
        const before = path.at(-1);
        if (before) leadsTo(before.id, earliest.get(last.id)!);
        if (earliest.get(last.id) === met.get(last.id)) close(last);
        continue;
      }
      const reader = next.value;
      if (reader === last.id) last.readsItself = true;
      else if (isOpen.has(reader)) leadsTo(last.id, met.get(reader)!);
      else if (byId.has(reader) && !met.has(reader)) meet(reader);
    }
  }
  return all.filter(({ treeId }) => found.has(treeId));

  /** All that were met after it, and it, are one circle. */
  function close({ id, readsItself }: Met): void {
    const members = open.splice(open.lastIndexOf(id));
    for (const member of members) {
      isOpen.delete(member);
      if (members.length > 1 || readsItself) found.add(member);
    }
  }
}
