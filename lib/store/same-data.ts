/**
 * Data as text for comparing: keys in order, without the keys named. Two values with the same text hold the
 * same data, whatever their ids. A value that is `undefined` counts as absent.
 */
export function dataText(value: unknown, without: readonly string[] = ['id']): string {
  const left = new Set(without);
  return JSON.stringify(value, (key, part: unknown) => {
    if (left.has(key)) return undefined;
    if (typeof part !== 'object' || part === null || Array.isArray(part)) return part;
    return Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}
