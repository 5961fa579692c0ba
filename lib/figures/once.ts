/**
 * Works something out when it is first asked for, and once.
 * @example const sum = once(() => addUp(all)); sum(); sum(); // added up once
 */
export function once<T>(work: () => T): () => T {
  let done: { readonly value: T } | null = null;
  return () => (done ??= { value: work() }).value;
}
