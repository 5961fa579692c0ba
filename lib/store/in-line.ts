/** The last one in each line. */
const lines = new Map<string, Promise<void>>();

/**
 * Runs works of one name one after the other, in the order of asking; a work that fails lets the next one go
 * on. Lines of different names do not wait for each other.
 */
export async function inLine<T>(name: string, work: () => Promise<T>): Promise<T> {
  const turn = (lines.get(name) ?? Promise.resolve()).then(work);
  const over = turn.then(
    () => undefined,
    () => undefined,
  );
  lines.set(name, over);
  try {
    return await turn;
  } finally {
    if (lines.get(name) === over) lines.delete(name);
  }
}
