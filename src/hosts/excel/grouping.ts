/** A group is never empty, so its first item can stand for it. */
export type Group<Item> = [Item, ...Item[]];

/** Items of equal key together, in the order in which the keys come up. */
export function groupedBy<Item>(items: readonly Item[], key: (item: Item) => unknown): Group<Item>[] {
  const groups = new Map<unknown, Group<Item>>();
  for (const item of items) {
    const of = key(item);
    const group = groups.get(of);
    if (group) group.push(item);
    else groups.set(of, [item]);
  }
  return [...groups.values()];
}
