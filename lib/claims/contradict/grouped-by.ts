/** Groups in the order of their first members, which keep theirs: `groupedBy([3, 1, 5], odd)` → one group of three. */
export function groupedBy<T>(all: readonly T[], keyOf: (each: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const each of all) {
    const key = keyOf(each);
    const known = groups.get(key);
    if (known) known.push(each);
    else groups.set(key, [each]);
  }
  return groups;
}
