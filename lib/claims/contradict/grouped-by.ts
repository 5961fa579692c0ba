/** Groups in the order of their first members, which keep theirs: `groupedBy([3, 1, 5], odd)` → one group of three. */
export function groupedBy<T, K extends string>(
  all: readonly T[],
  keyOf: (each: T) => K,
): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const each of all) {
    const key = keyOf(each);
    const known = groups.get(key);
    if (known) known.push(each);
    else groups.set(key, [each]);
  }
  return groups;
}
