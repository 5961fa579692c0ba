/**
 * JSON with keys in order and a line feed at the end: the same data, the same bytes.
 * `stableJson({ b: 1, a: 2 })` → `{\n  "a": 2,\n  "b": 1\n}\n`. Undefined members are left out.
 */
export function stableJson(data: unknown): string {
  return `${JSON.stringify(inOrder(data), null, 2)}\n`;
}

function inOrder(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(inOrder);
  if (data === null || typeof data !== 'object') return data;
  return Object.fromEntries(
    Object.entries(data)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
      .map(([key, value]) => [key, inOrder(value)]),
  );
}
